"""What is eaten where a language is spoken: the table holds, and a word as wide as beans is read by it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from service.glossary.checks import check
from service.label import Reader
from service.store import files
from tests.tiny import tiny

GLOSSARY = tiny()


@pytest.mark.parametrize(
    ("spoken", "sold", "fault"),
    [
        ({"north": "hi"}, {}, "in one of"),
        ({"north": "hi", "south": "hi"}, {"north": "vigna-mungo 5", "south": "vigna-mungo 5"}, "two markets"),
        ({"north": "hi"}, {"north": "vigna-mungo much"}, "its percentage"),
        ({"north": "hi"}, {"north": "vigna-nowhere 5"}, "its percentage"),
        ({"north": "hi"}, {"north": "vigna-mungo 60, cajanus-cajan 40"}, "leave something"),
    ],
)
def test_a_market_that_does_not_add_up_is_found(
    spoken: dict[str, str], sold: dict[str, str], fault: str
) -> None:
    vocabulary = {**GLOSSARY.vocabulary, "spoken-in": spoken, "sold-in": sold}
    found = [
        one.what for one in check(replace(GLOSSARY, vocabulary=vocabulary)) if one.file == "vocabulary.toml"
    ]
    assert len(found) == 1
    assert fault in found[0]


@pytest.mark.parametrize(
    ("word", "likeliest"),
    [
        # What a bare word for beans means in the kitchen that speaks it (recalled, not looked up).
        ("ถั่ว", {"vigna-radiata", "glycine-max", "arachis-hypogaea"}),
        ("đậu", {"vigna-radiata", "glycine-max", "arachis-hypogaea"}),
        ("beans", {"phaseolus-vulgaris"}),
    ],
)
def test_a_word_as_wide_as_beans_means_what_is_eaten_there(word: str, likeliest: set[str]) -> None:
    reading = Reader(files.load()).read(word)
    assert reading.readings[0].pulse.species in likeliest
    assert reading.verdict == "several"
