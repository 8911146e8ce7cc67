"""What is taken for granted where a species has no figures of its own: rules of the trade, wide and said to be so."""

from __future__ import annotations

from ..glossary.cooking import Balance, Figures, Soaking, Times
from ..glossary.model import Pulse, Range

DRY_FORMS = ("whole", "whole-dehulled", "split-with-skin", "split-dehulled")
PRACTICE = ("common-practice",)
# Slow cookers: what they hold, in degrees Celsius, and minutes until they do.
SLOW_C = {"low": (84.0, 88.0), "high": (92.0, 96.0), "": (84.0, 96.0)}
SLOW_COME_UP = {"low": (120.0, 180.0), "high": (60.0, 105.0), "": (60.0, 180.0)}
# Gauge pressures in kPa of cookers that do not say: electric by setting, stove-top where nothing is known.
ELECTRIC_KPA = {"high": (70.0, 80.0), "low": (40.0, 50.0), "": (40.0, 80.0)}
STOVE_TOP_KPA = (80.0, 103.42)


def _rule(
    size: str,
    soak: str,
    minutes: tuple[Range, Range],
    unsoaked: tuple[Range, Range] = ((0.0, 0.0), (0.0, 0.0)),
    note: str = "",
) -> Times:
    return Times(
        market_class="",
        form="",
        size=size,
        soak=soak,
        open_min=minutes[0],
        pressure_min=minutes[1],
        unsoaked_open_min=unsoaked[0],
        unsoaked_pressure_min=unsoaked[1],
        z_c=(16.0, 19.0),
        z_source="quast-1977",
        published_open=None,
        published_pressure=None,
        basis="class-rule",
        note=note,
        sources=PRACTICE,
    )


SPLIT = _rule("split", "none", ((18.0, 38.0), (2.0, 5.5)))
SPLIT_WITH_SKIN = _rule("split", "none", ((22.0, 45.0), (3.0, 7.0)))
WHOLE_DEHULLED = _rule("small", "helps", ((25.0, 50.0), (4.0, 9.0)), ((5.0, 12.0), (2.0, 4.0)))
SMALL = _rule("small", "helps", ((28.0, 52.0), (4.8, 8.5)), ((8.0, 20.0), (4.0, 6.0)))
LARGE = _rule("large", "advised", ((60.0, 108.0), (8.5, 15.0)), ((25.0, 50.0), (10.0, 15.0)))
BY_FORM = {
    "split-dehulled": SPLIT,
    "split-with-skin": SPLIT_WITH_SKIN,
    "whole-dehulled": WHOLE_DEHULLED,
}
SMALL_SEEDED = frozenset((
    "lens-culinaris", "vigna-radiata", "vigna-mungo", "vigna-aconitifolia", "vigna-angularis", "vigna-umbellata",
    "vigna-trilobata", "vigna-vexillata", "vigna-unguiculata", "macrotyloma-uniflorum", "vicia-ervilia",
    "vicia-articulata", "vicia-sativa", "cyamopsis-tetragonoloba",
))  # fmt: skip

# Uptake where none was measured: fitted to the hours in which common beans filled (10 h at 25 degrees).
SOAKING = {
    "large": Soaking("", 60.0, 0.0070, 25.0, 41.0, 10.0, 60.0, "class-rule", "kwofie-2019"),
    "small": Soaking("", 35.0, 0.0078, 25.0, 30.0, 10.0, 60.0, "class-rule", "common-practice"),
    "split": Soaking("", 8.0, 0.0075, 25.0, 25.0, 10.0, 60.0, "class-rule", "common-practice"),
}
BALANCE = Balance("", "", 10.5, 67.0, 190.0, 178.0, "class-rule", "common-practice")


def times_for(pulse: Pulse, figures: Figures) -> Times:
    """Times of a dry pulse: its own row, else that of its size and form as a rule of the trade."""
    own = figures.times_of(pulse)
    if own:
        return own
    if pulse.form in BY_FORM:
        return BY_FORM[pulse.form]
    return SMALL if pulse.species in SMALL_SEEDED else LARGE


def soaking_for(pulse: Pulse, figures: Figures, times: Times) -> Soaking:
    """Uptake figures: measured ones, else those of its size."""
    return figures.soaking_of(pulse) or SOAKING[times.size]


def balance_for(pulse: Pulse, figures: Figures) -> Balance:
    """Water balance: measured, else a middling one."""
    return figures.balance_of(pulse) or BALANCE
