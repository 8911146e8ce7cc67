"""The two clients: the same calls, waited for or awaited."""

from __future__ import annotations

import json
from collections.abc import AsyncIterator, Iterator, Sequence
from types import TracebackType
from typing import Any

import httpx

from . import calls
from .calls import Call
from .errors import problem_of

TIMEOUT = httpx.Timeout(20.0, connect=5.0)


def _answer(response: httpx.Response) -> Any:
    """The body of a good answer; raises the problem of a bad one."""
    kind = response.headers.get("content-type", "").partition(";")[0]
    body = response.json() if kind.endswith("json") else response.content
    if response.is_success:
        return body
    raise problem_of(response.status_code, body)


def _words(call: Call) -> dict[str, Any]:
    words: dict[str, Any] = {"params": call.query, "headers": call.headers}
    if call.files:
        words |= {"files": call.files, "data": call.form}
    elif call.body is not None:
        words["json"] = call.body
    return words


def _headers(key: str) -> dict[str, str]:
    return {"Authorization": f"Bearer {key}"} if key else {}


class _Calls:
    """What both clients can be asked. An answer is what the service documents; `AsyncClient` gives it when awaited."""

    def send(self, call: Call) -> Any:
        """Send any call of `calls`."""
        raise NotImplementedError

    def pulses(self) -> Any:
        """Every species."""
        return self.send(calls.pulses())

    def pulse(self, species: str) -> Any:
        """One species by Latin name, slug or synonym."""
        return self.send(calls.pulse(species))

    def drawing(self, species: str, **words: Any) -> Any:
        """Its grains at true size as SVG; `words` are market_class, form, colour, count, scale."""
        return self.send(calls.drawing(species, **words))

    def languages(self) -> Any:
        """Every language with its coverage."""
        return self.send(calls.languages())

    def glossary(self, format: str = "json") -> Any:
        """The whole glossary: json, csv, skos or tbx."""
        return self.send(calls.glossary(format))

    def names(self, species: str, language: str | Sequence[str] = (), **parts: str) -> Any:
        """Names of a pulse; `parts` are market_class, form, colour, script."""
        return self.send(calls.names(species, language, **parts))

    def read(self, text: str, languages: Sequence[str] = (), place: str = "") -> Any:
        """The reading of one label."""
        return self.send(calls.reading(text, languages, place))

    def read_many(
        self, texts: Sequence[str], languages: Sequence[str] = (), place: str = "", each: bool = False
    ) -> Any:
        """The readings of many labels, in order; with `each` a list for each label, one for each product in it."""
        return self.send(calls.readings(texts, languages, place, each))

    def read_photo(self, photo: bytes, scripts: Sequence[str] = (), place: str = "") -> Any:
        """The words on a photographed pack, and their reading; `scripts` are ISO 15924 codes."""
        return self.send(calls.photo_reading(photo, scripts, place))

    def identify(self, **traits: Any) -> Any:
        """Loose grains by what is seen of them, and what to look at next."""
        return self.send(calls.grain_reading(**traits))

    def grain_photo(self, photo: bytes, coin_mm: float | None = None) -> Any:
        """Loose grains measured in a photo beside a coin of that diameter, or beside a ruler."""
        return self.send(calls.grain_photo(photo, coin_mm))

    def guidance(self, species: str, **kitchen: Any) -> Any:
        """How to cook a pulse; `kitchen` are market_class, form, vessel, gauge_kpa, altitude_m, soak, texture ..."""
        return self.send(calls.guidance(species, **kitchen))

    def swaps(self, species: str, **kitchen: Any) -> Any:
        """What to use instead of a pulse in that kitchen."""
        return self.send(calls.swaps(species, **kitchen))

    def pot(self, members: dict[str, float], **kitchen: Any) -> Any:
        """Several pulses in one pot, keys and grams: what to soak, what goes in when, or why apart."""
        return self.send(calls.pot(members, **kitchen))

    def schedule(
        self, species: str, ready: str, zone: str = "", media: str = "application/json", **kitchen: Any
    ) -> Any:
        """When each step starts for a meal at `ready`; `text/calendar` gives iCalendar as bytes."""
        return self.send(calls.schedule(species, ready, zone, media, **kitchen))

    def recipe(self, text: str, target: str = "", **kitchen: Any) -> Any:
        """A recipe with another pulse in it, or for another kitchen."""
        return self.send(calls.recipe(text, target, **kitchen))

    def chat(self, text: str, state: dict[str, Any] | None = None, language: str = "") -> Any:
        """One turn of a conversation; send the `state` it gives with the next one."""
        return self.send(calls.chat(text, state, language))

    def printed(self, noun: str, body: dict[str, Any], media: str = "application/pdf") -> Any:
        """`menus`, `charts` or `cards` as bytes of a media type: PDF, HTML, Markdown, CSV, a workbook, PNG."""
        return self.send(calls.printed(noun, body, media))

    def remember_pack(self, gtin: str, pulse: str, label: str = "") -> Any:
        """Remember what a pack holds."""
        return self.send(calls.remember_pack(gtin, pulse, label))

    def recall_pack(self, gtin: str) -> Any:
        """What a remembered pack holds."""
        return self.send(calls.recall_pack(gtin))

    def suggest(self, once: str = "", **suggestion: Any) -> Any:
        """Suggest a name, a correction or an unread label; `once` is an idempotency key."""
        return self.send(calls.suggest(once, **suggestion))

    def suggestions(self, status: str = "open", after: int = 0, most: int = 50) -> Any:
        """For reviewers: suggestions of a status, the oldest first."""
        return self.send(calls.suggestions(status, after, most))

    def decide(self, number: int, verdict: str, reason: str, once: str = "") -> Any:
        """For reviewers: accept or reject a suggestion with a reason."""
        return self.send(calls.decide(number, verdict, reason, once))

    def decisions(self, number: int) -> Any:
        """For reviewers: everything decided on a suggestion."""
        return self.send(calls.decisions(number))

    def accepted_diff(self) -> Any:
        """For reviewers: every accepted name as one unified diff of the glossary's files."""
        return self.send(calls.accepted_diff())

    def ready(self) -> Any:
        """Whether the service can answer."""
        return self.send(calls.ready())


