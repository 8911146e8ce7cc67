"""What can go wrong, each error carrying its facts.

    PulseError
    |-- BadInput          a value from outside cannot be used: field, value, why
    |   `-- TooLarge      it is over a stated limit
    |-- Unknown           an id, tag or name that is not in the glossary: kind, value, near
    |-- Unsafe            the kitchen asks for something that can hurt: what, why
    |-- GlossaryFault     the glossary files cannot be used: findings
    |-- Missing           an optional part is not installed: what, how
    |-- Conflict          it was already done, or done differently
    |-- NotAllowed        no key, or a key without this right
    `-- TooMany           over the rate allowed: retry_after

A poor match is never an error, it is a reading with verdict `none`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any


class PulseError(Exception):
    """Root of the tree. `status` is the HTTP status, `exit_code` that of the command line."""

    status = 500
    exit_code = 2
    title = "Something went wrong"

    def facts(self) -> dict[str, Any]:
        """The error's own facts, as plain values, for a problem document."""
        return {}


class BadInput(PulseError):
    """A value from outside that cannot be used."""

    status = 422
    title = "The request cannot be used as it is"

    def __init__(self, field: str, value: object, why: str) -> None:
        self.field, self.value, self.why = field, value, why
        super().__init__(f"{field}: {why}")

    def facts(self) -> dict[str, Any]:
        shown = repr(self.value)
        return {"field": self.field, "value": shown if len(shown) <= 80 else shown[:77] + "..."}


class TooLarge(BadInput):
    """Over a stated size limit."""

    status = 413
    title = "The request is too large"


class Unknown(PulseError):
    """An id, tag or name that the glossary does not hold; `near` are close ones that it does."""

    status = 404
    title = "Not in the glossary"

    def __init__(self, kind: str, value: str, near: Sequence[str] = ()) -> None:
        self.kind, self.value, self.near = kind, value, tuple(near)
        shown = value if len(value) <= 60 else value[:57] + "..."
        hint = f"; close to it: {', '.join(near)}" if near else ""
        super().__init__(f"no {kind} {shown!r}{hint}")

    def facts(self) -> dict[str, Any]:
        return {"kind": self.kind, "value": self.value[:80], "near": list(self.near)}


class Unsafe(PulseError):
    """The kitchen asks for something that can hurt."""

    status = 422
    title = "This would not be safe"

    def __init__(self, what: str, why: str) -> None:
        self.what, self.why = what, why
        super().__init__(f"{what}: {why}")

    def facts(self) -> dict[str, Any]:
        return {"what": self.what, "why": self.why}


class GlossaryFault(PulseError):
    """The glossary files cannot be used; every finding is `file:line:column: what, and what to do`."""

    title = "The glossary files have faults"

    def __init__(self, findings: Iterable[object]) -> None:
        self.findings = tuple(str(finding) for finding in findings)
        super().__init__("\n".join(self.findings))

    def facts(self) -> dict[str, Any]:
        return {"findings": list(self.findings[:50])}


class Missing(PulseError):
    """An optional part that is not installed; `how` says how to get it."""

    status = 501
    title = "This part is not installed"

    def __init__(self, what: str, how: str) -> None:
        self.what, self.how = what, how
        super().__init__(f"{what} is not installed: {how}")

    def facts(self) -> dict[str, Any]:
        return {"what": self.what, "how": self.how}


class Conflict(PulseError):
    """It was already done, or it clashes with something that was."""

    status = 409
    title = "This clashes with something already done"


class NotAllowed(PulseError):
    """No key, or a key without this right."""

    status = 403
    title = "Not allowed"


class TooMany(PulseError):
    """Over the rate allowed; `retry_after` in seconds."""

    status = 429
    title = "Too many requests"

    def __init__(self, retry_after: int) -> None:
        self.retry_after = retry_after
        super().__init__(f"too many requests, try again in {retry_after} s")

    def facts(self) -> dict[str, Any]:
        return {"retry_after": self.retry_after}
