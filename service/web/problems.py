"""Errors in, RFC 9457 problem documents out; never a traceback."""

from __future__ import annotations

import logging
from typing import Any

from fastapi import FastAPI, Request
from fastapi.encoders import jsonable_encoder
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from sqlalchemy.exc import OperationalError
from starlette.exceptions import HTTPException

from ..errors import PulseError, TooMany

log = logging.getLogger("pulse_glossary")
MEDIA = "application/problem+json"
TYPES = "urn:pulse-glossary:problem:"


def problem(
    status: int,
    title: str,
    detail: str,
    kind: str = "about:blank",
    headers: dict[str, str] | None = None,
    facts: dict[str, Any] | None = None,
) -> JSONResponse:
    """One problem document (RFC 9457); `facts` are its extension members."""
    body = {**(facts or {}), "type": kind, "title": title, "status": status, "detail": detail}
    return JSONResponse(jsonable_encoder(body), status, headers, MEDIA)


async def on_pulse_error(request: Request, error: Exception) -> JSONResponse:
    """Our own errors carry their status, title and facts."""
    del request
    assert isinstance(error, PulseError)
    facts = error.facts() if error.status < 500 or error.status == 501 else {}
    detail = str(error) if error.status < 500 or error.status == 501 else error.title
    headers = {"Retry-After": str(error.retry_after)} if isinstance(error, TooMany) else None
    return problem(error.status, error.title, detail, TYPES + type(error).__name__, headers, facts)


async def on_validation_error(request: Request, error: Exception) -> JSONResponse:
    """What does not fit a shape, field by field, without echoing what was sent."""
    del request
    assert isinstance(error, RequestValidationError)
    faults = [{"field": ".".join(map(str, one["loc"])), "why": one["msg"]} for one in error.errors()[:20]]
    detail = "; ".join(f"{one['field']}: {one['why']}" for one in faults)
    return problem(
        422, "The request cannot be used as it is", detail, TYPES + "BadInput", facts={"faults": faults}
    )


async def on_http_error(request: Request, error: Exception) -> JSONResponse:
    """What the framework refuses: no such path, no such method."""
    del request
    assert isinstance(error, HTTPException)
    headers = dict(error.headers) if error.headers else None
    return problem(error.status_code, str(error.detail), str(error.detail), headers=headers)


async def on_store_error(request: Request, error: Exception) -> JSONResponse:
    """The database cannot be reached or written: not the caller's fault, and worth another try."""
    log.error("the store failed on %s: %s", request.url.path, type(error).__name__, exc_info=error)
    return problem(
        503,
        "The store cannot be used just now",
        "Nothing was changed. Send the same request again, with the same idempotency key.",
        TYPES + "StoreDown",
        {"Retry-After": "2"},
    )


async def on_any_error(request: Request, error: Exception) -> JSONResponse:
    """The unforeseen: logged with its trace, told without it."""
    log.error("unforeseen error on %s", request.url.path, exc_info=error)
    return problem(500, "Something went wrong", "The server could not answer; nothing was changed.")


def add_handlers(app: FastAPI) -> None:
    """One table from error classes to handlers."""
    app.add_exception_handler(PulseError, on_pulse_error)
    app.add_exception_handler(RequestValidationError, on_validation_error)
    app.add_exception_handler(HTTPException, on_http_error)
    app.add_exception_handler(OperationalError, on_store_error)
    app.add_exception_handler(Exception, on_any_error)
