"""The changes to a recipe's lines: names, amounts, soak and times, each an edit at its own place in a line."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import ceil, floor

from ..glossary.model import Pulse, Range
from ..kitchen import Guidance
from ..kitchen.rules import DRY_FORMS
from ..label import Reader, Reading
from ..naming import compose
from .agreement import defined, led
from .ingredients import Ingredient, cup_grams, listed, name_spans
from .phrases import DECIMAL_COMMA, Phrases, in_digits, phrases, span
from .times import NEGATED, OVERNIGHT, SOAK, Time, own, times
from .units import UNITS, Amount, written

SENTENCE = re.compile(r"\S.*?(?:[.!?।。؟](?=\s)|$)")
# From this many minutes on, a time told in hours stays in hours.
AN_HOUR_OR_SO = 60.0
# Words for dryness that stand by a name and are no longer true of a canned or fresh pulse.
_DRY = (
    r"(?:dried|dry|sec[oa]s?|secs?|sèches?|secch[ei]|getrocknete\w*|kuru|सूख\w+|يابس\w*|جاف\w*|مجفف\w*|сух\w+)"
)
DRY_BEFORE = re.compile(rf"\b{_DRY}\s+$", re.IGNORECASE)
DRY_AFTER = re.compile(rf"\s+{_DRY}\b", re.IGNORECASE)
AS_IS = ("canned", "roasted", "puffed")


@dataclass(frozen=True, slots=True)
class Line:
    """One line before and after; `why` names what changed."""

    before: str
    after: str
    why: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Edit:
    """New words for `start` to `end` of a line, and why."""

    start: int
    end: int
    text: str
    why: str


@dataclass(frozen=True, slots=True)
class Sentence:
    """A sentence at `start` of line number `line`: its times, and where it names the old pulse."""

    line: int
    start: int
    text: str
    times: tuple[Time, ...]
    names: tuple[tuple[int, int], ...]

    @property
    def soaks(self) -> bool:
        """Whether it tells of a soak, or that none is needed."""
        return bool(SOAK.search(self.text))

    @property
    def negated(self) -> bool:
        """Whether it says not to."""
        return bool(NEGATED.search(self.text))


@dataclass(frozen=True, slots=True)
class Work:
    """What to change in a recipe. `first` is guidance for the old pulse in the kitchen the recipe was written for."""

    reader: Reader
    languages: tuple[str, ...]
    asked: Ingredient
    new: Pulse
    swapped: bool
    ratio: float
    first: Guidance
    after: Guidance
    names: dict[str, tuple[str, frozenset[str]]] = field(default_factory=dict)

    def lines(self, rows: Sequence[str], found: Sequence[Ingredient | None]) -> tuple[Line, ...]:
        """Every row with its edits made; as many as came in, in their order."""
        sentences = [one for number, row in enumerate(rows) for one in self._sentences(number, row)]
        asked = [one if one and self._ours(one) and listed(one) else None for one in found]
        cooked = own(
            [(time, bool(one.names)) for one in sentences for time in one.times],
            self.first.minutes,
            self.first.whistles,
        )
        soaked = any(one.soaks and not one.negated for one in sentences)
        edits: list[list[Edit]] = [[] for _ in rows]
        for number, one in enumerate(asked):
            if one:
                edits[number] += [*self._amount(one), *self._note(one, soaked, bool(cooked))]
        for sentence in sentences:
            for edit in self._sentence(sentence, cooked, asked[sentence.line]):
                edits[sentence.line].append(_moved(edit, sentence.start))
        return tuple(_made(row, found) for row, found in zip(rows, edits, strict=True))

    @property
    def _tag(self) -> str:
        return self.languages[0] if self.languages else self._language(self.asked.line)

    @property
    def _words(self) -> Phrases:
        return phrases(self._tag)

    def _ours(self, one: Ingredient) -> bool:
        return one.pulse.species == self.asked.pulse.species

    def _language(self, text: str) -> str:
        reading = self.reader.read(text)
        used = next((one for one in reading.used if one.kind in ("base", "fixed")), None)
        return used.lang if used and used.lang != "la" else "en"

    def _sentences(self, number: int, row: str) -> Iterator[Sentence]:
        for match in SENTENCE.finditer(row):
            reading = self.reader.read(match[0], self.languages)
            names = name_spans(reading, self.asked.pulse) or self._short(reading)
            yield Sentence(number, match.start(), match[0], times(match[0]), tuple(names))

    def _short(self, reading: Reading) -> list[tuple[int, int]]:
        """The last word of the pulse's name standing for all of it: `the beans` for black beans."""
        last = self.asked.line[self.asked.start : self.asked.end].casefold().split()[-1]
        return [
            (one.start, one.end)
            for one in reading.used
            if one.kind == "noise" and one.how == "exact" and one.text.casefold() == last
        ]

    def _sentence(self, one: Sentence, cooked: Sequence[Time], asked: Ingredient | None) -> Iterator[Edit]:
        if self.swapped:
            for place in one.names:
                yield self._named(one, place, asked)
        if one.soaks:
            yield from self._soak(one)
        mine = [time for time in one.times if any(time is other for other in cooked)]
        whistles = [time for time in mine if time.kind == "whistles"]
        for time in whistles or mine:
            yield self._cook(one, time)

    def _named(self, one: Sentence, place: tuple[int, int], asked: Ingredient | None) -> Edit:
        start, end = place
        if asked and asked.amount and one.start == 0 and asked.amount.stop <= start < asked.amount.end:
            start = min(asked.amount.end, end)
            start += len(one.text[start:end]) - len(one.text[start:end].lstrip())
        if self.new.form not in ("", *DRY_FORMS):
            dry, after = DRY_BEFORE.search(one.text, 0, start), DRY_AFTER.match(one.text, end)
            start, end = dry.start() if dry else start, after.end() if after else end
        old = one.text[start:end]
        name, agrees = self._name(old)
        back, name = led(one.text[:start], defined(old, name), agrees, self._tag)
        start -= back
        old = one.text[start:end]
        if start == 0 and old[:1].isupper():
            first = "İ" if name[:1] == "i" and self._tag.startswith("tr") else name[:1].upper()
            name = first + name[1:]
        return Edit(start, end, name, "pulse")

    def _name(self, old: str) -> tuple[str, frozenset[str]]:
        """The new pulse in the language and script the old name was written in."""
        if old not in self.names:
            native = any(ord(char) > 0x2FF for char in old)
            amount = self.asked.amount
            tinned = amount is not None and amount.unit == "can" and self.new.form == "canned"
            tries = (replace(self.new, form="whole"), self.new) if tinned else (self.new,)
            known = [
                one
                for tag in (self._tag, self._language(old), "en")
                for pulse in tries
                for one in compose(self.reader.glossary, pulse, tag, many=True)
            ]
            fit = [one for one in known if one.use == "preferred" and (one.script != "Latn") == native]
            name = next(iter(fit or known), None)
            self.names[old] = (name.text, name.agrees) if name else (self.new.species, frozenset())
        return self.names[old]

    def _amount(self, one: Ingredient) -> Iterator[Edit]:
        found = one.amount
        if self.swapped and found and found.unit:
            if found.unit == "can" and self.new.form != "canned" and one.grams:
                middle = sum(one.grams) / 2 * self.ratio
                text = in_digits(f"{written(middle, 'g')} {self._words.grams}", one.line)
                yield Edit(found.start, found.end, text + _space(one.line, found.end), "amount")
            elif abs(self._scale(one, found) - 1) > 0.04:
                yield Edit(found.start, found.stop, self._scaled(one, found), "amount")

    def _note(self, one: Ingredient, soaked: bool, timed: bool) -> Iterator[Edit]:
        """What the method does not say and the new pulse asks for, behind its ingredient line."""
        said = []
        if self.after.soak_hours[1] > 0 and not soaked:
            said.append(self._words.soak.format(span(*self.after.soak_hours)))
        if self.swapped and not timed and self.new.form not in AS_IS:
            said.append(
                self._words.cook.format(_whole(self.after.minutes)) if self.after.minutes else self._unsafe
            )
        if said:
            end = len(one.line)
            yield Edit(end, end, in_digits(f" [{', '.join(said)}]", one.line), "note")

    @property
    def _unsafe(self) -> str:
        refused = self.after.refused
        return f"not safe like this; {refused.instead}" if refused else "not safe like this"

    def _scale(self, one: Ingredient, found: Amount) -> float:
        """How many times the old amount: by cooked weight, and by the weight of a cup where it is measured so."""
        if UNITS[found.unit][0] != "volume":
            return self.ratio
        glossary = self.reader.glossary
        return self.ratio * cup_grams(one.pulse, glossary) / cup_grams(self.new, glossary)

    def _scaled(self, one: Ingredient, found: Amount) -> str:
        low, high = (written(edge * self._scale(one, found), found.unit) for edge in found.value)
        text = low if low == high else f"{low}-{high}"
        return in_digits(self._decimal(text), one.line)

    def _soak(self, one: Sentence) -> Iterator[Edit]:
        low, high = self.after.soak_hours
        end = len(one.text)
        told = [time for time in one.times if time.work == "soak" and time.kind != "whistles"]
        if high <= 0:
            if not one.negated:
                yield Edit(end, end, f" [{self._words.no_soak}]", "no soak")
            return
        for time in told:
            word = time.word if time.kind == "hours" else self._words.hours
            yield Edit(time.start, time.end, f"{in_digits(span(low, high), one.text)} {word}", "soak")
        if one.negated and not told and not OVERNIGHT.search(one.text):
            hours = in_digits(span(low, high), one.text)
            yield Edit(end, end, f" [{self._words.soak.format(hours)}]", "soak")

    def _cook(self, one: Sentence, time: Time) -> Edit:
        end = len(one.text)
        if self.after.minutes is None:
            return Edit(end, end, f" [{self._unsafe}]", "refused")
        low, high = self.after.minutes
        text, word = _whole((low, high)), self._words.minutes
        if time.kind == "minutes":
            word = time.word
        elif time.kind == "hours" and low >= AN_HOUR_OR_SO:
            text, word = span(low // 30 / 2, ceil(high / 30) / 2), time.word
        elif time.kind == "whistles" and self.after.whistles:
            text, word = span(*self.after.whistles), time.word
        elif time.kind == "whistles":
            return Edit(end, end, f" [{in_digits(text, one.text)} {word}]", "time")
        return Edit(time.start, time.end, f"{in_digits(self._decimal(text), one.text)} {word}", "time")

    def _decimal(self, text: str) -> str:
        return text.replace(".", ",") if self._tag.split("-")[0] in DECIMAL_COMMA else text


def _whole(minutes: Range) -> str:
    """Minutes as a cook reads them: whole ones, the lowest rounded down and the highest up."""
    return span(floor(minutes[0]), ceil(minutes[1]))


def _space(line: str, place: int) -> str:
    return "" if line[place : place + 1] in ("", " ", ",") else " "


def _moved(edit: Edit, by: int) -> Edit:
    return Edit(edit.start + by, edit.end + by, edit.text, edit.why)


def _made(row: str, edits: Sequence[Edit]) -> Line:
    """A row with its edits; where two claim the same words the first one asked for stands."""
    taken: list[Edit] = []
    for edit in edits:
        if all(edit.end <= other.start or edit.start >= other.end for other in taken):
            taken.append(edit)
    text = row
    for edit in sorted(taken, key=lambda one: (one.start, one.end), reverse=True):
        text = text[: edit.start] + edit.text + text[edit.end :]
    return Line(row, text, tuple(dict.fromkeys(edit.why for edit in taken)))
