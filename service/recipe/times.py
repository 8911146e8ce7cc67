"""Times as recipes write them, in many languages: how long, in what unit, and for which work."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from math import log

from ..glossary.model import Range
from .units import ONE, TO, number

SOAK = re.compile(
    r"soak|steep|remoj|tremp|einweich|ammoll|demolh|замоч|ıslat|भिगो|भिगा|भिजव|ভিজি|நனை|ஊற|నానబె|પલાળ|نقع|خیس|بھگو|浸|泡|つけ",
    re.IGNORECASE,
)
COOK = re.compile(
    r"cook|boil|simmer|coc[eié]|hierv|herv|cuec|cuis|cuire|boui|koch|garen|cuoc|bollir|cozinh|вар|pişir|haşla|पका|उबाल|शिज|"
    r"রান্না|সেদ্ধ|வேக|సిక|ఉడిక|બાફ|રાંધ|طبخ|سلق|بپز|پخت|پکا|ابال|煮|炖|ゆで",
    re.IGNORECASE,
)
# Other work that takes time and is not the pulse's boil.
OTHER = re.compile(
    r"\bfry|\bsaut|\brest\b|\bcool|sofr|freír|repos|revenir|dorer|tiédir|brat|ruhen|ziehen|भून|तल\b|तड़क|வதக்|தாளி|قلي|يقلى|حمّر|"
    r"kavur|kızart|dinlen|rosol|soffri|refog|жар",
    re.IGNORECASE,
)
MINUTES = r"min\b|mins\b|mn\b|minutes?|minutos?|minuten|minuti|мин\w*|dakika|मिनट|मिनिट|মিনিট|நிமிட\w*|నిమిషా\w*|મિનિટ|دقيقة|دقائق|دقیقه|منٹ|分钟|分"
HOURS = r"h\b|hours?|hrs?\b|horas?|heures?|stunden?|ore\b|ora\b|час\w*|saat|घंटे|घंटा|घण्टे|तास|ঘণ্টা|மணி ?நேரம்|గంటల?\w*|કલાક|ساعات|ساعة|ساعت|گھنٹے|小时|時間"
WHISTLES = r"whistles?|सीटी|सीटियाँ|सीटियां|शिट्ट्या|সিটি|விசில்|విజిల్స్?|સીટી|سیٹی"
# What may follow hours: a half in words, or minutes in two figures.
REST = (
    r"\s*(?:(and a half|y media|et demie|e mezza|e meia|ونصف|و نصف|buçuk)|(?:and|y|et|und|e)?\s*([0-5]\d)(?!\d)"
    rf"(?:\s*(?:{MINUTES}))?)"
)
TIME = re.compile(
    rf"({ONE})(?:\s*(?:{TO})\s*({ONE}))?[\s-]*(?:({MINUTES})|({HOURS})(?:{REST})?|({WHISTLES}))",
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
SLOWLY = re.compile(
    r"slow[ -]?cooker|crock|olla lenta|mijoteuse|schongarer|yavaş pişirici|медленноварк", re.IGNORECASE
)
NEGATED = re.compile(
    r"\b(?:no|not|without|sin|sans|pas|ohne|nicht|keine?|senza|non|sem|não|без|не|لا|بدون)\b|n't|नहीं|बिना|தேவையில்லை|இல்லாமல்|"
    r"gerek yok|gerekmez|ıslatmadan",
    re.IGNORECASE,
)
_BREAK = re.compile(r"[,;:،、]|\bthen\b|\bpuis\b|\bluego\b|\bdann\b", re.IGNORECASE)
BREAK_COSTS = 25
# A time this many times longer or shorter than expected is not the pulse's own.
FAR = log(4)
NAMED = 0.7


@dataclass(frozen=True, slots=True)
class Time:
    """A time at `start` to `end` of a text. `value` in minutes, or a count of whistles.

    `kind` is minutes, hours or whistles; `word` the unit as written; `work` is soak, cook, other or empty.
    """

    start: int
    end: int
    value: Range
    kind: str
    word: str
    work: str


def times(text: str) -> tuple[Time, ...]:
    """Every time a sentence tells, in its order."""
    return tuple(_time(text, match) for match in TIME.finditer(text))


def _time(text: str, match: re.Match[str]) -> Time:
    low = number(match[1])
    high = number(match[2]) if match[2] else low
    kind = "minutes" if match[3] else "hours" if match[4] else "whistles"
    if kind == "hours":
        more = 30.0 if match[5] else float(match[6] or 0)
        low, high = low * 60 + more, high * 60 + more
    word = match[3] or match[4] or match[7]
    return Time(match.start(), match.end(), (low, max(low, high)), kind, word, _work(text, match, kind))


def _work(text: str, match: re.Match[str], kind: str) -> str:
    """The work named nearest to a time; a comma between them sets it further off."""
    if kind == "whistles":
        return "cook"
    near = [
        (_gap(text, match, verb), place, work)
        for place, (work, pattern) in enumerate((("cook", COOK), ("soak", SOAK), ("other", OTHER)))
        for verb in pattern.finditer(text)
    ]
    if near:
        return min(near)[2]
    return "cook" if UNDER_PRESSURE.search(text) else ""


def _gap(text: str, one: re.Match[str], other: re.Match[str]) -> int:
    first, last = sorted((one, other), key=lambda match: match.start())
    between = text[first.end() : last.start()]
    return len(between) + BREAK_COSTS * len(_BREAK.findall(between))


def own(told: Iterable[tuple[Time, bool]], minutes: Range | None, whistles: Range | None) -> tuple[Time, ...]:
    """Which cooking times of a recipe are the pulse's: one in minutes or hours, one in whistles.

    `told` pairs each time with whether its sentence names the pulse. Where nothing is expected the longest is.
    """
    cooking = [(time, named) for time, named in told if time.work == "cook"]
    found = []
    for expected, blown in ((minutes, False), (whistles, True)):
        fit = [
            (_unlike(time, expected) - NAMED * named, -time.value[1], place, time)
            for place, (time, named) in enumerate(cooking)
            if (time.kind == "whistles") == blown and (blown or _unlike(time, expected) < FAR)
        ]
        if fit:
            found.append(min(fit, key=lambda one: one[:3])[3])
    return tuple(found)


def _unlike(time: Time, expected: Range | None) -> float:
    """How far a time is from the one expected, as a logarithm; 0 inside it."""
    if expected is None:
        return 0.0
    low, high = (max(edge, 0.5) for edge in expected)
    middle = max(sum(time.value) / 2, 0.5)
    return max(0.0, log(low / middle), log(middle / high))
