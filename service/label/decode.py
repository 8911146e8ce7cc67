"""Spans in, a posterior over everything sold (and over being no pulse at all) out; all parts weighed at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np

from ..glossary.model import Pulse
from .index import Meaning
from .position import standing
from .segment import Token
from .space import Array, Space
from .span import Hypothesis, Span, named, names, species
from .weights import Weights

# Phrases taken apart in search of names that agree, and tokens gone over for it: a list of many goods is not worth more.
TRIES = 8
EFFORT = 400
# Languages that explain less of a label count for less, by this power.
SPOKEN = 3
# From this trust on a name is one that others may contradict.
FIRM = 0.7
# What weighs less than this is not worth weighing.
FAINT = 0.002


@dataclass(frozen=True, slots=True)
class Posterior:
    """Probabilities over `Space.pulses`, and of none of them; the spans used and the tokens left unread."""

    pulses: Array
    none: float
    spans: tuple[Span, ...]
    unread: tuple[Token, ...]


def cover(tokens: Sequence[Token], hypotheses: Sequence[Hypothesis]) -> tuple[list[Hypothesis], list[Token]]:
    """The hypotheses that together explain the tokens best without overlap, and the tokens left unread."""
    starting: dict[int, list[Hypothesis]] = {}
    for one in hypotheses:
        starting.setdefault(one.first, []).append(one)
    size = len(tokens)
    best: list[float] = [0.0] * (size + 1)
    chosen: list[Hypothesis | None] = [None] * (size + 1)
    for at in range(size - 1, -1, -1):
        best[at] = best[at + 1]
        for one in starting.get(at, ()):
            total = one.gain + best[one.last]
            if total > best[at]:
                best[at], chosen[at] = total, one
    used: list[Hypothesis] = []
    unread: list[Token] = []
    at = 0
    while at < size:
        one_here = chosen[at]
        if one_here is None:
            unread.append(tokens[at])
            at += 1
        else:
            used.append(one_here)
            at = one_here.last
    return used, unread


def agreeing(
    tokens: Sequence[Token], hypotheses: Sequence[Hypothesis]
) -> tuple[list[Hypothesis], list[Token]]:
    """The best cover, unless two names in it contradict each other and another cover avoids that.

    "Split mung | beans" and "moong dal | yellow split" fall apart so; without the phrase they agree.
    """
    used, unread = cover(tokens, hypotheses)
    meant: dict[int, set[str]] = {}
    for phrase in _contradicting(used, meant)[: min(TRIES, EFFORT // (len(tokens) or 1))]:
        if phrase.last - phrase.first < 2:
            continue
        others = [one for one in hypotheses if (one.first, one.last) != (phrase.first, phrase.last)]
        again, left = cover(tokens, others)
        if len(left) <= len(unread) and not _contradicting(again, meant):
            return again, left
    return used, unread


def _contradicting(used: Sequence[Hypothesis], meant: dict[int, set[str]]) -> list[Hypothesis]:
    """Neighbouring names that have no species in common; `meant` keeps what was worked out of each."""
    telling = []
    for one in used:
        named_here = meant.get(id(one))
        if named_here is None:
            named_here = meant[id(one)] = set().union(*map(species, filter(_firm, one.spans)))
        if named_here:
            telling.append((one, named_here))
    found = []
    for (before, mine), (after, theirs) in pairwise(telling):
        if after.first - before.last <= 1 and not mine & theirs:
            found += [before, after]
    return list({id(one): one for one in found}.values())


def _firm(span: Span) -> bool:
    """Whether a span is more than a guess: a guess contradicts nothing."""
    return span.trust >= FIRM


def decode(
    space: Space,
    tokens: Sequence[Token],
    spans: Sequence[Span],
    unread: Sequence[Token],
    languages: Sequence[str] = (),
    place: str = "",
    canned: bool = False,
) -> Posterior:
    """The posterior of a label from its spans, log-linear in all of them; `canned` where it weighs what cans do."""
    weights = space.weights
    if len(spans) == 1 and tokens and not unread and not tokens[0].counted:
        spans = [_alone(spans[0])]
    spans = _either(spans)
    votes = _votes(spans)
    speaks = _speaks(spans, votes, languages, weights)
    stands = standing(tokens, spans, unread, weights, space.head_first)
    none = float(np.log(weights.prior_none))
    naming = [named(span) for span in spans]
    pulses = space.log_prior + _market(
        space.markets if {"all", "some"} & {*naming} else space.open_markets, votes
    )
    heard = [power >= weights.heard for power in stands.power]
    said = [_said(span) if told else "none" for span, told in zip(spans, heard, strict=True)]
    open_name, open_form = "all" not in naming, "all" not in said and said.count("some") == 1
    made_of = any(
        power >= weights.gapped and all(one.kind == "other" for one in span.meanings)
        for span, power in zip(spans, stands.power, strict=True)
    )
    seen: dict[tuple[tuple[str, str], ...], int] = {}
    products = np.zeros((max(stands.group, default=0) + 1, len(pulses)))
    for span, power, group, name, form in zip(spans, stands.power, stands.group, naming, said, strict=True):
        if power < FAINT or _indifferent(span):
            continue
        unsaid = _Unsaid(open_name and name == "some", open_form and form == "some")
        open_form = open_form and form != "some"
        bag, nothing = _weigh(space, span, speaks, place, unsaid)
        if made_of and name == "all":
            # Things made of pulses carry their names.
            nothing = max(nothing, weights.base_other)
        slot = tuple(sorted({(one.kind, one.ref) for one in span.meanings}))
        power *= weights.repeated ** min(3, seen.get(slot, 0))
        seen[slot] = seen.get(slot, 0) + 1
        if name == "all":
            products[group] += power * np.log(bag)
        else:
            pulses = pulses + power * np.log(bag)
        if not group:
            none += power * float(np.log(nothing))
    # Of products named side by side the bag may hold any, however little of it the world trades.
    tops = (space.log_prior + products).max(axis=1)
    products[1:] += (np.log(weights.beside) + tops[0] - tops[1:])[:, None]
    pulses = pulses + products.max(axis=0)
    if open_name and "some" not in naming:
        pulses = pulses + np.log(weights.no_base)
    if not {"all", "some"} & set(said):
        hidden = 1 - (1 - weights.hidden) ** (stands.beside + stands.doubtful)
        pulses = pulses + np.log((1 - hidden) * np.exp(space.unsaid) + hidden * weights.hidden_form)
    else:
        pulses = pulses + space.told(
            frozenset(
                Pulse.of(one.ref).form if one.kind == "fixed" else one.ref
                for span, told in zip(spans, heard, strict=True)
                for one in span.meanings
                if told and _says(one.kind, one.ref)
            )
        )
    if canned:
        pulses = pulses + space.can_size
        none += float(np.log(weights.other_as_can))
    pulses = pulses + stands.beside * np.log(weights.unread)
    return _normalised(pulses, none, spans, unread, weights)


def _either(spans: Sequence[Span]) -> list[Span]:
    """Two forms, or two colours, with nothing but a joining word between are a choice: washed or with skin."""
    out: list[Span] = []
    for span in spans:
        joined = len(out) > 1 and all(one.ref == "connector" for one in out[-1].meanings)
        kind = _one_kind(span)
        if joined and kind and kind == _one_kind(out[-2]) and not _refs(span) & _refs(out[-2]):
            first = out[-2]
            both = replace(
                first,
                end=span.end,
                meanings=first.meanings + span.meanings,
                trust=min(first.trust, span.trust),
            )
            out[-2:] = [both]
        else:
            out.append(span)
    return out


def _one_kind(span: Span) -> str:
    """The kind of all a span may mean, where that is a form or a colour."""
    kinds = {one.kind for one in span.meanings}
    return kinds.pop() if kinds in ({"form"}, {"colour"}) else ""


def _refs(span: Span) -> set[str]:
    return {one.ref for one in span.meanings}


def _alone(span: Span) -> Span:
    """Without the joining words and the units of any language: nothing else is there to join or to weigh."""
    telling = tuple(one for one in span.meanings if one.ref not in ("connector", "weight"))
    return replace(span, meanings=telling or span.meanings)


def _indifferent(span: Span) -> bool:
    """Whether a span is as likely on every bag as on none: it would weigh nothing."""
    return all(one.kind == "noise" and one.ref != "generic" for one in span.meanings)


def _says(kind: str, ref: str) -> bool:
    return kind == "form" or (kind == "fixed" and bool(Pulse.of(ref).form))


def _said(span: Span) -> str:
    """Whether all, some or none of what a span may mean tells the form."""
    says = [_says(one.kind, one.ref) for one in span.meanings]
    return "none" if not any(says) else "all" if all(says) else "some"


def _normalised(
    pulses: Array, none: float, spans: Sequence[Span], unread: Sequence[Token], weights: Weights
) -> Posterior:
    top = max(float(pulses.max()), none)
    odds = np.exp((pulses - top) / weights.temperature)
    nothing = float(np.exp((none - top) / weights.temperature))
    total = float(odds.sum()) + nothing
    keep = 1 - weights.unforeseen
    return Posterior(odds * (keep / total), 1 - keep * (1 - nothing / total), tuple(spans), tuple(unread))


@dataclass(frozen=True, slots=True)
class _Unsaid:
    """What a label leaves unsaid if a span is meant one way and not the other."""

    name: bool
    form: bool


def _weigh(
    space: Space, span: Span, speaks: Mapping[str, float], place: str, unsaid: _Unsaid
) -> tuple[Array, float]:
    """The likelihood of one span, a mixture over its meanings, tempered by how far it is trusted.

    Where only some of its meanings name a pulse, or tell the form, the others leave that unsaid.
    """
    weights = space.weights
    bag = np.zeros(len(space.pulses))
    nothing = total = 0.0
    strongest = _strongest(span, speaks, place, weights)
    forms = [slot for slot in strongest if slot[0] == "form"]
    sold = {slot: space.sold(*slot) for slot in strongest if slot[0] in ("base", "fixed")}
    several = len({ref.partition("/")[0] for (_, ref), mass in sold.items() if mass}) > 1
    most = max(sold.values(), default=0.0)
    for slot, weight in strongest.items():
        fits, unfit = space.likelihood(*slot)
        if several and sold.get(slot):
            # Where a language calls two pulses by one word, the world's trade says little of which it means.
            weight *= (most / sold[slot]) ** weights.homonym
        if slot[0] == "form" and len(forms) > 1:
            fits = np.maximum(fits, weights.form_miss_loose)
        if unsaid.form and not _says(*slot):
            fits = fits * np.exp(space.unsaid)
        if unsaid.name and slot[0] not in ("base", "fixed"):
            fits, unfit = fits * weights.no_base, unfit * weights.no_base
        bag = np.maximum(bag, weight * fits)
        nothing = max(nothing, weight * unfit)
        total = max(total, weight)
    if span.shared:
        bag = np.maximum(bag, total * weights.shared_head * space.of(span.shared))
    naming = any(names(one) for one in span.meanings)
    spoken = 1.0 if naming else max((speaks.get(one.lang, 1.0) for one in span.meanings), default=1.0)
    trust = span.trust * spoken**weights.foreign
    doubt = (1 - trust) * weights.background
    if not span.otherwise:
        return trust * bag / total + doubt, trust * nothing / total + doubt
    words = [_weigh(space, one, speaks, place, unsaid) for one in span.otherwise]
    else_bag = np.prod([fits for fits, _ in words], axis=0)
    else_nothing = float(np.prod([unfit for _, unfit in words]))
    return trust * bag / total + doubt * else_bag, trust * nothing / total + doubt * else_nothing


def _strongest(
    span: Span, speaks: Mapping[str, float], place: str, weights: Weights
) -> dict[tuple[str, str], float]:
    """The weight of each thing a span may mean: its strongest row, less where few of its languages mean it so."""
    strongest: dict[tuple[str, str], float] = {}
    langs: dict[tuple[str, str], set[str]] = {}
    written = {
        (one.lang, one.ref.partition("/")[0]) for one in span.meanings if names(one) and one.use != "decode"
    }
    writing = {lang for lang, _ in written}
    for one in span.meanings:
        weight = weights.use.get(one.use, 0.5) * speaks.get(one.lang, 1.0) * _there(one, place, weights)
        if one.lang in writing and names(one) and (one.lang, one.ref.partition("/")[0]) not in written:
            weight *= weights.minor
        slot = (one.kind, one.ref)
        strongest[slot] = max(weight, strongest.get(slot, 0.0))
        langs.setdefault(slot, set()).add(one.lang.split("-")[0])
    if len(strongest) < 2:
        return strongest
    most = max(map(len, langs.values()))
    return {slot: weight * (len(langs[slot]) / most) ** weights.fewer for slot, weight in strongest.items()}


def _there(one: Meaning, place: str, weights: Weights) -> float:
    if not one.places:
        return 1.0
    if not place:
        return weights.some_place
    return 1.2 if place in one.places else weights.other_place


def _votes(spans: Sequence[Span]) -> dict[str, float]:
    """How much of the label each language explains: a word of few languages says more of which."""
    votes: dict[str, float] = {}
    for span in spans:
        langs = {one.lang.split("-")[0] for one in span.meanings if one.lang not in ("", "la")}
        if span.how in ("exact", "part", "rejoined") and langs:
            for lang in langs:
                votes[lang] = votes.get(lang, 0.0) + 1.0 / len(langs) ** 0.5
    return votes


def _market(markets: Mapping[str, Array], votes: Mapping[str, float]) -> Array | float:
    """Logarithm of how much likelier each bag is in the markets of the label's languages than in the world's."""
    most = max(votes.values(), default=0.0)
    speaking = {lang: (vote / most) ** SPOKEN for lang, vote in votes.items()}
    total = sum(speaking.values())
    local = [(share / total, markets[lang]) for lang, share in speaking.items() if lang in markets]
    if not local:
        return 0.0
    here: Array = np.sum([share * likelier for share, likelier in local], axis=0)
    return np.log(here + (1 - sum(share for share, _ in local)))


def _speaks(
    spans: Sequence[Span], votes: Mapping[str, float], languages: Sequence[str], weights: Weights
) -> dict[str, float]:
    """How far each language is spoken on the label: 1 for the one that explains most, less for others."""
    most = max(votes.values(), default=0.0)
    asked = {tag.split("-")[0] for tag in languages}
    out: dict[str, float] = {}
    for span in spans:
        for one in span.meanings:
            lang = one.lang.split("-")[0]
            share = votes.get(lang, 0.0) / most if most else 1.0
            factor = (
                1.0
                if one.lang in ("", "la")
                else weights.other_language + (1 - weights.other_language) * share**SPOKEN
            )
            if asked and lang not in asked and one.lang not in ("", "la"):
                factor *= weights.not_asked
            out[one.lang] = factor
    return out
