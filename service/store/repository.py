"""Every read and write of people's data."""

from __future__ import annotations

import hashlib
import json
import secrets
from collections.abc import Callable, Sequence
from typing import Any

from sqlalchemy import Engine, event, func, text, update
from sqlalchemy.engine import make_url
from sqlalchemy.exc import ArgumentError, IntegrityError, NoSuchModuleError
from sqlalchemy.pool import StaticPool
from sqlmodel import Session, col, create_engine, select

from ..errors import BadInput, Conflict, NotAllowed, Unknown
from ..glossary.model import Row
from . import migrate
from .tables import Decision, Key, Pack, Receipt, Suggestion, Version, now

CHANNEL = "pulse_glossary_overlay"
SCOPES = ("review", "admin")


def engine(address: str) -> Engine:
    """An engine with its tables; SQLite keeps a write-ahead log so that readers never wait.

    Raises BadInput for what is no address of a database.
    """
    lite = address.startswith("sqlite")
    if address.startswith("postgresql://"):
        address = address.replace("postgresql://", "postgresql+psycopg://", 1)
    try:
        make_url(address).get_dialect()
    except (ArgumentError, NoSuchModuleError):
        why = "is no address of a database; write sqlite:///people.db or postgresql://host/name"
        raise BadInput("database", address, why) from None
    made = create_engine(
        address,
        connect_args={"check_same_thread": False, "timeout": 30} if lite else {},
        poolclass=StaticPool if address in ("sqlite://", "sqlite:///:memory:") else None,
        pool_pre_ping=not lite,
        hide_parameters=True,  # errors are logged, and people's texts are not
    )
    if lite:
        event.listen(made, "connect", _prepare)
    migrate.upgrade(made)
    with Session(made) as session:
        if session.get(Version, 1) is None:
            session.add(Version())
            _commit_or_leave(session)
    return made


def _prepare(connection: Any, record: object) -> None:
    del record
    cursor = connection.cursor()
    for line in ("journal_mode=WAL", "synchronous=NORMAL", "foreign_keys=ON", "busy_timeout=30000"):
        cursor.execute(f"PRAGMA {line}")
    cursor.close()


def _commit_or_leave(session: Session) -> bool:
    """Commit, or undo where another writer was first."""
    try:
        session.commit()
    except IntegrityError:
        session.rollback()
        return False
    return True


def gtin14(number: str) -> str:
    """A GTIN-8, -12, -13 or -14 as fourteen digits; raises BadInput where the check digit is wrong.

    GS1 General Specifications, section 7.9: weights 3 and 1 from the right.
    """
    if not number.isascii() or not number.isdigit() or len(number) not in (8, 12, 13, 14):
        raise BadInput("gtin", number, "must be 8, 12, 13 or 14 digits")
    digits = [int(one) for one in number.zfill(14)]
    total = sum(digit * (3 if place % 2 == 0 else 1) for place, digit in enumerate(digits[:-1]))
    if (10 - total % 10) % 10 != digits[-1]:
        raise BadInput("gtin", number, "has a wrong check digit; read it again")
    return number.zfill(14)


def remember_pack(session: Session, gtin: str, pulse: str, label: str) -> Pack:
    """Store what a pack holds; saying the same again changes nothing."""
    key = gtin14(gtin)
    one = session.get(Pack, key) or Pack(gtin=key, pulse=pulse)
    one.pulse, one.label, one.changed = pulse, label, now()
    session.add(one)
    session.commit()
    session.refresh(one)
    return one


def recall_pack(session: Session, gtin: str) -> Pack | None:
    """The remembered pack, or None."""
    return session.get(Pack, gtin14(gtin))


def suggest(session: Session, suggestion: Suggestion) -> Suggestion:
    """Keep a suggestion; the same one sent again counts up instead of standing twice."""
    suggestion.digest = digest_of(suggestion)
    for _ in range(3):
        known = session.exec(select(Suggestion).where(Suggestion.digest == suggestion.digest)).first()
        if known is not None:
            session.execute(
                update(Suggestion)
                .where(col(Suggestion.id) == known.id)
                .values(times=col(Suggestion.times) + 1)
            )
            session.commit()
            session.refresh(known)
            return known
        session.add(suggestion)
        if _commit_or_leave(session):
            session.refresh(suggestion)
            return suggestion
    raise Conflict("the same suggestion is being written by others; send it again")


def digest_of(suggestion: Suggestion) -> str:
    """What makes two suggestions the same."""
    parts = (
        suggestion.kind,
        suggestion.lang,
        suggestion.script,
        suggestion.row_kind,
        suggestion.ref,
        suggestion.agrees,
    )
    text_ = " ".join(suggestion.text.split()).casefold()
    return hashlib.sha256("\0".join((*parts, text_)).encode()).hexdigest()


def suggestions(
    session: Session, status: str = "open", after: int = 0, most: int = 50
) -> Sequence[Suggestion]:
    """Suggestions of a status, the oldest first, after an id."""
    asked = select(Suggestion).where(col(Suggestion.id) > after).order_by(col(Suggestion.id)).limit(most)
    return session.exec(asked.where(Suggestion.status == status) if status else asked).all()


