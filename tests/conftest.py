"""What many tests share: the glossary as it stands, read once, and the service without a network."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import anyio
import httpx
import pytest

from service.glossary.model import Glossary
from service.label import Reader
from service.store import files
from service.web import Settings, create_app


@pytest.fixture(scope="session")
def glossary() -> Glossary:
    """The real glossary; read-only."""
    return files.load()


@pytest.fixture(scope="session")
def reader(glossary: Glossary) -> Reader:
    """A reader over the real glossary."""
    return Reader(glossary)


class Api:
    """The application called in the same process, one request at a time."""

    def __init__(self, app: Any) -> None:
        self.app = app

    def __call__(self, method: str, path: str, **words: Any) -> httpx.Response:
        async def call() -> httpx.Response:
            transport = httpx.ASGITransport(app=self.app, raise_app_exceptions=False)
            async with httpx.AsyncClient(transport=transport, base_url="http://test") as client:
                return await client.request(method, path, **words)

        return anyio.run(call)

    def get(self, path: str, **words: Any) -> httpx.Response:
        """GET."""
        return self("GET", path, **words)

    def post(self, path: str, **words: Any) -> httpx.Response:
        """POST."""
        return self("POST", path, **words)

    def put(self, path: str, **words: Any) -> httpx.Response:
        """PUT."""
        return self("PUT", path, **words)


@pytest.fixture(scope="session")
def api(glossary: Glossary) -> Iterator[Api]:
    """The service over an in-memory database, without a rate limit."""
    app = create_app(Settings(database="sqlite://", rate=0), glossary)
    yield Api(app)
    app.state.engine.dispose()
