"""The application, from settings and a glossary."""

from __future__ import annotations

from typing import Any

from fastapi import FastAPI
from fastapi.routing import APIRoute

from ..glossary.model import Glossary
from ..store import repository
from . import shapes
from .dependencies import Shelf
from .guard import Guard
from .problems import add_handlers
from .routes import glossary as glossary_routes
from .routes import grains, health, packs, pages, readings
from .settings import Settings

PROBLEMS: dict[int | str, dict[str, Any]] = {
    code: {"model": shapes.Problem, "description": "problem"} for code in (404, 422)
}


def create_app(settings: Settings, glossary: Glossary) -> FastAPI:
    """A FastAPI application over this glossary; its database is created where it is missing."""
    app = FastAPI(
        title="pulse-glossary",
        version="1",
        summary="Reads labels of dried pulses, names them, says how to cook them.",
        generate_unique_id_function=_operation,
    )
    app.state.settings = settings
    app.state.shelf = Shelf.of(glossary)
    app.state.engine = repository.engine(settings.database)
    add_handlers(app)
    app.include_router(health.router)
    app.include_router(pages.router)
    for routes in (glossary_routes, readings, grains, packs):
        app.include_router(routes.router, prefix="/v1", responses=PROBLEMS)
    app.add_middleware(Guard, host=app)
    return app


def _operation(route: APIRoute) -> str:
    return route.name
