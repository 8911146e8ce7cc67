"""Say when each step starts so that a pulse is on the table in time; write it as a calendar."""

from __future__ import annotations

import argparse
from datetime import UTC, datetime
from pathlib import Path

from ..contracts import guidance_for
from ..glossary import find
from ..kitchen import calendar, kitchen_of
from ..store import files
from ..web.moments import planned
from . import cook, out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("pulse", help="species[/class[/form[/colour]]]")
    parser.add_argument("--ready", required=True, help="when it is eaten, as 2026-11-28T19:00 or 19:00")
    parser.add_argument(
        "--zone", default="", help="IANA time zone, as Asia/Kolkata; that of this machine where left out"
    )
    parser.add_argument("--calendar", type=Path, help="write an iCalendar file (.ics) as well")
    cook.add_kitchen(parser)
    out.add_output(parser, batch=False)


def run(args: argparse.Namespace) -> int:
    """0 where the day could be reckoned; 2 where this way of cooking is refused."""
    glossary = files.load(args.data)
    pulse = find.by_key(glossary, args.pulse)
    guidance = guidance_for(glossary, pulse, kitchen_of(vars(args)))
    steps = planned(guidance, args.ready, args.zone or _here(args.ready))
    if args.calendar:
        text = calendar(
            steps,
            glossary.species[pulse.species].english,
            datetime.now(UTC),
            [one.text for one in guidance.cautions],
        )
        files.write(args.calendar.parent, {args.calendar.name: text.encode()})
    if args.json:
        out.print_json(
            [
                {"id": one.id, "text": one.text, "start": one.start.isoformat(), "end": one.end.isoformat()}
                for one in steps
            ]
        )
        return 0
    rows = [(one.start.strftime("%a %H:%M"), one.text) for one in steps]
    rows.append((steps[-1].end.strftime("%a %H:%M"), "On the table."))
    out.facts(rows + [(one.severity, one.text) for one in guidance.cautions])
    return 0


def _here(ready: str) -> str:
    """The zone of this machine, for a time that names none."""
    return "" if ready.endswith("Z") or ready[10:].count("+") or ready[10:].count("-") else "localtime"
