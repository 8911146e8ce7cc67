"""Pocket shopping cards: for each pulse and language what to ask for, large, how to say it, and what it is not."""

from __future__ import annotations

from collections.abc import Sequence

from ..errors import BadInput
from ..glossary import find
from ..glossary.model import Glossary, Pulse
from ..naming import compose, scripts
from .drawing import draw
from .sheet import RIGHT_TO_LEFT, Block, Card, Heading, Item, Picture, Sheet, Words

MOST_CARDS = 120


def cards(
    glossary: Glossary, pulses: Sequence[Pulse], languages: Sequence[str], codes: Sequence[Picture] = ()
) -> Sheet:
    """A sheet of cards, one for each pulse and language that has a name for it.

    `codes` may hold one QR picture for each pulse. Raises BadInput where nothing could be written.
    """
    tags = [find.language(glossary, tag) for tag in languages]
    if not pulses or not tags or len(pulses) * len(tags) > MOST_CARDS:
        raise BadInput("cards", len(pulses) * len(tags), f"must be 1 to {MOST_CARDS}, pulses times languages")
    blocks: list[Block] = []
    for at, pulse in enumerate(pulses):
        for tag in tags:
            items = card(glossary, pulse, tag)
            if items:
                code = (codes[at],) if at < len(codes) else ()
                blocks.append(Card((*items, *code)))
    if not blocks:
        raise BadInput("languages", list(languages), "have no name for these pulses")
    return Sheet("Shopping cards", tags[0], (Heading(1, (Words("Shopping cards"),)), *blocks))


def card(glossary: Glossary, pulse: Pulse, tag: str) -> tuple[Item, ...]:
    """The items of one card, empty where the language has no name."""
    names = [name for name in compose(glossary, pulse, tag) if name.use == "preferred"]
    if not names:
        return ()
    own = scripts(glossary, tag)[0]
    first = next((name for name in names if name.script == own), names[0])
    species = glossary.species[pulse.species]
    parts = ", ".join(
        word for word in (species.english, pulse.market_class, pulse.form, pulse.colour) if word
    )
    items: list[Item] = [Words(first.text, tag, first.script, "large")]
    if first.script != "Latn":
        said = next((name.text for name in names if name.script == "Latn"), "")
        items.append(Words(said or first.romanised, tag, "Latn", "strong"))
        # Letter by letter, scripts without vowels say nothing of the sound.
        if said and first.script not in RIGHT_TO_LEFT and first.romanised.casefold() != said.casefold():
            items.append(Words(first.romanised, tag, "Latn", "small"))
    items += [
        Picture(draw(glossary, pulse, 3), parts),
        Words(f"{parts} ({species.latin})", "en", "Latn", "small"),
    ]
    for look in species.look_alikes[:2]:
        other = glossary.species[Pulse.of(look.key).species]
        items.append(Words(f"Not {other.english}: {look.tell}", "en", "Latn", "small"))
    return tuple(items)
