"""Makes `made.csv`: labels composed from the glossary's own names, then damaged as packs, hands and cameras do.

Run `python -m tests.label.corpus.make`. The file is kept, so that later changes of the glossary are judged by
the same labels. What a label means is known because it was composed; names that several pulses share are left out.
"""

from __future__ import annotations

import csv
import random
import unicodedata
from collections import defaultdict
from collections.abc import Callable, Iterator
from pathlib import Path

from service.glossary.model import Glossary, Pulse
from service.label.normalise import plain
from service.naming import compose
from service.store import files

HERE = Path(__file__).resolve().parent
COUNT = 3200
LOOKS_LIKE = (
    ("rn", "m"),
    ("m", "rn"),
    ("o", "0"),
    ("l", "1"),
    ("i", "l"),
    ("cl", "d"),
    ("u", "v"),
    ("h", "b"),
)
Damage = Callable[[str, random.Random, "Maker"], str]


class Maker:
    """Names and words of each language, once."""

    def __init__(self, glossary: Glossary) -> None:
        self.glossary = glossary
        self.words: dict[tuple[str, str], list[str]] = defaultdict(list)
        owners: dict[str, set[str]] = defaultdict(set)
        for row in glossary.all_rows:
            if row.kind in ("noise", "other") and row.ref != "generic":
                self.words[row.kind, row.lang.split("-")[0]].append(row.text)
            if row.kind in ("base", "fixed"):
                owners[_key(row.text)].add(row.ref.partition("/")[0])
        self.names = list(self._names(owners))

    def _names(self, owners: dict[str, set[str]]) -> Iterator[tuple[Pulse, str, str, str]]:
        sold = {
            (one.pulse.species, one.pulse.market_class, one.pulse.form): one.pulse
            for one in self.glossary.sold
            if self.glossary.species[one.pulse.species].standing == "pulse" and one.share >= 0.1
        }
        seen: dict[str, set[tuple[str, str]]] = defaultdict(set)
        found = []
        for tag in self.glossary.rows:
            for pulse in sold.values():
                for name in compose(self.glossary, pulse, tag)[:8]:
                    seen[_key(name.text)].add((pulse.species, pulse.form))
                    if name.use == "preferred":
                        found.append((pulse, tag, name.script, name.text))
        for pulse, tag, script, text in found:
            key = _key(text)
            if len(seen[key]) == 1 and owners.get(key, {pulse.species}) == {pulse.species}:
                yield pulse, tag, script, text


def _key(text: str) -> str:
    return plain(text).replace(" ", "")


def clean(text: str, chance: random.Random, made: Maker) -> str:
    """As composed."""
    return text


def pack(text: str, chance: random.Random, made: Maker) -> str:
    """With weight and words of the pack around it."""
    return f"{text} {chance.choice(('500 g', '1 kg', '2 lb', '1kg', '400 G'))}"


def upper(text: str, chance: random.Random, made: Maker) -> str:
    """In capitals."""
    return text.upper()


def typo(text: str, chance: random.Random, made: Maker) -> str:
    """A letter lost, doubled, changed or two swapped."""
    at = [place for place, char in enumerate(text) if char.isalpha() and 0 < place < len(text) - 1]
    if not at:
        return text
    place = chance.choice(at)
    kind = chance.randrange(4)
    if kind == 0:
        return text[:place] + text[place + 1 :]
    if kind == 1:
        return text[:place] + text[place] + text[place:]
    if kind == 2 and text[place + 1].isalpha():
        return text[:place] + text[place + 1] + text[place] + text[place + 2 :]
    vowels = "aeiou"
    other = chance.choice(vowels) if text[place].lower() in vowels else text[place] * 2
    return text[:place] + other + text[place + 1 :]


def camera(text: str, chance: random.Random, made: Maker) -> str:
    """Letters taken for others, accents and vowel signs lost."""
    if text.isascii():
        options = [pair for pair in LOOKS_LIKE if pair[0] in text.lower()]
        if not options:
            return text
        old, new = chance.choice(options)
        place = text.lower().index(old)
        return text[:place] + new + text[place + len(old) :]
    marks = [place for place, char in enumerate(text) if unicodedata.category(char) == "Mn" and place]
    if marks:
        place = chance.choice(marks)
        return text[:place] + text[place + 1 :]
    bare = "".join(c for c in unicodedata.normalize("NFD", text) if unicodedata.category(c) != "Mn")
    return unicodedata.normalize("NFC", bare)


def glued(text: str, chance: random.Random, made: Maker) -> str:
    """Spaces lost."""
    return text.replace(" ", "")


def split(text: str, chance: random.Random, made: Maker) -> str:
    """A space where none belongs."""
    words = text.split(" ")
    longest = max(range(len(words)), key=lambda at: len(words[at]))
    word = words[longest]
    if len(word) < 7 or not word.isascii():
        return text
    cut = chance.randrange(3, len(word) - 2)
    words[longest] = f"{word[:cut]} {word[cut:]}"
    return " ".join(words)


DAMAGE: tuple[Damage, ...] = (clean, clean, clean, pack, pack, upper, typo, typo, camera, glued, split)


def labels(made: Maker, chance: random.Random) -> Iterator[tuple[str, str, str, str, str]]:
    """Text, expected, language, script and kind of noise."""
    by_tag: dict[str, list[tuple[Pulse, str, str, str]]] = defaultdict(list)
    for one in made.names:
        by_tag[one[1]].append(one)
    tags = sorted(by_tag)
    for at in range(COUNT):
        pulse, tag, script, text = chance.choice(by_tag[tags[at % len(tags)]])
        lang = tag.split("-")[0]
        if at % 8 == 7:
            others = made.words["other", lang]
            yield (
                f"{chance.choice(others)} {chance.choice(('', '250 g', '1 kg'))}".strip(),
                "none",
                tag,
                script,
                "other",
            )
            continue
        how = chance.choice(DAMAGE)
        shown = how(text, chance, made)
        if how in (pack, upper) and made.words["noise", lang]:
            shown = f"{chance.choice(made.words['noise', lang])} {shown}"
        yield shown, f"{pulse.species}//{pulse.form}", tag, script, how.__name__


def main() -> None:
    """Write the file."""
    chance = random.Random(713)
    made = Maker(files.load())
    with (HERE / "made.csv").open("w", encoding="utf-8", newline="") as out:
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(("text", "expected", "language", "script", "noise"))
        seen = set()
        for row in labels(made, chance):
            if row[0] not in seen:
                seen.add(row[0])
                writer.writerow(row)
    print(len(seen), "labels from", len(made.names), "names")


if __name__ == "__main__":
    main()
