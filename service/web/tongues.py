"""Catalogues of what the service says, one gettext file for each language, read once."""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import cache
from gettext import c2py
from pathlib import Path

import polib
from babel import Locale, UnknownLocaleError
from babel.numbers import format_decimal
from babel.units import format_unit

from ..errors import Unknown
from ..glossary.model import Glossary
from ..glossary.tags import accepted, chain
from ..talk import Tongue, messages

READ_TWICE = "read twice"
LOCALE = Path(__file__).with_name("locale")


@cache
def catalogues() -> Mapping[str, Mapping[str, str | tuple[str, ...]]]:
    """Translations by tag: English message -> text, or its forms by number. English itself is empty."""
    found: dict[str, Mapping[str, str | tuple[str, ...]]] = {"en": {}}
    for path in sorted(LOCALE.glob("*.po")):
        entries = [one for one in polib.pofile(os.fspath(path), encoding="utf-8") if not one.obsolete]
        found[path.stem] = {
            **{one.msgid: one.msgstr for one in entries if one.msgstr},
            **{one.msgid_plural: _forms(one) for one in entries if any(one.msgstr_plural.values())},
        }
    return found


def _forms(entry: polib.POEntry) -> tuple[str, ...]:
    return tuple(text for _, text in sorted(entry.msgstr_plural.items()))


@cache
def speaking(tag: str) -> Tongue:
    """A language with its catalogue, its plural rule from there, and its numbers and units from CLDR."""
    if tag == "en":
        return Tongue(tag)
    rule = polib.pofile(os.fspath(LOCALE / f"{tag}.po"), encoding="utf-8").metadata["Plural-Forms"]
    which = c2py(rule.partition("plural=")[2].rstrip("; "))
    forms = int(rule.partition("nplurals=")[2].partition(";")[0])
    locale = Locale.parse(tag, sep="-")
    return Tongue(
        tag,
        catalogues()[tag],
        # A fraction takes the form of most numbers, the last, except below two where one and a half is still one.
        plural=lambda count: which(int(count)) if count == int(count) or _one(locale, count) else forms - 1,
        number=lambda one: format_decimal(one, locale=locale),
        units={
            "ml": format_unit(1, "volume-milliliter", "short", locale=locale).replace("1", "").strip(),
            "hundred_g": format_unit(100, "mass-gram", "short", locale=locale),
        },
    )


def _one(locale: Locale, count: float) -> bool:
    return bool(locale.plural_form(count) == "one")


def tongue(tag: str, accept_language: str = "") -> Tongue:
    """The language asked for, else the first accepted that is spoken here, else English; raises Unknown for a wish unmet."""
    known = catalogues()
    for one in chain(tag) if tag else ():
        if one in known:
            return speaking(one)
    if tag:
        raise Unknown("language to speak", tag, sorted(known))
    for one in accepted(accept_language, known):
        return speaking(one)
    return speaking("en")


def spoken(tag: str) -> Tongue:
    """The language asked for where it is spoken, else English."""
    try:
        return tongue(tag)
    except Unknown:
        return speaking("en")


def own_name(tag: str) -> str:
    """A language's name in itself, from CLDR; its tag where CLDR has none."""
    try:
        found = Locale.parse(tag, sep="-").get_language_name()
    except (UnknownLocaleError, ValueError):
        return tag
    return str(found or tag)


def untranslated(tag: str, glossary: Glossary | None = None) -> list[str]:
    """English messages without a translation, those of the glossary's data with them."""
    known = catalogues().get(tag, {})
    return [] if tag == "en" else [one for one in messages(glossary) if one not in known]


def read_twice(tag: str) -> int:
    """How many of a catalogue's texts someone who did not write them has read."""
    entries = polib.pofile(os.fspath(LOCALE / f"{tag}.po"), encoding="utf-8")
    return sum(one.comment == READ_TWICE for one in entries if one.msgstr or one.msgstr_plural)
