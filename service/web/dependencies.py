"""What handlers need, as annotated aliases so that they read like sentences."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Annotated, Any

from fastapi import Depends, Request
from sqlalchemy import Engine
from sqlmodel import Session

from ..glossary.gaps import Coverage, gaps
from ..glossary.model import Glossary
from ..label import Reader
from ..naming import has_name
from .settings import Settings


@dataclass(slots=True)
class Shelf:
    """The glossary in force with everything prepared from it; replaced as a whole by a newer one.

    `files` are those of the folder, without the overlay; `version` numbers the overlay that is in.
    """

    glossary: Glossary
    reader: Reader
    files: dict[str, bytes]
    version: int = 0
    kept: dict[str, Any] = field(default_factory=dict)

    @staticmethod
    def of(glossary: Glossary, files: dict[str, bytes] | None = None, version: int = 0) -> Shelf:
        """Prepared from a glossary."""
        return Shelf(glossary, Reader(glossary), files or {}, version)

    def warm(self) -> None:
        """Work out what the first visitors would wait for, and keep the collector from going over all of it again.

        Half a million values live as long as the shelf: a full collection would stop every answer for a tenth of a second.
        """
        self.reader.finder.warm()
        self.coverage()
        gc.collect()
        gc.freeze()

    def coverage(self) -> tuple[Coverage, ...]:
        """Coverage of the languages, worked out once."""
        if "coverage" not in self.kept:
            self.kept["coverage"] = gaps(
                self.glossary, lambda pulse, lang: has_name(self.glossary, pulse, lang)
            )
        found: tuple[Coverage, ...] = self.kept["coverage"]
        return found


async def shelf(request: Request) -> Shelf:
    """The glossary in force."""
    found: Shelf = request.app.state.shelf
    return found


async def config(request: Request) -> Settings:
    """The settings in force."""
    found: Settings = request.app.state.settings
    return found


def session(request: Request) -> Iterator[Session]:
    """One database session; what was not committed is undone."""
    engine: Engine = request.app.state.engine
    with Session(engine) as one:
        yield one


ShelfDep = Annotated[Shelf, Depends(shelf)]
SettingsDep = Annotated[Settings, Depends(config)]
SessionDep = Annotated[Session, Depends(session)]
