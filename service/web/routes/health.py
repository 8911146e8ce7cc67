"""Alive, ready."""

from __future__ import annotations

from fastapi import APIRouter, Request, Response
from sqlalchemy import text

from ...errors import Unknown
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


@router.get("/metrics", response_class=Response, responses={200: {"content": {"text/plain": {}}}})
async def metrics(request: Request) -> Response:
    """Counts in Prometheus's text format."""
    kept = request.app.state.metrics
    if kept is None:
        raise Unknown("page", "metrics")
    return Response(kept.text(), media_type="text/plain; version=0.0.4")
