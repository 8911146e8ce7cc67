"""A pulse in, its names in one language out: form word, colour word and base, joined as that language joins."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ..glossary.model import Glossary, Pulse, Row
from .grammar import SHAPES, Grammar, combinations, grammar, scripts
from .romanise import romanise

SLOT = re.compile(r"\{(base|colour|form)((?:\.\w+)*)\}")
MOST = 12
# A trade name covers a pulse with open slots where it covers this much of what is sold under it.
COVERED = 0.75


@dataclass(frozen=True, slots=True)
class Name:
    """One written name; `romanised` by ISO 15919 where the script is Brahmic, else by letter.

    `agrees` is the gender and number of its noun (`m`, `f`, `pl` ...), empty where not known.
    """

    text: str
    script: str
    lang: str
    romanised: str
    use: str
    status: str
    sources: tuple[str, ...]
    agrees: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class _Draft:
    text: str
    rows: tuple[Row, ...]
    agrees: frozenset[str] = frozenset()


def compose(
    glossary: Glossary, pulse: Pulse, lang: str, script: str = "", many: bool = False
) -> tuple[Name, ...]:
    """Names of a pulse, the preferred one of each script first; empty where words are wanting.

    `lang` is a BCP 47 tag the glossary holds (or falls back to), `script` an ISO 15924 code or
    empty for every script of the language. `many` asks for the plural, as recipes speak of grains,
    where the language has one beside its citation form.
    """
    names: list[Name] = []
    for one in (script,) if script else scripts(glossary, lang):
        drafts = _drafts(glossary, pulse, grammar(glossary, lang, one), many)
        seen: dict[str, _Draft] = {}
        for draft in drafts:
            seen.setdefault(draft.text, draft)
            if len(seen) == MOST:
                break
        for place, draft in enumerate(seen.values()):
            names.append(_name(draft, one, lang, "also" if place else "preferred"))
    return tuple(names)


def has_name(glossary: Glossary, pulse: Pulse, lang: str) -> bool:
    """Whether any name can be written, found without writing them all."""
    return any(
        next(_drafts(glossary, pulse, grammar(glossary, lang, one)), None) for one in scripts(glossary, lang)
    )


def _name(draft: _Draft, script: str, lang: str, use: str) -> Name:
    states = {row.status for row in draft.rows}
    status = "disputed" if "disputed" in states else "checked" if states == {"checked"} else "draft"
    sources = tuple(dict.fromkeys(row.source for row in draft.rows))
    return Name(draft.text, script, lang, romanise(draft.text, script), use, status, sources, draft.agrees)


def _drafts(glossary: Glossary, pulse: Pulse, words: Grammar, many: bool = False) -> Iterator[_Draft]:
    """Every way to write it, best first."""
    sold = combinations(glossary).get(pulse.species, ())
    class_named = not pulse.market_class or f"{pulse.species}/{pulse.market_class}" in words.bases
    fixed = list(_fixed(pulse, words, sold))
    sure = [
        row for key, row in fixed if row.use == "preferred" and (key.market_class or class_named is not False)
    ]
    strong = [row for row in sure if _wins(row, pulse, class_named, fixed)]
    composed = _composed(pulse, words, sold, many)
    if many and any(_plural(base, words) is not base for base in _bases(pulse, words)[:1]):
        # A trade name has no plural beside it; what can be said of many comes first.
        yield from composed
    yield from (_Draft(row.text, (row,), row.agrees) for row in strong)
    yield from composed
    yield from (_Draft(row.text, (row,), row.agrees) for _, row in fixed if row not in strong)


def _wins(row: Row, pulse: Pulse, class_named: bool, fixed: list[tuple[Pulse, Row]]) -> bool:
    """A trade name goes first unless it leaves out a class that the bases can say."""
    key = Pulse.of(row.ref)
    if pulse.market_class and not key.market_class:
        return not class_named
    return any(one is row for _, one in fixed)


def _fixed(
    pulse: Pulse, words: Grammar, sold: tuple[tuple[Pulse, float], ...]
) -> Iterator[tuple[Pulse, Row]]:
    """Trade names that cover the pulse, the most specific first, in file order among equals."""
    found: list[tuple[bool, int, int, int, Pulse, Row]] = []
    for key, row in words.fixed.get(pulse.species, ()):
        if not key.form and pulse.form not in ("", "whole"):
            continue
        if _covers(key, pulse, sold):
            filled = sum(map(bool, (key.market_class, key.form, key.colour)))
            found.append((row.use != "preferred", -bool(key.market_class), -filled, len(found), key, row))
    for *_, key, row in sorted(found, key=lambda one: one[:4]):
        yield key, row


def _covers(key: Pulse, pulse: Pulse, sold: tuple[tuple[Pulse, float], ...]) -> bool:
    if key.covers(pulse):
        return True
    meets = (
        key.market_class in ("", pulse.market_class) or not pulse.market_class,
        key.form in ("", pulse.form) or not pulse.form,
        key.colour in ("", pulse.colour) or not pulse.colour,
    )
    if not all(meets):
        return False
    within = [(one, share) for one, share in sold if pulse.covers(one)]
    total = sum(share for _, share in within)
    return bool(total) and sum(share for one, share in within if key.covers(one)) >= COVERED * total


def _composed(
    pulse: Pulse, words: Grammar, sold: tuple[tuple[Pulse, float], ...], many: bool
) -> Iterator[_Draft]:
    """Compositions: the preferred words first, then one part at a time exchanged."""
    bases = [_plural(base, words) if many else base for base in _bases(pulse, words)]
    patterns = _patterns(pulse, words)
    if not bases or not patterns:
        return
    named = _names_class(bases[0], pulse)
    tell = _tells_colour(pulse, named, sold)
    first = patterns[0]
    tries = [(first, bases[0], 0, tell)]
    tries += [(pattern, bases[0], 0, tell) for pattern in patterns[1:]]
    tries += [(first, base, 0, _tells_colour(pulse, _names_class(base, pulse), sold)) for base in bases[1:]]
    tries += [(first, bases[0], place, tell) for place in range(1, len(words.forms.get(pulse.form, ())))]
    tries += [(pattern, bases[0], 0, not tell) for pattern in patterns]
    for pattern, base, place, with_colour in tries:
        draft = _join(pulse, words, pattern, base, place, with_colour)
        if draft:
            yield draft


def _names_class(base: Row, pulse: Pulse) -> bool:
    return not pulse.market_class or "/" in base.ref or base.kind == "fixed"


def _bases(pulse: Pulse, words: Grammar) -> list[Row]:
    """Nouns for the pulse: of its class where the class has one, else of its species."""
    of_class = (
        list(words.bases.get(f"{pulse.species}/{pulse.market_class}", ())) if pulse.market_class else []
    )
    for key, row in words.fixed.get(pulse.species, ()):
        if pulse.market_class == key.market_class != "" and key.form in ("", "whole") and not of_class:
            of_class.append(row)
    return of_class or list(words.bases.get(pulse.species, ()))


def _plural(base: Row, words: Grammar) -> Row:
    """The plural beside a citation form, word by word the likest; the form itself where it has none."""
    nouns = base.text.split()
    twins = [
        (sum(_shared(one, other) for one, other in zip(row.text.split(), nouns, strict=True)), row)
        for row in words.shapes.get(base.ref, ())
        if row.agrees == base.agrees | {"pl"} and len(row.text.split()) == len(nouns)
    ]
    like, found = max(twins, key=lambda one: one[0], default=(0, base))
    return found if like * 5 >= 3 * sum(map(len, nouns)) else base


def _patterns(pulse: Pulse, words: Grammar) -> list[Row]:
    """Patterns of the most specific ref that has any."""
    keys = [
        (sum(map(bool, key.key.split("/"))), ref)
        for ref in words.patterns
        if "/" in ref or ref == pulse.species
        for key in (Pulse.of(ref),)
        if key.covers(pulse)
    ]
    refs = [ref for _, ref in sorted(keys, key=lambda one: -one[0])]
    for ref in (*refs, pulse.form or "whole", "default"):
        if ref in words.patterns:
            return words.patterns[ref]
    return []


def _tells_colour(pulse: Pulse, named: bool, sold: tuple[tuple[Pulse, float], ...]) -> bool:
    """The colour is said where it tells apart things sold under the rest of the name."""
    rest = Pulse(pulse.species, pulse.market_class if named else "", pulse.form)
    colours = {one.colour for one, _ in sold if rest.covers(one) and one.market_class == rest.market_class}
    if not named:
        colours |= {one.colour for one, _ in sold if rest.covers(one)}
    return bool(pulse.colour) and len(colours - {""}) > 1


def _join(
    pulse: Pulse, words: Grammar, pattern: Row, base: Row, place: int, with_colour: bool
) -> _Draft | None:
    """The text of one composition, or None where a word it needs is wanting."""
    features = pattern.agrees or frozenset(base.agrees - SHAPES)
    used = [pattern, base]
    form = _adjective(words.forms.get(pulse.form, ()), features, place)
    colour = _adjective(words.colours.get(pulse.colour, ()), features, 0) if with_colour else None
    asked = {slot for slot, _ in SLOT.findall(pattern.text)}
    if "form" in asked and form is None and pulse.form not in ("", "whole"):
        return None
    if with_colour and (colour is None or "colour" not in asked):
        return None
    if place and "form" not in asked:
        return None
    if colour is not None and colour.text in base.text.split():
        return None
    used += [row for row, slot in ((form, "form"), (colour, "colour")) if row and slot in asked]

    def fill(slot: re.Match[str]) -> str:
        name, shape = slot[1], frozenset(slot[2].split(".")[1:])
        if name == "base":
            return _shaped(base, shape, words) or "\0"
        row = form if name == "form" else colour
        return row.text if row else ""

    text = SLOT.sub(fill, pattern.text)
    if "\0" in text:
        return None
    text = " ".join(text.split()).replace(" )", ")").replace("( ", "(").replace(" ,", ",")
    for left, right in words.sandhi:
        text = text.replace(left, right)
    return _Draft(" ".join(text.split()), tuple(used), features)


def _adjective(rows: list[Row] | tuple[Row, ...], features: frozenset[str], place: int) -> Row | None:
    """The row that agrees best; `place` picks among rows that agree equally well."""
    if not rows:
        return None
    agreeing = [row for row in rows if row.agrees <= features] or [row for row in rows if not row.agrees]
    if not agreeing:
        return rows[0] if not place else None
    most = max(len(row.agrees) for row in agreeing)
    best = [row for row in agreeing if len(row.agrees) == most]
    return best[place] if place < len(best) else None


def _shaped(base: Row, shape: frozenset[str], words: Grammar) -> str:
    """The noun in the shape asked for; its plain text where it has no such row, empty where unsure."""
    if not shape or shape <= base.agrees:
        return base.text
    rows = [row for row in words.shapes.get(base.ref, ()) if shape <= row.agrees]
    if not rows:
        return base.text
    if base.use == "preferred":
        return next((row.text for row in rows if row.use == "preferred"), rows[0].text)
    closest = max(rows, key=lambda row: _shared(row.text, base.text))
    return closest.text if _shared(closest.text, base.text) * 5 >= 3 * len(base.text) else ""


def _shared(one: str, other: str) -> int:
    """Length of the common beginning."""
    return next(
        (at for at, (a, b) in enumerate(zip(one, other, strict=False)) if a != b), min(len(one), len(other))
    )
