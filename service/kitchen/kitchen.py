"""Where and how it is cooked: one frozen value, checked as it is made."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any

from ..errors import BadInput
from .physics import KPA_PER_PSI

US_CUP_ML = 236.588
# Cups of the world in ml, as published; a katori has no standard, ask for its volume.
CUPS_ML = {
    "us": US_CUP_ML, "us-legal": 240.0, "metric": 250.0, "imperial": 284.131, "japan": 200.0, "go": 180.39,
}  # fmt: skip
VESSELS = ("open", "simmer", "pressure", "electric", "slow", "oven", "microwave")
CHOICES = {
    "vessel": VESSELS,
    "setting": ("", "high", "low"),
    "soak": ("none", "hot", "overnight", "fridge", "brine"),
    "texture": ("firm", "tender", "creamy"),
    "age": ("unknown", "new", "year", "old", "badly-stored"),
    "salt": ("unknown", "none", "soak", "water"),
    "acid": ("unknown", "none", "water"),
    "soda": ("unknown", "none", "water"),
    "dish": ("", "drained", "thick", "soupy"),
    "release": ("natural", "quick"),
}
# field -> lowest, highest, unit
LIMITS = {
    "gauge_kpa": (0.0, 200.0, "kPa"),
    "altitude_m": (-430.0, 5500.0, "m"),
    "soak_hours": (0.0, 72.0, "h"),
    "soak_c": (0.0, 100.0, "degrees Celsius"),
    "hardness_mg_l": (0.0, 2000.0, "mg/l of calcium carbonate"),
    "dry_g": (1.0, 100_000.0, "g"),
    "pot_l": (0.3, 1000.0, "l"),
    "cup_ml": (50.0, 500.0, "ml"),
}
MAY_BE_UNKNOWN = ("gauge_kpa", "soak_hours", "soak_c", "hardness_mg_l", "pot_l")


@dataclass(frozen=True, slots=True)
class Kitchen:
    """A way of cooking. None, "" and "unknown" mean not known, which widens answers and never guesses.

    gauge_kpa: for `pressure`; electric cookers go by `setting`. dish: how much liquid is wanted in the end.
    boiled_first: soaked, drained and boiled hard for 30 minutes before anything else. Raises BadInput.
    """

    vessel: str = "open"
    gauge_kpa: float | None = None
    setting: str = ""
    altitude_m: float = 0.0
    soak: str = "overnight"
    soak_hours: float | None = None
    soak_c: float | None = None
    texture: str = "tender"
    age: str = "unknown"
    hardness_mg_l: float | None = None
    salt: str = "none"
    acid: str = "none"
    soda: str = "none"
    dish: str = ""
    release: str = "natural"
    dry_g: float = 200.0
    pot_l: float | None = None
    cup_ml: float = US_CUP_ML
    boiled_first: bool = False

    def __post_init__(self) -> None:
        for name, words in CHOICES.items():
            value = getattr(self, name)
            if not isinstance(value, str) or value not in words:
                listed = ", ".join(word or "(left out)" for word in words)
                raise BadInput(name, value, f"must be one of {listed}")
        for name, (low, high, unit) in LIMITS.items():
            number = getattr(self, name)
            if number is None and name in MAY_BE_UNKNOWN:
                continue
            if not _is_number(number) or not low <= number <= high:
                raise BadInput(name, number, f"must be a number from {low:g} to {high:g} {unit}")
        if not isinstance(self.boiled_first, bool):
            raise BadInput("boiled_first", self.boiled_first, "must be true or false")

    @property
    def under_pressure(self) -> bool:
        """True in a closed vessel above the pressure of the air."""
        return self.vessel in ("pressure", "electric")


def kitchen_of(record: Mapping[str, Any]) -> Kitchen:
    """The kitchen a plain record describes; other keys are left alone, `gauge_psi` is read too.

    Raises BadInput for a value that cannot be used.
    """
    words = {one.name: record[one.name] for one in fields(Kitchen) if record.get(one.name) is not None}
    psi = record.get("gauge_psi")
    if psi is not None:
        if not _is_number(psi):
            raise BadInput("gauge_psi", psi, "must be a number")
        if "gauge_kpa" in words:
            raise BadInput("gauge_psi", psi, "was given together with gauge_kpa; give one")
        words["gauge_kpa"] = psi * KPA_PER_PSI
    return Kitchen(**words)


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
