"""What the service says, in the reader's language: templates looked up, figures put in."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from functools import cached_property

from ..glossary.model import Glossary
from ..kitchen import caution, effects, words
from ..kitchen.caution import Caution
from ..kitchen.ready import READY
from ..kitchen.yields import PROTEIN_NOTE

SLOT = re.compile(r"\{(\w+)\}")
# Words of the page, by the key it asks for them with.
PAGE = {
    "skip": "Skip to the answer", "parts": "Parts of the page", "nav_read": "Read", "nav_grains": "Grains",
    "nav_browse": "Browse", "nav_kitchen": "Kitchen", "language": "Language", "ask_bag": "What is in this bag?",
    "label_words": "The words on the label", "read_it": "Read it", "no_label": "No label? Describe the grains",
    "browse_title": "Every pulse", "also_in": "Names in", "find": "Find", "your_kitchen": "Your kitchen",
    "kept_here": "Kept on this device only.", "true_size": "True size",
    "calibrate": "Lay a bank card on the screen and move the slider until the frame is as wide as the card (85.6 mm).",
    "frame_width": "Width of the frame",
    "footer": "Names and figures carry their sources. For safety follow the cooker's manual, local food law and a doctor's advice.",
    "photo": "Photograph it", "looking": "Looking at the photo ...",
    "no_words": "No words were found in the photo: type them instead.", "again": "Start again", "ask_for_it": "Ask for it", "change_kitchen": "Change the kitchen", "cook": "Cook", "cook_it": "Cook it",
    "cups_per_cup": "cups per cup", "danger": "Danger", "draft": "draft", "hours": "h", "how_sure": "how sure",
    "instead": "Use instead", "kept": "Kept.", "may_be": "It may be one of these", "minutes": "min",
    "no_name": "We have no name in this language.",
    "no_signal": "No answer: the service cannot be reached, and this was not read before.",
    "not_pulse": "This does not read as a dried pulse.", "not_this": "Not to be taken for",
    "offline": "Offline: what was loaded before still works.", "other_names": "Other names", "say_it": "Say it aloud", "soak": "Soak",
    "sources": "Sources", "water": "Water", "why": "Why", "yield": "Cooked", "print_card": "Card to print",
    "whistles": "Whistles", "batches": "In how many goes", "portions": "Portions", "cans": "Instead of cans (400 g)", "a_portion": "A portion (70 g dry)", "protein_g": "protein",
    "fat_g": "fat", "carbohydrate_g": "carbohydrate", "fibre_g": "fibre", "on_table": "On the table at",
    "plan_day": "Plan the day", "to_calendar": "Into a calendar",
    "nav_paper": "Paper", "paper_title": "On paper", "make_chart": "A chart of names", "make_menu": "A menu",
    "print_it": "Make the sheet", "no_other": "no other", "chart_kind": "Chart", "chart_species": "by pulse",
    "chart_form": "by form", "chart_shop": "by shop", "chart_look-alikes": "same or not the same",
    "chart_cooking": "soaking and cooking", "chart_drawings": "drawings of all grains", "menu_title": "Title",
    "menu_dishes": "One dish to a line: name | its pulses, as labels say them | price. A line that ends with a colon opens a section.",
    "menu_law": "Allergens by the law of", "law_eu": "the European Union", "law_us": "the United States",
    "law_india": "India", "law_codex": "Codex Alimentarius", "menu_staff": "with a sheet for the staff",
    "form_whole": "whole", "form_whole-dehulled": "whole, dehulled", "form_split-with-skin": "split, with skin",
    "form_split-dehulled": "split, dehulled", "form_flour": "flour", "form_grits": "grits", "form_roasted": "roasted",
    "form_puffed": "puffed", "form_flakes": "flakes", "form_sprouted": "sprouted", "form_fresh": "fresh", "form_canned": "canned",
    "colour_black": "black", "colour_brown": "brown", "colour_red": "red", "colour_green": "green", "colour_yellow": "yellow",
    "colour_white": "white", "colour_cream": "cream", "colour_pink": "pink", "colour_orange": "orange",
    "colour_purple": "purple", "colour_grey": "grey", "colour_mottled": "mottled",
    "vessel": "Pot", "vessel_open": "open pot", "vessel_pressure": "pressure cooker", "vessel_slow": "slow cooker",
    "vessel_simmer": "pot with a lid, simmering", "vessel_electric": "electric pressure cooker",
    "vessel_oven": "pot in the oven", "setting": "Setting", "setting_high": "high", "setting_low": "low",
    "soak_fridge": "in the fridge", "soak_brine": "in salted water", "age": "Age of the grain",
    "age_unknown": "not known", "age_new": "this year's harvest", "age_year": "up to a year old",
    "age_old": "two years or more", "age_badly-stored": "stored hot and damp", "dish": "Dish",
    "dish_usual": "as usual", "dish_drained": "drained", "dish_thick": "thick", "dish_soupy": "soupy",
    "pot_l": "Size of the pot, litres",
    "gauge_kpa": "Gauge pressure, kPa", "altitude_m": "Height above the sea, m", "soak_none": "none",
    "soak_hot": "boiled 2 minutes, left 1 hour", "soak_overnight": "overnight", "texture": "Texture",
    "texture_firm": "firm, for salads", "texture_tender": "tender", "texture_creamy": "creamy", "dry_g": "Dry weight, g",
    "ask_form": "Look into the bag: what is in it?", "ask_colour": "What colour is the thing in the bag?",
    "ask_size": "Lay one beside a grain of long rice (about 7 mm): how long is it?", "ask_shape": "What is its shape?",
    "ask_inside": "Cut or bite one in two (do not swallow): what colour is it inside?",
    "ask_eye": "Is there a coloured eye where it was attached?", "ask_name": "Ask the grocer which of these it is.",
    "trait_length_mm": "How long is one grain against a ruler, in mm? A grain of long rice is about 7.",
    "trait_state": "Is it whole with skin, whole without skin, split with skin, or split without skin?",
    "trait_outside": "What colour is it outside?", "trait_shape": "What is its shape?",
    "trait_inside": "Cut or bite one in two (do not swallow): what colour is it inside?",
    "trait_eye": "Is there a mark where it was attached, and of what colour?",
    "trait_surface": "Is it smooth, wrinkled, glossy or dull?",
}  # fmt: skip
# What a conversation says.
CHAT = (
    "That is {name}: {latin}, {form}.",
    "It may be one of these: {names}.",
    "This does not read as a dried pulse. Send the words on the label, or ask for a pulse by name.",
    "Which pulse do you mean? Send the words on its label.",
    "Soak {low} to {high} hours.",
    "No soak.",
    "Cook {low} to {high} minutes.",
    "Water: {low} to {high} cups for each cup of dry pulse.",
    "Ask for: {names}.",
    "I have no name for it in {language}.",
    "Instead you can use: {names}.",
    "I know nothing that can stand in for it.",
    "I do not know that. I can say what is in a bag, what to ask for, how to soak and cook it, and what to use instead.",
    "You are welcome.",
    "Send the words on a label. Then ask: how long, do I soak it, how much water, what instead, or in which language to ask for it.",
)
# What a question offers to tap.
ANSWERS = (
    "whole seeds with their skin",
    "whole seeds without skin",
    "halves that still have skin",
    "halves without skin",
    "a fine flour",
    "coarse broken pieces",
    "shorter than it",
    "about the same",
    "longer than it",
    "flat",
    "round",
    "oval",
    "kidney",
    "cylinder",
    "lens",
    "beaked",
    "blocky",
    "wedge",
    "angular",
    "flat oval",
    "white line",
    "white dot",
    "white long",
    "black patch",
    "black line",
    "brown ring",
    "brown dot",
    "smooth",
    "glossy",
    "dull",
    "wrinkled",
    "How long?",
    "Do I soak it?",
    "How much water?",
    "What instead?",
)
# Counted things whose noun changes with the number: how many -> what is said of one. Ranges count by their end.
COUNTED = {
    "Soak {low} to {high} hours.": "Soak {low} to {high} hour.",
    "Cook {low} to {high} minutes.": "Cook {low} to {high} minute.",
    "Water: {low} to {high} cups for each cup of dry pulse.": "Water: {low} to {high} cup for each cup of dry pulse.",
    "{soak} ({low} to {high} hours.)": "{soak} ({low} to {high} hour.)",
    "Cook {low} to {high} minutes {vessel}.": "Cook {low} to {high} minute {vessel}.",
    "Cook {low} to {high} hours {vessel}.": "Cook {low} to {high} hour {vessel}.",
    "Cook {low} minutes {vessel}.": "Cook {low} minute {vessel}.",
}
NUMBER = re.compile(r"\d+(?:\.\d+)?")
STEPS = (
    "Pick over and rinse.",
    "{soak} ({low} to {high} hours.)",
    "Better: soak it overnight and throw the soak water away.",
    "First boil hard in fresh water in an open pot for 30 minutes; drain.",
    "Add {low} to {high} {ml} of water for each {hundred_g} dry ({least} to {most} cups to the cup).",
    "Cook {low} to {high} minutes {vessel}.",
    "Cook {low} to {high} hours {vessel}.",
    "Cook {low} minutes {vessel}.",
    "Let the pressure fall of itself.",
    "Let the pressure off.",
    "Try several: it is done when {texture}.",
    "Not {what}: {why}.",
    "Instead: {instead}.",
    "Soaking this one is pointless: it is cooked from dry.",
    (
        "Published tables disagree {where}: from {low} to {high} minutes; the range given follows what most of "
        "them say for this texture."
    ),
    "under pressure",
    "in an open pot",
    (
        "At this height water boils {degrees} degrees lower; rules of thumb add {rule} %, softening rates ask for "
        "up to {most} %."
    ),
)


def _some(number: float) -> int:
    return 0 if number == 1 else 1


@dataclass(frozen=True)
class Tongue:
    """A language to speak. What its catalogue lacks stays English.

    `catalogue`: English template -> translation; of a counted one all forms, and `plural` says which a number takes.
    `number` writes a number; `units` holds measures that stand in slots of their own name.
    """

    tag: str
    catalogue: Mapping[str, str | tuple[str, ...]] = field(default_factory=dict)
    plural: Callable[[float], int] = _some
    number: Callable[[float], str] = "{:g}".format
    units: Mapping[str, str] = field(default_factory=lambda: {"ml": "ml", "hundred_g": "100 g"})

    def say(self, template: str, **facts: object) -> str:
        """A template in this language with its slots filled."""
        found = self.catalogue.get(template)
        if found is None and template in COUNTED:
            found = (COUNTED[template], template)
        if isinstance(found, tuple):
            found = found[self.plural(float(str(facts.get("high", facts.get("low", 0)))))]
        put = {**self.units, **{name: self._written(fact) for name, fact in facts.items()}}
        return SLOT.sub(lambda slot: put.get(slot[1], slot[0]), found or template)

    def _written(self, fact: object) -> str:
        text = str(fact)
        return self.number(float(text)) if NUMBER.fullmatch(text) else text

    def translate(self, text: str) -> str:
        """An English sentence of the kitchen in this language; as it is where no template made it."""
        if not self.catalogue or not text:
            return text
        known = self.catalogue.get(text)
        if isinstance(known, str):
            return known
        for template, pattern in self._patterns:
            found = pattern.fullmatch(text)
            if found and self.catalogue.get(template):
                facts = {name: self.translate(part) for name, part in found.groupdict().items()}
                return self.say(
                    template, **{name: fact for name, fact in facts.items() if name not in self.units}
                )
        return text

    def either(self, text: str) -> str:
        """An answer of a question, "black or red", each alternative in this language."""
        return " / ".join(self.translate(one) for one in text.split(" or "))

    @cached_property
    def _patterns(self) -> tuple[tuple[str, re.Pattern[str]], ...]:
        slotted = {one: one for one in (*STEPS, *CHAT) if SLOT.search(one)}
        # Said of one thing, it is still the same template.
        slotted |= {single: many for many, single in COUNTED.items()}
        return tuple((template, _pattern(shape)) for shape, template in slotted.items())


def _pattern(template: str) -> re.Pattern[str]:
    """What a filled template looks like; a slot takes as little as it can."""
    parts = SLOT.split(template)
    made = "".join(f"(?P<{part}>.+?)" if at % 2 else re.escape(part) for at, part in enumerate(parts))
    return re.compile(made, re.DOTALL)


def messages(glossary: Glossary | None = None) -> tuple[str, ...]:
    """Every English message that can be translated, each once; those of the glossary's own data with it."""
    found: list[str] = [*PAGE.values(), *CHAT, *ANSWERS, *STEPS]
    for table in (words.BASIS, words.TEXTURES, words.VESSELS, words.SOAKS):
        found += table.values()
    found += [words.COUNTED, PROTEIN_NOTE, *words.DAY.values()]
    found += [one.text for one in _cautions()]
    for effect in (
        *effects.AGE.values(),
        *effects.SALT.values(),
        *effects.ACID.values(),
        *effects.SODA.values(),
    ):
        if effect:
            found.append(words.sentence(effect.why))
    found.append(words.sentence(effects.hardness(None).why))
    for one in (caution.POISON_SEED, caution.SLOW_RAW, caution.MICROWAVE_RAW):
        found += [one.what, one.why, one.instead]
    found += [one.how for one in READY.values()]
    if glossary:
        found += [hazard.text for species in glossary.species.values() for hazard in species.hazards]
        found += [
            words.sentence(one.note)
            for species in glossary.species.values()
            if species.cooking
            for one in species.cooking.times
            if one.note
        ]
    return tuple(dict.fromkeys(found))


def _cautions() -> Iterable[Caution]:
    yield from (one for one in vars(caution).values() if isinstance(one, Caution))
    yield from (one for _, one in caution.BY_SPECIES)
