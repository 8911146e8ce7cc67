"""What is worked out from a glossary once and lives exactly as long as it does."""

from __future__ import annotations

from collections.abc import Callable
from functools import wraps
from typing import Any, Concatenate, ParamSpec, TypeVar

from .model import Glossary

Words = ParamSpec("Words")
Found = TypeVar("Found")


def kept(
    make: Callable[Concatenate[Glossary, Words], Found],
) -> Callable[Concatenate[Glossary, Words], Found]:
    """A function of a glossary and hashable words whose answers are kept on the glossary itself.

    A cache beside the function would keep every glossary that was ever in force.
    """

    @wraps(make)
    def found(glossary: Glossary, /, *words: Words.args, **named: Words.kwargs) -> Found:
        held: dict[Any, Any] = glossary.__dict__.setdefault("_kept", {})
        key = (make, words, tuple(named.items()))
        if key not in held:
            held[key] = make(glossary, *words, **named)
        answer: Found = held[key]
        return answer

    return found
