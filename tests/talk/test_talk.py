"""Conversations played through, with what each reply must say; SMS by 3GPP TS 23.038; SSML 1.1; the signed webhook."""

from __future__ import annotations

import hashlib
import hmac
import json
import re
import time
from pathlib import Path
from xml.etree import ElementTree

import pytest
from babel import Locale
from lxml import etree

from service.errors import BadInput, TooLarge
from service.glossary.model import Glossary
from service.kitchen.words import span
from service.label import Reader
from service.talk import State, Tongue, messages, sms, ssml, turn
from service.talk.sms import units
from service.web import Settings, create_app
from service.web.tongues import catalogues, speaking, untranslated
from tests.conftest import Api

SSML = etree.RelaxNG(etree.parse(Path(__file__).with_name("ssml-1.1.rng")))

# (language of the replies, turns of what is typed and words the reply must hold; "!" before a word: must not)
TALKS: tuple[tuple[str, tuple[tuple[str, tuple[str, ...]], ...]], ...] = (
    ("en", (("urad dal dhuli", ("Vigna mungo", "split")), ("how long?", ("Cook", "minutes")), ("in Tamil", ("உளு",)))),
    ("en", (("toor dal 1kg", ("Cajanus cajan",)), ("do i soak it", ("No soak",)), ("thanks!", ("welcome",)))),
    ("en", (("rajma", ("Phaseolus vulgaris", "boil hard")), ("do I soak it?", ("Soak 8 to 12", "boil hard")))),
    ("en", (("chickpeas", ("Cicer arietinum",)), ("what can I use instead?", ("Instead",)), ("how much water", ("cups",)))),
    ("en", (("moong dal", ("Vigna radiata",)), ("can i use masoor dal instead", ("lentil",)))),
    ("en", (("yellow dal", ("may be one of", "1.", "2.")), ("shorter than it", ("moong",)), ("yellow", ("That is", "Vigna radiata")))),
    ("en", (("dal", ("may be one of", "yellow")), ("yellow", ("may be one of", "1.")), ("1", ("Ask the grocer",)), ("pigeon pea", ("That is", "Cajanus cajan")))),
    ("en", (("lobia", ("eye",)), ("how long?", ("cowpeas:", "common beans:", "boil")), ("white line", ("Phaseolus",)), ("how long", ("!cowpea",)))),
    ("en", (("basmati rice 5kg", ("does not read",)), ("kabuli chana", ("Cicer arietinum",)))),
    ("en", (("how long?", ("Which pulse",)), ("red lentils", ("Lens culinaris",)), ("how long?", ("Cook",)))),
    ("en", (("what is the capital of Peru?", ("do not know that",)), ("hello", ("Send the words on a label",)))),
    ("en", (("kidney beans", ("boil hard",)), ("how long in a slow way in an open pot", ("Cook", "minutes")))),
    ("en", (("chana dal", ("Cicer arietinum",)), ("and in Urdu", ("چنا",)), ("in Swahili?", ("Ask for",)))),
    ("en", (("masoor dhal", ("Lens culinaris",)), ("now toor dal", ("Cajanus cajan",)), ("how long", ("Cook",)))),
    ("en", (("blak eyed peaz", ("Vigna unguiculata",)), ("soak?", ("oak",)))),
    ("en", (("fava beans", ("G6PD",)), ("how long", ("Cook", "G6PD")))),
    ("en", (("khesari dal", ("nerve poison",)),)),
    ("en", (("lupini beans", ("itter",)), ("what instead", ("Instead", "!Lupinus")))),
    ("hi", (("अरहर दाल", ("Cajanus cajan",)), ("कितनी देर पकाएं", ("मिनट",)), ("शुक्रिया", ()))),
    ("hi", (("राजमा", ("Phaseolus vulgaris",)), ("कितना पानी", ("कप",)))),
    ("hi", (("काबुली चना", ("Cicer arietinum",)), ("तमिल में", ()), ("in tamil", ("கொண்டைக்கடலை",)))),
    ("ta", (("துவரம் பருப்பு", ("Cajanus cajan",)), ("எவ்வளவு நேரம்", ("நிமிட",)))),
    ("ta", (("பாசிப்பருப்பு", ("Vigna radiata",)), ("தண்ணீர் எவ்வளவு", ()))),
    ("te", (("కందిపప్పు", ("Cajanus cajan",)), ("ఎంతసేపు", ("నిమిష",)))),
    ("es", (("garbanzos", ("Cicer arietinum",)), ("¿cuánto tiempo?", ("minutos",)), ("gracias", ()))),
    ("es", (("lentejas pardinas", ("Lens culinaris",)), ("¿hay que remojar?", ()))),
    ("fr", (("pois cassés verts", ("Pisum sativum",)), ("combien de temps ?", ("minutes",)))),
    ("fr", (("haricots rouges", ("Phaseolus vulgaris",)), ("merci", ()))),
    ("ar", (("عدس أحمر", ("Lens culinaris",)), ("كم دقيقة", ("دقيقة",)))),
    ("ur", (("مونگ کی دال", ("Vigna radiata",)), ("کتنی دیر", ("منٹ",)))),
    ("bn", (("মসুর ডাল", ("Lens culinaris",)), ("কতক্ষণ", ("মিনিট",)))),
    ("gu", (("તુવેર દાળ", ("Cajanus cajan",)), ("કેટલી વાર", ("મિનિટ",)))),
    ("mr", (("मूग डाळ", ("Vigna radiata",)), ("किती वेळ", ("मिनिट",)))),
)  # fmt: skip


