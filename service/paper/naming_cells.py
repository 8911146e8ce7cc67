"""Cells that charts share: a pulse drawn, a pulse in plain words, its name in a language."""

from __future__ import annotations

from ..glossary.model import Glossary, Pulse
from ..naming import compose, scripts
from .drawing import draw
from .sheet import Cell, Item, Picture, Words


def named(glossary: Glossary, pulse: Pulse, tag: str) -> Cell:
    """The preferred name in the language's own script with its everyday Latin spelling below; or a blank."""
    names = [name for name in compose(glossary, pulse, tag) if name.use == "preferred"]
    if not names:
        return Cell()
    own = scripts(glossary, tag)[0]
    first = next((name for name in names if name.script == own), names[0])
    items: list[Item] = [Words(first.text, tag, first.script)]
    if first.script != "Latn":
        latin = next((name.text for name in names if name.script == "Latn"), first.romanised)
        items.append(Words(latin, tag, "Latn", "small"))
    if first.status != "checked":
        items.append(Words("draft", "en", "Latn", "mark"))
    return Cell(tuple(items))


def drawn(glossary: Glossary, pulse: Pulse) -> Cell:
    return Cell((Picture(draw(glossary, pulse, 3), said(glossary, pulse)),))


def said(glossary: Glossary, pulse: Pulse) -> str:
    words = (glossary.species[pulse.species].english, pulse.market_class, pulse.form, pulse.colour)
    return ", ".join(word for word in words if word)


def plain(glossary: Glossary, pulse: Pulse) -> Cell:
    species = glossary.species[pulse.species]
    parts = " ".join(word for word in (pulse.market_class, pulse.form, pulse.colour) if word)
    return Cell(
        (
            Words(species.english),
            Words(species.latin, "la", "Latn", "small"),
            Words(parts, "en", "Latn", "small"),
        )
    )
