"""What must hold for every pulse in every kitchen."""

from __future__ import annotations

import math
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from service.glossary.model import FORMS, Glossary, Pulse, Range
from service.kitchen import Guidance, Kitchen, as_line, guide
from service.kitchen.caution import PHASEOLUS
from service.kitchen.kitchen import CHOICES
from service.store import files

GLOSSARY: Glossary = files.load()
DRY = ("whole", "whole-dehulled", "split-with-skin", "split-dehulled")
PULSES = st.sampled_from(
    sorted({
        one.pulse.key
        for one in GLOSSARY.sold
        if one.pulse.form in DRY and GLOSSARY.species[one.pulse.species].standing == "pulse"
    })
).map(Pulse.of)  # fmt: skip
KITCHENS = st.builds(
    Kitchen,
    vessel=st.sampled_from(CHOICES["vessel"]),
    gauge_kpa=st.none() | st.floats(0, 150),
    setting=st.sampled_from(CHOICES["setting"]),
    altitude_m=st.floats(-400, 5000),
    soak=st.sampled_from(CHOICES["soak"]),
    texture=st.sampled_from(CHOICES["texture"]),
    age=st.sampled_from(CHOICES["age"]),
    hardness_mg_l=st.none() | st.floats(0, 600),
    salt=st.sampled_from(CHOICES["salt"]),
    acid=st.sampled_from(CHOICES["acid"]),
    soda=st.sampled_from(CHOICES["soda"]),
    dish=st.sampled_from(CHOICES["dish"]),
    release=st.sampled_from(CHOICES["release"]),
    dry_g=st.floats(10, 5000),
    pot_l=st.none() | st.floats(1, 20),
    boiled_first=st.just(True),
)
MANY = settings(max_examples=150, deadline=None)


def _guide(pulse: Pulse, kitchen: Kitchen) -> Guidance:
    species = GLOSSARY.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def _minutes(pulse: Pulse, kitchen: Kitchen) -> Range:
    found = _guide(pulse, kitchen).minutes
    assert found is not None
    return found


def _not_shorter(longer: Range, shorter: Range) -> bool:
    return longer[0] >= shorter[0] and longer[1] >= shorter[1]


@MANY
@given(PULSES, KITCHENS, st.floats(0, 500))
def test_higher_never_shortens(pulse: Pulse, kitchen: Kitchen, climb: float) -> None:
    higher = replace(kitchen, altitude_m=kitchen.altitude_m + climb)
    assert _not_shorter(_minutes(pulse, higher), _minutes(pulse, kitchen))


@MANY
@given(PULSES, KITCHENS, st.floats(0, 100), st.floats(0, 50))
def test_more_pressure_never_lengthens(pulse: Pulse, kitchen: Kitchen, gauge: float, more: float) -> None:
    weak = replace(kitchen, vessel="pressure", gauge_kpa=gauge)
    strong = replace(weak, gauge_kpa=gauge + more)
    assert _not_shorter(_minutes(pulse, weak), _minutes(pulse, strong))


@MANY
@given(PULSES, KITCHENS)
def test_a_soak_never_lengthens(pulse: Pulse, kitchen: Kitchen) -> None:
    none, hot, night = (
        _minutes(pulse, replace(kitchen, soak=soak, soak_hours=None, soak_c=None))
        for soak in ("none", "hot", "overnight")
    )
    assert _not_shorter(none, hot) and _not_shorter(hot, night)


@MANY
@given(PULSES, KITCHENS, st.floats(1, 20), st.floats(0, 20), st.floats(4, 30))
def test_a_longer_soak_never_lengthens(
    pulse: Pulse, kitchen: Kitchen, hours: float, more: float, celsius: float
) -> None:
    short = replace(kitchen, soak="overnight", soak_hours=hours, soak_c=celsius)
    assert _not_shorter(_minutes(pulse, short), _minutes(pulse, replace(short, soak_hours=hours + more)))


@MANY
@given(PULSES, KITCHENS)
def test_older_never_shortens(pulse: Pulse, kitchen: Kitchen) -> None:
    spans = [_minutes(pulse, replace(kitchen, age=age)) for age in ("new", "year", "old", "badly-stored")]
    assert all(_not_shorter(after, before) for before, after in zip(spans, spans[1:], strict=False))


@MANY
@given(PULSES, KITCHENS)
def test_creamy_is_not_shorter_than_tender_nor_tender_than_firm(pulse: Pulse, kitchen: Kitchen) -> None:
    firm, tender, creamy = (
        _minutes(pulse, replace(kitchen, texture=texture)) for texture in ("firm", "tender", "creamy")
    )
    assert _not_shorter(tender, firm) and _not_shorter(creamy, tender)


@MANY
@given(PULSES, KITCHENS)
def test_not_knowing_never_narrows(pulse: Pulse, kitchen: Kitchen) -> None:
    known = _guide(pulse, replace(kitchen, age="new", hardness_mg_l=30.0)).cooking
    unknown = _guide(pulse, replace(kitchen, age="unknown", hardness_mg_l=None)).cooking
    assert known and unknown
    assert unknown.dose[1] / unknown.dose[0] >= known.dose[1] / known.dose[0]


@MANY
@given(PULSES, KITCHENS, st.sampled_from(FORMS))
def test_every_answer_is_whole_and_carries_cautions_and_sources(
    pulse: Pulse, kitchen: Kitchen, form: str
) -> None:
    found = _guide(replace(pulse, form=form), kitchen)
    assert found.cautions and found.sources and found.steps
    assert {one.source for one in found.cautions} <= set(found.sources)
    line = as_line(found)
    for name in ("minutes", "soak_hours", "water_ml_per_100g", "water_cups_per_cup", "cooked_g_per_100g"):
        if line[name] is not None:
            low, high = line[name]
            assert 0 <= low <= high and math.isfinite(high), name


@MANY
@given(PULSES.filter(lambda one: one.species in PHASEOLUS), KITCHENS, st.sampled_from(CHOICES["vessel"]))
def test_kidney_kind_always_carries_the_boil(pulse: Pulse, kitchen: Kitchen, vessel: str) -> None:
    for boiled in (True, False):
        found = _guide(pulse, replace(kitchen, vessel=vessel, boiled_first=boiled))
        assert "lectin-boil" in {one.id for one in found.cautions}
        if vessel in ("slow", "microwave") and not boiled:
            assert found.refused and found.minutes is None and found.refused.why
