"""Tokens in, every way to read a stretch of them out."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping, Sequence, Set
from functools import cached_property

from .index import Entry, Index, Meaning, family_of
from .letters import Letters
from .near import Near, NearUnspaced
from .segment import UNSPACED, Token
from .skeleton import skeleton
from .span import Hypothesis, Span, gain, names

NAMING = ("base", "fixed", "other")
PARTS = (*NAMING, "form", "colour")
# Letters that a compound may put between its parts or at its end (-s-, -n-, -en).
SLACK = 2
# Scripts that leave vowels out, or that are read by whole letters: their skeletons meet others by chance.
VOWELLESS = {"ARABIC", "HEBREW", "CJK", "HANGUL"}
# Strange words sought by likeness: what a pack holds is said among its first.
STRANGE = 40
# Strange words remembered before all are forgotten.
MOST_MET = 20_000
# From so many letters on, a word that sounds like a known one hardly ever is another.
LONG = 6
# How often a shorter one was meant, by its letters; and one that is a letter off: on the training half.
ALIKE = (0.0, 0.0, 0.0, 0.15, 0.15, 0.45)
ONE_OFF = (0.0, 0.0, 0.0, 0.3, 0.35, 0.55, 0.75, 0.85, 0.9, 0.93, 0.95)
# The first in scripts that write every sound, where only length, aspiration and the place of the tongue may differ.
SOUNDED = (0.0, 0.0, 0.0, 0.5, 0.6, 0.75)
INDIC = {
    "DEVANAGARI", "BENGALI", "GURMUKHI", "GUJARATI", "ORIYA", "TAMIL", "TELUGU", "KANNADA", "MALAYALAM", "SINHALA",
}  # fmt: skip
# How far a word that may be one that says nothing is trusted to be it.
UNTOLD = 0.5
# What is left of the doubt about such a word where the words beside it complete a known name.
BESIDE = 0.25
# What is worth guessing at where nothing else explains a word.
GUESS = 0.3
# What is known exactly, by the token it begins at: where it ends, and what it says.
Told = Mapping[int, Sequence[tuple[int, Span]]]
# Readings of a word, each a run of stretches: offsets, key, meanings, trust, how it was found.
Piece = tuple[int, int, str, tuple[Meaning, ...], float, str]
Pieces = tuple[tuple[Piece, ...], ...]


class Finder:
    """Looks tokens up in an index: exact, by skeleton, as a compound, and last by likeness."""

    def __init__(self, index: Index) -> None:
        self.index = index
        self._unspaced = NearUnspaced(index)
        self._letters: dict[str, Letters] = {}
        self._met: dict[tuple[str, str, bool], Pieces] = {}

    @cached_property
    def _near(self) -> Near:
        return Near(self.index)

    def warm(self) -> None:
        """Arrange now what is otherwise arranged for the first misspelt word of each script."""
        self._near.nearest("warm", "LATIN")
        self._letters_of("LATIN")
        for family in UNSPACED:
            self._unspaced.nearest("warm", family_of(family))

    def candidates(self, tokens: tuple[Token, ...]) -> list[Hypothesis]:
        """Every hypothesis over the tokens, exact ones first for each stretch."""
        out: list[Hypothesis] = []
        for first, token in enumerate(tokens):
            out.extend(self._exact(tokens, first, token.script in UNSPACED))
        told = _as_they_stand(out)
        covered = {at for begin, ends in told.items() for end, _ in ends for at in range(begin, end)}
        strange: set[str] = set()
        for first, token in enumerate(tokens):
            if token.script in UNSPACED:
                continue
            if token.text not in self.index.entries:
                strange.add(token.text)
                out.extend(self._single(token, first, len(strange) <= STRANGE))
            out.extend(self._rejoined(tokens, first, told))
            if len(strange) <= STRANGE:
                out.extend(self._misspelt(tokens, first, told, covered))
            out.extend(self._tailed(tokens, first))
        return out

    def mended(self, tokens: tuple[Token, ...], unread: list[Token]) -> list[Hypothesis]:
        """Likenesses for stretches of an unspaced script that nothing explains: windows about what is unread."""
        places = {token.start: at for at, token in enumerate(tokens)}
        loose = sorted(places[token.start] for token in unread if token.script in UNSPACED)
        tried: set[tuple[int, int]] = set()
        out: list[Hypothesis] = []
        for first, last in _runs(loose):
            for begin in range(max(0, first - 2), first + 1):
                for end in range(last + 1, min(len(tokens), last + 3) + 1):
                    if (begin, end) in tried or not _together_on_the_pack(tokens, begin, end):
                        continue
                    tried.add((begin, end))
                    out += self._alike(tokens, begin, end)
        return out

    def _alike(self, tokens: tuple[Token, ...], begin: int, end: int) -> list[Hypothesis]:
        key = "".join(token.text for token in tokens[begin:end])
        found = self._unspaced.nearest(key, family_of(tokens[begin].script))
        if not found:
            return []
        keys, trust = found
        entries = self.index.entries
        span = Span(
            tokens[begin].start, tokens[end - 1].end, keys[0], _together(entries, keys), trust, "near"
        )
        return [Hypothesis(begin, end, (span,), gain(span))]

    def _exact(self, tokens: tuple[Token, ...], first: int, unspaced: bool) -> list[Hypothesis]:
        out: list[Hypothesis] = []
        most = self.index.longest_unspaced if unspaced else self.index.longest
        start, key = tokens[first], ""
        for last in range(first, min(len(tokens), first + most)):
            token = tokens[last]
            if token.part != start.part or token.line > start.line + 1:
                break
            key += token.text
            entry = self.index.entries.get(key)
            if entry is None:
                continue
            count = last - first + 1
            written = unspaced or count in entry.words
            if not written and (
                len(key) < (9 if count > 2 else 5)
                or count > 3
                or min(len(one.text) for one in tokens[first : last + 1]) < 2
            ):
                continue
            # A word that begins inside one stretch of letters and ends in the next is seldom meant.
            torn = unspaced and start.glued and not all(one.glued for one in tokens[first : last + 1])
            trust, how = (0.9995, "exact") if written and not torn else (0.9, "rejoined")
            span = Span(start.start, token.end, key, entry.meanings, trust, how, entry.shared)
            # A single letter explains little, but a known word is never better left unread.
            least = 0.05 if written and not unspaced else -9.0
            out.append(Hypothesis(first, last + 1, (span,), max(least, gain(span) - 2.5 * torn)))
        return out

    def _single(self, token: Token, first: int, likeness: bool) -> list[Hypothesis]:
        """Readings of one spaced word that is not in the index as it stands, by likeness if wanted."""
        found = self._word(token.text, family_of(token.script), likeness)
        out = []
        for pieces in found:
            spans = tuple(
                Span(token.start + start, token.start + end, key, meanings, trust, how)
                for start, end, key, meanings, trust, how in pieces
            )
            least = 0.05 if min(span.trust for span in spans) >= GUESS else -1.0
            # A poor guess at a word that nothing else explains is better than none: its trust speaks for it.
            out.append(Hypothesis(first, first + 1, spans, max(least, sum(map(gain, spans)) - 0.5)))
        return out

    def _rejoined(self, tokens: tuple[Token, ...], first: int, told: Told) -> list[Hypothesis]:
        """Words, not all of them known, that said together are almost a known name."""
        out: list[Hypothesis] = []
        entries, one = self.index.entries, tokens[first]
        key, strange = one.text, one.text not in entries
        for last in range(first + 1, min(len(tokens), first + 4)):
            token = tokens[last]
            if token.part != one.part or token.script != one.script:
                break
            key += token.text
            strange = strange or token.text not in entries
            least = 6 if last == first + 1 and one.text not in entries and token.text not in entries else 9
            if not strange or not least <= len(key) <= 24:
                continue
            bones = self.index.skeletons.get(skeleton(key), ())
            keys = [found for found in bones if entries[found].family == family_of(one.script)]
            if keys:
                trust = 0.8 if len(key) < 9 else 0.93 if len(key) < 12 else 0.98
                out.append(self._phrase(tokens, first, last, keys, trust, told))
        return out

    def _misspelt(
        self, tokens: tuple[Token, ...], first: int, told: Told, covered: Set[int]
    ) -> list[Hypothesis]:
        """A known name of several words of which one, that nothing explains as it stands, is a letter off."""
        out: list[Hypothesis] = []
        entries, one = self.index.entries, tokens[first]
        family = family_of(one.script)
        key, odd = one.text, [one.text] if first not in covered else []
        for last in range(first + 1, min(len(tokens), first + 4)):
            token = tokens[last]
            if token.part != one.part or token.script != one.script:
                break
            key += token.text
            odd += [token.text] if last not in covered else []
            count = last - first + 1
            if not odd or not LONG < len(key) <= 24 or all(_compound(word, entries) for word in odd):
                continue
            near = self._letters_of(family).near(key)
            keys = [found for found in near if count in entries[found].words]
            if keys:
                # The words beside it speak for the name; the odd one, by its letters, how far it may be another.
                trust = 1 - (1 - _one_off(max(odd, key=len), 1)) * BESIDE
                out.append(self._phrase(tokens, first, last, keys, trust, told))
        return out

    def _phrase(
        self, tokens: tuple[Token, ...], first: int, last: int, keys: list[str], trust: float, told: Told
    ) -> Hypothesis:
        """Tokens taken for known names, with what they say word by word if they are not."""
        otherwise: list[Span] = []
        at = first
        while at <= last:
            end, span = max(
                ((end, span) for end, span in told.get(at, ()) if end <= last + 1),
                key=_end,
                default=(at + 1, None),
            )
            otherwise += [span] if span else []
            at = end
        start, stop = tokens[first].start, tokens[last].end
        meant = _together(self.index.entries, keys)
        span = Span(start, stop, keys[0], meant, trust, "rejoined", otherwise=tuple(otherwise))
        return Hypothesis(first, last + 1, (span,), gain(span))

    def _tailed(self, tokens: tuple[Token, ...], first: int) -> list[Hypothesis]:
        """A name of several words whose last is glued to a form word, as in blue lupin + flour."""
        out: list[Hypothesis] = []
        entries = self.index.entries
        key = tokens[first].text
        for last in range(first + 1, min(len(tokens), first + 3)):
            token = tokens[last]
            if token.part != tokens[first].part or token.text in entries:
                break
            for cut in range(len(token.text) - 2, 1 if not token.text.isascii() else 2, -1):
                name, tail = entries.get(key + token.text[:cut]), entries.get(token.text[cut:])
                if not name or not tail or not _glues(name, tail):
                    continue
                seam = token.start + cut
                head = Span(tokens[first].start, seam, name.key, name.meanings, 0.97, "part", name.shared)
                form = Span(seam, token.end, tail.key, tail.meanings, 0.97, "part")
                out.append(Hypothesis(first, last + 1, (head, form), gain(head) + gain(form)))
                break
            key += token.text
        return out

    def _word(self, word: str, family: str, likeness: bool) -> Pieces:
        """As `_look_up`, remembered: a cache about the method would hold the finder, and it the cache."""
        key = word, family, likeness
        found = self._met.get(key)
        if found is None:
            if len(self._met) >= MOST_MET:
                self._met.clear()
            found = self._met[key] = self._look_up(word, family, likeness)
        return found

    def _look_up(self, word: str, family: str, likeness: bool) -> Pieces:
        """Readings of a word by skeleton, as a compound, by likeness; offsets are within the word."""
        size = len(word)
        entries = self.index.entries
        keys = self.index.skeletons.get(skeleton(word), ()) if size >= 3 else ()
        own = [key for key in keys if entries[key].family == family]
        if own and size >= LONG:
            return (((0, size, own[0], _together(entries, own), 0.93, "alike"),),)
        out: list[tuple[Piece, ...]] = []
        if own:
            trust = (SOUNDED if family in INDIC else ALIKE)[size]
            out.append(((0, size, own[0], _together(entries, own), trust, "alike"),))
        pieces = _compound(word, entries)
        if pieces:
            out.append(pieces)
        one_off = self._letters_of(family).near(word) if likeness else []
        telling = any(one.kind != "noise" for key in one_off for one in entries[key].meanings)
        if one_off:
            trust = _one_off(word, len(one_off)) * (1.0 if telling else UNTOLD)
            out.append(((0, size, one_off[0], _together(entries, one_off), trust, "near"),))
        keys = tuple(key for key in keys if not {family, entries[key].family} & VOWELLESS)
        crossed = bool(keys) and size >= 4 and not own
        if crossed:
            out.append(((0, size, keys[0], _together(entries, list(keys)), 0.8, "crossed"),))
        near = self._near.nearest(word, family) if likeness and not (crossed or own or telling) else None
        if near:
            found, trust = near
            out.append(((0, size, found[0], _together(entries, found), trust, "near"),))
        return tuple(out)

    def _letters_of(self, family: str) -> Letters:
        found = self._letters.get(family)
        if found is None:
            found = self._letters[family] = Letters(self.index.families.get(family, ()))
        return found


def _as_they_stand(found: list[Hypothesis]) -> Told:
    """What is known exactly, by the token it begins at."""
    out: dict[int, list[tuple[int, Span]]] = defaultdict(list)
    for one in found:
        if one.spans[0].how == "exact":
            out[one.first].append((one.last, one.spans[0]))
    return out


def _end(one: tuple[int, Span | None]) -> int:
    return one[0]


def _one_off(word: str, known: int) -> float:
    """The trust in known words a letter off: less for short ones, and for several of them."""
    return ONE_OFF[min(len(word), len(ONE_OFF) - 1)] * (0.7 if known > 1 and len(word) < LONG else 1.0)


def _glues(name: Entry, tail: Entry) -> bool:
    """Whether the first may be a name and the second a form, or an ending that joins it to one, written onto it."""
    named = any(map(names, name.meanings))
    ending = not tail.key.isascii()
    return named and any(one.kind == "form" or (ending and one.ref == "connector") for one in tail.meanings)


def _together(entries: dict[str, Entry], keys: list[str]) -> tuple[Meaning, ...]:
    return tuple(dict.fromkeys(meaning for key in keys for meaning in entries[key].meanings))


def _compound(word: str, entries: dict[str, Entry]) -> tuple[Piece, ...]:
    """The word as known words glued together, or nothing; at most `SLACK` letters left over a seam."""
    size = len(word)
    ascii_only = word.isascii()
    least = 3 if ascii_only else 2
    if not 2 * least <= size <= 40:
        return ()
    best: list[tuple[float, tuple[tuple[int, int], ...]]] = [(0.0, ())]
    for end in range(1, size + 1):
        score, parts = best[end - 1]
        options = [(score - 2.0, parts)]
        for start in range(max(0, end - 24), end - least + 1):
            entry = entries.get(word[start:end])
            if entry and any(
                one.kind in PARTS or (not ascii_only and one.ref == "connector") for one in entry.meanings
            ):
                before, earlier = best[start]
                options.append((before + (end - start) - 0.8, (*earlier, (start, end))))
        best.append(max(options))
    parts = best[size][1]
    covered = sum(end - start for start, end in parts)
    meant = [entries[word[start:end]].meanings for start, end in parts]
    if size - covered > SLACK or not any(one.kind in NAMING for found in meant for one in found):
        return ()
    if len(parts) < 2 and size - covered:
        return ()
    if ascii_only and max((end - start for start, end in parts), default=0) < 4:
        return ()
    trust = 0.95 if covered == size else 0.85
    return tuple(
        (start, end, word[start:end], found, trust, "part")
        for (start, end), found in zip(parts, meant, strict=True)
    )


def _runs(places: list[int]) -> list[tuple[int, int]]:
    """Stretches of numbers that follow each other, both ends counted."""
    out: list[tuple[int, int]] = []
    for place in places:
        if out and out[-1][1] == place - 1:
            out[-1] = (out[-1][0], place)
        else:
            out.append((place, place))
    return out


def _together_on_the_pack(tokens: tuple[Token, ...], begin: int, end: int) -> bool:
    """Whether a window lies in one stretch and one family of scripts."""
    first = tokens[begin]
    return all(
        one.part == first.part and one.line == first.line and family_of(one.script) == family_of(first.script)
        for one in tokens[begin:end]
    )
