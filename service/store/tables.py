"""People's data. It never owns a fact of the glossary: an accepted suggestion becomes a diff of its files."""

from __future__ import annotations

from datetime import UTC, datetime

from sqlalchemy import Column, DateTime, Text, UniqueConstraint
from sqlmodel import Field, SQLModel


def now() -> datetime:
    """The time, in UTC."""
    return datetime.now(UTC)


def _time() -> Column[datetime]:
    return Column(DateTime(timezone=True), nullable=False)


class Pack(SQLModel, table=True):
    """A remembered pack: GTIN-14 and what it holds."""

    gtin: str = Field(primary_key=True, max_length=14)
    pulse: str = Field(max_length=120)
    label: str = Field(default="", max_length=500)
    status: str = Field(default="suggested", max_length=20)
    changed: datetime = Field(default_factory=now, sa_column=_time())


class Suggestion(SQLModel, table=True):
    """A name, a correction or an unread label that someone sent; never deleted."""

    id: int | None = Field(default=None, primary_key=True)
    kind: str = Field(max_length=20, index=True)
    lang: str = Field(default="", max_length=35)
    script: str = Field(default="", max_length=4)
    row_kind: str = Field(default="", max_length=10)
    ref: str = Field(default="", max_length=120)
    text: str = Field(sa_column=Column(Text, nullable=False))
    use: str = Field(default="also", max_length=10)
    agrees: str = Field(default="", max_length=40)
    note: str = Field(default="", max_length=500)
    evidence: str = Field(default="", sa_column=Column(Text, nullable=False))
    sender: str = Field(default="", max_length=64)
    digest: str = Field(max_length=64, unique=True)
    times: int = Field(default=1)
    status: str = Field(default="open", max_length=20, index=True)
    created: datetime = Field(default_factory=now, sa_column=_time())


class Decision(SQLModel, table=True):
    """One step in the history of a suggestion; rows are only ever added."""

    id: int | None = Field(default=None, primary_key=True)
    suggestion: int = Field(foreign_key="suggestion.id", index=True)
    verdict: str = Field(max_length=20)
    reason: str = Field(default="", max_length=500)
    reviewer: str = Field(default="", max_length=64)
    created: datetime = Field(default_factory=now, sa_column=_time())


class Receipt(SQLModel, table=True):
    """An idempotency key and what was answered to it, so that nothing is applied twice."""

    __table_args__ = (UniqueConstraint("key", "action"),)
    id: int | None = Field(default=None, primary_key=True)
    key: str = Field(max_length=128)
    action: str = Field(max_length=40)
    digest: str = Field(max_length=64)
    answer: str = Field(sa_column=Column(Text, nullable=False))
    created: datetime = Field(default_factory=now, sa_column=_time())


class Key(SQLModel, table=True):
    """A reviewer's key: only its hash is kept."""

    id: int | None = Field(default=None, primary_key=True)
    name: str = Field(max_length=64, unique=True)
    digest: str = Field(max_length=64, unique=True)
    scopes: str = Field(max_length=120)
    revoked: bool = Field(default=False)
    created: datetime = Field(default_factory=now, sa_column=_time())


class Kitchen(SQLModel, table=True):
    """A saved kitchen, as JSON, under a name its owner chose."""

    name: str = Field(primary_key=True, max_length=64)
    body: str = Field(sa_column=Column(Text, nullable=False))
    changed: datetime = Field(default_factory=now, sa_column=_time())


class Menu(SQLModel, table=True):
    """A saved menu, as JSON, under a name its owner chose."""

    name: str = Field(primary_key=True, max_length=64)
    body: str = Field(sa_column=Column(Text, nullable=False))
    changed: datetime = Field(default_factory=now, sa_column=_time())


class Version(SQLModel, table=True):
    """How often the overlay changed; workers compare it to learn that theirs is old."""

    id: int = Field(default=1, primary_key=True)
    number: int = Field(default=0)
