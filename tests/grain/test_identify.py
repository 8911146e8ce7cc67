"""Loose grains: the right pulse, the next question, and poison said first."""

from __future__ import annotations

import random
import statistics
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.errors import BadInput
from service.glossary.model import COLOURS, Glossary
from service.grain import Traits, identify
from service.grain.identify import kinds
from service.grain.traits import STATES
from service.store import files

from .play import play

GLOSSARY = files.load()
POISONS = [slug for slug, one in GLOSSARY.species.items() if one.standing == "poison"]


@pytest.mark.parametrize(
    ("seen", "key"),
    [
        # Published sizes: Isik 2007 (Laird lentil), IJFST 2013 (urad), Unal 2006 (black-eyed), BfR (jequirity).
        (Traits(6.72, 6.72, 2.58, "whole", "green", shape="lens"), "lens-culinaris/large-green/whole/green"),
        (Traits(4.9, 3.75, 3.25, "whole", "black", "white", eye="white-line"), "vigna-mungo//whole/black"),
        (Traits(9.15, 6.67, 6.01, "whole", "white", eye="black-patch"), "vigna-unguiculata/black-eyed/whole/white"),
        (Traits(state="whole", outside="red", eye="black-patch", surface="glossy", length_mm=6.5), "abrus-precatorius//whole/red"),
    ],
)  # fmt: skip
def test_published_grains_are_known_again(seen: Traits, key: str) -> None:
    ranked = identify(GLOSSARY, seen).ranked
    assert ranked[0].pulse.species == key.split("/")[0], ranked[:3]


def test_poison_is_said_before_all_else() -> None:
    found = identify(GLOSSARY, Traits(outside="red", surface="glossy", eye="black-patch", state="whole"))
    assert found.warnings and "never food" in found.warnings[0] and "Abrus precatorius" in found.warnings[0]


@pytest.mark.parametrize(
    "seen",
    [
        # What the BfR and botanical gardens describe of the two: red with a black end; mottled and glossy with a pale knob.
        Traits(outside="red", surface="glossy", eye="black-patch"),
        Traits(outside="mottled", surface="glossy", eye="white-knob", length_mm=12),
    ],
)
def test_likely_poison_ends_the_questions(seen: Traits) -> None:
    found = identify(GLOSSARY, seen)
    assert found.stop == "poison" and found.ask is None and not found.settled and found.warnings


def test_everything_sold_is_found_in_few_questions(capsys: pytest.CaptureFixture[str]) -> None:
    games = [(kind, play(GLOSSARY, kind)) for kind in kinds(GLOSSARY) if not kind.poison]
    certain = [(kind, game) for kind, game in games if game.end.stop == "certain"]
    with capsys.disabled():
        asked = statistics.mean(game.asked for _, game in games)
        print(
            f"\n{len(games)} kinds of grain: {asked:.1f} questions on average, 90 % certain in {len(certain) / len(games):.0%}"
        )
    assert asked <= 4.5 and len(certain) >= 0.8 * len(games)
    assert all(game.names(kind) for kind, game in certain)
    assert all(game.end.stop in ("certain", "alike") for _, game in games)


def test_poison_is_warned_of_while_eyes_err_and_pulses_seldom_are() -> None:
    dice = random.Random(0)
    poison = [play(GLOSSARY, kind, dice) for kind in kinds(GLOSSARY) if kind.poison for _ in range(30)]
    pulses = [play(GLOSSARY, kind, dice) for kind in kinds(GLOSSARY) if not kind.poison]
    assert statistics.mean(bool(game.warned) for game in poison) >= 0.85
    assert statistics.mean(game.end.stop == "poison" for game in pulses) <= 0.03


def test_halves_speak_for_split_pulses() -> None:
    seen = Traits(length_mm=6.5, outside="yellow")
    before, after = (
        sum(
            one.probability for one in identify(GLOSSARY, traits).ranked if one.pulse.form.startswith("split")
        )
        for traits in (seen, replace(seen, halves=0.6))
    )
    assert after > before and after > 0.9
    with pytest.raises(BadInput, match="halves"):
        Traits(halves=1.2)


def test_every_poison_has_a_grain_and_a_warning(glossary: Glossary) -> None:
    known = {kind.key.split("/")[0] for kind in kinds(glossary) if kind.poison}
    assert known == set(POISONS)
    for slug in POISONS:
        grain = glossary.species[slug].grains[0]
        low, high = grain.length_mm or (0, 0)
        seen = Traits(
            (low + high) / 2, state="whole", outside=_colour(glossary, slug), shape=grain.shape, eye=grain.eye
        )
        assert any(slug.replace("-", " ") in text.lower() for text in identify(glossary, seen).warnings), slug


def _colour(glossary: Glossary, slug: str) -> str:
    return next(one.pulse.colour for one in glossary.species[slug].sold if one.pulse.form == "whole")


@settings(max_examples=100, deadline=None)
@given(
    st.none() | st.floats(1, 40), st.sampled_from(("", *STATES)), st.sampled_from(("", *COLOURS)),
)  # fmt: skip
def test_probabilities_are_probabilities(length: float | None, state: str, outside: str) -> None:
    found = identify(GLOSSARY, Traits(length, state=state, outside=outside))
    assert 0 < sum(one.probability for one in found.ranked) <= 1.001
    assert found.settled or found.ask is None or found.ask.trait not in ("length_mm",) or length is None
    assert list(found.ranked) == sorted(found.ranked, key=lambda one: -one.probability)


def test_unknown_traits_are_refused() -> None:
    with pytest.raises(BadInput):
        Traits(length_mm=900)
    with pytest.raises(BadInput):
        Traits(outside="turquoise")
