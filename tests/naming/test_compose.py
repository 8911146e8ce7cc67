"""How names are joined, on the tiny glossary; expected phrases typed by hand."""

from __future__ import annotations

import pytest

from service.glossary.model import Pulse
from service.naming import compose, romanise
from tests.tiny import tiny

GLOSSARY = tiny()


@pytest.mark.parametrize(
    ("key", "lang", "script", "text"),
    [
        ("cicer-arietinum/desi/whole/black", "hi", "Deva", "काला चना"),
        ("vigna-mungo//split-dehulled/white", "hi", "Deva", "उड़द धुली दाल"),
        ("vigna-mungo//whole/black", "hi", "Deva", "काली साबुत उड़द"),
        ("cicer-arietinum/desi/split-dehulled/yellow", "hi", "Latn", "chana dal"),
        ("vigna-mungo//split-dehulled/white", "hi", "Latn", "dhuli urad dal"),
        ("vigna-mungo//split-dehulled/white", "kn", "Knda", "ಉದ್ದಿನ ಬೇಳೆ"),
        ("vigna-mungo//split-dehulled/white", "kn", "Latn", "uddina bele"),
        ("cajanus-cajan//split-dehulled/yellow", "te", "Latn", "kandipappu"),
        ("cajanus-cajan//whole/brown", "te", "Latn", "kandulu"),
        ("cajanus-cajan//split-dehulled/yellow", "ta", "Taml", "துவரைப் பருப்பு"),
        ("cicer-arietinum/desi/flour/yellow", "en", "Latn", "chickpea flour"),
    ],
)
def test_preferred_name(key: str, lang: str, script: str, text: str) -> None:
    names = compose(GLOSSARY, Pulse.of(key), lang, script)
    assert names[0].text == text
    assert names[0].use == "preferred"


def test_other_order_is_an_alternative() -> None:
    names = compose(GLOSSARY, Pulse.of("vigna-mungo//split-dehulled/white"), "hi", "Latn")
    assert [name.text for name in names] == ["dhuli urad dal", "urad dal dhuli"]
    assert [name.use for name in names] == ["preferred", "also"]


def test_a_missing_word_gives_no_name_rather_than_a_wrong_one() -> None:
    assert compose(GLOSSARY, Pulse.of("cajanus-cajan//flour"), "te") == ()


def test_region_falls_back_to_language_and_never_across_scripts() -> None:
    pulse = Pulse.of("vigna-mungo//split-dehulled/white")
    assert compose(GLOSSARY, pulse, "hi-FJ", "Deva")[0].text == "उड़द धुली दाल"
    assert compose(GLOSSARY, pulse, "hi", "Taml") == ()


# Values of ISO 15919:2001, tables for each script.
@pytest.mark.parametrize(
    ("native", "script", "latin"),
    [
        ("काला चना", "Deva", "kālā canā"),
        ("मूँग", "Deva", "mūm̐ga"),
        ("उड़द", "Deva", "uṛada"),
        ("கடலைப் பருப்பு", "Taml", "kaṭalaip paruppu"),
        ("పెసలు", "Telu", "pesalu"),
        ("ತೊಗರಿ ಬೇಳೆ", "Knda", "togari bēḷe"),
        ("ചെറുപയർ", "Mlym", "ceṟupayar"),
        ("মসুর ডাল", "Beng", "masura ḍāla"),
        ("મગ", "Gujr", "maga"),
        ("ਮੋਠ", "Guru", "mōṭha"),
        ("ହରଡ଼", "Orya", "haraṛa"),
        ("කඩල", "Sinh", "kaḍala"),
    ],
)
def test_romanised_by_iso_15919(native: str, script: str, latin: str) -> None:
    assert romanise(native, script) == latin
