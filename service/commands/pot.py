"""Say how to cook several pulses in one pot: what to soak, what goes in when, or why apart."""

from __future__ import annotations

import argparse

from ..contracts import plan_for
from ..errors import BadInput
from ..kitchen import kitchen_of
from ..store import files
from . import cook, out

USUAL_G = 100.0


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument(
        "member", nargs="+", help="species[/class[/form[/colour]]], with :grams after it where not 100"
    )
    cook.add_kitchen(parser)
    out.add_output(parser, batch=False)


def run(args: argparse.Namespace) -> int:
    """0 where the pulses and the kitchen are known, also where they must be cooked apart."""
    plan = plan_for(files.load(args.data), map(_member, args.member), kitchen_of(vars(args)))
    if args.json:
        out.print_json(
            {
                "together": plan.together,
                "why": plan.why,
                "turns": [
                    {
                        "pulse": one.pulse.key,
                        "soak": one.soak,
                        "goes_in": one.goes_in,
                        "minutes": one.guidance.minutes,
                    }
                    for one in plan.turns
                ],
                "minutes": plan.minutes,
                "water_ml": plan.water_ml,
                "cautions": [one.text for one in plan.cautions],
            }
        )
        return 0
    rows = [("one pot" if plan.together else "apart", plan.why)]
    for one in plan.turns:
        soak = "no soak" if one.soak == "none" else f"soak {cook.span(one.guidance.soak_hours, 'hours')}"
        when = _in(one.goes_in) if plan.together else cook.span(one.guidance.minutes or (0, 0), "minutes")
        rows.append((one.pulse.key, f"{soak}; {when}"))
    if plan.minutes:
        rows += [
            ("cook", cook.span(plan.minutes, "minutes after the first is in")),
            ("water", cook.span(plan.water_ml, "ml")),
        ]
    if plan.fill:
        rows.append(
            (
                "pot",
                f"needs {plan.fill.needed_l:g} l in {plan.fill.batches} go(es): filled to {plan.fill.why}",
            )
        )
    out.facts(rows + [(one.severity, one.text) for one in plan.cautions])
    return 0


def _in(minutes: float) -> str:
    return f"in after {minutes:g} minutes" if minutes else "in first"


def _member(text: str) -> tuple[str, float]:
    key, _, grams = text.partition(":")
    try:
        return key, float(grams) if grams else USUAL_G
    except ValueError:
        raise BadInput("member", text, "must end in grams, as in vigna-mungo//whole:150") from None
