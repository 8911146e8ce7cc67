"""The one question asked of an unsure reading: what it parts, and how much its answer tells."""

from __future__ import annotations

import math

import pytest

from service.glossary.model import Glossary, Pulse
from service.label import Reader
from service.label.question import question

COWPEA, BEAN = "vigna-unguiculata//whole", "phaseolus-vulgaris//whole"


@pytest.mark.parametrize(
    ("odds", "asked"),
    [
        # Both come in black, red and white: only the eye parts them.
        ({COWPEA: 0.5, BEAN: 0.5}, "eye"),
        ({"vigna-radiata//whole/green": 0.5, "vigna-mungo//whole/black": 0.5}, "colour"),
        ({"vigna-mungo//whole/black": 0.5, "vigna-mungo//split-with-skin/black": 0.5}, "form"),
    ],
)
def test_asks_what_parts_them(glossary: Glossary, odds: dict[str, float], asked: str) -> None:
    found = question(glossary, [(Pulse.of(key), odd) for key, odd in odds.items()])
    assert found and found.id == asked
    assert {key for answer in found.answers for key in answer.pulses} == set(odds)


def test_an_answer_that_fits_both_tells_less(glossary: Glossary) -> None:
    """Split peas are sold green and yellow, pigeon peas yellow, black gram white: yellow leaves two of the three."""
    pea, toor, urad = (
        "pisum-sativum//split-dehulled",
        "cajanus-cajan//split-dehulled",
        "vigna-mungo//split-dehulled",
    )
    sold: dict[str, float] = {}
    for one in glossary.species["pisum-sativum"].sold:
        if one.pulse.form == "split-dehulled" and one.pulse.colour:
            sold[one.pulse.colour] = sold.get(one.pulse.colour, 0.0) + one.share
    assert set(sold) == {"green", "yellow"}
    green = sold["green"] / sum(sold.values())
    found = question(glossary, [(Pulse.of(pea), 1), (Pulse.of(toor), 1), (Pulse.of(urad), 1)])
    assert found and found.id == "colour"
    assert {answer.text: answer.pulses for answer in found.answers} == {
        "green": (pea,), "yellow": (pea, toor), "white or cream": (urad,)
    }  # fmt: skip
    answers = [green / 3, (1 - green) / 3 + 1 / 3, 1 / 3]
    known = -(green * math.log2(green) + (1 - green) * math.log2(1 - green)) / 3
    assert found.bits == pytest.approx(-sum(one * math.log2(one) for one in answers) - known, abs=1e-4)


@pytest.mark.parametrize("label", ["lobia", "mash", "dal", "beans", "urad"])
def test_no_answer_is_offered_twice_and_each_settles_something(reader: Reader, label: str) -> None:
    reading = reader.read(label)
    assert reading.verdict == "several" and reading.question
    said = [answer.text for answer in reading.question.answers]
    left = [answer.pulses for answer in reading.question.answers]
    assert len(set(said)) == len(said) > 1 and len(set(left)) == len(left)
    assert reading.question.id != "name" and reading.question.bits > 0.1
