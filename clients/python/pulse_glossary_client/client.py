"""The two clients: the same calls, waited for or awaited."""

from __future__ import annotations

from collections.abc import Sequence
from types import TracebackType
from typing import Any

import httpx

from . import calls
from .calls import Call
from .errors import problem_of

TIMEOUT = httpx.Timeout(20.0, connect=5.0)


def _answer(response: httpx.Response) -> Any:
    """The body of a good answer; raises the problem of a bad one."""
    kind = response.headers.get("content-type", "")
    body = response.json() if "json" in kind else response.content
    if response.is_success:
        return body
    raise problem_of(response.status_code, body)


def _words(call: Call) -> dict[str, Any]:
    words: dict[str, Any] = {"params": call.query, "headers": call.headers}
    if call.body is not None:
        words["json"] = call.body
    return words


class Client:
    """Calls a service and waits: `with Client("http://127.0.0.1:8000") as glossary: ...`."""

    def __init__(self, address: str, transport: httpx.BaseTransport | None = None, key: str = "") -> None:
        headers = {"Authorization": f"Bearer {key}"} if key else {}
        self._http = httpx.Client(base_url=address, transport=transport, timeout=TIMEOUT, headers=headers)

    def __enter__(self) -> Client:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Close its connections."""
        self._http.close()

    def send(self, call: Call) -> Any:
        """Send any call of `calls`."""
        return _answer(self._http.request(call.method, call.path, **_words(call)))

    def pulses(self) -> dict[str, Any]:
        """Every species."""
        return dict(self.send(calls.pulses()))

    def pulse(self, species: str) -> dict[str, Any]:
        """One species by Latin name, slug or synonym."""
        return dict(self.send(calls.pulse(species)))

    def languages(self) -> dict[str, Any]:
        """Every language with its coverage."""
        return dict(self.send(calls.languages()))

    def names(self, species: str, language: str | Sequence[str] = (), **parts: str) -> dict[str, Any]:
        """Names of a pulse; `parts` are market_class, form, colour, script."""
        return dict(self.send(calls.names(species, language, **parts)))

    def read(self, text: str, languages: Sequence[str] = (), place: str = "") -> dict[str, Any]:
        """The reading of one label."""
        found: dict[str, Any] = self.send(calls.readings(text, languages, place))["answers"][0][0]
        return found

    def read_many(
        self, texts: Sequence[str], languages: Sequence[str] = (), place: str = ""
    ) -> list[dict[str, Any]]:
        """The readings of many labels, in order."""
        return [one[0] for one in self.send(calls.readings(texts, languages, place))["answers"]]

    def guidance(self, species: str, **kitchen: Any) -> dict[str, Any]:
        """How to cook a pulse; `kitchen` are market_class, form, vessel, gauge_kpa, altitude_m, soak, texture ..."""
        return dict(self.send(calls.guidance(species, **kitchen)))

    def swaps(self, species: str, **kitchen: Any) -> dict[str, Any]:
        """What to use instead of a pulse in that kitchen."""
        return dict(self.send(calls.swaps(species, **kitchen)))

    def recipe(self, text: str, target: str = "", **kitchen: Any) -> dict[str, Any]:
        """A recipe with another pulse in it, or for another kitchen."""
        return dict(self.send(calls.recipe(text, target, **kitchen)))

    def chat(self, text: str, state: dict[str, Any] | None = None, language: str = "") -> dict[str, Any]:
        """One turn of a conversation; send the `state` it gives with the next one."""
        return dict(self.send(calls.chat(text, state, language)))

    def printed(self, noun: str, body: dict[str, Any], media: str = "application/pdf") -> bytes:
        """Menus, charts or cards in a media type: PDF, HTML, Markdown, CSV, a workbook, PNG."""
        found = self.send(calls.printed(noun, body, media))
        return found if isinstance(found, bytes) else str(found).encode()

    def remember_pack(self, gtin: str, pulse: str, label: str = "") -> dict[str, Any]:
        """Remember what a pack holds."""
        return dict(self.send(calls.remember_pack(gtin, pulse, label)))

    def recall_pack(self, gtin: str) -> dict[str, Any]:
        """What a remembered pack holds."""
        return dict(self.send(calls.recall_pack(gtin)))

    def post(self, noun: str, **body: Any) -> Any:
        """Any other noun of the contract: guidance, swaps, recipes, menus, chat-turns ..."""
        return self.send(calls.any_post(noun, body))


class AsyncClient:
    """The same calls, awaited."""

    def __init__(
        self, address: str, transport: httpx.AsyncBaseTransport | None = None, key: str = ""
    ) -> None:
        headers = {"Authorization": f"Bearer {key}"} if key else {}
        self._http = httpx.AsyncClient(
            base_url=address, transport=transport, timeout=TIMEOUT, headers=headers
        )

    async def __aenter__(self) -> AsyncClient:
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        await self.close()

    async def close(self) -> None:
        """Close its connections."""
        await self._http.aclose()

    async def send(self, call: Call) -> Any:
        """Send any call of `calls`."""
        return _answer(await self._http.request(call.method, call.path, **_words(call)))

    async def pulses(self) -> dict[str, Any]:
        """Every species."""
        return dict(await self.send(calls.pulses()))

    async def pulse(self, species: str) -> dict[str, Any]:
        """One species by Latin name, slug or synonym."""
        return dict(await self.send(calls.pulse(species)))

    async def languages(self) -> dict[str, Any]:
        """Every language with its coverage."""
        return dict(await self.send(calls.languages()))

    async def names(self, species: str, language: str | Sequence[str] = (), **parts: str) -> dict[str, Any]:
        """Names of a pulse; `parts` are market_class, form, colour, script."""
        return dict(await self.send(calls.names(species, language, **parts)))

    async def read(self, text: str, languages: Sequence[str] = (), place: str = "") -> dict[str, Any]:
        """The reading of one label."""
        answer = await self.send(calls.readings(text, languages, place))
        found: dict[str, Any] = answer["answers"][0][0]
        return found

    async def read_many(
        self, texts: Sequence[str], languages: Sequence[str] = (), place: str = ""
    ) -> list[dict[str, Any]]:
        """The readings of many labels, in order."""
        answer = await self.send(calls.readings(texts, languages, place))
        return [one[0] for one in answer["answers"]]

    async def guidance(self, species: str, **kitchen: Any) -> dict[str, Any]:
        """How to cook a pulse; `kitchen` are market_class, form, vessel, gauge_kpa, altitude_m, soak, texture ..."""
        return dict(await self.send(calls.guidance(species, **kitchen)))

    async def swaps(self, species: str, **kitchen: Any) -> dict[str, Any]:
        """What to use instead of a pulse in that kitchen."""
        return dict(await self.send(calls.swaps(species, **kitchen)))

    async def recipe(self, text: str, target: str = "", **kitchen: Any) -> dict[str, Any]:
        """A recipe with another pulse in it, or for another kitchen."""
        return dict(await self.send(calls.recipe(text, target, **kitchen)))

    async def chat(
        self, text: str, state: dict[str, Any] | None = None, language: str = ""
    ) -> dict[str, Any]:
        """One turn of a conversation; send the `state` it gives with the next one."""
        return dict(await self.send(calls.chat(text, state, language)))

    async def printed(self, noun: str, body: dict[str, Any], media: str = "application/pdf") -> bytes:
        """Menus, charts or cards in a media type: PDF, HTML, Markdown, CSV, a workbook, PNG."""
        found = await self.send(calls.printed(noun, body, media))
        return found if isinstance(found, bytes) else str(found).encode()

    async def remember_pack(self, gtin: str, pulse: str, label: str = "") -> dict[str, Any]:
        """Remember what a pack holds."""
        return dict(await self.send(calls.remember_pack(gtin, pulse, label)))

    async def recall_pack(self, gtin: str) -> dict[str, Any]:
        """What a remembered pack holds."""
        return dict(await self.send(calls.recall_pack(gtin)))

    async def post(self, noun: str, **body: Any) -> Any:
        """Any other noun of the contract."""
        return await self.send(calls.any_post(noun, body))
