"""The application, from settings and a glossary."""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Any

from fastapi import FastAPI
from fastapi.middleware.cors import CORSMiddleware
from fastapi.openapi.utils import get_openapi
from fastapi.routing import APIRoute

from ..glossary.model import Glossary
from ..store import repository
from . import shapes
from .dependencies import Shelf
from .guard import Guard
from .limits import limit
from .metrics import Metrics
from .problems import add_handlers
from .routes import (
    chat,
    grains,
    health,
    kitchen,
    packs,
    pages,
    paper,
    photos,
    pots,
    readings,
    recipes,
    suggestions,
)
from .routes import glossary as glossary_routes
from .settings import Settings
from .traces import trace
from .watch import Watch, refresh

PROBLEMS: dict[int | str, dict[str, Any]] = {
    code: {"model": shapes.Problem, "description": "problem"}
    for code in (400, 403, 404, 409, 413, 422, 429, 501, 503)
}
# The route most asked for stands first: they are tried in this order.
ROUTES = (readings, glossary_routes, chat, grains, kitchen, pots, recipes, paper, photos, suggestions, packs)


def create_app(settings: Settings, glossary: Glossary, files: dict[str, bytes] | None = None) -> FastAPI:
    """A FastAPI application over this glossary; its database is brought to today's shape.

    `files` are the glossary's files: with them, accepted suggestions are laid over it.
    """
    app = FastAPI(
        title="pulse-glossary",
        version="1",
        summary="Reads labels of dried pulses, names them, says how to cook them.",
        generate_unique_id_function=_operation,
        lifespan=_lifespan,
    )
    app.state.settings = settings
    app.state.shelf = Shelf.of(glossary, files)
    app.state.engine = repository.engine(settings.database)
    app.state.limit = limit(settings.rate, settings.redis)
    app.state.seen_signatures = OrderedDict()
    app.state.metrics = Metrics() if settings.metrics else None
    add_handlers(app)
    for routes in ROUTES:
        app.include_router(routes.router, prefix="/v1", responses=PROBLEMS)
    app.include_router(health.router)
    app.include_router(pages.router)
    origins = [one.strip() for one in settings.origins.split(",") if one.strip()]
    if origins:
        app.add_middleware(
            CORSMiddleware,
            allow_origins=origins,
            allow_methods=["GET", "POST"],
            allow_headers=["content-type"],
        )
    app.add_middleware(Guard, host=app)
    app.state.traces = trace(app, settings.traces) if settings.traces else None
    app.openapi = lambda: _described(app)  # type: ignore[method-assign]
    return app


def _described(app: FastAPI) -> dict[str, Any]:
    """The OpenAPI document, with problems in the media type they are sent in (RFC 9457)."""
    if app.openapi_schema is None:
        found = get_openapi(title=app.title, version=app.version, summary=app.summary, routes=app.routes)
        for path in found["paths"].values():
            for operation in path.values():
                for code, answer in operation.get("responses", {}).items():
                    content = answer.get("content", {})
                    if code >= "400" and "application/json" in content:
                        answer["content"] = {
                            "application/problem+json": {"schema": {"$ref": "#/components/schemas/Problem"}}
                        }
        app.openapi_schema = found
    return app.openapi_schema


@asynccontextmanager
async def _lifespan(app: FastAPI) -> AsyncIterator[None]:
    """Watch the overlay while serving; close the database after the last answer."""
    watch = Watch(app) if app.state.shelf.files else None
    if watch:
        refresh(app)
        watch.start()
    # Likenesses and coverage take a moment to arrange; nobody should wait for them.
    threading.Thread(target=app.state.shelf.warm, name="warm", daemon=True).start()
    yield
    if watch:
        watch.stop()
    app.state.engine.dispose()
    if app.state.traces:
        app.state.traces.shutdown()


def _operation(route: APIRoute) -> str:
    return route.name
