"""Forms that are not dry seed: canned, fresh, flour and the like. Rules of the trade, wide on purpose."""

from __future__ import annotations

from dataclasses import dataclass

from ..glossary.model import Range


@dataclass(frozen=True, slots=True)
class Ready:
    """Minutes at a boil, water in ml per 100 g and cups per cup, g ready per 100 g; `how` in one sentence.

    `eaten_as_is`: needs no cooking. `must_boil`: never tasted raw.
    """

    minutes: Range
    water_ml: Range
    water_cups: Range
    grams: Range
    how: str
    eaten_as_is: bool = False
    must_boil: bool = False


READY: dict[str, Ready] = {
    "canned": Ready(
        (3.0, 10.0), (0.0, 60.0), (0.0, 0.5), (92.0, 100.0),
        "Cooked already: drain, rinse and heat through until steaming all through.", eaten_as_is=True,
    ),
    "fresh": Ready(
        (10.0, 25.0), (150.0, 400.0), (1.0, 3.0), (95.0, 115.0),
        "Boil from fresh or frozen until tender; older seeds take the longer time.", must_boil=True,
    ),
    "flour": Ready(
        (8.0, 20.0), (300.0, 600.0), (1.5, 3.0), (350.0, 650.0),
        "Whisk into cold water, bring to a boil stirring and cook until the raw taste is gone; batters and "
        "doughs must be cooked through.", must_boil=True,
    ),
    "grits": Ready(
        (15.0, 35.0), (300.0, 500.0), (2.5, 4.0), (300.0, 450.0),
        "Stir into boiling water and cook gently, stirring, until soft.", must_boil=True,
    ),
    "flakes": Ready(
        (5.0, 15.0), (200.0, 400.0), (1.0, 2.0), (250.0, 400.0),
        "Stir into boiling water and cook until soft; pre-cooked flakes take the shorter time.", must_boil=True,
    ),
    "roasted": Ready(
        (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (100.0, 100.0),
        "Roasted and eaten as it is; grind it for chutney or thickening.", eaten_as_is=True,
    ),
    "puffed": Ready(
        (0.0, 0.0), (0.0, 0.0), (0.0, 0.0), (100.0, 100.0),
        "Puffed and eaten as it is.", eaten_as_is=True,
    ),
    "sprouted": Ready(
        (5.0, 20.0), (50.0, 250.0), (0.3, 1.5), (95.0, 130.0),
        "Boil or steam until tender and hot all through.", must_boil=True,
    ),
}  # fmt: skip
