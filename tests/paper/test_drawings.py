"""Grains drawn at true size: every one sold is on the sheet of all, as long and wide as the glossary says."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from service.glossary.model import Glossary, Pulse
from service.paper import chart
from service.paper.drawing import draw, look
from service.paper.sheet import Picture, Sheet, Table, Words
from service.press import pressed
from tests.needs import typesetting
from tests.paper.boxes import faults


def _cells(sheet: Sheet) -> list[tuple[Picture, list[str]]]:
    table = next(block for block in sheet.blocks if isinstance(block, Table))
    return [
        (
            next(one for one in cell.items if isinstance(one, Picture)),
            [one.text for one in cell.items if isinstance(one, Words)],
        )
        for row in table.rows
        for cell in row
        if cell.items
    ]


def test_every_class_in_every_form_and_colour_is_drawn(glossary: Glossary) -> None:
    cells = _cells(chart(glossary, ["en"], [], "drawings"))
    sold = {one.pulse for one in glossary.sold if one.pulse.colour}
    said = {
        (
            glossary.species[one.species].latin,
            " ".join(filter(None, (one.market_class, one.form, one.colour))),
        )
        for one in sold
    }
    assert {(words[1], words[2]) for _, words in cells} == said and len(cells) == len(sold) > 300
    poisons = {one.latin for one in glossary.species.values() if one.standing == "poison"}
    assert poisons
    for picture, words in cells:
        ElementTree.fromstring(picture.svg)
        assert ("Never food." in words) == (words[1] in poisons)


@pytest.mark.parametrize(
    ("key", "length", "width"),
    [
        # Unal et al. 2006, black-eyed pea at the driest: 9.15 mm long, 6.67 wide.
        ("vigna-unguiculata/black-eyed/whole/white", 9.15, 6.67),
        # Isik 2007, green lentil: 6.72 mm across.
        ("lens-culinaris/large-green/whole/green", 6.72, 6.72),
    ],
)
def test_one_grain_is_as_large_as_measured(glossary: Glossary, key: str, length: float, width: float) -> None:
    """Millimetres of the picture are millimetres of the seed, within the spread between lots."""
    pulse = Pulse.of(key)
    seen = look(glossary, pulse)
    assert seen.length == pytest.approx(length, rel=0.1) and seen.width == pytest.approx(width, rel=0.1)
    svg = draw(glossary, pulse, 1)
    size = re.search(r'width="([0-9.]+)mm".* viewBox="0 0 ([0-9.]+)', svg)
    assert size and float(size[1]) == pytest.approx(float(size[2]), abs=0.06)
    outline = re.search(r' d="([^"]+)"', svg)
    assert outline
    xs = [float(one) for one in re.findall(r"(-?[0-9.]+) -?[0-9.]+", outline[1])]
    assert max(xs) - min(xs) == pytest.approx(seen.length, rel=0.02)


def test_nothing_on_the_sheet_of_all_is_cut(glossary: Glossary) -> None:
    typesetting()
    assert faults(pressed(chart(glossary, ["en"], [], "drawings"), "pdf"), (1.0,) * 4) == []
