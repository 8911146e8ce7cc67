"""Everything sold as arrays, and how likely each word is on each bag: made once, kept, and looked up."""

from __future__ import annotations

from typing import Any

import numpy as np

from ..glossary.model import Glossary, Pulse
from .weights import FORMS_WITH, NEAR_COLOURS, PEELED, WEIGHTS, Weights

Array = np.ndarray[Any, np.dtype[np.float64]]
SPLITS = ("split-dehulled", "split-with-skin", "whole-dehulled")
# How often a bag of each form says nothing of its form.
UNSAID = {
    "whole": 1.0, "split-dehulled": 0.25, "split-with-skin": 0.06, "whole-dehulled": 0.05, "flour": 0.01,
    "grits": 0.01, "roasted": 0.02, "puffed": 0.01, "flakes": 0.01, "sprouted": 0.01, "fresh": 0.06, "canned": 0.06,
}  # fmt: skip


class Space:
    """Everything sold as arrays, with the likelihood of each meaning over it, made once and kept."""

    def __init__(self, glossary: Glossary, weights: Weights = WEIGHTS) -> None:
        self.weights = weights
        kept = [sold for sold in glossary.sold if glossary.species[sold.pulse.species].standing == "pulse"]
        self.pulses: tuple[Pulse, ...] = tuple(sold.pulse for sold in kept)
        self.strange = frozenset(slug for slug, one in glossary.species.items() if one.standing != "pulse")
        share = np.array([sold.share for sold in kept])
        self.prior = (1 - weights.prior_none) * share / share.sum()
        self.species = np.array([pulse.species for pulse in self.pulses])
        self.classes = np.array([pulse.market_class for pulse in self.pulses])
        self.forms = np.array([pulse.form for pulse in self.pulses])
        self.colours = np.array([pulse.colour for pulse in self.pulses])
        self.unsaid = np.log(self._unsaid(share))
        names: dict[tuple[str, str], int] = {}
        # The same where another form is said: dals and whole grains go by many words, the rest are named.
        self.untold = np.log([1.0 if one in (*SPLITS, "whole") else UNSAID[one] for one in self.forms])
        self.group = np.array(
            [names.setdefault((pulse.species, pulse.form), len(names)) for pulse in self.pulses]
        )
        self.groups = tuple(names)
        self.members = tuple(tuple(map(int, np.flatnonzero(self.group == at))) for at in range(len(names)))
        slugs = sorted(set(map(str, self.species)))
        self.mass = {slug: float(self.prior[self.species == slug].sum()) for slug in slugs}
        self.markets = self._markets(glossary, weights.market)
        self.open_markets = self._markets(glossary, 1.0)
        self.head_first = frozenset(glossary.vocabulary.get("order", {}).get("head-first", "").split())
        self.log_prior = np.log(self.prior)
        # Bags of a weight that cans have are few; cans of it are many.
        self.can_size = np.where(self.forms == "canned", 0.0, np.log(weights.bag_as_can))
        self._kept: dict[tuple[str, str], tuple[Array, float]] = {}
        self._sold: dict[tuple[str, str], float] = {}
        self._untold: dict[frozenset[str], Array] = {}
        self._shared: dict[frozenset[str], Array] = {}

    def _markets(self, glossary: Glossary, power: float) -> dict[str, Array]:
        """By language: how much likelier each bag is where it is spoken than in the world, to a power."""
        found: dict[str, Array] = {}
        slugs = [*map(str, self.species)]
        world = {slug: mass / sum(self.mass.values()) for slug, mass in self.mass.items()}
        everywhere = np.array([world[slug] for slug in slugs])
        spoken = glossary.vocabulary.get("spoken-in", {})
        for market, eaten in glossary.vocabulary.get("sold-in", {}).items():
            parts = [part.split() for part in eaten.split(", ")]
            sold = {slug: float(percent) / 100 for slug, percent in parts}
            rest = (1 - sum(sold.values())) / (1 - sum(world[slug] for slug in sold))
            local = np.array([sold.get(slug, rest * world[slug]) for slug in slugs])
            likelier = (local / everywhere) ** power
            likelier *= self.prior.sum() / (self.prior @ likelier)
            found |= dict.fromkeys(spoken[market].split(), likelier)
        return found

    def _unsaid(self, share: Array) -> Array:
        """How often nothing is said of the form. Halves go unsaid only where they are what is mostly sold."""
        out = np.array([UNSAID[pulse.form] for pulse in self.pulses])
        for at, pulse in enumerate(self.pulses):
            if pulse.form == "whole" and pulse.market_class:
                kin = (self.species == pulse.species) & (self.classes == pulse.market_class)
                halves = float(share[kin & np.isin(self.forms, SPLITS)].sum() / share[kin].sum())
                out[at] = 1.0 if halves < 0.5 else 1.0 - halves
            if pulse.form not in SPLITS:
                continue
            kin = self.species == pulse.species
            halves = float(share[kin & np.isin(self.forms, SPLITS)].sum() / share[kin].sum())
            out[at] *= min(1.0, halves * self.weights.halves)
            if pulse.market_class:
                kin = kin & (self.classes == pulse.market_class)
                same = kin & (self.forms == pulse.form)
                own = float(share[same].sum() / share[kin].sum())
                out[at] = max(out[at], own if own > 0.5 else 0.0)
        return out

    def likelihood(self, kind: str, ref: str) -> tuple[Array, float]:
        """How likely the word is on each bag, and on something that is no pulse."""
        slot = (kind, ref)
        if slot not in self._kept:
            self._kept[slot] = getattr(self, f"_{kind}")(ref)
        return self._kept[slot]

    def sold(self, kind: str, ref: str) -> float:
        """The share of all that is sold which the word fits; 0 for a name of what is no pulse."""
        slot = (kind, ref)
        if slot not in self._sold:
            strange = ref.partition("/")[0] in self.strange
            fits, _ = self.likelihood(kind, ref)
            self._sold[slot] = 0.0 if strange else float((self.prior * np.exp(self.unsaid) * fits).sum())
        return self._sold[slot]

    def told(self, forms: frozenset[str]) -> Array:
        """Logarithm of how likely each bag is where these forms are said."""
        if forms not in self._untold:
            self._untold[forms] = np.where(np.isin(self.forms, [*forms]), 0.0, self.untold)
        return self._untold[forms]

    def of(self, species: frozenset[str]) -> Array:
        """1 for every bag of these species."""
        if species not in self._shared:
            self._shared[species] = np.isin(self.species, [*species]).astype(float)
        return self._shared[species]

    def _base(self, ref: str) -> tuple[Array, float]:
        weights = self.weights
        pulse = Pulse.of(ref)
        if pulse.species in self.strange:
            return np.full(len(self.pulses), weights.other_pulse), weights.other_none
        own = self.species == pulse.species
        fits = np.ones(len(self.pulses))
        if pulse.market_class:
            fits = np.where(self.classes == pulse.market_class, 1.0, weights.class_miss)
            fits = np.where(self.classes == "", weights.class_open * self._alike(pulse), fits)
        return np.where(own, fits, weights.base_miss), weights.base_none * self._usual(own & (fits == 1.0))

    def _usual(self, named: Array) -> float:
        """How usual what is named is, at most 1: of rare pulses rare things are made."""
        mass = float(self.prior[named].sum())
        return float(min(1.0, max(mass, 1e-6) / self.weights.usual) ** self.weights.rarer)

    def _alike(self, named: Pulse) -> Array:
        """How far a bag of no named class may be one of this class.

        Less where its colour never is, and as the class is one of several sold in that form.
        """
        kin = self.species == named.species
        own = kin & (self.classes == named.market_class)
        alike = np.where(np.isin(self.colours, [*set(self.colours[own]), ""]), 1.0, self.weights.colour_odd)
        for form in set(self.forms[own]):
            here = self.forms == form
            classed = float(self.prior[kin & here & (self.classes != "")].sum())
            alike = np.where(here, alike * float(self.prior[own & here].sum()) / classed, alike)
        return alike

    def _fixed(self, ref: str) -> tuple[Array, float]:
        weights = self.weights
        pulse = Pulse.of(ref)
        found, none = self._base(ref)
        if pulse.species in self.strange:
            return found, none
        if pulse.form:
            # Whole is what goes without saying: a name of the whole seed is used of what is made of it too.
            loose = weights.whole_miss if pulse.form == "whole" else weights.trade_miss
            miss = np.full(len(self.pulses), loose)
            if pulse.form in SPLITS:
                miss[np.isin(self.forms, SPLITS)] = weights.split_near
            found = found * np.where(self.forms == pulse.form, 1.0, miss)
        if pulse.colour:
            found = found * self._colour_fit(pulse.colour)
        none = weights.fixed_none * self._usual(found == 1.0)
        return np.maximum(found, weights.base_miss), none

    def _form(self, ref: str) -> tuple[Array, float]:
        none = self.weights.split_none if ref in SPLITS else self.weights.form_none
        fits = np.where(self.forms == ref, 1.0, self.weights.form_miss)
        fits = np.where(self.forms == PEELED.get(ref, ""), self.weights.peeled, fits)
        return np.where(np.isin(self.forms, [*FORMS_WITH.get(ref, ())]), self.weights.form_with, fits), none

    def _colour(self, ref: str) -> tuple[Array, float]:
        return self._colour_fit(ref), self.weights.colour_none

    def _colour_fit(self, colour: str) -> Array:
        weights = self.weights
        near = np.isin(self.colours, list(NEAR_COLOURS[colour]))
        fit = np.where(near, weights.colour_near, weights.colour_miss)
        fit = np.where(self.colours == "", weights.colour_open, fit)
        return np.where(self.colours == colour, 1.0, fit)

    def _noise(self, ref: str) -> tuple[Array, float]:
        weights = self.weights
        none = weights.generic_none if ref == "generic" else weights.noise
        return np.full(len(self.pulses), weights.noise), none

    def _other(self, ref: str) -> tuple[Array, float]:
        del ref
        return np.full(len(self.pulses), self.weights.other_pulse), self.weights.other_none
