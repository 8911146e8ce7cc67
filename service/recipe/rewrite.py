"""A recipe in free text rewritten: one pulse for another, soak and minutes for the kitchen at hand."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from ..errors import BadInput, TooLarge
from ..glossary.model import Pulse, Range
from ..kitchen import Caution, Guidance, Kitchen, guide
from ..kitchen.rules import DRY_FORMS, times_for
from ..label import Reader
from ..naming import compose
from .ingredients import Ingredient, ingredient, name_span
from .swap import Swap, swaps
from .units import written

LONGEST = 12_000
LINES = 300
# Words that tell what a time is for, and time words, in the languages recipes are read in.
SOAK = re.compile(
    r"soak|steep|remoj|tremp|einweich|ammoll|demolh|замоч|ıslat|भिगो|भिजव|ভিজি|நனை|ஊற|నానబె|પલાળ|نقع|انقع|خیس|بھگو|浸|泡|つけ",
    re.IGNORECASE,
)
COOK = re.compile(
    r"cook|boil|simmer|pressure|coc[eié]|hierv|herv|cuec|cuis|cuire|boui|koch|garen|cuoc|bollir|cozinh|вар|pişir|haşla|पका|उबाल|शिज|"
    r"রান্না|সেদ্ধ|வேக|సిక|ఉడిక|બાફ|રાંધ|اطبخ|اسلق|طبخ|بپز|پخت|پکا|ابال|煮|炖|ゆで",
    re.IGNORECASE,
)
MINUTES = r"min\b|mins\b|minutes?|minutos?|minuten|minuti|мин\w*|dakika|मिनट|मिनिट|মিনিট|நிமிட\w*|నిమిషా\w*|મિનિટ|دقيقة|دقائق|دقیقه|منٹ|分钟|分"
HOURS = r"h\b|hours?|hrs?\b|horas?|heures?|stunden?|ore\b|ora\b|час\w*|saat|घंटे|घंटा|घण्टे|तास|ঘণ্টা|மணி நேரம்|గంటల?\w*|કલાક|ساعات|ساعة|ساعت|گھنٹے|小时|時間"
WHISTLES = r"whistles?|सीटी|सीटियाँ|शिट्ट्या|সিটি|விசில்|విజిల్స్?|સીટી|سیٹی"
_NUMBER = r"\d+(?:[.,]\d+)?"
TIME = re.compile(
    rf"({_NUMBER})(\s*(?:-|–|to|a|à|bis|से|إلى|تا)\s*({_NUMBER}))?\s*(?:({MINUTES})|({HOURS})|({WHISTLES}))",
    re.IGNORECASE,
)
OVERNIGHT = re.compile(
    r"overnight|toda la noche|toute la nuit|une nuit|über nacht|tutta la notte|durante a noite|на ночь|bir gece|रात भर|रात्रभर|সারারাত|"
    r"இரவு முழுவதும்|రాత్రంతా|આખી રાત|طوال الليل|ليلة كاملة|رات بھر|یک شب|一夜|一晩",
    re.IGNORECASE,
)
UNDER_PRESSURE = re.compile(
    r"pressure|presión|pression|pressione|schnellkoch|pressão|скороварк|düdüklü|प्रेशर|कुकर|প্রেশার|குக்கர|కుక్కర|કૂકર|ضغط|زودپز|ککر|高压锅|圧力鍋|whistle|सीटी",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Line:
    """One line before and after; `why` names what changed."""

    before: str
    after: str
    why: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Rewritten:
    """A changed recipe: its lines, the two pulses, guidance before and after, and what to know."""

    lines: tuple[Line, ...]
    source: Pulse
    target: Pulse
    grams: Range | None
    before: Guidance
    after: Guidance
    differences: tuple[str, ...]
    warnings: tuple[str, ...]
    others: tuple[Swap, ...]

    @property
    def text(self) -> str:
        """The new recipe, line for line."""
        return "\n".join(line.after for line in self.lines)

    @property
    def cautions(self) -> tuple[Caution, ...]:
        """What the new pulse asks for in this kitchen."""
        return self.after.cautions


def rewrite(
    text: str, reader: Reader, kitchen: Kitchen, target: Pulse | None = None, source: Pulse | None = None,
    languages: tuple[str, ...] = (),
) -> Rewritten:  # fmt: skip
    """The recipe with `target` in place of `source` (the first pulse it asks for), or only timed anew.

    The kitchen's vessel is taken as a pressure cooker where the recipe speaks of one and the kitchen does not.
    Raises BadInput where the recipe names no pulse, TooLarge beyond 12,000 characters.
    """
    if len(text) > LONGEST or text.count("\n") >= LINES:
        raise TooLarge("text", text, f"is longer than {LONGEST} characters or {LINES} lines")
    if not text.strip():
        raise BadInput("text", text, "is empty; give the recipe")
    found = [ingredient(line, reader, languages) if line.strip() else None for line in text.splitlines()]
    asked = next(
        (one for one in found if one and (source is None or one.pulse.species == source.species)), None
    )
    if asked is None:
        raise BadInput("text", text[:60], "names no dried pulse that could be changed")
    if kitchen.vessel == "open" and UNDER_PRESSURE.search(text):
        kitchen = replace(kitchen, vessel="pressure")
    old, new = asked.pulse, target or asked.pulse
    kitchen = _soaked_as_needed(kitchen, new, reader)
    before, after = _guide(old, kitchen, reader), _guide(new, kitchen, reader)
    ratio = _ratio(before, after) if target else 1.0
    work = _Work(reader, languages, old, new, target is not None, ratio, before, after)
    lines = tuple(work.line(line, one) for line, one in zip(text.splitlines(), found, strict=True))
    ranked = swaps(reader.glossary, old, kitchen)
    chosen = next((one for one in ranked if one.pulse.species == new.species), None)
    return Rewritten(
        lines=lines,
        source=old,
        target=new,
        grams=(asked.grams[0] * ratio, asked.grams[1] * ratio) if asked.grams else None,
        before=before,
        after=after,
        differences=_differences(chosen, before, after) if target else (),
        warnings=_warnings(before, after, target is not None and _kind(old, reader) != _kind(new, reader)),
        others=ranked[:5],
    )


@dataclass(frozen=True, slots=True)
class _Work:
    reader: Reader
    languages: tuple[str, ...]
    old: Pulse
    new: Pulse
    swapped: bool
    ratio: float
    before: Guidance
    after: Guidance

    def line(self, line: str, one: Ingredient | None) -> Line:
        """One line changed: name and amount where it is the ingredient, times and name elsewhere."""
        why: list[str] = []
        after = line
        if one and one.pulse.species == self.old.species and _listed(one):
            after = self._ingredient(one, why)
        elif line.strip():
            after = self._method(line, why)
        return Line(line, after, tuple(why))

    def _ingredient(self, one: Ingredient, why: list[str]) -> str:
        if not self.swapped:
            return one.line
        name = self._name(one.line[one.start : one.end])
        why.append("pulse")
        line = one.line[: one.start] + name + one.line[one.end :]
        if one.amount and one.amount.unit and abs(self.ratio - 1) > 0.04:
            low, high = (edge * self.ratio for edge in one.amount.value)
            unit = one.amount.unit
            text = written(low, unit) if low == high else f"{written(low, unit)}-{written(high, unit)}"
            old = one.line[one.amount.start : one.amount.end]
            tail = re.sub(r"^[\d\s.,/¼½¾⅓⅔⅛–-]+", "", old)
            shown = f"{text} {tail}" if tail and old[: -len(tail) or None].endswith(" ") else f"{text}{tail}"
            line = line[: one.amount.start] + shown + line[one.amount.end :]
            why.append("amount")
        return line

    def _method(self, line: str, why: list[str]) -> str:
        sentences = re.split(r"(?<=[.!?।。؟])\s+", line)
        return " ".join(self._sentence(one, why) for one in sentences)

    def _sentence(self, text: str, why: list[str]) -> str:
        reading = self.reader.read(text, self.languages) if text.strip() else None
        span = name_span(reading, self.old) if reading else None
        soaks, cooks = bool(SOAK.search(text)), bool(COOK.search(text) or UNDER_PRESSURE.search(text))
        if soaks:
            text = self._soak(text, why)
        elif cooks:
            text = self._cook(text, why)
        if span and self.swapped:
            again = name_span(self.reader.read(text, self.languages), self.old) if text.strip() else None
            if again:
                text = text[: again[0]] + self._name(text[again[0] : again[1]]) + text[again[1] :]
                why.append("pulse")
        return text

    def _soak(self, text: str, why: list[str]) -> str:
        low, high = self.after.soak_hours
        if high <= 0:
            why.append("no soak")
            return f"{text} [{_NO_SOAK}]"
        found = TIME.search(text)
        if found and found[5]:
            why.append("soak")
            return text[: found.start(1)] + _span(low, high) + " " + found[5] + text[found.end() :]
        return text

    def _cook(self, text: str, why: list[str]) -> str:
        if self.after.minutes is None:
            why.append("refused")
            return text
        found = TIME.search(text)
        if not found:
            return text
        low, high = self.after.minutes
        word = found[4] or found[5] or found[6]
        if found[5]:
            if high < 90:
                return text
            low, high = round(low / 60 * 2) / 2, round(high / 60 * 2 + 0.49) / 2
        elif found[6]:
            if not self.after.whistles:
                return text
            low, high = self.after.whistles
        why.append("time")
        return text[: found.start(1)] + _span(low, high) + " " + word + text[found.end() :]

    def _name(self, old: str) -> str:
        """The new pulse in the language and script the old name was written in."""
        reading = self.reader.read(old, self.languages)
        used = next((one for one in reading.used if one.kind in ("base", "fixed")), None)
        tag = (self.languages or (used.lang if used and used.lang != "la" else "en",))[0]
        native = any(ord(char) > 0x2FF for char in old)
        for name in compose(self.reader.glossary, self.new, tag):
            if name.use == "preferred" and (name.script != "Latn") == native:
                return name.text
        names = compose(self.reader.glossary, self.new, tag) or compose(self.reader.glossary, self.new, "en")
        return names[0].text if names else self.new.species


def _listed(one: Ingredient) -> bool:
    """Whether a line lists an ingredient: an amount that is no time, with a unit or at the front."""
    found = one.amount
    return found is not None and not TIME.search(one.line) and (bool(found.unit) or found.start <= 3)


_NO_SOAK = "no soak needed"


def _span(low: float, high: float) -> str:
    return f"{low:g}" if low == high else f"{low:g}-{high:g}"


def _kind(pulse: Pulse, reader: Reader) -> str:
    """What works in place of what: split, small whole, large whole; each ready form by itself."""
    if pulse.form not in ("", *DRY_FORMS):
        return pulse.form
    return times_for(pulse, reader.glossary.species[pulse.species].cooking).size


def _guide(pulse: Pulse, kitchen: Kitchen, reader: Reader) -> Guidance:
    species = reader.glossary.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def _soaked_as_needed(kitchen: Kitchen, pulse: Pulse, reader: Reader) -> Kitchen:
    """A pulse that must be soaked is, whatever the old recipe did."""
    if kitchen.soak != "none":
        return kitchen
    demanded = any(one.id == "soak-demanded" for one in _guide(pulse, kitchen, reader).cautions)
    return replace(kitchen, soak="overnight") if demanded else kitchen


def _ratio(before: Guidance, after: Guidance) -> float:
    mine, other = sum(before.cooked_g_per_100g), sum(after.cooked_g_per_100g)
    return mine / other if other else 1.0


def _differences(chosen: Swap | None, before: Guidance, after: Guidance) -> tuple[str, ...]:
    found = list(chosen.reasons) if chosen else ["A different pulse: expect another body and taste."]
    if before.soak_hours[1] <= 0 < after.soak_hours[1]:
        found.append("The new one is soaked; the old one was not.")
    if after.soak_hours[1] <= 0 < before.soak_hours[1]:
        found.append("The new one needs no soak.")
    ratio = sum(after.water_ml_per_100g) / max(1.0, sum(before.water_ml_per_100g))
    if ratio > 1.15 or ratio < 0.87:
        found.append(f"Water: {'more' if ratio > 1 else 'less'}, about {ratio:.0%} of before.")
    return tuple(found)


def _warnings(before: Guidance, after: Guidance, across: bool) -> tuple[str, ...]:
    known = {one.id for one in before.cautions}
    found = [one.text for one in after.cautions if one.id not in known]
    if after.refused:
        found.insert(0, f"Not {after.refused.what}: {after.refused.why}; {after.refused.instead}.")
    if across:
        found.append("These two do not stand in for each other well: try a small pot first.")
    return tuple(found)
