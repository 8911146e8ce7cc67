"""Amounts as recipes write them: numbers in any digits, fractions, ranges, and unit words of many languages."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import dataclass

from ..glossary.model import Range

# unit -> (what it measures, how much of g or ml one is)
UNITS = {
    "g": ("mass", 1.0), "kg": ("mass", 1000.0), "oz": ("mass", 28.35), "lb": ("mass", 453.6),
    "ml": ("volume", 1.0), "l": ("volume", 1000.0), "cup": ("volume", 236.6), "tbsp": ("volume", 14.8),
    "tsp": ("volume", 4.9), "can": ("can", 1.0),
}  # fmt: skip
# Everyday words for each unit, in small letters; a katori is counted as a cup though no standard fixes it.
WORDS: dict[str, str] = {
    word.replace("_", " "): unit
    for unit, words in {
        "g": "g gm gms gr gram grams gramme grammes gramm gramo gramos gramas grama grammi грамм грамма граммов г "
        "ग्राम ग्रा গ্রাম கிராம் గ్రాములు గ్రాము ગ્રામ ಗ್ರಾಂ ഗ്രാം غرام غ گرام گرم 克 グラム 그램 γραμμάρια ግራም",
        "kg": "kg kilo kilos kilogram kilograms kilogramme kilogramos кг किलो কেজি கிலோ కిలో કિલો كيلو کیلو کلو 公斤 ኪሎ",
        "oz": "oz ounce ounces onza onzas once onces", "lb": "lb lbs pound pounds libra libras livre livres",
        "ml": "ml millilitre milliliter millilitres мл", "l": "l litre liter litres liters litro litros liter л लीटर لتر لیتر",
        "cup": "cup cups katori katoris taza tazas tasse tasses tassen xícara xícaras tazza tazze bardak bardağı su_bardağı fincan чашка чашки "
        "чашек стакан стакана कप कटोरी কাপ கப் కప్పు కప్పులు કપ ವಾಟಿ वाटी كوب أكواب فنجان پیمانه پیالی پیالہ کپ कटोरियाँ 杯 カップ 컵 φλιτζάνι φλιτζάνια ኩባያ",
        "tbsp": "tbsp tablespoon tablespoons cucharada cucharadas cuillerée esslöffel el yemek_kaşığı चम्मच மேசைக்கரண்டி ملعقة",
        "tsp": "tsp teaspoon teaspoons cucharadita cucharaditas teelöffel tl tatlı_kaşığı çay_kaşığı டீஸ்பூன்",
        "can": "can cans tin tins lata latas boîte boîtes boite dose dosen scatola scatole konserve банка банки डिब्बा علبة قوطی 罐 缶",
    }.items()
    for word in words.split()
}  # fmt: skip
VULGAR = {"¼": 0.25, "½": 0.5, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125}
_D = r"\d{1,7}"
ONE = rf"(?<!\d)(?:{_D}[.,]{_D}|{_D}\s*[¼½¾⅓⅔⅛]|{_D}\s+{_D}\s*/\s*{_D}|{_D}\s*/\s*{_D}|[¼½¾⅓⅔⅛]|{_D})"
TO = r"-|–|to|a|à|y|bis|से|إلى|تا"
AMOUNT = re.compile(rf"({ONE})(?:\s*(?:{TO})\s*({ONE}))?\s*(?:x\s*)?", re.IGNORECASE)
# Cans that tell their size: `2 x 400 g cans`, `1 (15 oz) can`.
SIZED = re.compile(
    rf"({ONE})\s*[x×]?\s*\(?\s*({ONE})[\s-]*([^\W\d_]+)\.?\s*\)?[\s-]*([^\W\d_]+)", re.IGNORECASE
)

# The size of a can told after the word for it.
_SIZE = re.compile(
    rf"\s*[(,]?\s*(?:de|of|à|da|di)?\s*{ONE}\s*(?:g|gr|ml|oz)\b\.?(?:\s*(?:each|cada una|chacune|je))?\s*\)?"
)


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount at `start` to `end` of a line, its number up to `stop`; one edge twice where it is no range."""

    start: int
    stop: int
    end: int
    value: Range
    unit: str


def amount(line: str) -> Amount | None:
    """The first amount of a line with its unit; None where there is none."""
    plain = "".join(str(unicodedata.decimal(char, "")) or char for char in line)
    if len(plain) != len(line):
        plain = line
    sized = SIZED.search(plain)
    if sized and WORDS.get(sized[3].casefold(), "can") != "can" and WORDS.get(sized[4].casefold()) == "can":
        count = number(sized[1])
        return Amount(sized.start(), sized.end(1), sized.end(), (count, count), "can")
    for match in AMOUNT.finditer(plain):
        low = number(match[1])
        high = number(match[2]) if match[2] else low
        rest = plain[match.end() :]
        word = re.match(r"\s*([^\W\d_]+(?:[\u0300-\u0fff]*[^\W\d_]*)*)\.?", rest)
        unit = WORDS.get(word[1].casefold(), "") if word else ""
        if not unit and word:
            unit, word = _longest(rest)
        end = match.end() + (word.end() if word and unit else 0)
        if unit == "can" and (size := _SIZE.match(plain, end)):
            end = size.end()
        stop = match.end(2) if match[2] else match.end(1)
        return Amount(match.start(), stop, end, (min(low, high), max(low, high)), unit)
    return None


def _longest(rest: str) -> tuple[str, re.Match[str] | None]:
    """The longest unit word that opens a text: scripts whose marks split words, or that write none between."""
    for size in range(min(16, len(rest)), 0, -1):
        text = rest[:size].strip(" .").casefold()
        follows = rest[size : size + 1]
        if text in WORDS and (not follows.isalpha() or ord(text[0]) > 0x2E80):
            return WORDS[text], re.match(re.escape(rest[:size]), rest)
    return "", None


def number(text: str) -> float:
    """The value of `1 1/2`, `1½`, `0,5`, `3/4`."""
    text = text.strip()
    for sign, value in VULGAR.items():
        if sign in text:
            whole = text.replace(sign, "").strip()
            return (float(whole) if whole else 0.0) + value
    parts = re.split(r"\s+(?=\d+\s*/)", text)
    if "/" in parts[-1]:
        above, below = re.split(r"\s*/\s*", parts[-1])
        return (float(parts[0]) if len(parts) > 1 else 0.0) + float(above) / max(float(below), 1.0)
    return float(text.replace(",", "."))


def written(value: float, unit: str) -> str:
    """A number as a cook writes it in that unit: grams to fives, cups and cans to quarters."""
    if unit in ("g", "ml"):
        return f"{5 * round(value / 5) or 5:g}"
    if unit in ("kg", "l"):
        return f"{max(0.05, round(value * 20) / 20):g}"
    quarters = max(1, round(value * 4))
    whole, rest = divmod(quarters, 4)
    part = ("", "1/4", "1/2", "3/4")[rest]
    return f"{whole} {part}".strip() if whole else part
