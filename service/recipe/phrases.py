"""The few words the rewriter adds, in the languages recipes are read in; and numbers in the reader's own digits."""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Phrases:
    """Words of one language; `soak` holds a place for hours, `cook` for minutes."""

    no_soak: str
    soak: str
    cook: str
    minutes: str
    hours: str
    grams: str


ENGLISH = Phrases("no soak needed", "soak {} hours first", "cook {} minutes", "minutes", "hours", "g")
PHRASES = {
    "en": ENGLISH,
    "es": Phrases("no necesita remojo", "remojar antes {} horas", "cocer {} minutos", "minutos", "horas", "g"),
    "fr": Phrases("trempage inutile", "tremper d'abord {} heures", "cuire {} minutes", "minutes", "heures", "g"),
    "de": Phrases("Einweichen nicht nötig", "vorher {} Stunden einweichen", "{} Minuten kochen", "Minuten", "Stunden", "g"),
    "it": Phrases("ammollo non necessario", "prima in ammollo {} ore", "cuocere {} minuti", "minuti", "ore", "g"),
    "pt": Phrases("não precisa de molho", "demolhar antes {} horas", "cozinhar {} minutos", "minutos", "horas", "g"),
    "tr": Phrases("ıslatmaya gerek yok", "önce {} saat ıslatın", "{} dakika pişirin", "dakika", "saat", "g"),
    "ru": Phrases("замачивать не нужно", "сначала замочить на {} ч", "варить {} минут", "минут", "часов", "г"),
    "hi": Phrases("भिगोना ज़रूरी नहीं", "पहले {} घंटे भिगोएँ", "{} मिनट पकाएँ", "मिनट", "घंटे", "ग्राम"),
    "mr": Phrases("भिजवण्याची गरज नाही", "आधी {} तास भिजवा", "{} मिनिटे शिजवा", "मिनिटे", "तास", "ग्रॅम"),
    "bn": Phrases("ভেজানোর দরকার নেই", "আগে {} ঘণ্টা ভিজিয়ে রাখুন", "{} মিনিট সেদ্ধ করুন", "মিনিট", "ঘণ্টা", "গ্রাম"),
    "ta": Phrases("ஊற வைக்கத் தேவையில்லை", "முதலில் {} மணி நேரம் ஊற வைக்கவும்", "{} நிமிடம் வேக வைக்கவும்", "நிமிடம்", "மணி நேரம்", "கிராம்"),
    "ar": Phrases("لا حاجة إلى النقع", "ينقع أولاً {} ساعة", "يطبخ {} دقيقة", "دقيقة", "ساعة", "غرام"),
    "fa": Phrases("خیساندن لازم نیست", "اول {} ساعت خیس کنید", "{} دقیقه بپزید", "دقیقه", "ساعت", "گرم"),
    "ur": Phrases("بھگونے کی ضرورت نہیں", "پہلے {} گھنٹے بھگوئیں", "{} منٹ پکائیں", "منٹ", "گھنٹے", "گرام"),
}  # fmt: skip
DECIMAL_COMMA = frozenset(("es", "fr", "de", "it", "pt", "tr", "ru"))


def phrases(tag: str) -> Phrases:
    """The words of a BCP 47 tag, English where none are held."""
    return PHRASES.get(tag.split("-")[0].lower(), ENGLISH)


def in_digits(text: str, like: str) -> str:
    """A text with its digits written in those that `like` uses."""
    zero = next(
        (ord(char) - unicodedata.decimal(char) for char in like if char.isdecimal() and char > "9"), None
    )
    if zero is None:
        return text
    return "".join(chr(zero + ord(char) - ord("0")) if "0" <= char <= "9" else char for char in text)


def span(low: float, high: float) -> str:
    """A range as written in a recipe: `8-12`, or one number where both edges are one."""
    return f"{low:g}" if low == high else f"{low:g}-{high:g}"
