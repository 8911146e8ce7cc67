"""Alive, ready."""

from __future__ import annotations

from fastapi import APIRouter
from sqlalchemy import text

from ..dependencies import SessionDep, ShelfDep

router = APIRouter(tags=["operations"])


@router.get("/healthz")
async def alive() -> dict[str, str]:
    """The process answers."""
    return {"status": "alive"}


@router.get("/readyz")
def ready(shelf: ShelfDep, session: SessionDep) -> dict[str, str]:
    """The glossary is loaded and the database answers."""
    session.connection().execute(text("select 1"))
    return {"status": "ready", "edition": shelf.glossary.edition}
