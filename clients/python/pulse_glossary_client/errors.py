"""Problems of the service as exceptions, one class for each type of problem.

Problem
|-- BadInput
|   `-- TooLarge
|-- Unknown
|-- Unsafe
|-- Missing
|-- Conflict
|-- NotAllowed
`-- TooMany
"""

from __future__ import annotations

from typing import Any


class Problem(Exception):
    """An RFC 9457 problem: `status`, `title`, `detail`, and its own facts in `facts`."""

    def __init__(self, status: int, title: str, detail: str, facts: dict[str, Any]) -> None:
        self.status, self.title, self.detail, self.facts = status, title, detail, facts
        super().__init__(f"{title}: {detail}")


class BadInput(Problem):
    """The request cannot be used as it is."""


class TooLarge(BadInput):
    """Over a size limit."""


class Unknown(Problem):
    """Not in the glossary; `facts["near"]` may list close names."""


class Unsafe(Problem):
    """The kitchen asked for something that can hurt."""


class Missing(Problem):
    """A part of the service that is not installed."""


class Conflict(Problem):
    """It clashes with something already done."""


class NotAllowed(Problem):
    """No key, or a key without this right."""


class TooMany(Problem):
    """Over the rate allowed; `facts["retry_after"]` in seconds."""


BY_NAME: dict[str, type[Problem]] = {
    one.__name__: one for one in (BadInput, TooLarge, Unknown, Unsafe, Missing, Conflict, NotAllowed, TooMany)
}
BY_STATUS: dict[int, type[Problem]] = {
    404: Unknown,
    409: Conflict,
    413: TooLarge,
    422: BadInput,
    403: NotAllowed,
    429: TooMany,
}


def problem_of(status: int, body: Any) -> Problem:
    """The exception for an answer that is a problem."""
    facts = dict(body) if isinstance(body, dict) else {}
    name = str(facts.get("type", "")).rpartition(":")[2]
    kind = BY_NAME.get(name) or BY_STATUS.get(status, Problem)
    return kind(status, str(facts.get("title", f"HTTP {status}")), str(facts.get("detail", "")), facts)
