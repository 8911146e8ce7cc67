"""Catalogues of what the service says, one gettext file for each language, read once."""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import polib
from babel import Locale, UnknownLocaleError

from ..errors import Unknown
from ..glossary.model import Glossary
from ..glossary.tags import accepted, chain
from ..talk import Tongue, messages

READ_TWICE = "read twice"
LOCALE = Path(__file__).with_name("locale")


@cache
def catalogues() -> Mapping[str, Mapping[str, str]]:
    """Translations by tag: English message -> text. English itself is empty."""
    found: dict[str, Mapping[str, str]] = {"en": {}}
    for path in sorted(LOCALE.glob("*.po")):
        entries = polib.pofile(os.fspath(path), encoding="utf-8")
        found[path.stem] = {one.msgid: one.msgstr for one in entries if one.msgstr and not one.obsolete}
    return found


def tongue(tag: str, accept_language: str = "") -> Tongue:
    """The language asked for, else the first accepted that is spoken here, else English; raises Unknown for a wish unmet."""
    known = catalogues()
    for one in chain(tag) if tag else ():
        if one in known:
            return Tongue(one, known[one])
    if tag:
        raise Unknown("language to speak", tag, sorted(known))
    for one in accepted(accept_language, known):
        return Tongue(one, known[one])
    return Tongue("en")


def spoken(tag: str) -> Tongue:
    """The language asked for where it is spoken, else English."""
    try:
        return tongue(tag)
    except Unknown:
        return Tongue("en")


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
    return sum(one.comment == READ_TWICE for one in entries if one.msgstr)
