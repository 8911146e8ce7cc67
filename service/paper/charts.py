"""Glossary charts as sheets: pulses by languages, one species in all its forms, and pairs that are taken for each other."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..errors import BadInput
from ..glossary import find
from ..glossary.model import FORMS, Glossary, Pulse
from .cooking import cooking_chart
from .drawing import draw
from .naming_cells import drawn, named, plain, said
from .sheet import Block, Cell, Heading, Lines, Picture, Sheet, Table, Words

MOST_LANGUAGES = 24
MOST_PULSES = 120
KINDS = ("species", "form", "shop", "look-alikes", "cooking", "drawings")
# Drawings abreast on the sheet of all grains.
ABREAST = 4


def chart(
    glossary: Glossary,
    languages: Sequence[str],
    pulses: Sequence[Pulse],
    kind: str = "species",
    title: str = "",
) -> Sheet:
    """A chart of pulses (rows) by languages (columns), with drawings at true size; gaps stay blank.

    `kind`: `species` (the pulses given), `form` (the first one in every form it is sold in),
    `shop` (everything a shop of these languages has a word of its own for), `look-alikes` (pairs),
    `cooking` (soak, minutes and water by pulse), `drawings` (the grains of every class and form sold).
    """
    tags = [find.language(glossary, tag) for tag in languages]
    if not 1 <= len(tags) <= MOST_LANGUAGES:
        raise BadInput("languages", len(tags), f"must be 1 to {MOST_LANGUAGES}")
    if kind not in KINDS:
        raise BadInput("kind", kind, f"use one of {', '.join(KINDS)}")
    if kind == "look-alikes":
        return _look_alikes(glossary, tags, pulses, title)
    if kind == "cooking":
        return cooking_chart(glossary, tags, pulses or default_pulses(glossary), title)
    if kind == "drawings":
        return _drawings(glossary, tags[0], {one.species for one in pulses}, title)
    rows = _chosen(glossary, tags, pulses, kind)
    if not 1 <= len(rows) <= MOST_PULSES:
        raise BadInput("pulses", len(rows), f"must be 1 to {MOST_PULSES}")
    head = (Cell.of("true size"), Cell.of("pulse"), *(Cell.of(tag, tag) for tag in tags))
    body = tuple(
        (drawn(glossary, one), plain(glossary, one), *(named(glossary, one, tag) for tag in tags))
        for one in rows
    )
    name = (
        title
        or {"species": "Pulses by name", "form": "One pulse in all its forms", "shop": "What the shop has"}[
            kind
        ]
    )
    blocks: tuple[Block, ...] = (
        Heading(1, (Words(name),)),
        Table(head, body, (1.2, 1.6, *[1.4] * len(tags))),
        Lines(
            (
                Words(
                    "An empty cell is a name we do not have; it is never filled by guess. Drawings are at true size."
                ),
            ),
            "small",
        ),
    )
    return Sheet(name, tags[0], blocks, landscape=len(tags) > 3)


def atlas(
    glossary: Glossary, languages: Sequence[str], pulses: Sequence[Pulse]
) -> Iterator[tuple[int, int, Sheet]]:
    """Charts of all languages, a few to a sheet: (done, of, sheet) one after another."""
    groups = [languages[at : at + 6] for at in range(0, len(languages), 6)]
    for at, group in enumerate(groups):
        yield at + 1, len(groups), chart(glossary, group, pulses, "species", f"Pulses in {', '.join(group)}")


def _chosen(glossary: Glossary, tags: Sequence[str], pulses: Sequence[Pulse], kind: str) -> list[Pulse]:
    if kind == "species":
        return list(pulses) or default_pulses(glossary)
    if kind == "form":
        if not pulses:
            raise BadInput("pulses", [], "name the pulse whose forms are wanted")
        first = pulses[0]
        sold = [one.pulse for one in glossary.species[first.species].sold if first.covers(one.pulse)]
        best = {one.form: one for one in reversed(sold)}
        return [
            Pulse(first.species, first.market_class, form, best[form].colour)
            for form in FORMS
            if form in best
        ]
    own = {
        row.ref
        for tag in tags
        for row in glossary.rows[find.held(glossary, tag)]
        if row.kind == "fixed" and row.use == "preferred"
    }
    found = [Pulse.of(key) for key in sorted(own)]
    return [one for one in found if glossary.species[one.species].standing == "pulse"][:MOST_PULSES]


def default_pulses(glossary: Glossary, most: int = 30) -> list[Pulse]:
    """What is sold most: the combinations with the largest share, one for each species and form."""
    best: dict[tuple[str, str], tuple[float, Pulse]] = {}
    for sold in glossary.sold:
        if glossary.species[sold.pulse.species].standing == "pulse":
            slot = (sold.pulse.species, sold.pulse.form)
            if slot not in best or sold.share > best[slot][0]:
                best[slot] = (sold.share, sold.pulse)
    ranked = sorted(best.values(), key=lambda one: -one[0])
    return [pulse for _, pulse in ranked[:most]]


def _drawings(glossary: Glossary, tag: str, species: set[str], title: str) -> Sheet:
    """Every class in every form and colour of these species, else of all, seeds that are no food among them."""
    pulses = dict.fromkeys(
        one.pulse
        for one in glossary.sold
        if one.pulse.colour and (not species or one.pulse.species in species)
    )
    cells = [
        Cell((*drawn(glossary, one).items, *plain(glossary, one).items, *_never(glossary, one)))
        for one in pulses
    ]
    if not cells:
        raise BadInput(
            "pulses", sorted(species), "have no colours in the glossary, so there is nothing to draw"
        )
    rest = [Cell()] * (-len(cells) % ABREAST)
    full = [*cells, *rest]
    rows = tuple(tuple(full[at : at + ABREAST]) for at in range(0, len(full), ABREAST))
    name = title or "Grains at true size"
    head = (Cell.of("true size"), *[Cell()] * (ABREAST - 1))
    return Sheet(name, tag, (Heading(1, (Words(name),)), Table(head, rows, (1.0,) * ABREAST)))


def _look_alikes(glossary: Glossary, tags: Sequence[str], pulses: Sequence[Pulse], title: str) -> Sheet:
    wanted = {one.species for one in pulses}
    rows = []
    for species in glossary.species.values():
        if species.standing != "pulse" or (wanted and species.id not in wanted):
            continue
        for one in species.look_alikes:
            other = Pulse.of(one.key)
            tell = Cell((Words(one.tell), *_never(glossary, other)))
            this = Pulse(
                species.id, "", other.form if other.form in {sold.pulse.form for sold in species.sold} else ""
            )
            rows.append((_pair(glossary, this, tags[0]), _pair(glossary, other, tags[0]), tell))
    if not rows:
        raise BadInput("pulses", sorted(wanted), "have no look-alikes in the glossary")
    name = title or "The same or not the same"
    head = (Cell.of("this"), Cell.of("is not this"), Cell.of("how to tell"))
    return Sheet(
        name, tags[0], (Heading(1, (Words(name),)), Table(head, tuple(rows[:MOST_PULSES]), (2.0, 2.0, 3.0)))
    )


def _never(glossary: Glossary, pulse: Pulse) -> tuple[Words, ...]:
    poison = glossary.species[pulse.species].standing == "poison"
    return (Words("Never food.", "en", "Latn", "strong"),) if poison else ()


def _pair(glossary: Glossary, pulse: Pulse, tag: str) -> Cell:
    return Cell(
        (
            Picture(draw(glossary, pulse, 2), said(glossary, pulse)),
            *plain(glossary, pulse).items,
            *named(glossary, pulse, tag).items,
        )
    )
