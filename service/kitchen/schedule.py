"""Backwards from the table: when each step starts, with days and zone; and the same as iCalendar (RFC 5545)."""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from ..errors import BadInput, Unsafe
from .caution import PHASEOLUS
from .guide import Guidance
from .words import DAY, of

# Minutes for what lies between the figures: coming to the boil or pressure, falling of itself, draining, resting.
TO_THE_BOIL = 15.0
TO_PRESSURE = 12.0
FALLING = 15.0
DRAINING = 10.0
RESTING = 10.0
LECTIN_BOIL = 30.0


@dataclass(frozen=True, slots=True)
class Step:
    """One step of the day; both ends carry the zone of the meal."""

    id: str
    text: str
    start: datetime
    end: datetime


def schedule(guidance: Guidance, ready: datetime) -> tuple[Step, ...]:
    """Steps that end at `ready`, planned with the longest times, so that waiting is on the cook's side.

    `ready` must carry a time zone; hours pass as real time, so a change of clocks in the night is kept.
    Raises BadInput without a zone, Unsafe where the cooking is refused.
    """
    if ready.tzinfo is None:
        raise BadInput("ready", ready.isoformat(), "needs a time zone")
    if guidance.refused or guidance.minutes is None:
        why = guidance.refused.why if guidance.refused else "no times are given"
        raise Unsafe("schedule", why)
    found: list[Step] = []
    end = ready
    for name, text, minutes in reversed(_stretches(guidance)):
        start = _earlier(end, minutes)
        found.append(Step(name, text, start, end))
        end = start
    return tuple(reversed(found))


def calendar(steps: Sequence[Step], title: str, stamp: datetime, cautions: Sequence[str] = ()) -> str:
    """An iCalendar object with one event for each step, times in UTC.

    `stamp` is when it is made (it must carry a zone); the same steps always get the same identifiers.
    `cautions` stand in every event: any of them may be the only one that is looked at.
    """
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//pulse-glossary//kitchen//EN", "CALSCALE:GREGORIAN"]
    for step in steps:
        digest = hashlib.sha256(f"{title}|{step.id}|{_utc(step.start)}".encode()).hexdigest()[:24]
        lines += [
            "BEGIN:VEVENT",
            f"UID:{digest}@pulse-glossary",
            f"DTSTAMP:{_utc(stamp)}",
            f"DTSTART:{_utc(step.start)}",
            f"DTEND:{_utc(step.end)}",
            f"SUMMARY:{_escaped(f'{title}: {step.id}')}",
            "DESCRIPTION:" + _escaped("\n".join((step.text, *cautions))),
            "END:VEVENT",
        ]
    lines.append("END:VCALENDAR")
    return "".join(_folded(line) for line in lines)


def _stretches(guidance: Guidance) -> list[tuple[str, str, float]]:
    """(id, text, minutes) in the order of the day."""
    kitchen = guidance.kitchen
    found: list[tuple[str, str, float]] = []
    if guidance.soak_hours[1] > 0:
        low, high = guidance.soak_hours
        hours = (low + high) / 2
        found.append(("soak", f"Soak {low:g} to {high:g} {of('hour', high)}.", hours * 60))
        found.append(("drain", DAY["drain"], DRAINING))
    dry = guidance.soak is not None
    if dry and guidance.pulse.species in PHASEOLUS and kitchen.vessel != "open" and not kitchen.boiled_first:
        found.append(("boil first", DAY["boil first"], TO_THE_BOIL + LECTIN_BOIL))
    longest = guidance.minutes[1] if guidance.minutes else 0.0
    if kitchen.vessel == "slow":
        found.append(("cook", DAY["slow"], longest))
    elif dry and kitchen.under_pressure:
        found.append(("heat", DAY["pressure"], TO_PRESSURE))
        found.append(("cook", DAY["keep"], longest))
        if kitchen.release == "natural":
            found.append(("release", DAY["release"], FALLING))
    elif longest:
        found.append(("heat", DAY["boil"], TO_THE_BOIL))
        found.append(("cook", DAY["cook"], longest))
    found.append(("rest", DAY["rest"], RESTING))
    return found


def _earlier(moment: datetime, minutes: float) -> datetime:
    """So many real minutes before, in the same zone: reckoned in UTC, since zones change their clocks."""
    return (moment.astimezone(UTC) - timedelta(minutes=minutes)).astimezone(moment.tzinfo)


def _utc(moment: datetime) -> str:
    if moment.tzinfo is None:
        raise BadInput("stamp", moment.isoformat(), "needs a time zone")
    return moment.astimezone(UTC).strftime("%Y%m%dT%H%M%SZ")


def _escaped(text: str) -> str:
    for mark in ("\\", ";", ","):
        text = text.replace(mark, "\\" + mark)
    return text.replace("\r\n", "\\n").replace("\n", "\\n")


def _folded(line: str) -> str:
    """Lines of at most 75 octets, broken between characters, as RFC 5545 section 3.1 asks."""
    out, size = [], 0
    for char in line:
        octets = len(char.encode())
        if size + octets > 75:
            out.append("\r\n ")
            size = 1
        out.append(char)
        size += octets
    return "".join(out) + "\r\n"
