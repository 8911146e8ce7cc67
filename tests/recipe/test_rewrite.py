"""Recipes of eight languages rewritten as a cook would, and what holds for any text."""

from __future__ import annotations

import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from service.errors import BadInput, TooLarge
from service.glossary.model import Pulse
from service.kitchen import Kitchen
from service.label import Reader
from service.recipe import Rewritten, ingredient, rewrite

RECIPES: list[dict[str, Any]] = tomllib.loads(Path(__file__).with_name("recipes.toml").read_text("utf-8"))[
    "recipe"
]


def run(recipe: dict[str, Any], reader: Reader) -> Rewritten:
    """One recipe of the file through the rewriter."""
    target = Pulse.of(recipe["target"]) if "target" in recipe else None
    kitchen = Kitchen(vessel=recipe.get("vessel", "open"))
    return rewrite(recipe["text"].strip(), reader, kitchen, target, languages=(recipe["language"],))


def faults(recipe: dict[str, Any], found: Rewritten) -> list[str]:
    """Every expectation of a recipe that does not hold."""
    text = found.text.casefold()
    told = " ".join((*found.warnings, *(one.text for one in found.cautions))).casefold()
    differs = " ".join(found.differences).casefold()
    wrong = [] if found.source.species == recipe["source"] else [f"source is {found.source.key}"]
    for phrase in recipe["has"]:
        if not any(one.casefold() in text for one in phrase.split("|")):
            wrong.append(f"lacks {phrase!r}")
    wrong += [f"still has {one!r}" for one in recipe["has_not"] if one.casefold() in text]
    wrong += [f"does not warn of {one!r}" for one in recipe["warns"] if one.casefold() not in told]
    wrong += [
        f"names no difference {one!r}" for one in recipe.get("differs", ()) if one.casefold() not in differs
    ]
    for number in recipe.get("same", ()):
        line = found.lines[number - 1]
        if line.before != line.after:
            wrong.append(f"line {number} became {line.after!r}")
    if "grams" in recipe:
        low, high = recipe["grams"]
        if found.grams is None or not low <= sum(found.grams) / 2 <= high:
            wrong.append(f"asks for {found.grams} g")
    return wrong


@pytest.mark.parametrize("recipe", RECIPES, ids=[one["title"] for one in RECIPES])
def test_a_cook_would_agree(recipe: dict[str, Any], reader: Reader) -> None:
    found = run(recipe, reader)
    assert not (wrong := faults(recipe, found)), "\n".join([*wrong, "", found.text])


def test_the_recipes_cover_eight_languages() -> None:
    counts: dict[str, int] = {}
    for one in RECIPES:
        counts[one["language"]] = counts.get(one["language"], 0) + 1
    assert counts == {"en": 5, "hi": 4, "es": 4, "fr": 3, "ta": 2, "de": 3, "ar": 2, "tr": 2}


KITCHEN = Kitchen()
LENTILS = Pulse.of("lens-culinaris/red/split-dehulled/red")
BEANS = Pulse.of("phaseolus-vulgaris/navy/whole/white")
SLOWLY = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))


def test_recipes_without_a_tag_keep_their_source_too(reader: Reader) -> None:
    for one in RECIPES:
        target = Pulse.of(one["target"]) if "target" in one else None
        found = rewrite(one["text"], reader, KITCHEN, target)
        assert found.source.species == one["source"], one["title"]


@SLOWLY
@given(data=st.data())
def test_lines_keep_their_number_and_order(data: st.DataObject, reader: Reader) -> None:
    lines = data.draw(st.permutations(data.draw(st.sampled_from(RECIPES))["text"].strip().splitlines()))
    found = rewrite("\n".join(lines), reader, KITCHEN, LENTILS)
    assert [one.before for one in found.lines] == lines
    assert all(one.why for one in found.lines if one.before != one.after)


@SLOWLY
@given(
    other=st.lists(
        st.sampled_from(("Chop", "the parsley", "salt", "2 eggs", "¡Listo!", "ओह", "  ", "—")), max_size=6
    )
)
def test_lines_of_neither_pulse_nor_time_are_left_alone(other: list[str], reader: Reader) -> None:
    line = " ".join(other)
    text = f"200 g dried chickpeas\n{line}\nBoil the chickpeas for 90 minutes."
    found = rewrite(text, reader, KITCHEN, BEANS)
    assert found.lines[1].after == line
    assert "chickpea" not in found.lines[0].after + found.lines[2].after


@pytest.mark.parametrize(
    "text", ["", " \n\t\n", "\u200b\n\u2060", "\0", "2 eggs\nFry 3 minutes.", "9" * 11_000, "1/0 " * 2000]
)
def test_text_without_a_pulse_is_bad_input(text: str, reader: Reader) -> None:
    with pytest.raises(BadInput):
        rewrite(text, reader, KITCHEN, LENTILS)


@pytest.mark.parametrize("text", ["chickpeas " * 1201, "\n" * 300])
def test_text_over_the_limits_is_too_large(text: str, reader: Reader) -> None:
    with pytest.raises(TooLarge):
        rewrite(text, reader, KITCHEN, LENTILS)


