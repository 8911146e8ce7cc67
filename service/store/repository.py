"""Every read and write of people's data."""

from __future__ import annotations

from sqlalchemy import Engine, event
from sqlalchemy.pool import StaticPool
from sqlmodel import Session, SQLModel, create_engine

from ..errors import BadInput
from .tables import Pack, now


def engine(address: str) -> Engine:
    """An engine with its tables; SQLite keeps a write-ahead log so that readers never wait."""
    lite = address.startswith("sqlite")
    made = create_engine(
        address,
        connect_args={"check_same_thread": False, "timeout": 30} if lite else {},
        poolclass=StaticPool if address in ("sqlite://", "sqlite:///:memory:") else None,
    )
    if lite:
        event.listen(made, "connect", _prepare)
    SQLModel.metadata.create_all(made)
    return made


def _prepare(connection: object, record: object) -> None:
    del record
    cursor = connection.cursor()  # type: ignore[attr-defined]
    for line in ("journal_mode=WAL", "synchronous=NORMAL", "foreign_keys=ON", "busy_timeout=30000"):
        cursor.execute(f"PRAGMA {line}")
    cursor.close()


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
