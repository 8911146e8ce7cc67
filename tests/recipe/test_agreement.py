"""Articles and endings before a name put into a recipe, as grammars of the languages have them."""

from __future__ import annotations

import pytest

from service.glossary.model import Pulse
from service.kitchen import Kitchen
from service.label import Reader
from service.recipe import rewrite
from service.recipe.agreement import defined, led


@pytest.mark.parametrize(
    ("before", "name", "agrees", "tag", "wanted"),
    [
        ("Cocer las ", "garbanzos", "m pl", "es", "Cocer los garbanzos"),
        ("Las ", "garbanzos", "m pl", "es", "Los garbanzos"),
        ("el agua de las ", "garbanzos", "m pl", "es", "el agua de los garbanzos"),
        ("Añadir a los ", "alubias", "f pl", "es", "Añadir a las alubias"),
        ("Escurrir las ", "soja", "f", "es", "Escurrir la soja"),
        ("el caldo de los ", "altramuz", "m", "es", "el caldo del altramuz"),
        ("Cozinhe as ", "grão-de-bico", "m", "pt", "Cozinhe o grão-de-bico"),
        ("a água das ", "feijões", "m pl", "pt", "a água dos feijões"),
        ("Cuocere le ", "ceci", "m pl", "it", "Cuocere i ceci"),
        ("Cuocere i ", "azuki", "m pl", "it", "Cuocere gli azuki"),
        ("Scolare gli ", "lenticchie", "f pl", "it", "Scolare le lenticchie"),
        ("l'acqua delle ", "ceci", "m pl", "it", "l'acqua dei ceci"),
        ("Scolare le ", "soia", "f", "it", "Scolare la soia"),
        ("l'acqua dei ", "azuki", "m pl", "it", "l'acqua degli azuki"),
        ("l'acqua degli ", "erba", "f", "it", "l'acqua dell'erba"),
        ("il brodo dei ", "zafferano", "m", "it", "il brodo dello zafferano"),
        ("l'eau des ", "azuki", "m", "fr", "l'eau de l'azuki"),
        ("Coure les ", "cigrons", "m pl", "ca", "Coure els cigrons"),
        ("Cuire la ", "pois chiches", "m pl", "fr", "Cuire les pois chiches"),
        ("Cuire les ", "azukis", "m pl", "fr", "Cuire les azukis"),
        ("Die ", "halbierte geschälte Mungbohnen", "pl", "de", "Die halbierten geschälten Mungbohnen"),
        ("200 g ", "halbierte Erbsen", "pl", "de", "200 g halbierte Erbsen"),
        # Too little is known of the noun, or the language is not held: nothing is touched.
        ("Cocer las ", "chana dal", "", "es", "Cocer las chana dal"),
        ("Boil the ", "chickpeas", "pl", "en", "Boil the chickpeas"),
        ("Sala ", "garbanzos", "m pl", "es", "Sala garbanzos"),
    ],
)
def test_what_stands_before_the_name(before: str, name: str, agrees: str, tag: str, wanted: str) -> None:
    back, text = led(before, name, frozenset(agrees.split()), tag)
    assert before[: len(before) - back] + text == wanted


def test_arabic_names_stay_definite() -> None:
    assert defined("العدس الأحمر", "بازلاء صفراء") == "البازلاء الصفراء"
    assert defined("عدس أحمر", "بازلاء صفراء") == "بازلاء صفراء"
    assert defined("العدس", "فول الصويا") == "فول الصويا"


def test_a_whole_recipe_agrees(reader: Reader) -> None:
    text = "300 g de lentejas\nPoner las lentejas en agua.\nEl caldo de las lentejas se guarda."
    found = rewrite(text, reader, Kitchen(), Pulse.of("cicer-arietinum/kabuli/whole"), languages=("es",))
    assert "g de garbanzos" in found.text and "Poner los garbanzos" in found.text
    assert "El caldo de los garbanzos" in found.text and "lenteja" not in found.text
