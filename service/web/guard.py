"""What every request passes: size limit, request id, strict headers, edition as ETag."""

from __future__ import annotations

import asyncio
import logging
import time
import uuid
from collections.abc import Awaitable, Callable, MutableMapping
from typing import Any

from fastapi import FastAPI
from starlette.responses import Response

from ..errors import TooMany
from .problems import problem

log = logging.getLogger("pulse_glossary")

Scope = MutableMapping[str, Any]
Receive = Callable[[], Awaitable[MutableMapping[str, Any]]]
Send = Callable[[MutableMapping[str, Any]], Awaitable[None]]

HEADERS: tuple[tuple[bytes, bytes], ...] = (
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"x-frame-options", b"DENY"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"permissions-policy", b"camera=(self), geolocation=(), microphone=()"),
    (
        b"content-security-policy",
        (
            b"default-src 'self'; img-src 'self' data: blob:; style-src 'self'; script-src 'self'; "
            b"object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
        ),
    ),
)
# Where an answer depends on the glossary alone, its edition says whether it is still good.
EDITIONED = ("/v1/pulses", "/v1/languages", "/v1/names", "/v1/glossary")
UNLIMITED = ("/healthz", "/readyz", "/metrics", "/page/", "/worker.js")


class Guard:
    """ASGI wrapper; cheap enough for the hot path."""

    def __init__(self, app: Any, host: FastAPI) -> None:
        self.app = app
        self.host = host

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass the request through, or answer it here where it may not pass."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = dict(scope["headers"])
        began = time.perf_counter()
        dressed = _Dressed(send, _request_id(headers), self._etag(scope))
        most = self._most(scope)
        refusal = await self._refusal(scope, headers, most, dressed.etag)
        if refusal is not None:
            await refusal(scope, receive, dressed)
        else:
            await self._timed(scope, _counted(receive, most), dressed)
        self._count(scope, dressed.status, time.perf_counter() - began)

    async def _timed(self, scope: Scope, receive: Receive, dressed: _Dressed) -> None:
        try:
            async with asyncio.timeout(self.host.state.settings.slowest_request):
                await self.app(scope, receive, dressed)
        except TimeoutError:
            if dressed.status:
                raise
            answer = problem(
                503, "Too slow", "The answer took too long and was given up; nothing was changed."
            )
            await answer(scope, receive, dressed)

    def _most(self, scope: Scope) -> int:
        settings = self.host.state.settings
        return int(settings.largest_photo if "photo" in scope["path"] else settings.largest_body)

    async def _refusal(
        self, scope: Scope, headers: dict[bytes, bytes], most: int, etag: bytes
    ) -> Response | None:
        """The answer to a request that may not pass, or None."""
        length = headers.get(b"content-length", b"0")
        if not length.isdigit() or int(length) > most:
            return problem(413, "The request is too large", f"at most {most} bytes")
        limit = self.host.state.limit
        if limit is not None and not scope["path"].startswith(UNLIMITED):
            wait = await limit.wait(_caller(scope, headers))
            if wait:
                error = TooMany(wait)
                facts, retry = error.facts(), {"Retry-After": str(wait)}
                return problem(
                    429, error.title, str(error), "urn:pulse-glossary:problem:TooMany", retry, facts
                )
        if etag and etag in headers.get(b"if-none-match", b""):
            return Response(status_code=304)
        return None

    def _etag(self, scope: Scope) -> bytes:
        if scope["method"] not in ("GET", "HEAD") or not scope["path"].startswith(EDITIONED):
            return b""
        edition: str = self.host.state.shelf.glossary.edition
        return b'"' + edition.encode() + b'"'

    def _count(self, scope: Scope, status: int, seconds: float) -> None:
        metrics = self.host.state.metrics
        if metrics is not None:
            route = getattr(scope.get("route"), "path", "") or "other"
            metrics.requests.labels(route, scope["method"], str(status)).inc()
            metrics.seconds.labels(route).observe(seconds)
        if status >= 500 or log.isEnabledFor(logging.DEBUG):
            log.warning("%s %s %d %.1f ms", scope["method"], scope["path"], status, seconds * 1000)


class _Dressed:
    """A `send` that adds our headers to the start of the answer, and remembers its status."""

    def __init__(self, send: Send, name: bytes, etag: bytes) -> None:
        self.send = send
        self.name = name
        self.etag = etag
        self.status = 0

    async def __call__(self, message: MutableMapping[str, Any]) -> None:
        if message["type"] == "http.response.start":
            self.status = message["status"]
            extra = [(b"x-request-id", self.name), *HEADERS]
            if self.etag and self.status in (200, 304):
                extra += [
                    (b"etag", self.etag),
                    (b"cache-control", b"public, max-age=300"),
                    (b"vary", b"accept-language, accept"),
                ]
            message["headers"] = [*message["headers"], *extra]
        await self.send(message)


def _request_id(headers: dict[bytes, bytes]) -> bytes:
    asked = headers.get(b"x-request-id", b"")
    return asked if 0 < len(asked) <= 64 and asked.replace(b"-", b"").isalnum() else uuid.uuid4().hex.encode()


def _caller(scope: Scope, headers: dict[bytes, bytes]) -> str:
    """The key where there is one, else the address."""
    key = headers.get(b"authorization", b"")
    return key.decode("latin-1") if key else str((scope.get("client") or ("unknown", 0))[0])


def _counted(receive: Receive, most: int) -> Receive:
    """A body sent in pieces, without a length, is held to the same limit."""
    total = 0

    async def counted() -> MutableMapping[str, Any]:
        nonlocal total
        message = await receive()
        total += len(message.get("body", b""))
        if total > most:
            return {"type": "http.disconnect"}
        return message

    return counted
