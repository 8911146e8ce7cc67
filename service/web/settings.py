"""Settings: rows of name, default and help; the environment is an argument, never read at import."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

from ..errors import BadInput


@dataclass(frozen=True, slots=True)
class Setting:
    """One setting; its environment variable is PULSE_ and the name in capitals."""

    name: str
    default: Any
    help: str


SETTINGS: tuple[Setting, ...] = (
    Setting("host", "127.0.0.1", "address to listen on"),
    Setting("port", 8000, "port to listen on"),
    Setting(
        "database",
        "sqlite:///pulse-glossary.db",
        "SQLAlchemy address of people's data; SQLite file or PostgreSQL",
    ),
    Setting("glossary", "", "glossary_data folder; empty for the one that comes with the code"),
    Setting("largest_body", 262_144, "bytes of a request body, photos apart"),
    Setting("largest_photo", 12_582_912, "bytes of a photo"),
    Setting("slowest_request", 20.0, "seconds after which a request is given up"),
    Setting("rate", 600, "requests a minute for one key or address; 0 for no limit"),
    Setting("redis", "", "Redis address for limits shared between workers; empty for limits in memory"),
    Setting("origins", "", "origins allowed by CORS, parted by commas; empty for none"),
    Setting("webhook_secret", "", "secret that signs chat webhooks; empty turns them off"),
    Setting("log_texts", False, "write label texts to the log"),
    Setting("metrics", True, "serve /metrics"),
    Setting("traces", "", "OTLP/HTTP address that OpenTelemetry spans are sent to; empty for none"),
    Setting("open_suggestions", True, "anyone may suggest; reviewing always takes a key"),
)


@dataclass(frozen=True, slots=True)
class Settings:
    """The values in force."""

    host: str = "127.0.0.1"
    port: int = 8000
    database: str = "sqlite:///pulse-glossary.db"
    glossary: str = ""
    largest_body: int = 262_144
    largest_photo: int = 12_582_912
    slowest_request: float = 20.0
    rate: int = 600
    redis: str = ""
    origins: str = ""
    webhook_secret: str = ""
    log_texts: bool = False
    metrics: bool = True
    traces: str = ""
    open_suggestions: bool = True


def settings(environment: Mapping[str, str], **given: Any) -> Settings:
    """Settings from an environment; `given` values win. Raises BadInput on a value of the wrong kind."""
    values: dict[str, Any] = {}
    for one in SETTINGS:
        name = f"PULSE_{one.name.upper()}"
        if one.name in given and given[one.name] is not None:
            values[one.name] = given[one.name]
        elif name in environment:
            values[one.name] = _read(name, environment[name], type(one.default))
    known = {one.name for one in fields(Settings)}
    return Settings(**{name: value for name, value in values.items() if name in known})


def _read(name: str, text: str, kind: type) -> Any:
    try:
        if kind is bool:
            return {"1": True, "true": True, "yes": True, "0": False, "false": False, "no": False, "": False}[
                text.lower()
            ]
        return kind(text)
    except (ValueError, KeyError):
        raise BadInput(name, text, f"must be {'yes or no' if kind is bool else kind.__name__}") from None
