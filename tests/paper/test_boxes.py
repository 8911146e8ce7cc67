"""Nothing is cut, laid over its neighbour or pushed off the page, with the longest names there are."""

from __future__ import annotations

import functools

import pytest

from service.glossary.model import Glossary, Pulse
from service.label import Reader
from service.naming import compose
from service.paper import cards, chart, menu
from service.paper.sheet import Sheet, Table
from service.press import pressed
from service.store import files
from tests.needs import typesetting
from tests.paper.boxes import faults

TAGS = sorted(files.load().rows)


@functools.cache
def longest(tag: str) -> tuple[Pulse, ...]:
    """The three pulses whose names, and the three whose single words, are the longest of a language."""
    glossary = files.load()
    named = [
        (name.text, sold.pulse)
        for sold in glossary.sold
        for name in compose(glossary, sold.pulse, tag)
        if name.use == "preferred"
    ]
    whole = sorted(named, key=lambda one: -len(one[0]))[:3]
    word = sorted(named, key=lambda one: -max(map(len, one[0].split())))[:3]
    return tuple(dict.fromkeys(pulse for _, pulse in (*whole, *word)))


def _widths(sheet: Sheet) -> tuple[float, ...]:
    """From left to right, as the columns stand on the page."""
    widths = next(block.widths for block in sheet.blocks if isinstance(block, Table))
    return widths[::-1] if sheet.rtl else widths


@pytest.mark.parametrize("at", range(0, len(TAGS), 4))
def test_a_chart_of_four_languages(glossary: Glossary, at: int) -> None:
    typesetting()
    tags = TAGS[at : at + 4]
    pulses = list(dict.fromkeys(pulse for tag in tags for pulse in longest(tag)))
    sheet = chart(glossary, tags, pulses)
    assert faults(pressed(sheet, "pdf"), _widths(sheet)) == []


def test_a_chart_of_as_many_languages_as_may_be(glossary: Glossary) -> None:
    typesetting()
    tags = TAGS[::4] + TAGS[1::20]
    pulses = list(dict.fromkeys(pulse for tag in tags for pulse in longest(tag)[:1]))
    sheet = chart(glossary, tags[:24], pulses)
    assert faults(pressed(sheet, "pdf"), _widths(sheet)) == []


@pytest.mark.parametrize("at", range(0, len(TAGS), 11))
def test_cards(glossary: Glossary, at: int) -> None:
    typesetting()
    for tag in TAGS[at : at + 11]:
        assert faults(pressed(cards(glossary, longest(tag)[:3], [tag]), "pdf")) == [], tag


@pytest.mark.parametrize("pair", ["en+gu", "es+en", "ur+en", "am+en", "de+my+km"])
def test_menus(glossary: Glossary, reader: Reader, pair: str) -> None:
    typesetting()
    tags = pair.split("+")
    given = {
        "title": "The invented kitchen with a rather long name",
        "languages": tags,
        "law": "eu",
        "sections": [
            {
                "name": "From the pot",
                "dishes": [
                    {
                        "name": f"Dish {at} of the house, cooked slowly",
                        "pulses": [pulse.key],
                        "price": "12.50",
                    }
                    for at, pulse in enumerate(longest(tags[0])[:3])
                ],
            }
        ],
    }
    sheet = menu(given, glossary, reader.read)
    assert faults(pressed(sheet, "pdf"), _widths(sheet)) == []


def test_the_measure_sees_what_is_wrong(glossary: Glossary) -> None:
    """A table set in other columns than it is measured by is full of faults."""
    typesetting()
    sheet = chart(glossary, ["de", "fi"], longest("de"))
    assert faults(pressed(sheet, "pdf"), (1.0, 1.0, 1.0, 9.0))