class Client(_Calls):
    """Calls a service and waits: `with Client("http://127.0.0.1:8000") as glossary: ...`."""

    def __init__(self, address: str, transport: httpx.BaseTransport | None = None, key: str = "") -> None:
        self._http = httpx.Client(
            base_url=address, transport=transport, timeout=TIMEOUT, headers=_headers(key)
        )

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
        """Send any call of `calls`; raises its Problem where the service refuses."""
        return call.pick(_answer(self._http.request(call.method, call.path, **_words(call))))

    def atlas(self, languages: Sequence[str] = (), pulses: Sequence[str] = ()) -> Iterator[dict[str, Any]]:
        """The sheets of all languages one after another, as they are made: done, of, title, sheet."""
        call = calls.atlas(languages, pulses)
        with self._http.stream(call.method, call.path, **_words(call)) as response:
            if not response.is_success:
                response.read()
                _answer(response)
            yield from map(json.loads, response.iter_lines())


class AsyncClient(_Calls):
    """The same calls, awaited."""

    def __init__(
        self, address: str, transport: httpx.AsyncBaseTransport | None = None, key: str = ""
    ) -> None:
        self._http = httpx.AsyncClient(
            base_url=address, transport=transport, timeout=TIMEOUT, headers=_headers(key)
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
        """Send any call of `calls`; raises its Problem where the service refuses."""
        return call.pick(_answer(await self._http.request(call.method, call.path, **_words(call))))

    async def atlas(
        self, languages: Sequence[str] = (), pulses: Sequence[str] = ()
    ) -> AsyncIterator[dict[str, Any]]:
        """The sheets of all languages one after another, as they are made: done, of, title, sheet."""
        call = calls.atlas(languages, pulses)
        async with self._http.stream(call.method, call.path, **_words(call)) as response:
            if not response.is_success:
                await response.aread()
                _answer(response)
            async for line in response.aiter_lines():
                yield json.loads(line)
