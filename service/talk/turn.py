"""One turn of a conversation: state in, text in; state out, reply out. It remembers what "it" is."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from ..errors import BadInput, TooLarge
from ..glossary import find
from ..glossary.model import Pulse
from ..kitchen import Guidance, guide, kitchen_of
from ..label import Question, Reader, Reading, question
from ..naming import compose
from ..recipe import swaps
from .intents import LANGUAGES, PATTERNS, intents, language
from .tongue import PAGE, Tongue

LONGEST = 4000
# Pulses answered for while it is open which one is meant.
MOST_OPEN = 4
QUICK = ("How long?", "Do I soak it?", "How much water?", "What instead?")
PRESSURE = re.compile(
    r"pressure|cooker|कुकर|குக்கர|కుక్కర|কুকার|કૂકર|presión|cocotte|ضغط|ککر|schnellkoch|düdüklü", re.IGNORECASE
)
OPEN = re.compile(
    r"open pot|saucepan|without (a )?pressure|खुले बर्तन|olla normal|casserole|topf", re.IGNORECASE
)
HEIGHT = re.compile(r"(\d{3,4})\s*(?:m\b|met(?:er|re)s?|मीटर|மீட்டர்|metros|mètres|متر)", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class State:
    """What is remembered: "it" (pulse keys, the likeliest first), the kitchen, the choices offered last."""

    it: tuple[str, ...] = ()
    kitchen: Mapping[str, Any] = field(default_factory=dict)
    offered: tuple[tuple[str, tuple[str, ...]], ...] = ()

    @staticmethod
    def of(given: Mapping[str, Any]) -> State:
        """From plain values, as a caller keeps them; raises BadInput for anything else."""
        try:
            offered = tuple((str(text), tuple(map(str, keys))) for text, keys in given.get("offered", ()))
            kitchen = dict(given.get("kitchen", {}))
            kitchen_of(kitchen)
            return State(tuple(map(str, given.get("it", ())))[:8], kitchen, offered[:8])
        except (TypeError, ValueError, AttributeError):
            raise BadInput("state", str(given)[:80], "is not what an earlier turn gave") from None

    def plain(self) -> dict[str, Any]:
        """As plain values."""
        return {
            "it": list(self.it),
            "kitchen": dict(self.kitchen),
            "offered": [[text, list(keys)] for text, keys in self.offered],
        }


@dataclass(frozen=True, slots=True)
class Reply:
    """What is said: sentences with their language, and short answers to tap."""

    said: tuple[tuple[str, str], ...]
    quick: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        """All sentences as one text."""
        return "\n".join(text for text, _ in self.said)


def turn(state: State, text: str, reader: Reader, tongue: Tongue, place: str = "") -> tuple[State, Reply]:
    """The next state and the reply. Raises BadInput for empty text, TooLarge beyond 4,000 characters."""
    if not text.strip():
        raise BadInput("text", text, "is empty")
    if len(text) > LONGEST:
        raise TooLarge("text", text, f"is longer than {LONGEST} characters")
    return _Turn(state, text.strip(), reader, tongue, place).run()


class _Turn:
    def __init__(self, state: State, text: str, reader: Reader, tongue: Tongue, place: str) -> None:
        self.state, self.text, self.reader, self.tongue, self.place = state, text, reader, tongue, place
        self.glossary = reader.glossary
        self.asked = intents(text)
        self.language = language(text)

    def run(self) -> tuple[State, Reply]:
        """Choice, kitchen, label, question: whichever the text is."""
        chosen = self._choice()
        if chosen:
            self.state = replace(self.state, it=chosen, offered=())
            left = question(self.glossary, [(Pulse.of(key), 1.0) for key in chosen])
            return self._which(left) if left else self._told(chosen)
        self._kitchen()
        reading = self._reading()
        named = reading is not None and reading.verdict != "none"
        if "instead" in self.asked and named and self.state.it and reading:
            return self.state, self._whether(reading)
        if named and reading:
            self.state = self._remember(reading)
            if reading.verdict == "several" and not self.asked and not self.language:
                return self._which(reading.question)
        if not self.asked and not self.language:
            return self._told(self.state.it) if named else (self.state, self._lost())
        return self.state, self._answered()

    def _choice(self) -> tuple[str, ...]:
        """The pulses an offered answer leaves, by its number or its words."""
        for at, (text, keys) in enumerate(self.state.offered, 1):
            if self.text == str(at) or self.text.casefold() == text.casefold():
                return keys
        return ()

    def _kitchen(self) -> None:
        kitchen = dict(self.state.kitchen)
        if OPEN.search(self.text):
            kitchen["vessel"] = "open"
        elif PRESSURE.search(self.text):
            kitchen["vessel"] = "pressure"
        height = HEIGHT.search(self.text)
        if height:
            kitchen["altitude_m"] = float(height[1])
        self.state = replace(self.state, kitchen=kitchen)

    def _reading(self) -> Reading | None:
        """The text read as a label, without the words that only ask."""
        bare = self.text
        for name in self.asked:
            bare = PATTERNS[name].sub(" ", bare)
        bare = " ".join(word for word in bare.split() if word.casefold().strip(".,?!؟") not in LANGUAGES)
        if sum(char.isalpha() for char in bare) < 2:
            return None
        reading = self.reader.read(bare, (), self.place)
        sure = any(used.kind in ("base", "fixed") and used.trust >= 0.6 for used in reading.used)
        return reading if sure or not (self.asked or self.language) else None

    def _remember(self, reading: Reading) -> State:
        keys = tuple(one.pulse.key for one in reading.readings if one.probability >= 0.04)[:5]
        return replace(self.state, it=keys, offered=())

    def _which(self, asked: Question | None) -> tuple[State, Reply]:
        names = "; ".join(dict.fromkeys(self._name(Pulse.of(key)) for key in self.state.it[:4]))
        said = [self.tongue.say("It may be one of these: {names}.", names=names)]
        offered: tuple[tuple[str, tuple[str, ...]], ...] = ()
        if asked:
            said.append(self.tongue.translate(asked.text))
            offered = tuple((self.tongue.either(one.text), tuple(one.pulses)) for one in asked.answers)
            said += [f"{at}. {text}" for at, (text, _) in enumerate(offered, 1)]
        return replace(self.state, offered=offered), self._reply(said, tuple(text for text, _ in offered))

    def _told(self, keys: tuple[str, ...]) -> tuple[State, Reply]:
        """Says what it is, and first what to beware of."""
        pulse = Pulse.of(keys[0])
        said = [self._what(pulse)] + [self.tongue.translate(one.text) for one in self._grave(pulse)]
        return replace(self.state, it=keys, offered=()), self._reply(said, self._quick())

    def _answered(self) -> Reply:
        if "thanks" in self.asked:
            return self._reply([self.tongue.say("You are welcome.")])
        if "help" in self.asked:
            return self._lost(help_wanted=True)
        if not self.state.it:
            return self._reply([self.tongue.say("Which pulse do you mean? Send the words on its label.")])
        # While it is open which one is meant, each that may be is answered for.
        keys = self.state.it[:MOST_OPEN] if self.state.offered else self.state.it[:1]
        said: list[tuple[str, str]] = []
        for key in keys:
            said += self._about(Pulse.of(key), named=len(keys) > 1)
        return Reply(tuple(dict.fromkeys(said)), self._quick())

    def _about(self, pulse: Pulse, named: bool) -> list[tuple[str, str]]:
        """What was asked about one pulse, under its name where there are several, and what to beware of."""
        guidance = self._guide(pulse)
        said = [(self._name(pulse) + ":", self.tongue.tag)] if named else []
        for name in self.asked:
            said += [(line, self.tongue.tag) for line in self._one(name, pulse, guidance)]
        if self.language:
            said += self._names_in(pulse, self.language)
        if {"long", "soak", "water"} & set(self.asked):
            said += [
                (self.tongue.translate(one.text), self.tongue.tag)
                for one in guidance.cautions
                if one.severity == "danger"
            ]
        return said

    def _one(self, name: str, pulse: Pulse, guidance: Guidance) -> list[str]:
        say = self.tongue.say
        if name == "instead":
            found = swaps(self.glossary, pulse, guidance.kitchen)[:4]
            if not found:
                return [say("I know nothing that can stand in for it.")]
            return [
                say("Instead you can use: {names}.", names="; ".join(self._name(one.pulse) for one in found))
            ]
        if guidance.refused:
            return [self.tongue.translate(step) for step in guidance.steps]
        if name == "soak":
            low, high = guidance.soak_hours
            return [
                say("Soak {low} to {high} hours.", low=f"{low:g}", high=f"{high:g}")
                if high
                else say("No soak.")
            ]
        if name == "long" and guidance.minutes:
            low, high = guidance.minutes
            return [say("Cook {low} to {high} minutes.", low=f"{low:g}", high=f"{high:g}")]
        if name == "water":
            low, high = guidance.water_cups_per_cup
            template = "Water: {low} to {high} cups for each cup of dry pulse."
            return [say(template, low=f"{low:g}", high=f"{high:g}")]
        if name == "name" and not self.language:
            return [text for text, _ in self._names_in(pulse, self.tongue.tag)]
        return []

    def _names_in(self, pulse: Pulse, tag: str) -> list[tuple[str, str]]:
        names = [
            one
            for one in compose(self.glossary, pulse, find.language(self.glossary, tag))
            if one.use == "preferred"
        ]
        if not names:
            told = self.tongue.say("I have no name for it in {language}.", language=tag)
            return [(told, self.tongue.tag)]
        written = " / ".join(dict.fromkeys(one.text for one in names))
        return [
            (self.tongue.say("Ask for: {names}.", names=written), tag if len(names) == 1 else self.tongue.tag)
        ]

    def _whether(self, reading: Reading) -> Reply:
        """Whether the pulse just named can stand in for "it"."""
        pulse, other = Pulse.of(self.state.it[0]), reading.readings[0].pulse
        found = swaps(self.glossary, pulse, self._guide(pulse).kitchen, most=40)
        one = next((swap for swap in found if swap.pulse.species == other.species), None)
        if one is None:
            return self._reply([*self._one("instead", pulse, self._guide(pulse))], self._quick())
        said = [self._name(one.pulse) + ": " + " ".join(one.reasons), *one.warnings]
        return self._reply(said, self._quick())

    def _what(self, pulse: Pulse) -> str:
        form = self.tongue.say(PAGE.get(f"form_{pulse.form}", pulse.form))
        latin = self.glossary.species[pulse.species].latin
        return self.tongue.say(
            "That is {name}: {latin}, {form}.", name=self._name(pulse), latin=latin, form=form
        )

    def _name(self, pulse: Pulse) -> str:
        for tag in (self.tongue.tag, "en"):
            if tag.split("-")[0] in self.glossary.rows or tag in self.glossary.rows:
                names = compose(self.glossary, pulse, tag)
                if names:
                    return names[0].text
        return self.glossary.species[pulse.species].english

    def _guide(self, pulse: Pulse) -> Guidance:
        species = self.glossary.species[pulse.species]
        return guide(pulse, kitchen_of(self.state.kitchen), species.cooking, species.hazards)

    def _grave(self, pulse: Pulse) -> list[Any]:
        return [one for one in self._guide(pulse).cautions if one.severity == "danger"]

    def _lost(self, help_wanted: bool = False) -> Reply:
        say = self.tongue.say
        if help_wanted:
            return self._reply([say(
                "Send the words on a label. Then ask: how long, do I soak it, how much water, what instead, or in which "
                "language to ask for it."
            )])  # fmt: skip
        if "?" in self.text or "؟" in self.text:
            return self._reply([say(
                "I do not know that. I can say what is in a bag, what to ask for, how to soak and cook it, and what to use "
                "instead."
            )])  # fmt: skip
        return self._reply([say(
            "This does not read as a dried pulse. Send the words on the label, or ask for a pulse by name."
        )])  # fmt: skip

    def _quick(self) -> tuple[str, ...]:
        return tuple(self.tongue.say(one) for one in QUICK)

    def _reply(self, said: list[str], quick: tuple[str, ...] = ()) -> Reply:
        return Reply(tuple((text, self.tongue.tag) for text in said if text), quick)
