"""Typed client of a pulse-glossary service: `Client` waits, `AsyncClient` awaits, problems are exceptions."""

from .client import AsyncClient, Client
from .errors import (
    BadInput,
    Conflict,
    Missing,
    NotAllowed,
    Problem,
    TooLarge,
    TooMany,
    Unknown,
    Unsafe,
)

__all__ = [
    "AsyncClient",
    "BadInput",
    "Client",
    "Conflict",
    "Missing",
    "NotAllowed",
    "Problem",
    "TooLarge",
    "TooMany",
    "Unknown",
    "Unsafe",
]
