"""Tables in print beside ours: water, cups, seeds, soaking, heat, height, z-values, additions; each miss has its reason."""

from __future__ import annotations

import pytest

from service.store import files
from tests.kitchen.tables import Figure, figures_in_print

FOUND = figures_in_print(files.load())
THIN = "a thinner dal than ours; the same maker's open pot lies within"
MISSES = {
    "water and cups: 350 g pigeon pea dal under pressure, l (stove-top-manual-in)": THIN,
    "water and cups: 300 g mung dal under pressure, l (stove-top-manual-in)": THIN,
    "soaking: share of the hours saved at 55 C (ulloa-2016)": "another study saves as much at 45 C already",
}


@pytest.mark.parametrize("figure", FOUND, ids=lambda one: one.id)
def test_a_figure_in_print_lies_inside_or_the_miss_is_explained(figure: Figure) -> None:
    assert figure.inside != (figure.id in MISSES), (figure.published, figure.ours)


def test_the_share_inside() -> None:
    assert len(FOUND) >= 385 and {one.id for one in FOUND} >= set(MISSES)
    assert 1 - len(MISSES) / len(FOUND) >= 0.99
