"""A recipe in free text rewritten: one pulse for another, soak and minutes for the kitchen at hand."""

from __future__ import annotations

from dataclasses import dataclass, replace

from ..errors import BadInput, TooLarge
from ..glossary.model import Pulse, Range
from ..kitchen import Caution, Guidance, Kitchen, guide
from ..kitchen.rules import DRY_FORMS, times_for
from ..label import Reader
from .ingredients import Ingredient, ingredient, listed
from .swap import Swap, swaps
from .times import SLOWLY, UNDER_PRESSURE
from .work import Line, Work

LONGEST = 12_000
LINES = 300


@dataclass(frozen=True, slots=True)
class Rewritten:
    """A changed recipe: its lines, the two pulses, guidance before and after, and what to know."""

    lines: tuple[Line, ...]
    source: Pulse
    target: Pulse
    grams: Range | None
    before: Guidance
    after: Guidance
    differences: tuple[str, ...]
    warnings: tuple[str, ...]
    others: tuple[Swap, ...]

    @property
    def text(self) -> str:
        """The new recipe, line for line."""
        return "\n".join(line.after for line in self.lines)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What the new pulse asks for in this kitchen."""
        return self.after.cautions


def rewrite(
    text: str, reader: Reader, kitchen: Kitchen, target: Pulse | None = None, source: Pulse | None = None,
    languages: tuple[str, ...] = (),
) -> Rewritten:  # fmt: skip
    """The recipe with `target` in place of `source` (the first pulse it asks for), or only timed anew.

    The kitchen's vessel is taken as a pressure cooker where the recipe speaks of one and the kitchen does not.
    Raises BadInput where the recipe names no pulse, TooLarge beyond 12,000 characters.
    """
    _check(text)
    rows = text.splitlines()
    found = [ingredient(row, reader, languages) if row.strip() else None for row in rows]
    asked = _asked(found, source)
    if asked is None:
        raise BadInput("text", text[:60], "names no dried pulse that could be changed")
    first = _first_kitchen(text, kitchen)
    if kitchen.vessel == "open" and first.vessel == "pressure":
        kitchen = replace(kitchen, vessel="pressure")
    new = target or asked.pulse
    kitchen = _soaked_as_needed(kitchen, new, reader)
    before, after = _guide(asked.pulse, kitchen, reader), _guide(new, kitchen, reader)
    ratio = _ratio(before, after) if target else 1.0
    spoken = languages or reader.read(text).languages[:1]
    written_for = _guide(asked.pulse, first, reader)
    work = Work(reader, spoken, asked, new, target is not None, ratio, written_for, after)
    return _told(work, work.lines(rows, found), before, kitchen)


def _check(text: str) -> None:
    if len(text) > LONGEST or text.count("\n") >= LINES:
        raise TooLarge("text", text, f"is longer than {LONGEST} characters or {LINES} lines")
    if not text.strip():
        raise BadInput("text", text, "is empty; give the recipe")


def _told(work: Work, lines: tuple[Line, ...], before: Guidance, kitchen: Kitchen) -> Rewritten:
    """All there is to say of the lines as changed."""
    old, new, grams = work.asked.pulse, work.new, work.asked.grams
    ranked = swaps(work.reader.glossary, old, kitchen)
    chosen = next((one for one in ranked if one.pulse.species == new.species), None)
    across = work.swapped and _kind(old, work.reader) != _kind(new, work.reader)
    return Rewritten(
        lines=lines,
        source=old,
        target=new,
        grams=(grams[0] * work.ratio, grams[1] * work.ratio) if grams else None,
        before=before,
        after=work.after,
        differences=_differences(chosen, before, work.after) if work.swapped else (),
        warnings=_warnings(before, work.after, across),
        others=ranked[:5],
    )


def _asked(found: list[Ingredient | None], source: Pulse | None) -> Ingredient | None:
    """The pulse to replace: the first listed with an amount, else the first named."""
    fit = [one for one in found if one and (source is None or one.pulse.species == source.species)]
    return next((one for one in fit if listed(one)), fit[0] if fit else None)


def _first_kitchen(text: str, kitchen: Kitchen) -> Kitchen:
    """The kitchen the recipe was written for, by its own words; an open pot where it does not say."""
    if UNDER_PRESSURE.search(text):
        return replace(kitchen, vessel="pressure", gauge_kpa=None)
    return replace(kitchen, vessel="slow" if SLOWLY.search(text) else "open", gauge_kpa=None)


def _kind(pulse: Pulse, reader: Reader) -> str:
    """What works in place of what: split, small whole, large whole; each ready form by itself."""
    if pulse.form not in ("", *DRY_FORMS):
        return pulse.form
    return times_for(pulse, reader.glossary.species[pulse.species].cooking).size


def _guide(pulse: Pulse, kitchen: Kitchen, reader: Reader) -> Guidance:
    species = reader.glossary.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def _soaked_as_needed(kitchen: Kitchen, pulse: Pulse, reader: Reader) -> Kitchen:
    """A pulse that must be soaked is, whatever the old recipe did."""
    if kitchen.soak != "none":
        return kitchen
    demanded = any(one.id == "soak-demanded" for one in _guide(pulse, kitchen, reader).cautions)
    return replace(kitchen, soak="overnight") if demanded else kitchen


def _ratio(before: Guidance, after: Guidance) -> float:
    mine, other = sum(before.cooked_g_per_100g), sum(after.cooked_g_per_100g)
    return mine / other if other else 1.0


def _differences(chosen: Swap | None, before: Guidance, after: Guidance) -> tuple[str, ...]:
    found = list(chosen.reasons) if chosen else ["A different pulse: expect another body and taste."]
    if before.soak_hours[1] <= 0 < after.soak_hours[1]:
        found.append("The new one is soaked; the old one was not.")
    if after.soak_hours[1] <= 0 < before.soak_hours[1]:
        found.append("The new one needs no soak.")
    ratio = sum(after.water_ml_per_100g) / max(1.0, sum(before.water_ml_per_100g))
    if ratio > 1.15 or ratio < 0.87:
        found.append(f"Water: {'more' if ratio > 1 else 'less'}, about {ratio:.0%} of before.")
    return tuple(found)


def _warnings(before: Guidance, after: Guidance, across: bool) -> tuple[str, ...]:
    known = {one.id for one in before.cautions}
    found = [one.text for one in after.cautions if one.id not in known]
    if after.refused:
        found.insert(0, f"Not {after.refused.what}: {after.refused.why}; {after.refused.instead}.")
    if across:
        found.append("These two do not stand in for each other well: try a small pot first.")
    return tuple(found)
