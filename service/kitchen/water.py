"""Water: drunk by the seed, lost as steam, wanted in the dish; and whether it all fits the pot."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from ..glossary.cooking import Balance, Times
from ..glossary.model import Range
from .kitchen import US_CUP_ML, Kitchen
from .ranges import rounded
from .soak import Soak

# Steam lost in ml/min from a pot of 200 g dry pulse; wider pots for more lose less for each gram. Practice.
STEAM_ML_MIN: dict[str, Range] = {
    "open": (1.0, 3.0), "simmer": (0.6, 1.8), "oven": (0.6, 1.8), "microwave": (1.0, 4.0),
    "pressure": (0.8, 2.0), "electric": (0.2, 0.8), "slow": (0.2, 0.6),
}  # fmt: skip
COME_UP_ML: Range = (20.0, 50.0)
# Liquid wanted beside what the seed drinks, ml per 100 g dry.
WANTED: dict[str, dict[str, Range]] = {
    "drained": {"split": (40.0, 120.0), "small": (40.0, 110.0), "large": (120.0, 260.0)},
    "thick": {"split": (0.0, 60.0), "small": (20.0, 80.0), "large": (60.0, 140.0)},
    "soupy": {"split": (200.0, 400.0), "small": (200.0, 400.0), "large": (250.0, 450.0)},
}
# A seed may stop short of the tables' uptake: they describe well-cooked, drained seed.
DRUNK = (0.8, 1.0)
# Water to cover a bed of soaked seed, ml per 100 g dry: two fifths of its bulk.
COVER_ML: Range = (120.0, 180.0)
# Closed cookers need steam: a cup of liquid whatever is in them.
LEAST_PRESSURE_ML = 240.0
SEED_G_PER_ML = 1.3
FILL = {"foams": 1 / 3, "pressure": 1 / 2, "open": 2 / 3}


@dataclass(frozen=True, slots=True)
class Water:
    """Cooking water, soak water not counted. `parts` are drunk, steamed off and wanted, ml per 100 g dry."""

    ml_per_100g: Range
    cups_per_cup: Range
    total_ml: Range
    total_cups: Range
    parts: tuple[Range, Range, Range]
    dish: str


@dataclass(frozen=True, slots=True)
class Fill:
    """How a pot may be filled. `limit` share of the pot, `batches` in how many goes, `batch_g` dry in each."""

    limit: float
    why: str
    needed_l: float
    batches: int
    batch_g: float


def water(kitchen: Kitchen, times: Times, balance: Balance, soaked: Soak, minutes: Range) -> Water:
    """The cooking water for one dry pulse."""
    dish = kitchen.dish or ("thick" if times.size == "split" else "drained")
    full = 100 * absorbed(balance)
    drunk = (
        max(0.15 * full, DRUNK[0] * full - soaked.uptake[1]),
        max(0.3 * full, DRUNK[1] * full - soaked.uptake[0]),
    )
    steamed = _steamed(kitchen, kitchen.dry_g, minutes)
    wanted = WANTED[dish][times.size]
    low, high = drunk[0] + steamed[0] + wanted[0], drunk[1] + steamed[1] + wanted[1]
    low, high = max(low, COVER_ML[0]), max(high, COVER_ML[1])
    if kitchen.under_pressure:
        least = LEAST_PRESSURE_ML * 100 / kitchen.dry_g
        low, high = max(low, least), max(high, least * 1.1)
    ml = rounded((low, high), 10)
    hundreds = kitchen.dry_g / 100
    total = rounded((ml[0] * hundreds, ml[1] * hundreds), 10 if kitchen.dry_g < 500 else 50)
    return Water(
        ml_per_100g=ml,
        cups_per_cup=rounded((_cups(ml[0], balance), _cups(ml[1], balance)), 0.1),
        total_ml=total,
        total_cups=rounded((total[0] / kitchen.cup_ml, total[1] / kitchen.cup_ml), 0.25),
        parts=(rounded(drunk, 1), rounded(steamed, 1), wanted),
        dish=dish,
    )


def together(kitchen: Kitchen, members: Sequence[tuple[Water, float]], minutes: Range) -> Range:
    """ml of cooking water for several pulses in one pot: each drinks its own, and steam is lost once.

    `members` are what each would take alone, and its grams dry.
    """
    grams = sum(dry_g for _, dry_g in members)
    steamed = _steamed(kitchen, grams, minutes)
    low, high = (
        steamed[end] * grams / 100
        + sum((alone.parts[0][end] + alone.parts[2][end]) * dry_g / 100 for alone, dry_g in members)
        for end in (0, 1)
    )
    low, high = max(low, COVER_ML[0] * grams / 100), max(high, COVER_ML[1] * grams / 100)
    if kitchen.under_pressure:
        low, high = max(low, LEAST_PRESSURE_ML), max(high, LEAST_PRESSURE_ML * 1.1)
    return rounded((low, high), 10 if grams < 500 else 50)


def _steamed(kitchen: Kitchen, dry_g: float, minutes: Range) -> Range:
    """ml lost as steam for each 100 g dry."""
    per_100g = (dry_g / 200) ** -0.33 / 2
    steam = STEAM_ML_MIN[kitchen.vessel]
    more = COME_UP_ML if kitchen.under_pressure else (0.0, 0.0)
    return (steam[0] * minutes[0] + more[0]) * per_100g, (steam[1] * minutes[1] + more[1]) * per_100g


def absorbed(balance: Balance) -> float:
    """g of water a gram of dry seed drinks until cooked, by the balance of its dry matter."""
    return (100 - balance.water_raw) / (100 - balance.water_cooked) - 1


def fill(kitchen: Kitchen, foams: bool, ml_per_100g: Range, soaked_uptake: float = 0.0) -> Fill | None:
    """Whether dry seed and water stay under the fill line of the pot; None where its size is not known."""
    limit, why = _limit(kitchen, foams)
    if kitchen.pot_l is None:
        return None
    litres_per_100g = (100 / SEED_G_PER_ML + ml_per_100g[1] + soaked_uptake) / 1000
    needed = litres_per_100g * kitchen.dry_g / 100
    batches = max(1, math.ceil(needed / (kitchen.pot_l * limit) - 1e-9))
    return Fill(limit, why, round(needed, 2), batches, round(kitchen.dry_g / batches, 1))


def _limit(kitchen: Kitchen, foams: bool) -> tuple[float, str]:
    if not kitchen.under_pressure:
        return FILL["open"], "two thirds, so that it does not boil over"
    if foams:
        return FILL["foams"], "one third: this one foams, and foam can block the vent"
    return FILL["pressure"], "half, as makers ask for dry pulses under pressure"


def _cups(ml_per_100g: float, balance: Balance) -> float:
    """Cups of water to a cup of dry seed: the size of the cup falls out."""
    return ml_per_100g * balance.cup_dry_g / 100 / US_CUP_ML