def _spoken(tag: str) -> Tongue:
    if tag not in catalogues():
        pytest.skip(f"no catalogue for {tag} yet")
    return speaking(tag)


@pytest.mark.parametrize(("tag", "turns"), TALKS, ids=[f"{tag}: {turns[0][0]}" for tag, turns in TALKS])
def test_conversations(tag: str, turns: tuple[tuple[str, tuple[str, ...]], ...], reader: Reader) -> None:
    tongue, state = _spoken(tag), State()
    for text, wanted in turns:
        state, reply = turn(
            state, text, reader, tongue, "IN" if tag in ("hi", "ta", "te", "bn", "gu", "mr") else ""
        )
        assert reply.text
        for word in wanted:
            present = word.lstrip("!") in reply.text
            assert present != word.startswith("!"), (text, word, reply.text)
        assert State.of(json.loads(json.dumps(state.plain()))) == state


def test_a_turn_says_what_it_cannot_use(reader: Reader) -> None:
    with pytest.raises(BadInput):
        turn(State(), "   ", reader, Tongue("en"))
    with pytest.raises(TooLarge):
        turn(State(), "x" * 5000, reader, Tongue("en"))
    with pytest.raises(BadInput):
        State.of({"offered": 7})
    with pytest.raises(BadInput):
        State.of({"kitchen": {"vessel": "wok"}})


@pytest.mark.parametrize(
    ("text", "encoding", "parts", "size"),
    [
        ("a" * 160, "gsm-7", 1, 160),
        ("a" * 161, "gsm-7", 2, 153),
        ("€" * 80, "gsm-7", 1, 160),  # an extension character takes two septets
        ("€" * 81, "gsm-7", 2, 152),  # and is never cut in two
        ("ж" * 70, "ucs-2", 1, 70),
        ("ж" * 71, "ucs-2", 2, 67),
        ("उड़द दाल", "ucs-2", 1, 8),
    ],
)
def test_sms_lengths(text: str, encoding: str, parts: int, size: int) -> None:
    """3GPP TS 23.038: 160 septets or 70 units alone, 153 or 67 in each of several (TS 23.040, 8-bit reference)."""
    found = sms(text)
    assert (found.encoding, len(found.parts), found.units[0]) == (encoding, parts, size)
    assert "".join(found.parts) == text
    assert all(units(part, encoding) == size for part, size in zip(found.parts, found.units, strict=True))


def test_a_fine_apostrophe_does_not_double_the_cost() -> None:
    assert sms("d\u2019eau, 100\u202fg, 8\u201312").parts == ("d'eau, 100 g, 8-12",)
    assert sms("ж\u2019").parts == ("ж\u2019",)


def test_a_long_sms_ends_at_a_word() -> None:
    found = sms("word " * 400, most=3)
    assert len(found.parts) == 3 and found.parts[-1].endswith("word...")


def test_ssml_marks_languages() -> None:
    said = ssml([("Ask for <it> & go\x0c", "en"), ("உளுத்தம் பருப்பு", "ta")], "en")
    assert SSML.validate(etree.fromstring(said)), SSML.error_log
    root = ElementTree.fromstring(said)
    space = "{http://www.w3.org/2001/10/synthesis}"
    assert root.tag == space + "speak" and root.get("version") == "1.1"
    assert [child.tag for child in root] == [space + "s"] * 2
    assert root[1][0].tag == space + "lang" and "உளுத்தம்" in (root[1][0].text or "")


@pytest.mark.parametrize(("tag", "turns"), TALKS, ids=[f"{tag}: {turns[0][0]}" for tag, turns in TALKS])
def test_every_reply_can_be_said(
    tag: str, turns: tuple[tuple[str, tuple[str, ...]], ...], reader: Reader
) -> None:
    """As SSML 1.1, by its content model; the sentences said are those written."""
    tongue, state = _spoken(tag), State()
    for text, _ in turns:
        state, reply = turn(state, text, reader, tongue)
        root = etree.fromstring(ssml(reply.said, tongue.tag))
        assert SSML.validate(root), SSML.error_log
        assert root.get("{http://www.w3.org/XML/1998/namespace}lang") == tag and len(root) == len(reply.said)


