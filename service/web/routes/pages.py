"""The page and its sources; the words of the page by language."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from fastapi import APIRouter
from fastapi.responses import FileResponse, Response

from ...errors import Unknown
from ...talk.tongue import ANSWERS
from ...talk.tongue import PAGE as WORDS
from ..tongues import catalogues, own_name, tongue

router = APIRouter(include_in_schema=False)
PAGE = Path(__file__).resolve().parents[3] / "clients" / "page"
TYPES = {
    ".js": "text/javascript",
    ".css": "text/css",
    ".svg": "image/svg+xml",
    ".html": "text/html",
    ".webmanifest": "application/manifest+json",
    ".json": "application/json",
}
KEPT = {"cache-control": "no-cache"}


@router.get("/")
async def page() -> Response:
    """The page."""
    return _file("index.html")


@router.get("/review")
async def review() -> Response:
    """The reviewers' page; it shows nothing without a key."""
    return _file("review.html")


@router.get("/worker.js")
async def worker() -> Response:
    """The service worker; it stands at the root so that it may keep everything."""
    return _file("worker.js")


@router.get("/page/say/{name}")
async def said(name: str) -> dict[str, Any]:
    """Words of the page in one language (`hi.json`), or the languages it speaks (`list.json`)."""
    tag = name.removesuffix(".json")
    known = catalogues()
    if tag == "list":
        return {"languages": [{"tag": one, "name": own_name(one)} for one in known]}
    if tag not in known:
        raise Unknown("language of the page", tag)
    speaks = tongue(tag)
    words = {key: speaks.say(text) for key, text in WORDS.items()}
    return {"words": words | {f"text_{text}": speaks.say(text) for text in ANSWERS}}


@router.get("/page/{name}")
async def source(name: str) -> Response:
    """One source of the page."""
    return _file(name)


def _file(name: str) -> Response:
    path = (PAGE / name).resolve()
    if path.parent != PAGE or path.suffix not in TYPES or not path.is_file():
        raise Unknown("page", name)
    return FileResponse(path, media_type=TYPES[path.suffix], headers=KEPT)


def listed() -> list[dict[str, Any]]:
    """Names of the page's sources, for tests of its weight."""
    return [
        {"name": path.name, "bytes": path.stat().st_size}
        for path in sorted(PAGE.iterdir())
        if path.suffix in TYPES
    ]
