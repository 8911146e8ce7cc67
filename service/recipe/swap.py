"""What to use instead: pulses that behave alike in the pot, best first, with what changes and what to beware of."""

from __future__ import annotations

import math
from dataclasses import dataclass

from ..glossary.model import Glossary, Pulse, Range
from ..kitchen import Caution, Guidance, Kitchen, guide

# Forms that do the same work in a dish; between two groups no swap is offered.
ALIKE = (
    ("whole", "whole-dehulled"),
    ("split-dehulled", "split-with-skin", "whole-dehulled"),
    ("flour", "grits"),
    ("roasted", "puffed"),
    ("flakes",), ("sprouted",), ("fresh",), ("canned",),
)  # fmt: skip
# What each unlikeness costs, in points; a swap above MOST is no swap.
COST = {"form": 0.8, "colour": 0.35, "size": 0.5, "kin": 0.35, "rare": 0.6, "minutes": 0.9}
MOST = 2.6
# Kinds of seed that cook to the same body and are taken for one another in the kitchen.
KIN = (
    frozenset({"phaseolus-vulgaris", "phaseolus-coccineus", "phaseolus-acutifolius", "phaseolus-lunatus", "phaseolus-dumosus"}),
    frozenset({"vigna-radiata", "vigna-mungo", "vigna-aconitifolia", "vigna-angularis", "vigna-umbellata"}),
    frozenset({"vigna-unguiculata", "vigna-angularis", "cajanus-cajan"}),
    frozenset({"cajanus-cajan", "cicer-arietinum", "pisum-sativum"}),
    frozenset({"lens-culinaris", "vigna-radiata"}),
    frozenset({"vicia-faba", "phaseolus-lunatus", "lablab-purpureus"}),
)  # fmt: skip
# Never offered in place of another: eaten with care or after long treatment only.
WITH_CARE = frozenset({
    "lathyrus-sativus", "lathyrus-cicera", "lathyrus-ochrus", "lathyrus-clymenum", "lupinus-albus", "lupinus-angustifolius",
    "lupinus-luteus", "lupinus-mutabilis", "vicia-sativa", "vicia-ervilia", "vicia-narbonensis", "vicia-articulata",
    "mucuna-pruriens", "canavalia-ensiformis", "canavalia-gladiata", "arachis-hypogaea",
})  # fmt: skip


@dataclass(frozen=True, slots=True)
class Swap:
    """One pulse that can stand in. `likeness` 0 to 1; `grams` replace 100 g of the other, by cooked weight."""

    pulse: Pulse
    likeness: float
    grams: Range
    minutes: Range | None
    reasons: tuple[str, ...]
    warnings: tuple[str, ...]


def swaps(glossary: Glossary, pulse: Pulse, kitchen: Kitchen, most: int = 8) -> tuple[Swap, ...]:
    """Up to `most` pulses to use in place of this one, the likest first; empty where nothing comes near."""
    here = _guidance(glossary, pulse, kitchen)
    found: dict[tuple[str, str], Swap] = {}
    for sold in glossary.sold:
        other = sold.pulse
        if other.species in WITH_CARE or glossary.species[other.species].standing != "pulse":
            continue
        if (other.species, other.market_class) == (pulse.species, pulse.market_class):
            continue
        made = _swap(glossary, pulse, here, other, sold.share, kitchen)
        key = (other.species, other.market_class)
        if made and (key not in found or made.likeness > found[key].likeness):
            found[key] = made
    ranked = sorted(found.values(), key=lambda one: (-one.likeness, one.pulse.key))
    return _varied(ranked, most)


def _swap(
    glossary: Glossary, pulse: Pulse, here: Guidance, other: Pulse, share: float, kitchen: Kitchen
) -> Swap | None:
    form = pulse.form or "whole"
    if not any(form in group and other.form in group for group in ALIKE):
        return None
    there = _guidance(glossary, other, kitchen)
    if there.refused:
        return None
    cost, reasons = _unlike(pulse, here, other, there)
    cost += COST["rare"] * max(0.0, -math.log10(max(share, 0.01)))
    if cost > MOST:
        return None
    grams = _grams(here.cooked_g_per_100g, there.cooked_g_per_100g)
    return Swap(other, round(1 / (1 + cost), 3), grams, there.minutes, reasons, _warnings(here, there))


def _unlike(pulse: Pulse, here: Guidance, other: Pulse, there: Guidance) -> tuple[float, tuple[str, ...]]:
    """What sets the two apart, in points, and in words."""
    cost, reasons = 0.0, []
    if other.species == pulse.species:
        reasons.append("Another kind of the same seed.")
    elif any({pulse.species, other.species} <= group for group in KIN):
        reasons.append("A near relation in the kitchen: much the same body.")
    else:
        cost += COST["kin"] * 2
        reasons.append("A different seed of like use.")
    if (pulse.form or "whole") != other.form:
        cost += COST["form"]
        reasons.append(f"Sold {other.form.replace('-', ' ')}.")
    if pulse.colour and other.colour and pulse.colour != other.colour:
        cost += COST["colour"]
        reasons.append(f"The dish turns {other.colour}.")
    if here.minutes and there.minutes:
        ratio = max(_middle(there.minutes), 0.5) / max(_middle(here.minutes), 0.5)
        cost += COST["minutes"] * abs(math.log(ratio))
        reasons.append(_pace(ratio, there.minutes))
    return cost, tuple(reasons)


def _pace(ratio: float, minutes: Range) -> str:
    span = f"{minutes[0]:g} to {minutes[1]:g} minutes"
    if ratio > 1.2:
        return f"Takes longer: {span}."
    return f"Done sooner: {span}." if ratio < 0.83 else f"Cooks in about the same time: {span}."


def _warnings(here: Guidance, there: Guidance) -> tuple[str, ...]:
    """Cautions of the other that this one does not have: the cook would not expect them."""
    known = {one.id for one in here.cautions}
    return tuple(one.text for one in there.cautions if one.id not in known and _grave(one))


def _grave(caution: Caution) -> bool:
    return caution.severity != "info" or caution.id.startswith("allergen")


def _grams(mine: Range, other: Range) -> Range:
    """Grams of the other that give the cooked weight of 100 g, to the nearest five."""
    middle = 100 * _middle(mine) / _middle(other)
    return 5.0 * round(middle * 0.95 / 5), 5.0 * round(middle * 1.05 / 5)


def _varied(ranked: list[Swap], most: int) -> tuple[Swap, ...]:
    """No more than two of one species: eight kinds of bean are not eight ideas."""
    kept: list[Swap] = []
    for one in ranked:
        if sum(other.pulse.species == one.pulse.species for other in kept) < 2:
            kept.append(one)
    return tuple(kept[:most])


def _guidance(glossary: Glossary, pulse: Pulse, kitchen: Kitchen) -> Guidance:
    species = glossary.species[pulse.species]
    return guide(pulse, kitchen, species.cooking, species.hazards)


def _middle(pair: Range) -> float:
    return (pair[0] + pair[1]) / 2
