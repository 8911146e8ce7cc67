"""What comes out: weight and volume cooked, cans for dry and back, portions, and what a portion feeds."""

from __future__ import annotations

from dataclasses import dataclass

from ..errors import BadInput
from ..glossary.cooking import Balance, Nutrition
from ..glossary.model import Range
from .kitchen import US_CUP_ML
from .ranges import rounded
from .water import absorbed

# Dry matter lost to the water, as shares; the balance alone would assume none.
LOSS = (0.02, 0.12)
# Cups are filled loosely or packed: published volumes for the same beans run from 2.0 to 3.0.
LOOSE = (0.85, 1.08)
# Drained weight of pulses in a can of about 400 g (14 to 15.5 oz), and what it holds in US cups.
CAN_DRAINED_G: Range = (235.0, 265.0)
CAN_CUPS: Range = (1.5, 1.75)
PORTION_DRY_G: Range = (60.0, 80.0)
PORTION_G = 70.0
PROTEIN_NOTE = (
    "Pulse protein is short of methionine and rich in lysine, grain protein the other way round; "
    "eating both in the course of a day evens this out, they need not be in one dish."
)


@dataclass(frozen=True, slots=True)
class Yield:
    """Cooked and drained. g per 100 g dry, and cups cooked per cup dry."""

    cooked_g_per_100g: Range
    cooked_cups_per_cup: Range
    source: str


@dataclass(frozen=True, slots=True)
class Served:
    """What so many g of dry pulse come to at the table. `cans` of about 400 g that they stand for.

    `portion` is the nutrition of PORTION_G dry, keys with their units, by `record` of its source; None where no
    figures are known.
    """

    cooked_g: Range
    cooked_cups: Range
    portions: Range
    cans: Range
    portion: dict[str, float] | None
    record: str
    sources: tuple[str, ...]


def served(balance: Balance, nutrition: Nutrition | None, dry_g: float, cup_ml: float = US_CUP_ML) -> Served:
    """What `dry_g` come to; cups of the size given. Raises BadInput for a weight that is none."""
    found = yields(balance)
    grams = dry_g / 100
    cups_dry = cups_from_dry(dry_g, balance, cup_ml)
    low, high = found.cooked_cups_per_cup
    fed_by = (nutrition.source,) if nutrition else ()
    return Served(
        cooked_g=rounded((found.cooked_g_per_100g[0] * grams, found.cooked_g_per_100g[1] * grams), 5),
        cooked_cups=rounded((low * cups_dry, high * cups_dry), 0.1),
        portions=portions(dry_g),
        cans=cans_for_dry(dry_g, balance),
        portion=per_portion(nutrition, PORTION_G) if nutrition else None,
        record=nutrition.record if nutrition else "",
        sources=tuple(dict.fromkeys((balance.source, *fed_by, "common-practice"))),
    )


def yields(balance: Balance) -> Yield:
    """What 100 g dry become."""
    upper = 1 + absorbed(balance)
    grams = (100 * upper * (1 - LOSS[1]), 100 * upper)
    per_cup = balance.cup_dry_g / 100 / balance.cup_cooked_g
    cups = (grams[0] * per_cup * LOOSE[0], grams[1] * per_cup * LOOSE[1])
    return Yield(rounded(grams, 5), rounded(cups, 0.1), balance.source)


def dry_for_cans(cans: float, balance: Balance) -> Range:
    """g of dry pulse that replace so many cans of about 400 g."""
    _positive("cans", cans)
    grams = yields(balance).cooked_g_per_100g
    return rounded((cans * CAN_DRAINED_G[0] / grams[1] * 100, cans * CAN_DRAINED_G[1] / grams[0] * 100), 5)


def cans_for_dry(dry_g: float, balance: Balance) -> Range:
    """Cans of about 400 g that replace so many g of dry pulse."""
    _positive("dry_g", dry_g)
    grams = yields(balance).cooked_g_per_100g
    return rounded(
        (dry_g * grams[0] / 100 / CAN_DRAINED_G[1], dry_g * grams[1] / 100 / CAN_DRAINED_G[0]), 0.1
    )


def portions(dry_g: float) -> Range:
    """Main-dish portions in so many g of dry pulse, 60 to 80 g each; a rule of thumb."""
    _positive("dry_g", dry_g)
    return rounded((dry_g / PORTION_DRY_G[1], dry_g / PORTION_DRY_G[0]), 0.5)


def dry_from_cups(cups: float, balance: Balance, cup_ml: float = US_CUP_ML) -> float:
    """g of dry pulse in so many cups of a size."""
    _positive("cups", cups)
    return cups * balance.cup_dry_g * cup_ml / US_CUP_ML


def cups_from_dry(dry_g: float, balance: Balance, cup_ml: float = US_CUP_ML) -> float:
    """Cups of a size that so many g of dry pulse fill."""
    return dry_g / (balance.cup_dry_g * cup_ml / US_CUP_ML)


def per_portion(nutrition: Nutrition, dry_g: float = PORTION_G) -> dict[str, float]:
    """Nutrition of a portion weighed dry, before losses to cooking water; keys carry their units."""
    _positive("dry_g", dry_g)
    share = dry_g / 100
    found = {
        "kcal": nutrition.kcal,
        "protein_g": nutrition.protein_g,
        "fat_g": nutrition.fat_g,
        "carbohydrate_g": nutrition.carbohydrate_g,
        "iron_mg": nutrition.iron_mg,
        "folate_ug": nutrition.folate_ug,
    }
    if nutrition.fibre_g is not None:
        found["fibre_g"] = nutrition.fibre_g
    return {name: round(value * share, 1) for name, value in found.items()}


def _positive(field: str, value: float) -> None:
    if not 0 < value < 1e6:
        raise BadInput(field, value, "must be above 0 and below a million")