@SLOWLY
@given(text=st.text(max_size=120))
def test_any_text_is_rewritten_or_refused(text: str, reader: Reader) -> None:
    for hostile in (text, f"1 cup lentils\n{text}", f"{text} chickpeas {text} 10 min"):
        try:
            found = rewrite(hostile, reader, KITCHEN, BEANS)
        except BadInput:
            continue
        assert len(found.lines) == len(hostile.splitlines())


@pytest.mark.parametrize(
    ("line", "value", "unit", "grams"),
    [
        ("250 g dried chickpeas", (250, 250), "g", (250, 250)),
        ("1 1/2 cups red lentils", (1.5, 1.5), "cup", (260, 320)),
        ("2½ cups chickpeas", (2.5, 2.5), "cup", (420, 550)),
        ("0,5 kg Kichererbsen", (0.5, 0.5), "kg", (500, 500)),
        ("2 to 3 cups navy beans", (2, 3), "cup", (360, 640)),
        ("2 cans of chickpeas", (2, 2), "can", (420, 540)),
        ("1 (15 oz) can chickpeas", (1, 1), "can", (210, 270)),
        ("2 x 400 g cans chickpeas", (2, 2), "can", (420, 540)),
        ("राजमा २०० ग्राम", (200, 200), "g", (200, 200)),
        ("٢٥٠ غرام حمص", (250, 250), "g", (250, 250)),
        ("2 su bardağı nohut", (2, 2), "cup", (320, 440)),
        ("chickpeas, 1 lb", (1, 1), "lb", (450, 460)),
    ],
)
def test_amounts_are_read(
    line: str, value: tuple[float, float], unit: str, grams: tuple[float, float], reader: Reader
) -> None:
    found = ingredient(line, reader)
    assert found is not None and found.amount is not None and found.grams is not None
    assert (found.amount.value, found.amount.unit) == (value, unit)
    assert grams[0] <= found.grams[0] <= found.grams[1] <= grams[1]


@pytest.mark.parametrize("line", ["2 tbsp peanut oil", "1 tin of tomatoes", "3 eggs", "salt", "500 g"])
def test_other_lines_ask_for_no_pulse(line: str, reader: Reader) -> None:
    assert ingredient(line, reader) is None


def test_water_beside_the_pulse_keeps_its_amount(reader: Reader) -> None:
    text = "1 cup brown lentils\nAdd the lentils and 2 cups of water.\nSimmer for 30 minutes."
    found = rewrite(text, reader, KITCHEN, BEANS)
    assert "2 cups of water" in found.lines[1].after


def test_meat_keeps_its_own_time(reader: Reader) -> None:
    text = "500 g lamb\n1 cup brown lentils\nSimmer the lamb for 80 minutes.\nAdd the lentils and simmer 30 minutes."
    found = rewrite(text, reader, KITCHEN, LENTILS)
    assert "80 minutes" in found.lines[2].after
    assert "30 minutes" not in found.lines[3].after


def test_soak_and_boil_in_one_sentence_each_get_their_own(reader: Reader) -> None:
    text = "400 g dried chickpeas\nSoak 20 hours, drain, then simmer 2 hours."
    after = rewrite(text, reader, KITCHEN, BEANS).lines[1].after
    assert "20 hours" not in after and "8-12 hours" in after


def test_beans_from_a_can_replaced_by_dry_ones_are_told_to_be_cooked(reader: Reader) -> None:
    text = "2 boîtes de 400 g de pois chiches\nChauffer les pois chiches 5 minutes."
    first = rewrite(text, reader, KITCHEN, BEANS, languages=("fr",)).lines[0].after
    assert "boîte" not in first and "400" not in first
    assert "tremper" in first and "cuire" in first


def test_dry_beans_replaced_by_canned_ones_are_no_longer_called_dried(reader: Reader) -> None:
    text = "250 g dried navy beans\nSimmer the navy beans for 90 minutes."
    found = rewrite(text, reader, KITCHEN, Pulse.of("cicer-arietinum/kabuli/canned/cream"))
    assert "dried" not in found.text and "90 minutes" not in found.text
    assert found.grams is not None and found.grams[0] > 400


@pytest.mark.parametrize("other", ["roasted chickpeas", "puffed chickpeas", "chickpea flour", "fresh peas"])
def test_forms_eaten_as_they_are_can_be_swapped(other: str, reader: Reader) -> None:
    found = rewrite(f"100 g {other}\nSimmer for 10 minutes.", reader, KITCHEN, LENTILS)
    assert "lentils" in found.lines[0].after


def test_the_language_of_a_recipe_is_told_from_all_of_it(reader: Reader) -> None:
    text = "1 bardak yeşil mercimek\nYeşil mercimeği 25 dakika haşlayın."
    found = rewrite(text, reader, KITCHEN, Pulse.of("phaseolus-vulgaris/kidney/whole/red"))
    assert "fasulye" in found.lines[0].after and "önce" in found.lines[0].after