def decide(session: Session, number: int, verdict: str, reason: str, reviewer: str) -> Suggestion:
    """Accept or reject an open suggestion; the history only grows. Raises Unknown, BadInput or Conflict."""
    if verdict not in ("accepted", "rejected"):
        raise BadInput("verdict", verdict, "must be accepted or rejected")
    if not reason.strip():
        raise BadInput("reason", reason, "is missing; say why")
    changed = session.execute(
        update(Suggestion)
        .where(col(Suggestion.id) == number, col(Suggestion.status) == "open")
        .values(status=verdict)
        .execution_options(synchronize_session=False)
    )
    one = session.get(Suggestion, number, populate_existing=True)
    if one is None:
        session.rollback()
        raise Unknown("suggestion", str(number))
    if changed.rowcount != 1:  # type: ignore[attr-defined]
        status = one.status
        session.rollback()
        raise Conflict(f"suggestion {number} is already {status}")
    session.add(Decision(suggestion=number, verdict=verdict, reason=reason, reviewer=reviewer))
    if verdict == "accepted":
        session.execute(update(Version).values(number=col(Version.number) + 1))
        if session.get_bind().dialect.name == "postgresql":
            session.execute(text(f"NOTIFY {CHANNEL}"))
    session.commit()
    session.refresh(one)
    return one


def history(session: Session, number: int) -> Sequence[Decision]:
    """Every decision on a suggestion, in order."""
    return session.exec(
        select(Decision).where(Decision.suggestion == number).order_by(col(Decision.id))
    ).all()


def accepted_rows(session: Session) -> list[Row]:
    """Accepted names as glossary rows, in the order they were accepted."""
    asked = (
        select(Suggestion)
        .where(Suggestion.status == "accepted", Suggestion.kind == "name")
        .order_by(col(Suggestion.id))
    )
    return [row_of(one) for one in session.exec(asked).all()]


def row_of(one: Suggestion) -> Row:
    """A suggestion as a glossary row: recalled, so a draft."""
    agrees = frozenset(one.agrees.split())
    return Row(
        one.lang, one.script, one.row_kind, one.ref, one.text, one.use, agrees, "draft", "memory", one.note
    )


def version(session: Session) -> int:
    """The number of the overlay."""
    found = session.exec(select(Version.number)).first()
    return int(found or 0)


def once(
    session: Session, key: str, action: str, digest: str, work: Callable[[], dict[str, Any]]
) -> dict[str, Any]:
    """Do a piece of work once for an idempotency key; the same key again gives the first answer.

    Raises Conflict where the key was used for something else.
    """
    if not key:
        return work()
    asked = select(Receipt).where(Receipt.key == key, Receipt.action == action)
    known = session.exec(asked).first()
    if known is None:
        answer = work()
        session.add(Receipt(key=key, action=action, digest=digest, answer=json.dumps(answer, default=str)))
        if _commit_or_leave(session):
            return answer
        known = session.exec(asked).one()
    if known.digest != digest:
        raise Conflict("this idempotency key was used for another request")
    found: dict[str, Any] = json.loads(known.answer)
    return found


def make_key(session: Session, name: str, scopes: Sequence[str]) -> str:
    """A new key, shown once; only its hash is stored. Raises BadInput or Conflict."""
    wrong = [one for one in scopes if one not in SCOPES]
    if wrong or not scopes:
        raise BadInput("scopes", list(scopes), f"use {' or '.join(SCOPES)}")
    secret = secrets.token_urlsafe(32)
    session.add(Key(name=name, digest=_hashed(secret), scopes=" ".join(scopes)))
    if not _commit_or_leave(session):
        raise Conflict(f"there is already a key named {name!r}")
    return secret


def revoke_key(session: Session, name: str) -> None:
    """End a key; raises Unknown."""
    one = session.exec(select(Key).where(Key.name == name)).first()
    if one is None:
        raise Unknown("key", name)
    one.revoked = True
    session.add(one)
    session.commit()


def keys(session: Session) -> Sequence[Key]:
    """Every key, without its secret."""
    return session.exec(select(Key).order_by(col(Key.id))).all()


def holder(session: Session, secret: str, scope: str) -> str:
    """The name of the key's holder; raises NotAllowed where it is unknown, revoked or lacks the scope."""
    one = session.exec(select(Key).where(Key.digest == _hashed(secret))).first() if secret else None
    if one is None or one.revoked or scope not in one.scopes.split():
        raise NotAllowed(f"this takes a key with the right to {scope}")
    return one.name


def _hashed(secret: str) -> str:
    # The secret is 256 random bits, so a plain digest cannot be guessed backwards.
    return hashlib.sha256(secret.encode()).hexdigest()


def counts(session: Session) -> dict[str, int]:
    """Suggestions by status."""
    found = session.exec(select(Suggestion.status, func.count()).group_by(Suggestion.status)).all()
    return {status: int(number) for status, number in found}
