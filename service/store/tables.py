"""People's data: suggestions, remembered packs. Never a fact of the glossary."""

from __future__ import annotations

from datetime import UTC, datetime

from sqlmodel import Field, SQLModel


def now() -> datetime:
    """The time, in UTC."""
    return datetime.now(UTC)


class Pack(SQLModel, table=True):
    """A remembered pack: GTIN-14 and what it holds."""

    gtin: str = Field(primary_key=True, max_length=14)
    pulse: str = Field(max_length=120)
    label: str = Field(default="", max_length=500)
    status: str = Field(default="suggested", max_length=20)
    changed: datetime = Field(default_factory=now)
