"""What is refused, warned of and let off."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest

from service.glossary.cooking import Figures
from service.glossary.model import FORMS, Glossary, Hazard, Pulse
from service.kitchen import CANNING, Guidance, Kitchen, guide
from service.kitchen.kitchen import VESSELS

Cook = Callable[..., Guidance]


def _ids(guidance: Guidance) -> set[str]:
    return {one.id for one in guidance.cautions}


@pytest.mark.parametrize("vessel", VESSELS)
@pytest.mark.parametrize(
    "key", ["phaseolus-vulgaris/kidney/whole", "phaseolus-coccineus//whole", "phaseolus-vulgaris"]
)
def test_kidney_beans_in_every_vessel(cook: Cook, vessel: str, key: str) -> None:
    """Check value 9: FDA, EFSA and FSAI 30 minutes, PHLS 10; soak 5, 6, 12 and 5 hours."""
    found = cook(key, vessel=vessel)
    caution = next(one for one in found.cautions if one.id == "lectin-boil")
    assert caution.severity == "danger" and "30 minutes" in caution.text and "12 hours" in caution.text
    assert found.cautions[0].severity == "danger"


def test_a_slow_cooker_from_raw_is_refused_with_the_reason_and_the_way_out(cook: Cook) -> None:
    raw = cook("phaseolus-vulgaris/kidney/whole", vessel="slow")
    assert raw.refused and raw.minutes is None
    assert "slow cooker" in raw.refused.why and "30 minutes" in raw.refused.instead
    assert cook("phaseolus-vulgaris/kidney/whole", vessel="slow", boiled_first=True).minutes
    assert cook("phaseolus-vulgaris/kidney/canned", vessel="slow").minutes
    assert cook("lens-culinaris/brown/whole", vessel="slow", soak="none").minutes


def test_an_open_pot_never_boils_kidney_beans_for_less_than_half_an_hour(cook: Cook) -> None:
    minutes = cook("phaseolus-lunatus/baby/whole", texture="firm").minutes
    assert minutes and minutes[0] >= 30


def test_canned_beans_are_let_off_and_flour_is_not(cook: Cook) -> None:
    assert "lectin-boil" not in _ids(cook("phaseolus-vulgaris/kidney/canned"))
    flour = cook("phaseolus-vulgaris/kidney/flour")
    assert "lectin-boil" in _ids(flour) and flour.minutes and flour.minutes[0] >= 30


@pytest.mark.parametrize(
    ("key", "caution"),
    [
        ("lathyrus-sativus//split-dehulled", "lathyrism"),
        ("vicia-faba//canned", "favism"),
        ("lupinus-albus//whole", "lupin-alkaloids"),
        ("lupinus-albus//flour", "allergen-lupin"),
        ("phaseolus-lunatus/large/whole", "cyanide"),
        ("glycine-max//roasted", "allergen-soy"),
        ("arachis-hypogaea//whole", "allergen-groundnut"),
        ("vicia-sativa//split-dehulled", "vetch"),
        ("vigna-radiata//sprouted", "sprouts"),
    ],
)
def test_hazards_of_the_species(cook: Cook, key: str, caution: str) -> None:
    assert caution in _ids(cook(key))


def test_hazards_of_the_way_of_cooking(cook: Cook) -> None:
    assert "foam" in _ids(cook("pisum-sativum/green/split-dehulled", vessel="pressure"))
    assert "half-full" in _ids(cook("cicer-arietinum/kabuli/whole", vessel="pressure"))
    assert "warm-soak" in _ids(cook("cicer-arietinum/kabuli/whole", soak_c=32.0))
    assert "soak-demanded" in _ids(cook("phaseolus-vulgaris/kidney/whole", soak="none"))
    assert "lectin-altitude" in _ids(cook("phaseolus-vulgaris/kidney/whole", altitude_m=1500.0))


def test_hazards_of_the_glossary_are_carried() -> None:
    dust = Hazard("stones", ("whole",), "caution", "Pick out stones.", "common-practice")
    found = guide(Pulse("lens-culinaris", "", "whole"), Kitchen(), Figures(), [dust])
    assert "stones" in _ids(found)
    assert "stones" not in _ids(
        guide(Pulse("lens-culinaris", "", "split-dehulled"), Kitchen(), Figures(), [dust])
    )


def test_poison_is_never_cooked(glossary: Glossary, figures: Mapping[str, Figures]) -> None:
    for slug, species in glossary.species.items():
        if species.standing == "poison":
            for form in FORMS:
                assert guide(Pulse(slug, "", form), Kitchen(), figures[slug]).refused


def test_home_canning_is_only_pointed_to() -> None:
    """Check value 8 lives with the canning authorities: pints 75 and quarts 90 minutes in a pressure canner."""
    assert CANNING.severity == "danger" and "pressure canner" in CANNING.text and "75" not in CANNING.text


def test_species_without_figures_say_so(cook: Cook) -> None:
    found = cook("vigna-aconitifolia//whole")
    assert found.basis == "class-rule" and any("rule of the trade" in note for note in found.notes)
