"""The parts of reading, on the tiny glossary and on any text at all."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from service.errors import BadInput, TooLarge
from service.label import Reader
from service.label.letters import LONGEST, SHORTEST, Letters
from service.label.normalise import normalise
from service.label.segment import segment
from service.label.skeleton import skeleton
from tests.tiny import tiny

READER = Reader(tiny())


@given(st.text(max_size=200))
def test_offsets_point_back_into_the_label(text: str) -> None:
    normal = normalise(text)
    assert len(normal.text) == len(normal.starts) == len(normal.ends)
    for start, end in zip(normal.starts, normal.ends, strict=True):
        assert 0 <= start < end <= len(text)
    assert list(normal.starts) == sorted(normal.starts)
    for token in segment(normal.text):
        start, end = normal.span(token.start, token.end)
        assert token.text in normalise(text[start:end]).text.replace("\n", "") or len(token.text) > 1


def test_vowel_signs_survive_and_accents_do_not() -> None:
    assert normalise("मसूर").text == "मसूर"
    assert normalise("Poïs Cassé").text == "pois casse"
    assert normalise("عَدَس").text == "عدس"
    assert normalise("۱۲").text == "12"


WORDS = st.text("abकခ한", min_size=1, max_size=9)


@given(st.lists(WORDS, unique=True, max_size=40), WORDS)
def test_words_a_letter_away_are_those_that_distance_finds(words: list[str], sought: str) -> None:
    """Held against the optimal string alignment distance of rapidfuzz over every word."""
    kept = [word for word in words if SHORTEST <= len(word) <= LONGEST]
    meant = {word for word in kept if OSA.distance(word, sought) == 1} if len(sought) >= SHORTEST else set()
    assert set(Letters(words).near(sought)) == meant


def test_a_word_of_a_phrase_may_be_misspelt() -> None:
    for label in ("kala chnaa", "kalla chana", "uradd dhuli dal"):
        meant = "vigna-mungo" if label.startswith("urad") else "cicer-arietinum"
        assert READER.read(label).readings[0].pulse.species == meant, label


@pytest.mark.parametrize(
    "spellings",
    [
        ("masoor", "massoor", "masur", "मसूर", "মসুর"),
        ("moong", "mung", "मूंग"),
        ("toor", "tur", "तूर"),
        ("chana", "channa", "चना"),
    ],
)
def test_spellings_of_one_word_share_a_skeleton(spellings: tuple[str, ...]) -> None:
    assert len({skeleton(normalise(word).text) for word in spellings}) == 1


@pytest.mark.parametrize(
    ("label", "key"),
    [
        ("Premium URAD dhuli dal 1 kg", "vigna-mungo//split-dehulled/white"),
        ("उड़द धुली दाल", "vigna-mungo//split-dehulled/white"),
        ("kandipappu", "cajanus-cajan//split-dehulled/yellow"),
        ("kandi pappu", "cajanus-cajan//split-dehulled/yellow"),
        ("ಉದ್ದಿನ ಬೇಳೆ / urad dal", "vigna-mungo//split-dehulled/white"),
        ("kala chana", "cicer-arietinum/desi/whole/black"),
        ("chanadal", "cicer-arietinum/desi/split-dehulled/yellow"),
        ("chickpee flour", "cicer-arietinum/desi/flour/yellow"),
    ],
)
def test_labels_read(label: str, key: str) -> None:
    reading = READER.read(label)
    assert reading.verdict == "one"
    assert reading.readings[0].pulse.key == key


@pytest.mark.parametrize("label", ["basmati rice 5 kg", "chickpea chips", "1234", "hello there"])
def test_what_is_no_pulse_is_turned_away(label: str) -> None:
    assert READER.read(label).verdict == "none"


def test_used_spans_are_the_words_of_the_label() -> None:
    label = "★ Premium — URAD dhuli dal"
    for used in READER.read(label).used:
        assert label[used.start : used.end] == used.text


@given(st.text(min_size=1, max_size=400))
@settings(max_examples=200, deadline=None)
def test_any_text_reads_to_probabilities_that_sum_to_one(text: str) -> None:
    if not text.strip():
        return
    reading = READER.read(text)
    total = reading.none + sum(one.probability for one in reading.readings)
    assert abs(total - 1) < 1e-6
    assert reading.verdict in ("one", "several", "none")
    if reading.verdict == "several":
        assert len(reading.readings) >= 2


@pytest.mark.parametrize("text", ["", "   ", "\n\t"])
def test_no_text_is_a_clear_error(text: str) -> None:
    with pytest.raises(BadInput, match="empty"):
        READER.read(text)


def test_a_huge_text_is_refused() -> None:
    with pytest.raises(TooLarge, match="characters"):
        READER.read("urad " * 20_000)


def test_control_and_bidirectional_marks_do_not_hide_a_name() -> None:
    assert READER.read("u\u200era\u202ed\u0007 dhuli dal").readings[0].pulse.species == "vigna-mungo"
