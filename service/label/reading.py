"""A label in, what it says out."""

from __future__ import annotations

import gc
from collections import defaultdict
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass

import numpy as np

from ..errors import BadInput, TooLarge
from ..glossary.model import Glossary, Pulse
from .candidates import Finder
from .decode import Posterior, agreeing, decode
from .index import Meaning, index
from .normalise import Normal, normalise
from .question import Question, question
from .segment import Token, can_size, hs_codes, segment
from .space import Space
from .span import Span, named, names, species
from .weights import WEIGHTS, Weights

LONGEST = 20_000


@dataclass(frozen=True, slots=True)
class Read:
    """One pulse the label may mean; class and colour are filled where they are settled."""

    pulse: Pulse
    probability: float


@dataclass(frozen=True, slots=True)
class Used:
    """A stretch of the label that was read: offsets into the label, and what it was taken for."""

    start: int
    end: int
    text: str
    kind: str
    ref: str
    lang: str
    how: str
    trust: float


@dataclass(frozen=True, slots=True)
class LookAlikeNote:
    """A thing that is taken for the pulse read, and how to tell."""

    key: str
    tell: str
    source: str
    danger: bool


@dataclass(frozen=True, slots=True)
class Reading:
    """What a label says. `verdict` is one, several or none; probabilities and `none` sum to 1."""

    verdict: str
    readings: tuple[Read, ...]
    none: float
    used: tuple[Used, ...]
    unread: tuple[tuple[int, int], ...]
    look_alikes: tuple[LookAlikeNote, ...]
    question: Question | None
    languages: tuple[str, ...]


