"""The soak and cook chart: what each pulse asks for, in an open pot and under pressure, with what to beware of."""

from __future__ import annotations

from collections.abc import Sequence

from ..glossary.model import Glossary, Pulse, Range
from ..kitchen import Guidance, Kitchen, guide
from .naming_cells import drawn, named, plain
from .sheet import Cell, Heading, Lines, Sheet, Table, Words

OPEN = Kitchen()
PRESSURE = Kitchen(vessel="pressure", gauge_kpa=103.4)


def cooking_chart(glossary: Glossary, tags: Sequence[str], pulses: Sequence[Pulse], title: str = "") -> Sheet:
    """A table of soak, minutes and water for tender pulses at sea level, named in the languages given."""
    head = (
        Cell.of("true size"), Cell.of("pulse"), *(Cell.of(tag, tag) for tag in tags), Cell.of("soak, h"),
        Cell.of("open pot, min"), Cell.of("pressure 103 kPa, min"), Cell.of("water, cups to a cup"), Cell.of("beware"),
    )  # fmt: skip
    rows = tuple(_row(glossary, tags, pulse) for pulse in pulses)
    name = title or "Soak and cook"
    note = (
        "For tender pulses of this year at sea level, soaked where it helps; pressure minutes count from full pressure "
        "with the pressure falling of itself. The manual of the cooker comes first. Rules and sources: see each pulse."
    )
    widths = (1.2, 1.6, *[1.4] * len(tags), 0.8, 1.0, 1.1, 1.1, 2.4)
    blocks = (Heading(1, (Words(name),)), Table(head, rows, widths), Lines((Words(note),), "small"))
    return Sheet(name, tags[0], blocks, landscape=True)


def _row(glossary: Glossary, tags: Sequence[str], pulse: Pulse) -> tuple[Cell, ...]:
    simmered, pressed = (_guide(glossary, pulse, kitchen) for kitchen in (OPEN, PRESSURE))
    grave = [one.text for one in simmered.cautions if one.severity == "danger"]
    return (
        drawn(glossary, pulse),
        plain(glossary, pulse),
        *(named(glossary, pulse, tag) for tag in tags),
        Cell.of(_span(simmered.soak_hours)),
        Cell.of(_span(simmered.minutes)),
        Cell.of(_span(pressed.minutes)),
        Cell.of(_span(simmered.water_cups_per_cup)),
        Cell.of(" ".join(grave), size="small"),
    )


def _guide(glossary: Glossary, pulse: Pulse, kitchen: Kitchen) -> Guidance:
    species = glossary.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def _span(pair: Range | None) -> str:
    if pair is None:
        return "not so"
    if pair[1] <= 0:
        return "none"
    return f"{pair[0]:g}" if pair[0] == pair[1] else f"{pair[0]:g} to {pair[1]:g}"
