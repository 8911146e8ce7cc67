"""What every request passes: size limit, request id, strict headers, edition as ETag."""

from __future__ import annotations

import uuid
from collections.abc import Awaitable, Callable, MutableMapping
from typing import Any

from fastapi import FastAPI

from .problems import problem

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
EDITIONED = ("/v1/pulses", "/v1/languages", "/v1/names", "/v1/glossary", "/v1/charts")


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
        settings = self.host.state.settings
        most = (
            settings.largest_photo
            if "photo" in scope["path"] or "grain" in scope["path"]
            else settings.largest_body
        )
        length = headers.get(b"content-length", b"0")
        if not length.isdigit() or int(length) > most:
            await problem(413, "The request is too large", f"at most {most} bytes")(scope, receive, send)
            return
        etag = b""
        if scope["method"] in ("GET", "HEAD") and scope["path"].startswith(EDITIONED):
            etag = b'"' + self.host.state.shelf.glossary.edition.encode() + b'"'
            if etag in headers.get(b"if-none-match", b""):
                await send(
                    {"type": "http.response.start", "status": 304, "headers": [(b"etag", etag), *HEADERS]}
                )
                await send({"type": "http.response.body", "body": b""})
                return
        await self.app(
            scope, _counted(receive, most), self._dressed(send, etag, headers.get(b"x-request-id", b""))
        )

    def _dressed(self, send: Send, etag: bytes, asked: bytes) -> Send:
        name = (
            asked
            if 0 < len(asked) <= 64 and asked.replace(b"-", b"").isalnum()
            else uuid.uuid4().hex.encode()
        )

        async def dressed(message: MutableMapping[str, Any]) -> None:
            if message["type"] == "http.response.start":
                extra = [(b"x-request-id", name), *HEADERS]
                if etag and message["status"] == 200:
                    extra += [
                        (b"etag", etag),
                        (b"cache-control", b"public, max-age=300"),
                        (b"vary", b"accept-language, accept"),
                    ]
                message["headers"] = [*message["headers"], *extra]
            await send(message)

        return dressed


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
