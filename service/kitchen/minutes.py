"""Minutes until firm, tender or creamy: two published anchors, one softening curve, the heat of the vessel.

An anchor is the dose of heat that makes a pulse tender: minutes at 100 degrees from open-pot tables, minutes
at 121 from pressure tables with coming up and letting off counted in as equivalent minutes. Between them, and
beyond, doses run straight on a logarithmic scale. Texture multiplies the dose; a missing soak adds to it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from ..glossary.cooking import Times
from ..glossary.model import Range
from .effects import Effect, effects
from .kitchen import Kitchen
from .physics import (
    BOILING_C,
    ELECTRIC,
    REFERENCE_C,
    STOVE_TOP,
    boiling_c,
    ramp_minutes,
)
from .ranges import added, interpolated, minutes_rounded, plus, scaled
from .rules import ELECTRIC_KPA, SLOW_C, SLOW_COME_UP, STOVE_TOP_KPA
from .soak import Soak

# Dose against the dose of tender, by size of the pulse. On the softening curve 1 - exp(-3 dose) firm is 83 to
# 86 % of the way to soft, tender 95 %, creamy 98 to 99.5 %.
TEXTURE: dict[str, dict[str, float]] = {
    "split": {"firm": 0.65, "tender": 1.0, "creamy": 1.35},
    "small": {"firm": 0.6, "tender": 1.0, "creamy": 1.5},
    "large": {"firm": 0.6, "tender": 1.0, "creamy": 1.75},
}
# Slower than a rolling boil: a lidded simmer hardly, a pot in the oven more so. Rules of thumb.
SLOWER = {"simmer": (1.0, 1.08), "oven": (1.15, 1.4)}
# No range is given narrower than this share of its middle: no table is better than that.
LEAST_WIDTH = 0.2


@dataclass(frozen=True, slots=True)
class Cooking:
    """Minutes at the boil, or at pressure once it is up, and what they rest on.

    `come_up`, `release`: minutes at the top that coming up and letting off are worth, counted in already.
    `dose`: minutes at the vessel's temperature that the whole takes. `heat_c`: from coolest to hottest.
    """

    minutes: Range
    dose: Range
    heat_c: Range
    come_up: float
    release: float
    effects: tuple[Effect, ...]


def minutes(times: Times, kitchen: Kitchen, soaked: Soak) -> Cooking:
    """The minutes of one dry pulse in one kitchen."""
    gauge = gauge_kpa(kitchen)
    heat = _heat(kitchen, gauge)
    z_c = sum(times.z_c) / 2
    level = _sea_level(kitchen, gauge, heat)
    dose = _dose(times, kitchen.texture, soaked.benefit, sum(level) / 2, z_c)
    found = effects(kitchen, times.z_c, gauge)
    factors = [_uncertain_heat(times, level, z_c), *(one.factor for one in found)]
    if kitchen.vessel in SLOWER:
        factors.append(SLOWER[kitchen.vessel])
    dose = scaled(dose, factors)
    come_up, release = _ramps(kitchen, sum(gauge) / 2, z_c)
    held = (max(0.0, dose[0] - come_up - release), max(0.0, dose[1] - come_up - release))
    if kitchen.vessel == "slow":
        held = plus(held, SLOW_COME_UP[kitchen.setting])
    return Cooking(minutes_rounded(_widened(held)), dose, heat, come_up, release, found)


def gauge_kpa(kitchen: Kitchen) -> Range:
    """Gauge pressure from lowest to highest it may be; zeros where the lid is not tight."""
    if kitchen.vessel == "electric":
        return ELECTRIC_KPA[kitchen.setting]
    if kitchen.vessel == "pressure":
        return (kitchen.gauge_kpa, kitchen.gauge_kpa) if kitchen.gauge_kpa is not None else STOVE_TOP_KPA
    return 0.0, 0.0


def tender_dose(times: Times, celsius: float) -> Range:
    """Minutes at a temperature that make a fully soaked pulse tender."""
    return _tender(times, round(celsius, 3), sum(times.z_c) / 2)


@lru_cache(maxsize=8192)
def _tender(times: Times, celsius: float, z_c: float) -> Range:
    ramps = ramp_minutes(REFERENCE_C - BOILING_C, STOVE_TOP["come-up"] + STOVE_TOP["natural"], z_c)
    at_pressure = times.pressure_min[0] + ramps, times.pressure_min[1] + ramps
    share = (celsius - BOILING_C) / (REFERENCE_C - BOILING_C)
    return interpolated(times.open_min, at_pressure, share)


def _dose(times: Times, texture: str, benefit: Range, celsius: float, z_c: float) -> Range:
    """Dose at a temperature: shortest with the best soak it may have had, longest with the least."""
    factor = TEXTURE[times.size][texture]
    tender = _tender(times, celsius, z_c)
    more = _unsoaked(times, celsius)
    soaked = more[0] * (1 - benefit[1]), more[1] * (1 - benefit[0])
    return added((tender[0] * factor, tender[1] * factor), soaked)


def _uncertain_heat(times: Times, heat: Range, z_c: float) -> Range:
    """What not knowing the heat exactly is worth, as a factor on the dose at its middle."""
    if heat[0] == heat[1]:
        return 1.0, 1.0
    cool, middle, hot = (_tender(times, one, z_c) for one in (heat[0], sum(heat) / 2, heat[1]))
    return min(hot[0] / middle[0], 1.0), max(cool[0] / middle[0], 1.0)


def _unsoaked(times: Times, celsius: float) -> Range:
    share = (celsius - BOILING_C) / (REFERENCE_C - BOILING_C)
    return interpolated(times.unsoaked_open_min, times.unsoaked_pressure_min, share)


def _heat(kitchen: Kitchen, gauge: Range) -> Range:
    if kitchen.vessel == "slow":
        cap = boiling_c(float(kitchen.altitude_m))
        low, high = SLOW_C[kitchen.setting]
        return min(low, cap), min(high, cap)
    return boiling_c(float(kitchen.altitude_m), gauge[0]), boiling_c(float(kitchen.altitude_m), gauge[1])


def _sea_level(kitchen: Kitchen, gauge: Range, heat: Range) -> Range:
    """The heat the same vessel has at sea level: what height costs is counted once, as an effect."""
    if kitchen.vessel == "slow":
        return round(heat[0], 3), round(heat[1], 3)
    height = min(float(kitchen.altitude_m), 0.0)
    return round(boiling_c(height, gauge[0]), 3), round(boiling_c(height, gauge[1]), 3)


def _ramps(kitchen: Kitchen, gauge: float, z_c: float) -> tuple[float, float]:
    if not kitchen.under_pressure:
        return 0.0, 0.0
    rise = boiling_c(0.0, gauge) - BOILING_C
    pace = ELECTRIC if kitchen.vessel == "electric" else STOVE_TOP
    return ramp_minutes(rise, pace["come-up"], z_c), ramp_minutes(rise, pace[kitchen.release], z_c)


def _widened(held: Range) -> Range:
    """Never narrower than LEAST_WIDTH, and never shorter than half a minute at its longest."""
    low, high = held[0], max(held[1], 0.5)
    return low, max(high, low * (2 + LEAST_WIDTH) / (2 - LEAST_WIDTH))
