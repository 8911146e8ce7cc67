"""What handlers need, as annotated aliases so that they read like sentences."""

from __future__ import annotations

import gc
from collections import OrderedDict
from collections.abc import Hashable, Iterator
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


class Lately:
    """Answers given lately, the oldest forgotten first; in memory only, and none to a long question."""

    most = 4096
    longest = 400

    def __init__(self) -> None:
        self._held: OrderedDict[Hashable, Any] = OrderedDict()

    def get(self, key: Hashable) -> Any:
        """The answer, which is the newest now; None where it was not given or is forgotten."""
        found = self._held.get(key)
        if found is not None:
            self._held.move_to_end(key)
        return found

    def put(self, key: Hashable, answer: Any, size: int) -> None:
        """Keep the answer to a question of `size` characters."""
        if size > self.longest:
            return
        self._held[key] = answer
        if len(self._held) > self.most:
            self._held.popitem(last=False)


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
    answers: Lately = field(default_factory=Lately)

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
        # What an earlier shelf left behind is looked at once more, then all that lives is left alone.
        gc.unfreeze()
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
