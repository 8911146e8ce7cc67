"""Times of day as people write them, with the zone they live in."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from ..errors import BadInput

CLOCK = re.compile(r"\d{1,2}:\d{2}")


def moment(text: str, zone: str = "") -> datetime:
    """A time with its zone: RFC 3339, or local time and an IANA zone; a clock time alone is the next one to come.

    Raises BadInput.
    """
    if CLOCK.fullmatch(text):
        now = datetime.now(_zone(zone) if zone else UTC)
        if not zone:
            raise BadInput("zone", zone, "is missing: a clock time alone needs one")
        hour, minute = map(int, text.split(":"))
        if hour > 23 or minute > 59:
            raise BadInput("ready", text, "is no time of day")
        found = now.replace(hour=hour, minute=minute, second=0, microsecond=0)
        return found if found > now else found + timedelta(days=1)
    try:
        found = datetime.fromisoformat(text)
    except ValueError:
        raise BadInput("ready", text, "is no time like 2026-11-28T19:00") from None
    if not 2000 <= found.year <= 2200:
        raise BadInput("ready", text, "must lie between 2000 and 2200")
    if not zone:
        if found.tzinfo is None:
            raise BadInput("ready", text, "needs a time zone: an offset such as +05:30, or a zone by name")
        return found
    there = _zone(zone)
    return found.replace(tzinfo=there) if found.tzinfo is None else found.astimezone(there)


def _zone(name: str) -> ZoneInfo:
    try:
        return ZoneInfo(name)
    except (ZoneInfoNotFoundError, ValueError, OSError):
        raise BadInput("zone", name, "is no IANA time zone such as Asia/Kolkata") from None
