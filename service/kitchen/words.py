"""The sentences of guidance. Figures come in, English goes out; nothing is decided here."""

from __future__ import annotations

from ..glossary.cooking import Times
from ..glossary.model import Pulse, Range
from .caution import PHASEOLUS, Refusal
from .kitchen import Kitchen
from .soak import Soak
from .water import Water

BASIS = {
    "class-rule": "No published table was found for this one: the figures are the rule of the trade for pulses of "
    "its size, and wide.",
    "likeness": "No table names this class: the figures are those of the pulses most like it.",
    "form-rule": "A rule of the trade for this form, not a measured figure.",
}
COUNTED = (
    "Minutes count from full pressure. Coming up and letting the pressure fall of itself cook too and are counted "
    "in; let off at once, it takes the longer time given for quick release."
)
TEXTURES = {
    "firm": "still holding its shape",
    "tender": "soft all through with whole skins",
    "creamy": "falling apart",
}
VESSELS = {
    "open": "at a boil with the lid ajar",
    "simmer": "at a simmer under a lid",
    "oven": "in a lidded pot in the oven, once it simmers",
    "microwave": "at a boil in the microwave, topping up the water",
    "slow": "in the slow cooker, from switching it on",
    "pressure": "from full pressure",
    "electric": "from full pressure",
}
SOAKS = {
    "hot": "Boil two to three minutes, take off the heat and leave covered for an hour or a little more; drain.",
    "fridge": "Soak in three times its volume of cold water in the fridge, overnight or up to a day; drain.",
    "brine": "Soak overnight in water with 10 g of salt to the litre; drain and rinse.",
    "overnight": "Soak in three times its volume of cold water; drain.",
}


# What is done in each stretch of the day.
DAY = {
    "drain": "Throw the soak water away, rinse.",
    "boil first": "Boil hard in fresh water in an open pot, then drain.",
    "slow": "Slow-cook until soft.",
    "pressure": "Bring to pressure.",
    "keep": "Keep at pressure.",
    "release": "Let the pressure fall of itself.",
    "boil": "Bring to the boil.",
    "cook": "Cook until done.",
    "rest": "Taste, season, rest; keep it hot.",
}


def span(minutes: Range) -> str:
    """Minutes as a cook says them: hours from two hours on."""
    low, high = minutes
    if low == high:
        return f"{low:g} {of('minute', low)}"
    if low < 120:
        return f"{low:g} to {high:g} {of('minute', high)}"
    return f"{low / 60:.3g} to {high / 60:.3g} hours"


def of(unit: str, number: float) -> str:
    """The unit as that number of it is called."""
    return unit if number == 1 else f"{unit}s"


def steps(
    pulse: Pulse, kitchen: Kitchen, times: Times, soaked: Soak, minutes: Range, water: Water
) -> tuple[str, ...]:
    """What to do, in order."""
    found = ["Pick over and rinse."]
    if soaked.hours[1] > 0:
        found.append(
            SOAKS[kitchen.soak]
            + f" ({soaked.hours[0]:g} to {soaked.hours[1]:g} {of('hour', soaked.hours[1])}.)"
        )
    elif times.soak in ("advised", "demanded"):
        found.append("Better: soak it overnight and throw the soak water away.")
    if pulse.species in PHASEOLUS and kitchen.vessel != "open" and not kitchen.boiled_first:
        found.append("First boil hard in fresh water in an open pot for 30 minutes; drain.")
    found.append(
        f"Add {water.ml_per_100g[0]:g} to {water.ml_per_100g[1]:g} ml of water for each 100 g dry "
        f"({water.cups_per_cup[0]:g} to {water.cups_per_cup[1]:g} cups to the cup)."
    )
    found.append(f"Cook {span(minutes)} {VESSELS[kitchen.vessel]}.")
    if kitchen.under_pressure:
        let = "Let the pressure fall of itself." if kitchen.release == "natural" else "Let the pressure off."
        found.append(let)
    found.append(f"Try several: it is done when {TEXTURES[kitchen.texture]}.")
    return tuple(found)


def sentence(text: str) -> str:
    """A remark of the data as a sentence of its own."""
    return f"{text[0].upper()}{text[1:]}."


def refused(one: Refusal) -> tuple[str, ...]:
    """The steps of a refusal: what not to do, why, and what to do instead."""
    return (f"Not {one.what}: {one.why}.", f"Instead: {one.instead}.")
