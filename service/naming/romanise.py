"""Native text in, Latin letters out: ISO 15919 for the Brahmic scripts of South Asia, else letter by letter."""

from __future__ import annotations

from anyascii import anyascii

# The main Indic blocks run parallel (Unicode chapter 12): one table by offset from the block's start.
STARTS = {
    "Deva": 0x0900, "Beng": 0x0980, "Guru": 0x0A00, "Gujr": 0x0A80, "Orya": 0x0B00,
    "Taml": 0x0B80, "Telu": 0x0C00, "Knda": 0x0C80, "Mlym": 0x0D00,
}  # fmt: skip
VOWELS = {
    0x05: "a", 0x06: "ā", 0x07: "i", 0x08: "ī", 0x09: "u", 0x0A: "ū", 0x0B: "r̥", 0x0C: "l̥",
    0x0D: "ê", 0x0E: "e", 0x0F: "ē", 0x10: "ai", 0x11: "ô", 0x12: "o", 0x13: "ō", 0x14: "au", 0x60: "r̥̄",
}  # fmt: skip
SIGNS = {
    0x3E: "ā", 0x3F: "i", 0x40: "ī", 0x41: "u", 0x42: "ū", 0x43: "r̥", 0x44: "r̥̄", 0x45: "ê",
    0x46: "e", 0x47: "ē", 0x48: "ai", 0x49: "ô", 0x4A: "o", 0x4B: "ō", 0x4C: "au", 0x57: "au",
}  # fmt: skip
CONSONANTS = dict(
    zip(
        range(0x15, 0x3A),
        "k kh g gh ṅ c ch j jh ñ ṭ ṭh ḍ ḍh ṇ t th d dh n ṉ p ph b bh m y r ṟ l ḷ ḻ v ś ṣ s h".split(),
        strict=True,
    )
)
NUKTA = {
    "k": "q",
    "kh": "ḵẖ",
    "g": "ġ",
    "j": "z",
    "ḍ": "ṛ",
    "ḍh": "ṛh",
    "ph": "f",
    "y": "ẏ",
    "s": "ś",
    "l": "ḷ",
}
VIRAMA, NUKTA_SIGN, ANUSVARA, CANDRABINDU, VISARGA = 0x4D, 0x3C, 0x02, 0x01, 0x03
EXTRA = {
    "Beng": {"য": "y", "য়": "ẏ", "ৎ": "t", "ৱ": "v", "ৰ": "r"},
    "Guru": {"ੰ": "ṁ", "ਂ": "ṁ", "ੴ": "ōaṁkāra"},
    "Orya": {"ଯ": "y", "ୟ": "ẏ", "ୱ": "v"},
    "Mlym": {"ൺ": "ṇ", "ൻ": "n", "ർ": "r", "ൽ": "l", "ൾ": "ḷ", "ൿ": "k"},
}
CONSONANT_LIKE = {"ৰ": "r", "ৱ": "v", "ୱ": "v", "ୟ": "ẏ", "ଯ": "y"}
SINHALA_VOWELS = dict(
    zip(
        range(0x0D85, 0x0D97),
        "a ā æ ǣ i ī u ū r̥ r̥̄ l̥ l̥̄ e ē ai o ō au".split(),
        strict=True,
    )
)
SINHALA_SIGNS = {
    0x0DCF: "ā", 0x0DD0: "æ", 0x0DD1: "ǣ", 0x0DD2: "i", 0x0DD3: "ī", 0x0DD4: "u", 0x0DD6: "ū",
    0x0DD8: "r̥", 0x0DD9: "e", 0x0DDA: "ē", 0x0DDB: "ai", 0x0DDC: "o", 0x0DDD: "ō", 0x0DDE: "au",
}  # fmt: skip
SINHALA_CONSONANTS = {
    0x0D9A + place: letter
    for place, letter in enumerate(
        "k kh g gh ṅ n̆g c ch j jh ñ jñ n̆j ṭ ṭh ḍ ḍh ṇ n̆ḍ t th d dh n - n̆d p ph b bh m m̆b y r - l - - v ś ṣ s h ḷ f".split()
    )
    if letter != "-"
}


def romanise(text: str, script: str) -> str:
    """The text in Latin letters; Latin text comes back as it is."""
    if script in ("Latn", ""):
        return text
    if script in STARTS:
        return _brahmic(text, script)
    if script == "Sinh":
        return _spell(text, SINHALA_CONSONANTS, SINHALA_VOWELS, SINHALA_SIGNS, 0x0DCA, {"ං": "ṁ", "ඃ": "ḥ"})
    return str(anyascii(text)).strip()


def _brahmic(text: str, script: str) -> str:
    start = STARTS[script]
    consonants = {start + offset: letter for offset, letter in CONSONANTS.items()}
    consonants |= {
        ord(char): letter for char, letter in CONSONANT_LIKE.items() if start <= ord(char) < start + 0x80
    }
    signs = {start + offset: letter for offset, letter in SIGNS.items()}
    vowels = {start + offset: letter for offset, letter in VOWELS.items()}
    marks = {chr(start + ANUSVARA): "ṁ", chr(start + CANDRABINDU): "m̐", chr(start + VISARGA): "ḥ"}
    if script in ("Deva", "Beng", "Guru", "Gujr"):
        marks[chr(start + 0x3D)] = "’"
    return _spell(text, consonants, vowels, signs, start + VIRAMA, marks | EXTRA.get(script, {}))


def _spell(
    text: str,
    consonants: dict[int, str],
    vowels: dict[int, str],
    signs: dict[int, str],
    virama: int,
    marks: dict[str, str],
) -> str:
    out: list[str] = []
    pending = doubled = False
    for char in _decomposed(text):
        code = ord(char)
        if code in consonants:
            out.append("a" if pending else "")
            letter = consonants[code]
            out.append(letter[0] + letter if doubled else letter)
            pending, doubled = True, False
            continue
        if code == virama:
            pending = False
        elif code in signs:
            out.append(signs[code])
            pending = False
        elif pending and (code & 0x7F) == NUKTA_SIGN and virama != 0x0DCA:
            out[-1] = NUKTA.get(out[-1], out[-1])
        elif char == "ੱ":
            out.append("a" if pending else "")
            pending, doubled = False, True
        elif char not in "\u200c\u200d":
            out.append("a" if pending else "")
            pending = False
            out.append(vowels.get(code) or marks.get(char) or _plain(char))
    return "".join(out) + ("a" if pending else "")


def _decomposed(text: str) -> str:
    # Nukta letters have code points of their own that NFC takes apart; two-part signs are put together.
    for whole, parts in (("ড়", "ড়"), ("ঢ়", "ঢ়"), ("য়", "য়"), ("ड़", "ड़"), ("ढ़", "ढ़")):
        text = text.replace(whole, parts)
    return text


def _plain(char: str) -> str:
    return char if char.isascii() else str(anyascii(char)) or char