class Reader:
    """Everything needed to read labels, made once from a glossary."""

    def __init__(self, glossary: Glossary, weights: Weights = WEIGHTS) -> None:
        self.glossary = glossary
        self.weights = weights
        with _undisturbed():
            self.index = index(glossary)
            self.finder = Finder(self.index)
            self.space = Space(glossary, weights)

    def read(self, text: str, languages: Sequence[str] = (), place: str = "") -> Reading:
        """The reading of a label; `languages` BCP 47 tags to prefer, `place` an ISO 3166 code.

        Raises BadInput where there is no text, TooLarge above 20,000 characters.
        """
        _check(text)
        normal = normalise(text)
        tokens = segment(normal.text)
        return self._settle(normal, tokens, languages, place)

    def read_each(self, text: str, languages: Sequence[str] = (), place: str = "") -> tuple[Reading, ...]:
        """A reading for each product a text names, one for the whole where it names only one.

        The same pulse said again, in another language or further down, is no second product; nor are traces.
        """
        _check(text)
        normal = normalise(text)
        tokens = segment(normal.text)
        groups: dict[tuple[int, int], list[Token]] = defaultdict(list)
        for token in tokens:
            groups[token.part, token.line].append(token)
        found = [self._settle(normal, tuple(group), languages, place) for group in groups.values()]
        products: dict[tuple[str, str], Reading] = {}
        for one in found:
            if one.verdict != "none" and not any(word.ref == "allergen" for word in one.used):
                top = one.readings[0].pulse
                products.setdefault((top.species, top.form), one)
        return (
            tuple(products.values())
            if len(products) > 1
            else (self._settle(normal, tokens, languages, place),)
        )

    def _settle(
        self, normal: Normal, tokens: tuple[Token, ...], languages: Sequence[str], place: str
    ) -> Reading:
        found = self.finder.candidates(tokens)
        used, unread = agreeing(tokens, found)
        mended = self.finder.mended(tokens, unread) if unread else []
        if mended:
            used, unread = agreeing(tokens, found + mended)
        spans = [span for one in used for span in one.spans] + self._codes(normal)
        posterior = decode(
            self.space, tokens, spans, unread, languages, place.upper(), canned=can_size(normal) is not None
        )
        return self._reading(normal, posterior)

    def _codes(self, normal: Normal) -> list[Span]:
        spans = []
        for digits, start, end in hs_codes(normal):
            for length in (len(digits), 6, 4):
                entry = self.index.entries.get("hs" + digits[:length])
                if entry:
                    spans.append(Span(start, end, entry.key, entry.meanings, 0.98, "code"))
                    break
        return spans

    def _reading(self, normal: Normal, posterior: Posterior) -> Reading:
        reads = self._merged(posterior)
        verdict = self._verdict(reads, posterior)
        worth = [one for one in reads if one.probability >= self.weights.worth]
        return Reading(
            verdict=verdict,
            readings=tuple(reads),
            none=max(0.0, 1.0 - sum(one.probability for one in reads)),
            used=tuple(self._used(normal, span, posterior) for span in posterior.spans),
            unread=_stretches(normal, posterior.unread),
            look_alikes=self._look_alikes(worth[:3]) if verdict != "none" else self._strangers(posterior),
            question=question(self.glossary, [(one.pulse, one.probability) for one in worth])
            if verdict == "several"
            else None,
            languages=_languages(posterior.spans),
        )

    def _verdict(self, reads: list[Read], posterior: Posterior) -> str:
        if not reads or posterior.none >= 0.5:
            return "none"
        if self._namesake(reads, posterior.spans):
            return "several"
        if reads[0].probability >= self.weights.certain:
            return "one"
        alone = len(reads) < 2 or (
            reads[1].probability < self.weights.worth and reads[0].probability >= self.weights.alone
        )
        if not alone:
            return "several"
        return "one" if reads[0].probability > posterior.none else "none"

    def _namesake(self, reads: list[Read], spans: Sequence[Span]) -> bool:
        """Whether all the names on the label are names of the runner-up too, and it is likely enough to say so."""
        if len(reads) < 2 or reads[1].probability < self.weights.namesake:
            return False
        naming = [species(span) for span in spans if named(span) != "none"]
        both = {reads[0].pulse.species, reads[1].pulse.species}
        return len(both) > 1 and bool(naming) and all(both <= one for one in naming)

    def _merged(self, posterior: Posterior) -> list[Read]:
        """Probabilities by species and form; class and colour where one holds three quarters."""
        space = self.space
        mass = np.bincount(space.group, weights=posterior.pulses, minlength=len(space.groups))
        odds, out = posterior.pulses.tolist(), []
        for group in np.argsort(-mass, kind="stable")[:8]:
            if mass[group] < 0.002:
                break
            species, form = space.groups[group]
            market_class, places = self._settled(odds, space.members[group], "market_class")
            colour, _ = self._settled(odds, places, "colour")
            out.append(Read(Pulse(species, market_class, form, colour), float(mass[group])))
        return out

    def _settled(self, odds: Sequence[float], places: Sequence[int], slot: str) -> tuple[str, Sequence[int]]:
        """The value of a slot that holds three quarters, and the places that have it; else none and all."""
        values = [getattr(self.space.pulses[at], slot) for at in places]
        mass: dict[str, float] = defaultdict(float)
        for at, value in zip(places, values, strict=True):
            mass[value] += odds[at]
        value, most = max(mass.items(), key=lambda one: one[1])
        if most < 0.72 * sum(mass.values()):
            return "", places
        return value, [at for at, one in zip(places, values, strict=True) if one == value]

    def _used(self, normal: Normal, span: Span, posterior: Posterior) -> Used:
        start, end = normal.span(span.start, span.end)
        one = self._meant(span, posterior)
        return Used(
            start,
            end,
            normal.original[start:end],
            one.kind,
            one.ref,
            one.lang,
            span.how,
            round(span.trust, 3),
        )

    def _meant(self, span: Span, posterior: Posterior) -> Meaning:
        """The meaning that fits the answer best."""
        if len(span.meanings) == 1:
            return span.meanings[0]

        fits: dict[tuple[str, str], float] = {}
        for slot in {(one.kind, one.ref) for one in span.meanings}:
            bag, none = self.space.likelihood(*slot)
            fits[slot] = float(bag @ posterior.pulses) + none * posterior.none
        use = self.weights.use
        return max(span.meanings, key=lambda one: use.get(one.use, 0.5) * fits[one.kind, one.ref])

    def _look_alikes(self, reads: list[Read]) -> tuple[LookAlikeNote, ...]:
        out: dict[str, LookAlikeNote] = {}
        for read in reads:
            for one in self.glossary.species[read.pulse.species].look_alikes:
                other = Pulse.of(one.key)
                danger = self.glossary.species[other.species].standing == "poison"
                out.setdefault(one.key, LookAlikeNote(one.key, one.tell, one.source, danger))
        return tuple(sorted(out.values(), key=lambda one: not one.danger))

    def _strangers(self, posterior: Posterior) -> tuple[LookAlikeNote, ...]:
        """A seed that is no pulse, named on the label: said aloud where it is poisonous."""
        out = {}
        for span in posterior.spans:
            for one in span.meanings:
                species = self.glossary.species.get(one.ref.split("/")[0]) if names(one) else None
                if species and species.standing != "pulse":
                    tell = (
                        "; ".join(hazard.text for hazard in species.hazards)
                        or f"{species.english} is not a pulse."
                    )
                    out[species.id] = LookAlikeNote(
                        species.id, tell, species.source, species.standing == "poison"
                    )
        return tuple(out.values())


@contextmanager
def _undisturbed() -> Iterator[None]:
    """Without the collector: hundreds of thousands of values are made that all live on."""
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def _check(text: str) -> None:
    if not text or not text.strip():
        raise BadInput("text", text, "is empty; give the words on the label")
    if len(text) > LONGEST:
        raise TooLarge("text", text, f"is {len(text)} characters long; at most {LONGEST} are read")


def _stretches(normal: Normal, tokens: Sequence[Token]) -> tuple[tuple[int, int], ...]:
    return tuple(normal.span(token.start, token.end) for token in tokens)


def _languages(spans: Sequence[Span]) -> tuple[str, ...]:
    """Languages of the exact words, the one that explains most first; equals by their tags."""
    votes: dict[str, float] = defaultdict(float)
    for span in spans:
        langs = {one.lang for one in span.meanings if one.lang not in ("", "la")}
        for lang in langs:
            votes[lang] += span.trust / len(langs)
    return tuple(sorted(votes, key=lambda lang: (-votes[lang], lang))[:3])
