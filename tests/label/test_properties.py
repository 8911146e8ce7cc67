"""What must hold over the whole glossary: names read back, noise changes nothing, offsets point home."""

from __future__ import annotations

import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.errors import PulseError
from service.glossary.model import Glossary, Pulse
from service.label import Reader
from service.label.normalise import plain
from service.naming import compose
from service.store import files

GLOSSARY = files.load()
READER = Reader(GLOSSARY)
TAGS = sorted(GLOSSARY.rows)
SOLD = [one.pulse for one in GLOSSARY.sold if GLOSSARY.species[one.pulse.species].standing == "pulse"]


def _written(glossary: Glossary, tag: str) -> list[tuple[Pulse, str]]:
    """Every preferred name of everything sold, in every script of a language."""
    return [
        (pulse, name.text)
        for pulse in SOLD
        for name in compose(glossary, pulse, tag)
        if name.use == "preferred"
    ]


def _declared(tag: str) -> dict[str, set[tuple[str, str]]]:
    """Text -> (species, form) of every row of a language: what a homonym may mean is declared there."""
    out: dict[str, set[tuple[str, str]]] = {}
    for row in GLOSSARY.rows[tag]:
        if row.kind in ("base", "fixed"):
            pulse = Pulse.of(row.ref)
            out.setdefault(plain(row.text).replace(" ", ""), set()).add((pulse.species, pulse.form))
    return out


# Names that are not read back, and why that is left so.
LEFT = {
    "lablab-boonmeel": "a hyphened compound of a loan and a head that other beans share",
    "black bean flour": "black gram and black bean are both ground; the phrase is a trade name of neither",
    "arachidi di Kersting nere": "a person's name on an African seed; arachidi alone is groundnut",
    "badam dal": "badam is almond as often as groundnut",
    "hawai amubi dal": "hawai is the word for any pulse in Manipuri",
    "soia verde": "soia verde is also an everyday name of mung",
    "konda kadala parippu": "parippu of chickpea without a class is the desi one",
    "nay tanika ful": "ful is groundnut in Tigrinya and broad bean next door",
    "斑豆片": "flakes of a class that only import papers name",
    "छिलकाबला मसुरी दालि": "masuri dal is the red split by its trade name",
    "chhilkabala masuri dali": "the same in Latin letters",
    "去皮扁豆": "biandou is lablab in one province and lentil in the next; peeled whole lablab is rare",
    "qu pi biandou": "the same in Latin letters",
    "baby green lima beans": "green baby limas are sold frozen far more than dry",
}


@pytest.mark.parametrize("tag", TAGS)
def test_every_name_reads_back_to_its_pulse_or_a_declared_homonym(tag: str) -> None:
    declared = _declared(tag)
    lost = []
    for pulse, text in _written(GLOSSARY, tag):
        reading = READER.read(text, (tag,))
        found = {(one.pulse.species, one.pulse.form) for one in reading.readings if one.probability >= 0.02}
        if (pulse.species, pulse.form) in found or text in LEFT:
            continue
        others = declared.get(plain(text).replace(" ", ""), set())
        if not any(one[0] in {species for species, _ in found} for one in others):
            lost.append(f"{pulse.key}: {text!r} reads as {reading.verdict} {sorted(found)[:3]}")
    assert not lost, "\n".join(lost)


@pytest.mark.parametrize("tag", TAGS)
def test_noise_never_changes_a_certain_reading(tag: str) -> None:
    chance = random.Random(tag)
    noise = [row for row in GLOSSARY.rows[tag] if row.kind == "noise" and row.ref != "generic"]
    names = _written(GLOSSARY, tag)
    changed = []
    for pulse, text in chance.sample(names, min(12, len(names))):
        first = READER.read(text, (tag,))
        if not first.readings or first.readings[0].probability < 0.9:
            continue
        words = chance.sample(noise, min(2, len(noise)))
        label = f"{words[0].text} {text} 500 g, {words[-1].text}"
        top = READER.read(label, (tag,))
        same = top.readings and (top.readings[0].pulse.species, top.readings[0].pulse.form) == (
            first.readings[0].pulse.species,
            first.readings[0].pulse.form,
        )
        if not same or top.readings[0].probability < 0.5:
            changed.append(f"{pulse.key}: {label!r} {top.verdict} {top.readings[:1]}")
    assert not changed, "\n".join(changed)


@settings(max_examples=60, deadline=None)
@given(st.text(min_size=1, max_size=80), st.sampled_from(TAGS))
def test_any_text_gets_a_reading_or_a_clear_error(text: str, tag: str) -> None:
    try:
        reading = READER.read(text, (tag,))
    except PulseError as error:
        assert str(error)
        return
    assert reading.verdict in ("one", "several", "none")
    total = sum(one.probability for one in reading.readings) + reading.none
    assert total == pytest.approx(1, abs=1e-6)
    for used in reading.used:
        assert text[used.start : used.end] == used.text
    for start, end in reading.unread:
        assert 0 <= start < end <= len(text)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(["\u202e", "\u200f", "\u2066", "\u0000", "\t", "\u200b"]), max_size=6))
def test_marks_nobody_sees_change_nothing(marks: list[str]) -> None:
    text = "".join(marks) + "उड़द दाल" + "".join(reversed(marks))
    top = READER.read(text).readings[0].pulse
    assert (top.species, top.form) == ("vigna-mungo", "split-dehulled")


def test_each_product_of_a_text_once_and_no_traces() -> None:
    """A list is read line by line; a name said again in another script, and what a pack may hold traces of, is not."""

    def tops(text: str) -> list[str]:
        return [one.readings[0].pulse.species for one in READER.read_each(text)]

    assert tops("Toor dal, urad dal, chana dal") == ["cajanus-cajan", "vigna-mungo", "cicer-arietinum"]
    assert tops("Toor Dal\nतूर दाल\nதுவரம் பருப்பு") == ["cajanus-cajan"]
    assert tops("Chana dal 1 kg / may contain soya and wheat") == ["cicer-arietinum"]


def test_languages_that_explain_as_much_stand_by_their_tags() -> None:
    """Two workers, and two runs, give one answer: nothing hangs on the order of a set."""
    found = READER.read("toor dal").languages
    assert len(found) == 3
    assert found == READER.read("toor dal").languages == tuple(sorted(found))
