"""What can hurt, by pulse, form and way of cooking; and what is refused. Each caution names its source."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from ..glossary.model import Hazard, Pulse
from .kitchen import Kitchen
from .soak import Soak

SEVERITIES = ("info", "caution", "danger")


@dataclass(frozen=True, slots=True)
class Caution:
    """One warning: what, how grave (info, caution, danger), and who says so."""

    id: str
    text: str
    severity: str
    source: str


@dataclass(frozen=True, slots=True)
class Refusal:
    """Why no times are given, and what to do instead."""

    what: str
    why: str
    instead: str
    source: str


LECTIN = Caution(
    "lectin-boil",
    "Poisonous until boiled: soak 12 hours (5 at the very least), throw the water away, then boil hard in fresh "
    "water for 30 minutes (no authority asks for less than 10) and until soft. Half-cooked is worse than raw. "
    "Pressure times below 10 minutes are about texture; no test shows them to be safe, so boil first.",
    "danger", "fda-lectin",
)  # fmt: skip
HIGH_LECTIN = Caution(
    "lectin-altitude",
    "At this height an open pot boils below 100 degrees and the boil that the rules ask for cannot be met in it; "
    "boil longer, or bring it to full pressure after the soak and keep it there 10 minutes or more.",
    "danger", "common-practice",
)  # fmt: skip
# id -> (species it holds for, caution). Forms eaten after the makers' cooking (canned ...) are let off below.
BY_SPECIES: tuple[tuple[frozenset[str], Caution], ...] = (
    (frozenset(("phaseolus-lunatus", "lablab-purpureus")), Caution(
        "cyanide", "Can set cyanide free: boil with the lid off in plenty of water and throw that water away. "
        "Buy pale kitchen kinds; never eat it raw or as raw flour.", "danger", "extoxnet-lima")),
    (frozenset(("lathyrus-sativus", "lathyrus-cicera", "lathyrus-ochrus", "lathyrus-clymenum")), Caution(
        "lathyrism", "Holds a nerve poison. As a large part of food for months it has crippled people; no kitchen "
        "method removes all of it. Soak 12 hours, throw the water away, eat it seldom. Its sale is restricted in "
        "some countries.", "danger", "fssai-2011")),
    (frozenset(("vicia-faba",)), Caution(
        "favism", "Can destroy red blood cells in people with G6PD deficiency, cooked as well as raw. Anyone with "
        "it, or unsure of it, should ask a doctor first.", "danger", "favism-review")),
    (frozenset(("lupinus-albus", "lupinus-angustifolius", "lupinus-luteus", "lupinus-mutabilis")), Caution(
        "lupin-alkaloids", "Bitter lupin is poisonous until debittered, and eyes cannot tell it from sweet. Buy "
        "seed sold as sweet or debittered; throw away anything that tastes bitter.", "danger", "bfr-lupin-2017")),
    (frozenset(("lupinus-albus", "lupinus-angustifolius", "lupinus-luteus", "lupinus-mutabilis")), Caution(
        "allergen-lupin", "Lupin is an allergen; people allergic to groundnut may react to it.", "caution",
        "eu-1169-2011")),
    (frozenset(("glycine-max",)), Caution(
        "allergen-soy", "Soya is an allergen.", "caution", "eu-1169-2011")),
    (frozenset(("glycine-max",)), Caution(
        "soy-inhibitors", "Raw soya blocks digestion: boil it until soft, never eat or slow-cook it from raw.",
        "caution", "food-chemistry")),
    (frozenset(("arachis-hypogaea",)), Caution(
        "allergen-groundnut", "Groundnut is a grave allergen.", "danger", "eu-1169-2011")),
    (frozenset(("vicia-sativa", "vicia-ervilia", "vicia-narbonensis", "vicia-articulata")), Caution(
        "vetch", "Vetches hold poisons that soaking removes only in part; they have been passed off as lentils. "
        "Not advised as food without local knowledge.", "danger", "vetch-1992")),
    (frozenset(("canavalia-ensiformis", "canavalia-gladiata", "mucuna-pruriens")), Caution(
        "needs-leaching", "Poisonous unless soaked and boiled in several changes of water by someone who knows how.",
        "danger", "memory")),
)  # fmt: skip
PHASEOLUS = frozenset(
    (
        "phaseolus-vulgaris",
        "phaseolus-coccineus",
        "phaseolus-dumosus",
        "phaseolus-acutifolius",
        "phaseolus-lunatus",
    )
)
NEVER_RAW_SLOW = PHASEOLUS | {"glycine-max", "lablab-purpureus", "canavalia-ensiformis", "canavalia-gladiata"}
NEVER_RAW_SLOW |= {"mucuna-pruriens", "sphenostylis-stenocarpa"}
COOLING = Caution(
    "cooling", "Keep it above 60 degrees until eaten, or cool it in shallow dishes to 21 degrees within two hours and "
    "to fridge cold within four more; reheat to 74 degrees. Spores survive boiling.", "info", "wsu-perfringens",
)  # fmt: skip
WARM_SOAK = Caution(
    "warm-soak", "A long soak above 25 degrees can spoil: use the fridge, or change the water; throw it away if it "
    "smells sour or foams.", "caution", "soak-spoilage",
)  # fmt: skip
FOAM = Caution(
    "foam", "Foam and skins can block the vent: fill to a third at most, add a spoon of oil, let the pressure fall of "
    "itself. Some makers forbid this one under pressure; the cooker's manual comes first.", "caution",
    "stove-top-manual-us",
)  # fmt: skip
HALF_FULL = Caution(
    "half-full", "Pulses swell and froth: fill a pressure cooker no more than half, water included, and keep to its "
    "manual.", "caution", "stove-top-manual-us",
)  # fmt: skip
SODA = Caution(
    "soda", "Soda softens skins but leaves a soapy taste and costs vitamins: an eighth of a teaspoon to two cups of "
    "water at most.", "info", "alberta-pulse",
)  # fmt: skip
CHOKING = Caution(
    "choking", "Whole pulses can choke small children: mash or flatten them for those under four.", "info",
    "illinois-extension",
)  # fmt: skip
SPROUTS = Caution(
    "sprouts", "Sprouts grow germs in the warm and wet: cook them through for the old, the very young, the pregnant "
    "and the ill.", "caution", "common-practice",
)  # fmt: skip
CANNING = Caution(
    "home-canning", "Never can pulses in a water bath or an electric multi-cooker. Only a pressure canner with a tested "
    "timetable for your height will do: ask your extension service for it.", "danger", "usda-aib539",
)  # fmt: skip
UNSOAKED_LECTIN = Caution(
    "soak-demanded", "This one must be soaked and its soak water thrown away; it was asked for unsoaked.", "danger",
    "fda-lectin",
)  # fmt: skip
SOAK_DEMANDED = Caution(
    "soak-demanded", "This one is always soaked and its soak water thrown away; it was asked for unsoaked.", "caution",
    "common-practice",
)  # fmt: skip
COOKED_BY_MAKER = ("canned", "roasted", "puffed")


def cautions(
    pulse: Pulse, kitchen: Kitchen, hazards: Iterable[Hazard], *, dry: bool, foams: bool, soaked: Soak | None
) -> tuple[Caution, ...]:
    """Every caution this pulse and this way of cooking ask for, the gravest first; never empty."""
    found = [*_of_pulse(pulse, kitchen), *_of_hazards(pulse, hazards)]
    if dry and soaked is not None:
        found += _of_way(pulse, kitchen, foams, soaked)
    if pulse.form == "sprouted":
        found.append(SPROUTS)
    if dry and pulse.form.startswith("whole"):
        found.append(CHOKING)
    found.append(COOLING)
    only: dict[str, Caution] = {}
    for one in found:
        only.setdefault(one.id, one)
    return tuple(sorted(only.values(), key=lambda one: -SEVERITIES.index(one.severity)))


POISON_SEED = Refusal(
    "cooking it", "this seed is a poison, not a pulse", "keep it out of the kitchen", "memory"
)
SLOW_RAW = Refusal(
    "raw in a slow cooker",
    "a slow cooker stays near 80 to 95 degrees, which does not destroy the poison in the raw seed and, for "
    "kidney beans, can raise it several fold",
    "soak 12 hours, drain, boil hard in fresh water for 30 minutes, then slow-cook",
    "common-practice",
)
MICROWAVE_RAW = Refusal(
    "raw in a microwave",
    "a microwave oven heats unevenly and is a poor way to destroy the poison in the raw seed",
    "soak 12 hours, drain, boil hard in a pot for 30 minutes; a microwave may warm it afterwards",
    "common-practice",
)


def refusal(pulse: Pulse, kitchen: Kitchen, standing: str) -> Refusal | None:
    """Why this must not be cooked so, or None."""
    if standing == "poison":
        return POISON_SEED
    if pulse.form in COOKED_BY_MAKER or kitchen.boiled_first or pulse.species not in NEVER_RAW_SLOW:
        return None
    if kitchen.vessel == "slow":
        return replace(SLOW_RAW, source="fda-lectin") if pulse.species in PHASEOLUS else SLOW_RAW
    if kitchen.vessel == "microwave":
        return (
            replace(MICROWAVE_RAW, source="efsa-lectin-2026") if pulse.species in PHASEOLUS else MICROWAVE_RAW
        )
    return None


def _of_pulse(pulse: Pulse, kitchen: Kitchen) -> list[Caution]:
    found = []
    if pulse.species in PHASEOLUS and pulse.form not in COOKED_BY_MAKER:
        found.append(LECTIN)
        if kitchen.altitude_m > 300 and kitchen.vessel not in ("pressure", "electric"):
            found.append(HIGH_LECTIN)
    for species, caution in BY_SPECIES:
        cooked_away = pulse.form == "canned" and caution.id in (
            "cyanide",
            "soy-inhibitors",
            "lupin-alkaloids",
            "vetch",
        )
        if pulse.species in species and not cooked_away:
            found.append(caution)
    return found


def _of_hazards(pulse: Pulse, hazards: Iterable[Hazard]) -> list[Caution]:
    return [
        Caution(one.id, one.text, one.severity if one.severity in SEVERITIES else "caution", one.source)
        for one in hazards
        if not one.applies or pulse.form in one.applies or not pulse.form
    ]


def _of_way(pulse: Pulse, kitchen: Kitchen, foams: bool, soaked: Soak) -> list[Caution]:
    found = []
    if kitchen.under_pressure:
        found.append(FOAM if foams else HALF_FULL)
    if soaked.missing:
        found.append(UNSOAKED_LECTIN if pulse.species in PHASEOLUS else SOAK_DEMANDED)
    if soaked.warm:
        found.append(WARM_SOAK)
    if kitchen.soda == "water":
        found.append(SODA)
    return found
