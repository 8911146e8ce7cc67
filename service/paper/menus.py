"""A short menu in, a bilingual or trilingual Sheet out; the pulses of each dish read, named and guarded."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from ..errors import BadInput
from ..glossary import find
from ..glossary.model import Glossary, Pulse
from ..label import Reading
from ..naming import compose, romanise, scripts
from . import laws
from .sheet import Block, Cell, Heading, Lines, Sheet, Table, Words

MOST_DISHES = 400
MOST_LANGUAGES = 3
DIETS = (
    "vegan",
    "vegetarian",
    "contains milk",
    "contains egg",
    "contains meat",
    "contains fish",
    "gluten-free",
    "fasting",
)
FIELDS = {"title", "languages", "law", "sections", "staff"}
DISH = {"name", "names", "pulses", "notes", "price", "diet"}
Read = Callable[[str], Reading]


@dataclass(frozen=True, slots=True)
class Dish:
    """One dish as given: `names` by language where the writer has them, pulses as read."""

    name: str
    names: Mapping[str, str]
    pulses: tuple[Pulse, ...]
    notes: str
    price: str
    diet: tuple[str, ...]


def menu(given: Mapping[str, Any], glossary: Glossary, read: Read) -> Sheet:
    """The menu as a sheet. `given` holds title, languages (1 to 3 tags), law, sections of dishes, staff.

    A dish's pulses are keys or label text; text that does not read as one pulse raises BadInput
    with the question that would settle it. Nothing is guessed.
    """
    _known("menu", given, FIELDS)
    languages = _languages(given, glossary)
    law = _text(given, "law", "eu")
    laws.allergens([], law)
    sections = [
        (_text(one, "name"), _dishes(one, glossary, read, at))
        for at, one in enumerate(_list(given, "sections"))
    ]
    count = sum(len(dishes) for _, dishes in sections)
    if not 0 < count <= MOST_DISHES:
        raise BadInput("sections", count, f"hold {count} dishes; a menu takes 1 to {MOST_DISHES}")
    blocks: list[Block] = [Heading(1, (Words(_text(given, "title")),))]
    for name, dishes in sections:
        blocks.append(Heading(2, (Words(name),)))
        rows = tuple(_row(dish, languages, law, glossary) for dish in dishes)
        head = tuple(Cell.of(tag, tag) for tag in languages)
        blocks.append(Table((*head, Cell.of("price")), rows, (*[4.0] * len(languages), 1.0)))
    blocks.append(Lines((Words(_footing(law)),), "small"))
    if given.get("staff"):
        blocks += _staff([dish for _, dishes in sections for dish in dishes], law, glossary)
    return Sheet(_text(given, "title"), languages[0], tuple(blocks))


def _footing(law: str) -> str:
    named = {
        "eu": "Regulation (EU) 1169/2011",
        "us": "United States law",
        "india": "Indian food law",
        "codex": "Codex CXS 1",
    }[law]
    return f"Allergens shown are the pulses that {named} lists. Ask the staff about everything else; local food law decides."


def _row(dish: Dish, languages: Sequence[str], law: str, glossary: Glossary) -> tuple[Cell, ...]:
    cells = []
    for at, tag in enumerate(languages):
        items: list[Words] = []
        given = dish.names.get(tag) or (dish.name if at == 0 or tag not in dish.names else "")
        script = _script_of(given, glossary, tag)
        items.append(Words(given, tag, script, "strong"))
        if script != "Latn":
            items.append(Words(romanise(given, script), tag, "Latn", "small"))
        for pulse in dish.pulses:
            items += _named(glossary, pulse, tag)
        if at == 0 and dish.notes:
            items.append(Words(dish.notes, tag))
        if at == 0:
            marks = [
                *dish.diet,
                *(f"contains {word}" for word in laws.allergens([p.species for p in dish.pulses], law)),
            ]
            items += [Words("; ".join(marks), "en", "Latn", "small")] if marks else []
        cells.append(Cell(tuple(items)))
    return (*cells, Cell.of(dish.price))


def _named(glossary: Glossary, pulse: Pulse, tag: str) -> list[Words]:
    names = compose(glossary, pulse, tag)
    first = {name.script: name for name in reversed([name for name in names if name.use == "preferred"])}
    own = next(iter(scripts(glossary, tag)), "Latn")
    if own not in first:
        return []
    out = [Words(first[own].text, tag, own)]
    if own != "Latn":
        latin = first["Latn"].text if "Latn" in first else first[own].romanised
        out.append(Words(latin, tag, "Latn", "small"))
    return out


def _script_of(text: str, glossary: Glossary, tag: str) -> str:
    own = next(iter(scripts(glossary, tag)), "Latn")
    return "Latn" if text.isascii() else own


def _staff(dishes: Sequence[Dish], law: str, glossary: Glossary) -> list[Block]:
    rows = []
    for dish in dishes:
        species = [pulse.species for pulse in dish.pulses]
        inside = "\n".join(
            f"{glossary.species[pulse.species].english} ({pulse.key})" for pulse in dish.pulses
        )
        care = "\n".join(
            [*(f"allergen: {word}" for word in laws.allergens(species, law)), *laws.warnings(species)]
        )
        rows.append((Cell.of(dish.name), Cell.of(inside), Cell.of(care)))
    head = (Cell.of("dish"), Cell.of("pulses in it"), Cell.of("what to know"))
    return [Heading(2, (Words("For the staff"),)), Table(head, tuple(rows), (2.0, 2.0, 3.0))]


def _dishes(section: Any, glossary: Glossary, read: Read, at: int) -> list[Dish]:
    if not isinstance(section, Mapping):
        raise BadInput(f"sections.{at}", section, "must hold name and dishes")
    listed = _list(section, "dishes")
    if len(listed) > MOST_DISHES:
        raise BadInput("dishes", len(listed), f"are too many; a menu takes 1 to {MOST_DISHES} dishes")
    return [_dish(one, glossary, read, f"sections.{at}.dishes.{place}") for place, one in enumerate(listed)]


def _dish(given: Any, glossary: Glossary, read: Read, where: str) -> Dish:
    if not isinstance(given, Mapping):
        raise BadInput(where, given, "must hold at least a name")
    _known(where, given, DISH)
    names = given.get("names", {})
    if not isinstance(names, Mapping) or not all(isinstance(one, str) for one in names.values()):
        raise BadInput(f"{where}.names", names, "must map language tags to names")
    diet = tuple(given.get("diet", ()))
    wrong = [one for one in diet if one not in DIETS]
    if wrong:
        raise BadInput(f"{where}.diet", wrong, f"use words of: {', '.join(DIETS)}")
    pulses = tuple(_pulse(one, glossary, read, f"{where}.pulses") for one in given.get("pulses", ()))
    return Dish(
        _text(given, "name"), names, pulses, _text(given, "notes", ""), _text(given, "price", ""), diet
    )


def _pulse(given: Any, glossary: Glossary, read: Read, where: str) -> Pulse:
    if not isinstance(given, str) or not given.strip():
        raise BadInput(where, given, "must be a pulse key or the words on a label")
    if given.split("/")[0] in glossary.species:
        return find.by_key(glossary, given)
    reading = read(given)
    if reading.verdict == "one":
        return reading.readings[0].pulse
    if reading.question is not None:
        answers = "; ".join(answer.text for answer in reading.question.answers)
        raise BadInput(where, given, f"{given!r} may be several pulses. {reading.question.text} ({answers})")
    raise BadInput(where, given, f"{given!r} does not read as a pulse; write its key or another name")


def _languages(given: Mapping[str, Any], glossary: Glossary) -> list[str]:
    tags = _list(given, "languages")
    if not 1 <= len(tags) <= MOST_LANGUAGES or not all(isinstance(tag, str) for tag in tags):
        raise BadInput("languages", tags, f"must be one to {MOST_LANGUAGES} language tags")
    return [find.language(glossary, tag) for tag in tags]


def _list(given: Mapping[str, Any], field: str) -> list[Any]:
    value = given.get(field)
    if not isinstance(value, list) or not value:
        raise BadInput(field, value, "must be a list that is not empty")
    return value


def _text(given: Mapping[str, Any], field: str, default: str | None = None) -> str:
    value = given.get(field, default)
    if not isinstance(value, str) or (default is None and not value.strip()):
        raise BadInput(field, value, "must be text" if value is not None else "is missing")
    if len(value) > 400:
        raise BadInput(field, value, "is longer than 400 characters")
    return value


def _known(where: str, given: Mapping[str, Any], fields: set[str]) -> None:
    extra = sorted(set(given) - fields)
    if extra:
        raise BadInput(
            where,
            extra,
            f"has unknown fields {', '.join(map(str, extra))}; it takes {', '.join(sorted(fields))}",
        )
