"""Words from outside in, things of the glossary out, or an error that says what is close."""

from __future__ import annotations

import difflib

from ..errors import BadInput, Unknown
from .model import COLOURS, FORMS, Glossary, Pulse
from .tags import TAG, best, canonical, chain


def species(glossary: Glossary, name: str) -> str:
    """The slug of a Latin name, slug or synonym; raises Unknown with close ones."""
    wanted = " ".join(name.lower().split())
    found = glossary.by_latin.get(wanted) or glossary.by_latin.get(wanted.replace(" ", "-"))
    if found:
        return found
    instead = glossary.retired.get(wanted.replace(" ", "-"))
    if instead:
        return species(glossary, instead)
    raise Unknown("species", name, difflib.get_close_matches(wanted, glossary.by_latin, 3, 0.7))


def pulse(glossary: Glossary, name: str, market_class: str = "", form: str = "", colour: str = "") -> Pulse:
    """A pulse from its parts, each known to the glossary; raises Unknown or BadInput."""
    slug = species(glossary, name)
    classes = [one.id for one in glossary.species[slug].market_classes]
    if market_class and market_class not in classes:
        raise Unknown(
            f"market class of {slug}", market_class, difflib.get_close_matches(market_class, classes, 3, 0.5)
        )
    if form and form not in FORMS:
        raise BadInput("form", form, f"is no form; use one of {', '.join(FORMS)}")
    if colour and colour not in COLOURS:
        raise BadInput("colour", colour, f"is no colour; use one of {', '.join(COLOURS)}")
    return Pulse(slug, market_class, form, colour)


def by_key(glossary: Glossary, key: str) -> Pulse:
    """A pulse from its key `species[/class[/form[/colour]]]`."""
    try:
        parts = Pulse.of(key)
    except ValueError as error:
        raise BadInput("pulse", key, str(error)) from None
    return pulse(glossary, parts.species, parts.market_class, parts.form, parts.colour)


def language(glossary: Glossary, tag: str) -> str:
    """A BCP 47 tag the glossary can serve, canonical; raises BadInput or Unknown."""
    one = canonical(tag) if len(tag) <= 35 else tag
    if len(tag) > 35 or not TAG.match(one):
        raise BadInput("language", tag, "is no BCP 47 tag such as hi, pa-PK or zh-Hant")
    if best(one, glossary.rows) is None:
        raise Unknown("language", tag, difflib.get_close_matches(one, glossary.rows, 3, 0.5))
    return one


def held(glossary: Glossary, tag: str) -> str:
    """The tag of the file that serves a language."""
    return next(one for one in chain(tag) if one in glossary.rows)