@pytest.mark.parametrize(
    "body",
    [
        'version="1.0" xml:lang="en"><s>a</s>',
        'version="1.1"><s>a</s>',
        'version="1.1" xml:lang="en"><s>a<s>b</s></s>',
        'version="1.1" xml:lang="en"><s>a<p>b</p></s>',
        'version="1.1" xml:lang="en"><lang>a</lang>',
        'version="1.1" xml:lang="not a tag"><s>a</s>',
        'version="1.1" xml:lang="en"><b>a</b>',
    ],
)
def test_the_schema_refuses_what_the_standard_refuses(body: str) -> None:
    space = 'xmlns="http://www.w3.org/2001/10/synthesis"'
    assert not SSML.validate(etree.fromstring(f"<speak {space} {body}</speak>"))


def test_translations_keep_their_slots() -> None:
    known = set(messages())
    for tag, catalogue in catalogues().items():
        for english, text in catalogue.items():
            for form in (text,) if isinstance(text, str) else text:
                assert sorted(re.findall(r"\{\w+\}", english)) == sorted(re.findall(r"\{\w+\}", form)), (
                    tag,
                    english,
                )
        assert len(untranslated(tag)) <= 0.1 * len(known), tag


@pytest.mark.parametrize("tag", sorted(set(catalogues()) - {"en"}))
def test_plural_rules_are_those_of_cldr(tag: str) -> None:
    """Numbers of one CLDR category (by Babel) take one form, and numbers of different categories different ones."""
    tongue, rule = speaking(tag), Locale.parse(tag).plural_form
    forms: dict[str, set[int]] = {}
    for number in (*range(200), 0.5, 1.5, 2.5):
        forms.setdefault(rule(number), set()).add(tongue.plural(number))
    assert all(len(one) == 1 for one in forms.values()), forms
    assert len(set.union(*forms.values())) == len(forms), forms


@pytest.mark.parametrize(
    ("tag", "low", "high", "wanted"),
    [
        ("en", 1, 1, "Cook 1 minute"),
        ("en", 0.5, 1, "Cook 0.5 to 1 minute"),
        ("en", 8, 12, "Cook 8 to 12 minutes"),
        ("fr", 0.5, 1.5, "de 0,5 à 1,5 minute "),
        ("de", 0.5, 1, "0,5 bis 1 Minute "),
        ("es", 0.5, 1.5, "de 0,5 a 1,5 minutos"),
        # Three to ten are counted in the plural, eleven and more in the singular.
        ("ar", 5, 10, "من 5 إلى 10 دقائق"),
        ("ar", 8, 12, "من 8 إلى 12 دقيقة"),
    ],
)
def test_minutes_are_counted_as_the_language_counts(tag: str, low: float, high: float, wanted: str) -> None:
    step = f"Cook {span((low, high))} from full pressure."
    assert wanted in speaking(tag).translate(step)


def test_units_are_those_of_cldr() -> None:
    """CLDR 48: short forms of millilitre and gram."""
    step = "Add 120 to 150.5 ml of water for each 100 g dry (1 to 1.5 cups to the cup)."
    assert "150,5 ml" in speaking("fr").translate(step) and "100\u202fg" in speaking("fr").translate(step)
    assert "मि॰ ली॰" in speaking("hi").translate(step) and "100 ग्रा॰" in speaking("hi").translate(step)
    assert speaking("en").translate(step) == step


def test_guidance_in_hindi(api: Api) -> None:
    asked = {"species": "Phaseolus vulgaris", "market_class": "kidney", "form": "whole", "language": "hi"}
    body = api.post("/v1/guidance", json=asked).json()
    assert body["language"] == "hi"
    assert all(any("\u0900" <= char <= "\u097f" for char in step) for step in body["steps"]), body["steps"]
    assert any("\u0900" <= char <= "\u097f" for char in body["cautions"][0]["text"])


def test_the_webhook_takes_only_what_is_signed_and_new(glossary: Glossary) -> None:
    app = create_app(Settings(database="sqlite://", rate=0, webhook_secret="s3cret"), glossary)
    api = Api(app)
    body = json.dumps({"text": "toor dal"}).encode()

    def send(secret: str, sent: int) -> int:
        signed = hmac.new(secret.encode(), f"{sent}.".encode() + body, hashlib.sha256).hexdigest()
        headers = {
            "x-signature-256": f"sha256={signed}",
            "x-timestamp": str(sent),
            "content-type": "application/json",
        }
        return api.post("/v1/chat-webhook", content=body, headers=headers).status_code

    now = int(time.time())
    assert send("s3cret", now) == 200
    assert send("s3cret", now) == 403  # a replay
    assert send("wrong", now) == 403
    assert send("s3cret", now - 1000) == 403
    app.state.engine.dispose()
    closed = create_app(Settings(database="sqlite://", rate=0), glossary)
    assert Api(closed).post("/v1/chat-webhook", json={"text": "toor dal"}).status_code == 403
    closed.state.engine.dispose()
