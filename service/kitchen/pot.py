"""Several pulses in one pot: which soak for each, what goes in when, or why they are cooked apart.

A small search, not a table: every way of soaking for every member is tried, and the plan that opens the pot
least often, then soaks least, then ends soonest, wins. Lectin-bearing members are boiled first wherever they are.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product

from ..errors import BadInput
from ..glossary.cooking import Figures
from ..glossary.model import Hazard, Pulse, Range
from .caution import PHASEOLUS, SEVERITIES, Caution
from .guide import Guidance, guide
from .kitchen import Kitchen
from .ranges import minutes_rounded
from .rules import times_for
from .water import Fill, fill, together

MOST = 6
# Where members only just meet, the span they share is still told no finer than this.
NARROWEST = 1.15
EFFORT = {"none": 0, "hot": 1, "overnight": 2}
# In an open pot a member may go in at any time; a pressure cooker is opened once at most.
MOST_ADDITIONS = {"open": 5, "simmer": 5, "oven": 2, "slow": 1, "pressure": 1, "electric": 1, "microwave": 0}


@dataclass(frozen=True, slots=True)
class Member:
    """One pulse of a mixture: key, its figures and hazards, grams dry."""

    pulse: Pulse
    figures: Figures
    dry_g: float = 100.0
    hazards: tuple[Hazard, ...] = ()


@dataclass(frozen=True, slots=True)
class Turn:
    """When one member goes in: minutes after the first, and how it was soaked."""

    pulse: Pulse
    soak: str
    goes_in: float
    guidance: Guidance


@dataclass(frozen=True, slots=True)
class Plan:
    """A way to cook a mixture. `together` False means apart, and `why` says so; minutes count from the boil."""

    together: bool
    why: str
    turns: tuple[Turn, ...]
    minutes: Range | None
    water_ml: Range
    cautions: tuple[Caution, ...]
    fill: Fill | None = None


@dataclass(frozen=True, slots=True)
class _Group:
    """Members that go in together: the span of minutes that suits them all."""

    at: tuple[int, ...]
    span: Range


def mixed(members: Sequence[Member], kitchen: Kitchen) -> Plan:
    """The best plan for a mixture of two to six pulses; raises BadInput for more or fewer."""
    if not 2 <= len(members) <= MOST:
        raise BadInput("members", len(members), f"must be 2 to {MOST} pulses")
    best: tuple[tuple[float, ...], list[_Group], list[Guidance]] | None = None
    options = [_options(one, kitchen) for one in members]
    refused = next((one for choices in options for one in choices if one.refused), None)
    if refused:
        return _apart(
            options, f"{refused.pulse.key} is not cooked so: {refused.refused.why}" if refused.refused else ""
        )
    for choice in product(*options):
        groups = _groups([one.minutes or (0.0, 0.0) for one in choice])
        effort = sum(EFFORT[one.kitchen.soak] for one in choice)
        cost = (len(groups), effort, groups[0].span[1])
        if best is None or cost < best[0]:
            best = (cost, groups, list(choice))
    if best is None:
        raise BadInput("members", len(members), "leave no way of cooking")
    if len(best[1]) - 1 > MOST_ADDITIONS[kitchen.vessel]:
        return _apart(
            options, "their times lie too far apart for one pot of this kind: cook them apart and mix after"
        )
    return _plan(members, best[1], best[2])


def _options(member: Member, kitchen: Kitchen) -> list[Guidance]:
    """Guidance for each soak that makes sense; the lectin rule leaves no choice."""
    times = times_for(member.pulse, member.figures)
    soaks = ["none", "hot", "overnight"]
    if times.soak == "demanded":
        soaks = ["overnight"]
    elif times.soak == "none":
        soaks = ["none"]
    return [
        guide(member.pulse, replace(kitchen, soak=soak, dry_g=member.dry_g), member.figures, member.hazards)
        for soak in soaks
    ]


def _groups(spans: Sequence[Range]) -> list[_Group]:
    """Fewest groups whose members share a span of minutes, the longest first."""
    order = sorted(range(len(spans)), key=lambda at: -spans[at][0])
    groups: list[_Group] = []
    for at in order:
        low, high = spans[at]
        last = groups[-1] if groups else None
        if last and high >= last.span[0]:
            start = max(last.span[0], low)
            both = start, max(min(last.span[1], high), start * NARROWEST)
            groups[-1] = _Group((*last.at, at), both)
        else:
            groups.append(_Group((at,), (low, high)))
    return groups


def _plan(members: Sequence[Member], groups: list[_Group], chosen: list[Guidance]) -> Plan:
    whole = minutes_rounded(groups[0].span)
    turns = []
    for group in groups:
        start = max(0.0, (whole[0] + whole[1]) / 2 - (group.span[0] + group.span[1]) / 2)
        start = float(round(start)) if group is not groups[0] else 0.0
        turns += [Turn(members[at].pulse, chosen[at].kitchen.soak, start, chosen[at]) for at in group.at]
    why = "all in together" if len(groups) == 1 else f"in {len(groups)} turns, the slowest first"
    if any(one.pulse.species in PHASEOLUS for one in members):
        why += (
            "; beans of the kidney kind are soaked, boiled hard on their own for 30 minutes and drained first"
        )
    pot = replace(chosen[groups[0].at[0]].kitchen, dry_g=sum(one.dry_g for one in members))
    alone = [(one.water, member.dry_g) for one, member in zip(chosen, members, strict=True) if one.water]
    water = together(pot, alone, whole)
    per_100g = water[0] / pot.dry_g * 100, water[1] / pot.dry_g * 100
    foams = any(times_for(one.pulse, one.figures).size == "split" for one in members)
    return Plan(True, why, tuple(turns), whole, water, _cautions(chosen), fill(pot, foams, per_100g))


def _apart(options: list[list[Guidance]], why: str) -> Plan:
    chosen = [choices[-1] for choices in options]
    turns = tuple(Turn(one.pulse, one.kitchen.soak, 0.0, one) for one in chosen)
    return Plan(False, why, turns, None, (0.0, 0.0), _cautions(chosen))


def _cautions(chosen: Iterable[Guidance]) -> tuple[Caution, ...]:
    found: dict[tuple[str, str], Caution] = {}
    for one in chosen:
        for caution in one.cautions:
            found.setdefault((caution.id, caution.text), caution)
    return tuple(sorted(found.values(), key=lambda one: -SEVERITIES.index(one.severity)))
