"""What else makes cooking longer or shorter: age, hard water, salt, acid, soda, height. Factors, each a range."""

from __future__ import annotations

from dataclasses import dataclass

from ..glossary.model import Range
from .kitchen import Kitchen
from .physics import boiling_c, rate

FEET_PER_M = 1 / 0.3048


@dataclass(frozen=True, slots=True)
class Effect:
    """One influence: minutes are multiplied by something within `factor`."""

    id: str
    factor: Range
    why: str
    sources: tuple[str, ...]


# Harvest of this year; nine months in store took a few minutes more; hard-to-cook after warm, damp storage.
AGE: dict[str, Effect] = {
    "unknown": Effect("age", (0.97, 1.04), "the age of the grain is not known", ("ars-1995",)),
    "new": Effect("age", (1.0, 1.0), "this year's harvest", ("common-practice",)),
    "year": Effect("age", (1.0, 1.08), "stored up to a year", ("ars-1995",)),
    "old": Effect("age", (1.1, 1.5), "stored two years or more", ("common-practice",)),
    "badly-stored": Effect(
        "age", (1.3, 2.0), "stored above 25 degrees and 65 % humidity: hard to cook, may never soften",
        ("balamaze-2008", "kwofie-2020"),
    ),
}  # fmt: skip
SALT: dict[str, Effect | None] = {
    "none": None,
    "unknown": Effect("salt", (0.9, 1.1), "whether the water is salted is not known", ("common-practice",)),
    "soak": Effect("salt", (0.65, 0.95), "a salted soak, rinsed off, shortens cooking", ("csu-extension",)),
    "water": Effect("salt", (1.0, 1.15), "salt in the cooking water; sources disagree", ("alberta-pulse",)),
}
ACID: dict[str, Effect | None] = {
    "none": None,
    "unknown": Effect(
        "acid", (1.0, 1.1), "whether anything sour is in the pot is not known", ("ciat-soaking",)
    ),
    "water": Effect(
        "acid", (1.05, 1.3), "tomato, lemon, vinegar or tamarind from the start", ("ciat-soaking",)
    ),
}
SODA: dict[str, Effect | None] = {
    "none": None,
    "unknown": Effect("soda", (0.75, 1.0), "whether soda is in the water is not known", ("ciat-soaking",)),
    "water": Effect(
        "soda", (0.6, 0.78), "bicarbonate of soda, 2 g per litre; skins split", ("ciat-soaking",)
    ),
}


def effects(kitchen: Kitchen, z_c: Range, gauge_kpa: Range) -> tuple[Effect, ...]:
    """All influences of a kitchen on a pulse with these z-values."""
    found = [AGE[kitchen.age], hardness(kitchen.hardness_mg_l)]
    found += [one for one in (_salt(kitchen), ACID[kitchen.acid], SODA[kitchen.soda]) if one]
    high = height(kitchen, z_c, gauge_kpa)
    return tuple(found) if high is None else (*found, high)


def hardness(mg_l: float | None) -> Effect:
    """Hard water, by the usual steps 60, 120 and 180 mg/l; direction published, sizes a rule of thumb."""
    sources = ("kahenya-calcium", "common-practice")
    if mg_l is None:
        return Effect("hard-water", (0.97, 1.04), "the hardness of the water is not known", sources)
    if mg_l <= 60:
        return Effect("hard-water", (1.0, 1.0), "soft water", sources)
    if mg_l <= 120:
        return Effect("hard-water", (1.0, 1.06), "moderately hard water", sources)
    if mg_l <= 180:
        return Effect("hard-water", (1.05, 1.2), "hard water", sources)
    return Effect("hard-water", (1.1, 1.4), "very hard water", sources)


def height(kitchen: Kitchen, z_c: Range, gauge_kpa: Range) -> Effect | None:
    """What altitude costs: from the makers' and extension rules up to what the z-value says.

    None at and below sea level and in a slow cooker, whose own temperature decides.
    """
    if kitchen.altitude_m <= 0 or kitchen.vessel == "slow":
        return None
    gauge = gauge_kpa[0]
    drop_from, drop_to = boiling_c(kitchen.altitude_m, gauge), boiling_c(0.0, gauge)
    kinetic = rate(drop_from, drop_to, z_c[0])
    thousands = kitchen.altitude_m * FEET_PER_M / 1000
    makers = 1 + 0.05 * max(0.0, thousands - 2)
    extension = 1 + 0.04 * thousands
    rule = min(makers, extension, kinetic)
    why = (
        f"at this height water boils {drop_to - drop_from:.1f} degrees lower; rules of thumb add "
        f"{100 * (rule - 1):.0f} %, softening rates ask for up to {100 * (kinetic - 1):.0f} %"
    )
    return Effect("altitude", (rule, kinetic), why, ("uwyo-altitude", "altitude-manual-uk", "quast-1977"))


def _salt(kitchen: Kitchen) -> Effect | None:
    return (
        SALT["soak"] if kitchen.soak == "brine" and kitchen.salt in ("none", "soak") else SALT[kitchen.salt]
    )
