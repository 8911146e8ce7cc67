"""Say how to cook a pulse in your kitchen: soak, minutes, water, yield and what to beware of."""

from __future__ import annotations

import argparse

from ..contracts import cook_line, guidance_for
from ..errors import BadInput
from ..glossary import find
from ..glossary.model import Range
from ..kitchen import Guidance, as_line, kitchen_of
from ..kitchen.kitchen import CHOICES
from ..kitchen.yields import PORTION_G, Served
from ..store import files
from . import out

NUMBERS = {
    "gauge-kpa": "gauge pressure of the cooker in kPa",
    "gauge-psi": "the same in pounds per square inch",
    "altitude-m": "height above the sea in m",
    "soak-hours": "how long it was soaked, in h",
    "dry-g": "grams of dry pulse",
    "pot-l": "size of the pot in l",
    "cup-ml": "size of your cup in ml",
    "hardness-mg-l": "hardness of the water in mg/l of calcium carbonate",
}


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument(
        "pulse", nargs="?", help="species[/class[/form[/colour]]], species as slug or Latin name"
    )
    add_kitchen(parser)
    out.add_output(parser)


def add_kitchen(parser: argparse.ArgumentParser) -> None:
    """The words that describe a kitchen."""
    for name in ("vessel", "setting", "soak", "texture", "age", "salt", "acid", "soda", "dish", "release"):
        parser.add_argument(f"--{name}", choices=[word for word in CHOICES[name] if word])
    for name, what in NUMBERS.items():
        parser.add_argument(f"--{name}", type=float, help=what)
    parser.add_argument(
        "--boiled-first",
        action="store_true",
        default=None,
        help="soaked, drained and boiled hard for 30 minutes",
    )


def run(args: argparse.Namespace) -> int:
    """0 where the pulse and the kitchen are known, also where the way of cooking is refused."""
    glossary = files.load(args.data)
    if args.jsonl:
        return out.run_batch(lambda record: cook_line(record, glossary))
    if not args.pulse:
        raise BadInput("pulse", "", "is missing; give species[/class[/form[/colour]]]")
    pulse = find.by_key(glossary, args.pulse)
    guidance = guidance_for(glossary, pulse, kitchen_of(vars(args)))
    if args.json:
        out.print_json({"pulse": pulse.key, **as_line(guidance), "steps": list(guidance.steps)})
        return 0
    _print(guidance)
    return 0


def _print(guidance: Guidance) -> None:
    species = guidance.pulse
    rows: list[tuple[str, str]] = [("pulse", species.key)]
    if guidance.refused:
        rows.append(("refused", f"{guidance.refused.what}: {guidance.refused.why}"))
        rows.append(("instead", guidance.refused.instead))
    if guidance.minutes:
        rows += [
            ("soak", span(guidance.soak_hours, "hours")),
            ("cook", span(guidance.minutes, "minutes")),
            ("water", _water(guidance)),
            ("gives", span(guidance.cooked_g_per_100g, "g cooked from 100 g")),
        ]
    if guidance.served:
        rows += _served(guidance.served, guidance.kitchen.dry_g)
    rows += [("steps" if at == 0 else "", text) for at, text in enumerate(guidance.steps)]
    rows += [(one.severity, one.text) for one in guidance.cautions]
    rows += [("note", text) for text in guidance.notes]
    rows.append(("sources", ", ".join(guidance.sources)))
    out.facts(rows)


def _served(served: Served, dry_g: float) -> list[tuple[str, str]]:
    cooked = f"{span(served.cooked_g, 'g')}, {span(served.cooked_cups, 'cups')}, {span(served.portions, 'portions')}"
    rows = [(f"{dry_g:g} g dry", f"{cooked}; stands for {span(served.cans, 'cans')}")]
    if served.portion:
        feeds = ", ".join(_feeds(name, value) for name, value in served.portion.items())
        rows.append(("a portion", f"{PORTION_G:g} g dry: {feeds} (USDA record {served.record})"))
    return rows


def _feeds(name: str, value: float) -> str:
    what, _, unit = name.partition("_")
    return f"{value:.0f} {what}" if not unit else f"{what} {value:g} {unit}"


def _water(guidance: Guidance) -> str:
    by_weight = span(guidance.water_ml_per_100g, "ml to 100 g")
    return f"{by_weight}, {span(guidance.water_cups_per_cup, 'cups to a cup')}"


def span(pair: Range, unit: str) -> str:
    """A range with its unit, one figure where both ends are the same."""
    low, high = (f"{edge:g}" for edge in pair)
    return f"{low} {unit}" if low == high else f"{low} to {high} {unit}"
