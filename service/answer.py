"""The whole flow in one function: what the label says, how to ask for it, how to cook it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .glossary.model import Pulse
from .kitchen import Guidance, Kitchen, guide
from .label import Reader, Reading
from .naming import Name, compose


@dataclass(frozen=True, slots=True)
class Answer:
    """A reading with, for each pulse it may be, its names by language and its guidance."""

    reading: Reading
    names: dict[Pulse, dict[str, tuple[Name, ...]]]
    guidance: dict[Pulse, Guidance]


def answer(text: str, languages: Sequence[str], kitchen: Kitchen, reader: Reader, place: str = "") -> Answer:
    """Read a label and say of every pulse it may be what it is called and how it is cooked here.

    `languages` are the BCP 47 tags wanted for the names. Raises what reading and cooking raise.
    """
    glossary = reader.glossary
    reading = reader.read(text, (), place)
    pulses = [one.pulse for one in reading.readings]
    names = {one: {tag: compose(glossary, one, tag) for tag in languages} for one in pulses}
    known = {one: glossary.species[one.species] for one in pulses}
    guidance = {one: guide(one, kitchen, had.cooking, had.hazards) for one, had in known.items()}
    return Answer(reading, names, guidance)
