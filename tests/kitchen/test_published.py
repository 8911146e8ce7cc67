"""Our ranges beside every cooking time in print that was typed by hand; every miss has its reason."""

from __future__ import annotations

import statistics
from collections.abc import Callable

import pytest

from service.glossary.model import Range
from service.kitchen import Guidance
from service.kitchen.ranges import width

from .published import ROWS, WAYS, Row

Cook = Callable[..., Guidance]
PULP = "a mid-century book that cooks everything to a pulp; other tables say a third of it"
LECTIN = "a texture figure with no lectin test behind it: not followed, on purpose"
OTHERS = "at odds with three other tables that lie within the range"
# Row -> why our range does not hold it.
MISSES = {
    "cooking-with-pulses: lens-culinaris/brown/whole open none": OTHERS,
    "michigan-beans: cicer-arietinum/kabuli/whole open overnight": OTHERS,
    "nebraska-beans: phaseolus-vulgaris/pinto/whole open hot": "a hot soak that beats a cold one by half: no one else",
    "stove-top-manual-us: phaseolus-vulgaris/kidney/whole 15psi overnight": LECTIN,
    "adams-pressure: phaseolus-lunatus/large/whole 15psi overnight": PULP,
    "adams-pressure: phaseolus-lunatus/baby/whole 15psi overnight": PULP,
    "adams-pressure: pisum-sativum/green/split-dehulled 15psi none": PULP,
    "electric-manual-us: phaseolus-vulgaris/kidney/whole electric overnight": LECTIN,
    "pulses-org: pisum-sativum/green/whole electric-low none": "said of lentils and peas together: holds for split peas",
}


def _ours(cook: Cook, row: Row) -> Range:
    spans = [
        cook(row.key, soak=row.soak, texture=texture, **WAYS[row.way]).minutes
        for texture in row.texture.split("-")
    ]
    first, last = spans[0], spans[-1]
    assert first and last
    return first[0], last[1]


def _inside(ours: Range, row: Row) -> bool:
    """Half of the narrower of the two ranges is shared; a single figure lies within ours."""
    shared = min(ours[1], row.high) - max(ours[0], row.low)
    return shared >= min(ours[1] - ours[0], row.high - row.low) / 2


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.id)
def test_published_minutes_are_met_or_the_miss_is_explained(cook: Cook, row: Row) -> None:
    assert _inside(_ours(cook, row), row) != (row.id in MISSES), _ours(cook, row)


def test_the_share_inside_and_the_width(cook: Cook) -> None:
    assert len(ROWS) >= 115
    assert set(MISSES) <= {row.id for row in ROWS}
    assert 1 - len(MISSES) / len(ROWS) >= 0.92
    spoken = [row for row in ROWS if row.way in ("open", "15psi") and "-" not in row.texture]
    widths = [width(_ours(cook, row)) for row in spoken]
    assert statistics.median(widths) <= 0.45
    errors = [abs(sum(_ours(cook, row)) / (row.low + row.high or 1) - 1) for row in ROWS]
    assert statistics.median(errors) <= 0.25


def test_no_range_is_narrower_than_its_sources(cook: Cook) -> None:
    """At the place a table speaks of, ours is at least as wide as the middle one of its tables."""
    by_pulse: dict[tuple[str, ...], list[Row]] = {}
    for row in ROWS:
        if row.way in ("open", "15psi") and "-" not in row.texture:
            by_pulse.setdefault((row.key, row.way, row.soak, row.texture), []).append(row)
    for rows in by_pulse.values():
        theirs = statistics.median_low([width((row.low, row.high)) for row in rows])
        if rows[0].source not in ("nebraska-beans", "stove-top-manual-in"):
            assert width(_ours(cook, rows[0])) >= theirs - 0.06, rows[0].id


@pytest.mark.parametrize(
    ("key", "words", "practice"),
    [
        ("lens-culinaris/red/split-dehulled", {"soak": "none"}, (2, 5)),
        ("cajanus-cajan//split-dehulled", {"soak": "none"}, (2, 5)),
        ("cajanus-cajan//split-dehulled", {"soak": "none", "texture": "creamy"}, (5, 10)),
        ("vigna-radiata//whole", {"soak": "none"}, (10, 15)),
        ("vigna-mungo//whole", {"soak": "none"}, (10, 15)),
        ("vigna-unguiculata/black-eyed/whole", {"soak": "none"}, (10, 15)),
        ("cicer-arietinum/kabuli/whole", {"texture": "creamy"}, (20, 35)),
        ("phaseolus-vulgaris/kidney/whole", {"texture": "creamy"}, (20, 35)),
        ("phaseolus-vulgaris/kidney/whole", {"texture": "creamy", "soak": "none"}, (30, 50)),
        ("cicer-arietinum/kabuli/whole", {"texture": "creamy", "soak": "none"}, (30, 50)),
    ],
)
def test_rules_of_the_trade_under_pressure(
    cook: Cook, key: str, words: dict[str, str], practice: Range
) -> None:
    """Split 2 to 5 minutes, small whole 10 to 15, soaked large whole 20 to 35, unsoaked 10 to 15 more."""
    minutes = cook(key, vessel="pressure", gauge_kpa=103.42, **words).minutes
    assert minutes
    assert (
        min(minutes[1], practice[1]) - max(minutes[0], practice[0]) >= 0.5 * (practice[1] - practice[0]) * 0.6
    )


@pytest.mark.parametrize(
    ("key", "cups"),
    [
        ("pisum-sativum/green/split-dehulled", (1.5, 2.0)),
        ("cajanus-cajan//split-dehulled", (1.5, 2.0)),
        ("lens-culinaris/brown/whole", (2.0, 3.0)),
        ("vigna-radiata//whole", (2.0, 3.0)),
        ("cicer-arietinum/kabuli/whole", (3.0, 4.0)),
        ("phaseolus-vulgaris/kidney/whole", (3.0, 4.0)),
    ],
)
def test_water_by_the_rules_of_the_trade(cook: Cook, key: str, cups: Range) -> None:
    """1.5 to 2, 2 to 3, 3 to 4 cups a cup."""
    ours = cook(key, soak="none").water_cups_per_cup
    assert ours[0] <= sum(cups) / 2 <= ours[1]
