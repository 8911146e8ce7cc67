"""Air, steam and heat: pressure at a height, temperature in a vessel, minutes worth of heat.

Air pressure after ISO 2533 (standard atmosphere, lapse 6.5 K/km below 11 km). Saturation temperature after
IAPWS-IF97, region 4, backward equation: coefficients as that release prints them.
"""

from __future__ import annotations

import math
from functools import lru_cache

SEA_LEVEL_KPA = 101.325
KPA_PER_PSI = 6.894757
REFERENCE_GAUGE_KPA = 15 * KPA_PER_PSI
GAS = 8.314462618e-3  # kJ/(mol K)
ZERO_C = 273.15
LN10 = math.log(10)

# Minutes a household cooker takes for each kelvin above its boiling point, half full: coming up, falling of
# itself, let off quickly. Electric ones heat weakly and keep their warmth, so both take longer. Practice.
STOVE_TOP = {"come-up": 0.2, "natural": 0.6, "quick": 0.06}
ELECTRIC = {"come-up": 0.6, "natural": 1.3, "quick": 0.06}

_N = (
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
    0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
)  # fmt: skip


def air_kpa(altitude_m: float) -> float:
    """Air pressure in kPa at an altitude in m, standard day."""
    return SEA_LEVEL_KPA * float((1 - 0.0065 * altitude_m / 288.15) ** 5.255880)


@lru_cache(maxsize=4096)
def saturation_c(kpa: float) -> float:
    """Temperature in degrees Celsius at which water boils at an absolute pressure in kPa (0.612 to 22,064)."""
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _N
    beta = (kpa / 1000) ** 0.25
    e = beta * beta + n3 * beta + n6
    f = n1 * beta * beta + n4 * beta + n7
    g = n2 * beta * beta + n5 * beta + n8
    d = 2 * g / (-f - math.sqrt(f * f - 4 * e * g))
    kelvin = (n10 + d - math.sqrt((n10 + d) ** 2 - 4 * (n9 + n10 * d))) / 2
    return float(kelvin - ZERO_C)


@lru_cache(maxsize=4096)
def boiling_c(altitude_m: float, gauge_kpa: float = 0.0) -> float:
    """Temperature of boiling water in a vessel at a gauge pressure and altitude."""
    return saturation_c(air_kpa(altitude_m) + gauge_kpa)


BOILING_C = boiling_c(0.0)
REFERENCE_C = boiling_c(0.0, REFERENCE_GAUGE_KPA)


def rate(from_c: float, to_c: float, z_c: float) -> float:
    """How many times faster softening runs at `to_c` than at `from_c`."""
    return float(10 ** ((to_c - from_c) / z_c))


def activation_kj(z_c: float, low_c: float, high_c: float) -> float:
    """Activation energy in kJ/mol that has this z over a span of temperatures."""
    return LN10 * GAS * (low_c + ZERO_C) * (high_c + ZERO_C) / z_c


def ramp_minutes(rise_k: float, minutes_per_k: float, z_c: float) -> float:
    """Minutes at the top that a straight ramp of `rise_k` kelvin below it is worth."""
    return minutes_per_k * z_c / LN10 * (1 - float(10 ** (-rise_k / z_c)))


def softness(minutes: float, tender_minutes: float) -> float:
    """Share of the way from raw to fully soft: first order, 95 % where tender."""
    return 1 - math.exp(-3 * minutes / tender_minutes)
