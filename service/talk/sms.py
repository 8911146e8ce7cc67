"""A text as SMS parts: GSM 7-bit where its alphabet will do, UCS-2 elsewhere (3GPP TS 23.038, 23.040)."""

from __future__ import annotations

from dataclasses import dataclass

# GSM 7 bit default alphabet and its extension table, 3GPP TS 23.038 section 6.2.1.
BASIC = (
    "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿"
    "abcdefghijklmnopqrstuvwxyzäöñüà"
)
EXTENSION = "^{}\\[~]|€\f"
# Finer marks of print that would double the cost of a message; letters are never changed.
PLAIN = {
    ord(fine): plain
    for fine, plain in zip("\u2019\u2018\u201c\u201d\u2013\u2014\u00a0\u202f", "''\"\"--  ", strict=True)
}
# Septets or 16-bit units in one message alone, and in each of several (a 6-octet header takes the rest).
ALONE = {"gsm-7": 160, "ucs-2": 70}
JOINED = {"gsm-7": 153, "ucs-2": 67}
MOST = 255


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts of a message, its encoding, and the units each takes."""

    encoding: str
    parts: tuple[str, ...]
    units: tuple[int, ...]


def sms(text: str, most: int = 6) -> Parts:
    """The text in at most `most` parts, shortened at a word with an ellipsis where it is longer."""
    plain = text.translate(PLAIN)
    encoding = "gsm-7" if all(char in BASIC or char in EXTENSION for char in plain) else "ucs-2"
    text = plain if encoding == "gsm-7" else text
    parts = _cut(text, encoding)
    if len(parts) > most:
        text = _shortened(text, encoding, most)
        parts = _cut(text, encoding)
    return Parts(encoding, tuple(parts), tuple(units(part, encoding) for part in parts))


def units(text: str, encoding: str) -> int:
    """Septets (an extension character takes two) or 16-bit units (one outside the basic plane takes two)."""
    if encoding == "gsm-7":
        return sum(2 if char in EXTENSION else 1 for char in text)
    return sum(2 if ord(char) > 0xFFFF else 1 for char in text)


def _cut(text: str, encoding: str) -> list[str]:
    if units(text, encoding) <= ALONE[encoding]:
        return [text]
    parts, part, size = [], "", 0
    for char in text:
        need = units(char, encoding)
        if size + need > JOINED[encoding]:
            parts.append(part)
            part, size = "", 0
        part += char
        size += need
    return [*parts, part][:MOST]


def _shortened(text: str, encoding: str, most: int) -> str:
    room = JOINED[encoding] * most - 3
    kept = ""
    for char in text:
        if units(kept + char, encoding) > room:
            break
        kept += char
    return kept.rsplit(" ", 1)[0] + "..."
