"""Times of day as people write them, with the zone they live in; and the day that leads up to one."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from ..errors import BadInput
from ..kitchen import Guidance, Step, schedule

CLOCK = re.compile(r"([01]?[0-9]|2[0-3]):([0-5][0-9])")


def planned(guidance: Guidance, ready: str, zone: str = "") -> tuple[Step, ...]:
    """The steps to a meal; where only a clock time is given, the next one that can still be met.

    Raises BadInput for a time that is none, Unsafe where the cooking is refused.
    """
    at = moment(ready, zone)
    steps = schedule(guidance, at)
    if CLOCK.fullmatch(ready) and steps[0].start < datetime.now(UTC):
        steps = schedule(guidance, at + timedelta(days=1))
    return steps


def moment(text: str, zone: str = "") -> datetime:
    """A time with its zone: RFC 3339, or local time and an IANA zone; a clock time alone is the next one to come.

    Raises BadInput.
    """
    there = _zone(zone) if zone else None
    clock = CLOCK.fullmatch(text)
    if clock:
        if there is None:
            raise BadInput("zone", zone, "is missing: a clock time alone needs one")
        now = datetime.now(there)
        found = now.replace(hour=int(clock[1]), minute=int(clock[2]), second=0, microsecond=0)
        return found if found > now else found + timedelta(days=1)
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        raise BadInput("ready", text, "is no time like 2026-11-28T19:00 or 19:00") from None
    if not 2000 <= found.year <= 2200:
        raise BadInput("ready", text, "must lie between 2000 and 2200")
    if found.tzinfo is None and there is None:
        raise BadInput("ready", text, "needs a time zone: an offset such as +05:30, or a zone by name")
    if there is None:
        return found
    return found.replace(tzinfo=there) if found.tzinfo is None else found.astimezone(there)


def _zone(name: str) -> ZoneInfo:
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise BadInput("zone", name, "is no IANA time zone such as Asia/Kolkata") from None
