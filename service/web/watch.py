"""Learns that the overlay changed (LISTEN on PostgreSQL, a look every second elsewhere) and lays it on anew."""

from __future__ import annotations

import logging
import threading

from fastapi import FastAPI
from sqlalchemy import Engine
from sqlalchemy.exc import SQLAlchemyError
from sqlmodel import Session

from ..errors import GlossaryFault
from ..glossary.build import build
from ..glossary.overlay import overlaid
from ..store import repository
from .dependencies import Shelf

log = logging.getLogger("pulse_glossary")
EVERY = 1.0


def refresh(app: FastAPI) -> bool:
    """Bring the shelf up to the overlay's version; True where it changed. A faulty overlay changes nothing."""
    shelf: Shelf = app.state.shelf
    with Session(app.state.engine) as session:
        number = repository.version(session)
        if number == shelf.version:
            return False
        rows = repository.accepted_rows(session)
    try:
        glossary = build(overlaid(shelf.files, rows))
    except GlossaryFault as fault:
        log.error("the overlay has faults and is left off: %s", fault)
        shelf.version = number
        return False
    app.state.shelf = Shelf.of(glossary, shelf.files, number)
    app.state.shelf.warm()
    return True


class Watch:
    """A thread that waits for news of the overlay until it is stopped."""

    def __init__(self, app: FastAPI) -> None:
        self.app = app
        self.stopping = threading.Event()
        self.thread = threading.Thread(target=self._run, name="overlay-watch", daemon=True)

    def start(self) -> None:
        """Begin to watch."""
        self.thread.start()

    def stop(self) -> None:
        """Stop, and wait until it has."""
        self.stopping.set()
        self.thread.join(timeout=5)

    def _run(self) -> None:
        engine: Engine = self.app.state.engine
        while not self.stopping.is_set():
            try:
                if engine.dialect.name == "postgresql":
                    self._listen(engine)
                else:
                    self.stopping.wait(EVERY)
                    refresh(self.app)
            except (SQLAlchemyError, OSError) as error:
                log.warning("the overlay cannot be watched just now: %s", type(error).__name__)
                self.stopping.wait(EVERY)
            except Exception:
                log.exception("watching the overlay failed; trying again")
                self.stopping.wait(EVERY)

    def _listen(self, engine: Engine) -> None:
        """Wait on the channel, and look once a second too: a notice sent while we were away is lost."""
        raw = engine.raw_connection()
        try:
            connection = raw.driver_connection
            assert connection is not None
            connection.rollback()
            connection.autocommit = True
            connection.execute(f"LISTEN {repository.CHANNEL}")
            while not self.stopping.is_set():
                for _ in connection.notifies(timeout=EVERY, stop_after=1):
                    pass
                refresh(self.app)
        finally:
            raw.invalidate()
