"""How far each word of a label tells of the product, by where it stands."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence, Set
from dataclasses import dataclass
from itertools import accumulate, pairwise

from .segment import UNSPACED, Token
from .span import Span, named, species
from .weights import Weights

# Ways of finding a word that leave no doubt which word it is.
SURE = ("exact",)
# Words after the name within which a form or a colour still tells of it.
NEAR = 6
# Letters of an unspaced script that may part a name from what is made of it; of words one.
MOST_BETWEEN = 3
# What seasons a pulse when it is said after its name.
SEASONING = {"spice"}
# Words between a name and what is made of it that part them no further: beans in tomato sauce, seeds to sow.
LIGHT = {"connector", "generic"}


@dataclass(frozen=True, slots=True)
class Standing:
    """How far each span tells of the product, and how many unread words stand about its name.

    `group` numbers the products a label names side by side: 0 for the first and for all else. `doubtful` counts the
    words there that are known only by a poor likeness.
    """

    power: tuple[float, ...]
    group: tuple[int, ...]
    beside: int
    doubtful: int


def standing(
    tokens: Sequence[Token],
    spans: Sequence[Span],
    unread: Sequence[Token],
    weights: Weights,
    head_first: Set[str] = frozenset(),
) -> Standing:
    """Where each span stands to the name of the product.

    `head_first`: languages that name the thing first and what it is of after: soup of lentils.

    A pack says first what is in it, then what to do with it and what it may hold traces of: what comes
    after the name and apart from it tells less, other names as well.
    """
    heads = [span for span in spans if named(span) == "all"]
    poor = [span for span in spans if span.how not in SURE and span.trust < weights.poor]
    left = _words(unread)
    if not heads or not tokens:
        every = (1.0,) * len(spans)
        return Standing(every, (0,) * len(spans), min(weights.most_unread, len(left)), len(poor))
    head = min(
        heads,
        key=lambda span: (
            span.how not in SURE,
            any(one.kind == "noise" for one in span.meanings),
            span.start,
        ),
    )
    runs, said = _runs(tokens, spans), _by_token(tokens, spans)
    order = {token.start: at for at, token in enumerate(tokens)}
    product = species(head)
    agreeing = {runs[span.start] for span in heads if span.start in runs and species(span) & product}
    here = runs.get(head.start, -1)
    ending = max((one.end for one in spans if runs.get(one.start) == here), default=head.end)
    rest = bisect_left([token.start for token in tokens], ending)
    after = tokens[rest].start if rest < len(tokens) else ending

    beside = _beside(tokens, spans, head)
    told = _told(tokens, said, head.end)
    weighty = [*accumulate((not _light(said.get(one.start)) for one in tokens), initial=0)]

    def gapped(span: Span) -> bool:
        """Whether next to nothing parts it from the name, in a language that names the thing last."""
        if head_first & {one.lang.split("-")[0] for one in span.meanings}:
            return False
        at = order[span.start]
        if weighty[at] - weighty[rest] > MOST_BETWEEN:
            return False
        between = [one for one in tokens[rest:at] if not _light(said.get(one.start))]
        unspaced = all(one.script in UNSPACED for one in between)
        if (
            len(between) > (MOST_BETWEEN if unspaced else 1)
            or tokens[max(0, rest - 1)].part != tokens[at].part
        ):
            return False
        return not any(_cooks(said[one.start]) for one in between if one.start in said)

    def meant_for(span: Span) -> bool:
        """Whether a word that says what for follows it, or the list it heads, as in みつ豆用."""
        at = order[span.start]
        if tokens[at].script == "LATIN":
            return False
        for token in tokens[at:]:
            found = said.get(token.start)
            if found is None or not any(one.kind == "other" for one in found.meanings):
                return found is not None and _cooks(found)
        return False

    def power(span: Span) -> float:
        joined = span.start < ending or span.start not in order or runs[span.start] in agreeing
        guessed = span.how not in SURE and head.how in SURE
        if named(span) == "all":
            if species(span) & product or span in beside:
                return 1.0
            return weights.guessed if guessed else 1.0 if joined else weights.later
        kinds = {one.kind for one in span.meanings}
        against = "other" in kinds and not kinds & {"form", "colour"}
        if against and (span.start in told or (span.start in order and meant_for(span))):
            return weights.far
        if joined:
            return weights.doubted if against and guessed else 1.0
        if guessed:
            return weights.guessed
        if against:
            if {one.ref for one in span.meanings} <= SEASONING:
                return weights.far
            return weights.broken if span.start == after else weights.gapped if gapped(span) else weights.far
        return 1.0 if order[span.start] - rest <= NEAR else weights.far

    about = sum(one.start <= after for one in left)
    found = [power(span) for span in spans]
    strayed = 0
    for at, span in enumerate(spans):
        against = any(one.kind == "other" and one.ref not in SEASONING for one in span.meanings)
        if found[at] < 1.0 and against:
            found[at] *= weights.strayed**strayed
            strayed += 1
    groups = tuple(beside.get(span, 0) for span in spans)
    doubtful = sum(one.start <= after for one in poor)
    return Standing(tuple(found), groups, min(weights.most_unread, about), doubtful)


def _words(unread: Sequence[Token]) -> list[Token]:
    """What is left unread, by words: letters of an unspaced script that follow each other are one."""
    return [
        one
        for before, one in zip([None, *unread], unread, strict=False)
        if not (before and one.script in UNSPACED and one.glued and before.end == one.start)
    ]


def _beside(tokens: Sequence[Token], spans: Sequence[Span], head: Span) -> dict[Span, int]:
    """Names of other pulses that follow the first with only a mark or a joining word between.

    Numbered from 1 by the pulse they name: a mixture, a choice, or two lines that contradict each other.
    """
    found: dict[Span, int] = {}
    groups = [species(head)]
    line = [one for one in spans if one.start >= head.start and one.key]
    last, parted, joined = head, False, False
    for span, (gap, mark) in zip(line[1:], _gaps(tokens, line), strict=True):
        if gap:
            break
        joined = joined or _joins(span)
        parted = parted or mark or joined
        if named(span) == "all" and span.how in SURE and all(one.kind != "noise" for one in span.meanings):
            meant = species(span)
            group = next((at for at, one in enumerate(groups) if one & meant), len(groups))
            if group == len(groups):
                held = meant & last.shared or species(last) & span.shared
                if not parted or (held and not joined):
                    break
                groups.append(meant)
            if group:
                found[span] = group
            last, parted, joined = span, False, False
        elif any(one.kind == "other" for one in span.meanings) or not (_idle(span) or _joins(span)):
            break
    return found


def _gaps(tokens: Sequence[Token], spans: Sequence[Span]) -> list[tuple[int, bool]]:
    """Between each span and the next: the tokens left unread, and whether a mark or a new line parts them."""
    starts = [token.start for token in tokens]
    found = []
    for one, other in pairwise(spans):
        first, last = bisect_left(starts, one.end), bisect_left(starts, other.start)
        before, after = tokens[max(0, first - 1)], tokens[min(last, len(tokens) - 1)]
        found.append((last - first, (before.part, before.line) != (after.part, after.line)))
    return found


def _joins(span: Span) -> bool:
    return any(one.kind == "noise" and one.ref == "connector" for one in span.meanings)


def _idle(span: Span) -> bool:
    """Whether a word between two names may belong to the names: its form, its colour, a joining or a wide word."""
    return all(one.kind in ("form", "colour") or one.ref in ("connector", "generic") for one in span.meanings)


def _told(tokens: Sequence[Token], said: dict[int, Span], after: int) -> set[int]:
    """Starts of the tokens that a word of cooking introduces: up to the next mark they say what to make of it."""
    found: set[int] = set()
    part = -1
    for token in tokens:
        span = said.get(token.start)
        if token.start >= after and span is not None and _cooks(span):
            part = token.part
        if token.part == part:
            found.add(token.start)
    return found


def _light(span: Span | None) -> bool:
    """Whether a word parts nothing from the name: a joining or a wide word, or what seasons it."""
    return span is not None and all(
        one.ref in SEASONING or (one.kind == "noise" and one.ref in LIGHT) for one in span.meanings
    )


def _cooks(span: Span) -> bool:
    return any(one.kind == "noise" and one.ref == "cooking" for one in span.meanings)


def _by_token(tokens: Sequence[Token], spans: Sequence[Span]) -> dict[int, Span]:
    """The span each token stands in, by where the token starts; of several the first."""
    found: dict[int, Span] = {}
    starts = [token.start for token in tokens]
    for span in spans:
        for start in starts[bisect_left(starts, span.start) : bisect_left(starts, span.end)]:
            found.setdefault(start, span)
    return found


def _runs(tokens: Sequence[Token], spans: Sequence[Span]) -> dict[int, int]:
    """The stretch each span's start stands in: words that say something, with nothing between them."""
    held = _by_token(tokens, [span for span in spans if all(one.kind != "noise" for one in span.meanings)])
    runs: dict[int, int] = {}
    run = 0
    before: Token | None = None
    for token in tokens:
        span = held.get(token.start)
        seasons = span is not None and {one.ref for one in span.meanings} <= SEASONING
        parted = before is None or (token.part, token.line) != (before.part, before.line)
        inside = span is not None and token.start > span.start
        if span is None or seasons or (parted and not inside):
            run += 1
        runs[token.start] = run
        if span is None or seasons:
            run += 1
        before = token
    return runs
