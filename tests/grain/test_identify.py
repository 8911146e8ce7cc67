"""Loose grains: the right pulse, the next question, and poison said first."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from service.errors import BadInput
from service.glossary.model import COLOURS, Glossary
from service.grain import Traits, identify
from service.grain.identify import kinds
from service.grain.traits import STATES
from service.store import files

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
