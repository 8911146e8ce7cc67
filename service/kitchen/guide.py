"""A pulse in a kitchen: soak, minutes, water, yield, cautions, steps and sources, all at once."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from ..glossary.cooking import Figures, Times
from ..glossary.model import Hazard, Pulse, Range
from . import words
from .caution import PHASEOLUS, Caution, Refusal, cautions, refusal
from .effects import Effect, height
from .kitchen import Kitchen
from .minutes import Cooking, minutes
from .physics import boiling_c
from .ranges import minutes_rounded, rounded, scaled, width
from .ready import READY, Ready
from .rules import DRY_FORMS, balance_for, soaking_for, times_for
from .soak import Soak, soak
from .water import Fill, Water, fill, water
from .yields import Served, Yield, served, yields

# The shortest a Phaseolus bean is boiled, whatever its texture: what FDA, EFSA and FSAI agree on.
LECTIN_BOIL_MIN = 30.0
WHISTLE_MIN = (3.0, 5.0)


@dataclass(frozen=True, slots=True)
class Guidance:
    """The answer. Minutes count from the boil, or from full pressure; None where cooking is refused.

    `notes` say how sure the figures are; `basis` is published, likeness, class-rule or form-rule.
    """

    pulse: Pulse
    kitchen: Kitchen
    minutes: Range | None
    soak_hours: Range
    water_ml_per_100g: Range
    water_cups_per_cup: Range
    cooked_g_per_100g: Range
    cooked_cups_per_cup: Range | None
    temperature_c: Range | None
    whistles: Range | None
    cautions: tuple[Caution, ...]
    notes: tuple[str, ...]
    steps: tuple[str, ...]
    sources: tuple[str, ...]
    basis: str
    refused: Refusal | None = None
    soak: Soak | None = None
    cooking: Cooking | None = None
    water: Water | None = None
    fill: Fill | None = None
    served: Served | None = None


def guide(pulse: Pulse, kitchen: Kitchen, figures: Figures, hazards: Iterable[Hazard] = ()) -> Guidance:
    """Guidance for one pulse; an empty form counts as whole. Refusals are values, never exceptions."""
    form = pulse.form or "whole"
    if form in READY:
        return _ready(pulse, kitchen, figures, hazards, READY[form])
    return _dry(pulse, kitchen, figures, hazards)


def as_line(guidance: Guidance) -> dict[str, Any]:
    """The batch record of guidance, without its id."""
    refused = guidance.refused
    return {
        "minutes": None if guidance.minutes is None else list(guidance.minutes),
        "soak_hours": list(guidance.soak_hours),
        "water_ml_per_100g": list(guidance.water_ml_per_100g),
        "water_cups_per_cup": list(guidance.water_cups_per_cup),
        "cooked_g_per_100g": list(guidance.cooked_g_per_100g),
        "cautions": [
            {"id": one.id, "severity": one.severity, "text": one.text, "source": one.source}
            for one in guidance.cautions
        ],
        "sources": list(guidance.sources),
        "basis": guidance.basis,
        "notes": list(guidance.notes),
        "refused": None
        if refused is None
        else {"what": refused.what, "why": refused.why, "instead": refused.instead, "source": refused.source},
    }


def _dry(pulse: Pulse, kitchen: Kitchen, figures: Figures, hazards: Iterable[Hazard]) -> Guidance:
    times = times_for(pulse, figures)
    soaking = soaking_for(pulse, figures, times)
    balance = balance_for(pulse, figures)
    soaked = soak(kitchen, times, soaking, balance.water_raw)
    cooking = minutes(times, kitchen, soaked)
    span = _safe(pulse, kitchen, cooking.minutes)
    needed = water(kitchen, times, balance, soaked, span)
    foams = _foams(times)
    refused = refusal(pulse, kitchen, figures.standing)
    warned = cautions(pulse, kitchen, hazards, dry=True, foams=foams, soaked=soaked)
    result = yields(balance)
    notes = _notes(times, kitchen, cooking, soaked)
    return Guidance(
        pulse=pulse,
        kitchen=kitchen,
        minutes=None if refused else span,
        soak_hours=soaked.hours,
        water_ml_per_100g=needed.ml_per_100g,
        water_cups_per_cup=needed.cups_per_cup,
        cooked_g_per_100g=result.cooked_g_per_100g,
        cooked_cups_per_cup=result.cooked_cups_per_cup,
        temperature_c=rounded(cooking.heat_c, 0.1),
        whistles=_whistles(kitchen, span, refused),
        cautions=warned,
        notes=notes,
        steps=words.refused(refused) if refused else words.steps(pulse, kitchen, times, soaked, span, needed),
        sources=_sources(times, soaking.source, result, warned, cooking.effects),
        basis=times.basis,
        refused=refused,
        soak=soaked,
        cooking=cooking,
        water=needed,
        fill=fill(kitchen, foams, needed.ml_per_100g, soaked.uptake[1]),
        served=None
        if refused
        else served(balance, figures.nutrition_of(pulse), kitchen.dry_g, kitchen.cup_ml),
    )


def _safe(pulse: Pulse, kitchen: Kitchen, span: Range) -> Range:
    """Phaseolus in a pot without pressure is never boiled for less than the lectin rule."""
    if pulse.species not in PHASEOLUS or kitchen.under_pressure:
        return span
    return max(span[0], LECTIN_BOIL_MIN), max(span[1], LECTIN_BOIL_MIN * 1.2)


def _foams(times: Times) -> bool:
    return times.size == "split"


def _whistles(kitchen: Kitchen, span: Range, refused: Refusal | None) -> Range | None:
    """Household count for stove-top cookers: three to five minutes to a whistle, at least one."""
    if kitchen.vessel != "pressure" or refused:
        return None
    low, high = rounded((span[0] / WHISTLE_MIN[1], span[1] / WHISTLE_MIN[0]), 1)
    return max(1.0, low), max(2.0, high)


def _notes(times: Times, kitchen: Kitchen, cooking: Cooking, soaked: Soak) -> tuple[str, ...]:
    found = [words.BASIS[times.basis]] if times.basis in words.BASIS else []
    published = times.published_pressure if kitchen.under_pressure else times.published_open
    if published and width(published) > 0.7:
        where = "under pressure" if kitchen.under_pressure else "in an open pot"
        found.append(
            f"Published tables disagree {where}: from {published[0]:g} to {published[1]:g} minutes; the range given "
            "follows what most of them say for this texture."
        )
    if times.note:
        found.append(words.sentence(times.note))
    found += [words.sentence(one.why) for one in cooking.effects if one.factor != (1.0, 1.0)]
    if soaked.pointless:
        found.append("Soaking this one is pointless: it is cooked from dry.")
    if kitchen.under_pressure:
        found.append(words.COUNTED)
    return tuple(found)


def _sources(
    times: Times, soaking: str, result: Yield, warned: tuple[Caution, ...], found: tuple[Effect, ...]
) -> tuple[str, ...]:
    keys = [*times.sources, times.z_source, soaking, result.source]
    keys += [key for one in found if one.factor != (1.0, 1.0) for key in one.sources]
    keys += [one.source for one in warned]
    return tuple(dict.fromkeys(keys))


def _ready(
    pulse: Pulse, kitchen: Kitchen, figures: Figures, hazards: Iterable[Hazard], ready: Ready
) -> Guidance:
    """Forms that are not dry seed: no soak, their own rule; a closed cooker makes no difference worth a figure."""
    refused = refusal(pulse, kitchen, figures.standing)
    warned = cautions(pulse, kitchen, hazards, dry=False, foams=False, soaked=None)
    span = ready.minutes
    if ready.must_boil:
        high = height(kitchen, (16.0, 19.0), (0.0, 0.0))
        span = minutes_rounded(scaled(span, [high.factor] if high else []))
        if pulse.species in PHASEOLUS:
            least = LECTIN_BOIL_MIN if pulse.form != "fresh" else 10.0
            span = max(span[0], least), max(span[1], least * 1.2)
    boil = boiling_c(float(kitchen.altitude_m))
    return Guidance(
        pulse=pulse,
        kitchen=kitchen,
        minutes=None if refused else span,
        soak_hours=(0.0, 0.0),
        water_ml_per_100g=ready.water_ml,
        water_cups_per_cup=ready.water_cups,
        cooked_g_per_100g=ready.grams,
        cooked_cups_per_cup=None,
        temperature_c=rounded((boil, boil), 0.1) if ready.must_boil else None,
        whistles=None,
        cautions=warned,
        notes=(words.BASIS["form-rule"],),
        steps=words.refused(refused) if refused else (ready.how,),
        sources=tuple(dict.fromkeys(("common-practice", *(one.source for one in warned)))),
        basis="form-rule",
        refused=refused,
    )


def is_dry(pulse: Pulse) -> bool:
    """True for forms that are cooked from dry seed; an empty form counts as whole."""
    return (pulse.form or "whole") in DRY_FORMS
