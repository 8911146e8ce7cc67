"""The numbers of the decoder, each with its reason; fitted only on the training half of the label corpus."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Weights:
    """Likelihoods of a word given what is in the bag, and how far a span is to be trusted."""

    # A row we write first is likelier meant than one we only read.
    use: Mapping[str, float] = field(default_factory=lambda: {"preferred": 1.0, "also": 0.85, "decode": 0.6})
    # A word of one species on a bag of another; of a class on a bag of another class.
    base_miss: float = 2e-04
    class_miss: float = 0.01
    class_open: float = 0.5
    colour_odd: float = 0.5
    # What a word is only read as, in a language that writes it for another pulse.
    minor: float = 0.5
    # A species name, or a whole trade name, on something that is no pulse at all.
    base_none: float = 0.0007
    fixed_none: float = 0.0009
    # The same where another word says what it is instead: chickpea crisps, lentil pasta.
    base_other: float = 0.02
    # Things made of a pulse are rare as the pulse is, by this power, below this share of all that is sold.
    usual: float = 0.02
    rarer: float = 0.7
    # A form word that names one form, or that names several, on a bag of another form.
    form_miss: float = 0.003
    form_miss_loose: float = 0.008
    # A whole trade name on a bag of its species in another form.
    trade_miss: float = 0.015
    # The same where it is a name of the whole seed.
    whole_miss: float = 0.1
    # A form word on a bag whose form may be said so too: fresh sprouts, roasted flour.
    form_with: float = 0.15
    # Peeled, of a pulse sold peeled both whole and split: few languages say which.
    peeled: float = 0.12
    # A dal by its trade name, of another kind of split: a form word beside it says which.
    split_near: float = 0.12
    # A form word, or one of a split, on something that is no pulse at all.
    form_none: float = 0.03
    split_none: float = 0.0006
    # A colour word on a bag of another colour: people differ about tan, cream and grey.
    colour_near: float = 0.2
    colour_miss: float = 0.03
    colour_open: float = 0.2
    colour_none: float = 0.12
    # Words that say nothing of the pulse, and those that mean pulses at large.
    noise: float = 0.2
    generic_none: float = 0.01
    # A word for something else on a bag of a pulse.
    other_pulse: float = 2e-04
    other_none: float = 0.2
    # The same after the name of the product and apart from it; next to it but parted by a line or a comma.
    far: float = 0.22
    broken: float = 0.6
    # One word away from it: soya bean refined oil.
    gapped: float = 0.8
    # Each more of them adds less.
    strayed: float = 0.5
    # A name of another pulse after that of the product: traces, recipes, neighbours on the shelf.
    later: float = 0.3
    # One more product named beside the first, set against it.
    beside: float = 0.6
    # A word known only by likeness, apart from a name known for certain.
    guessed: float = 0.1
    # The same next to it, where it says that the product is something else.
    doubted: float = 0.7
    # What a label without any pulse name says about being a pulse.
    no_base: float = 0.06
    prior_none: float = 0.16
    # Each unread word beside the name speaks a little for something else.
    unread: float = 0.5
    most_unread: int = 4
    # Below this power a word that tells a form does not count as having told it.
    heard: float = 0.25
    # A likeness that may well be another word.
    poor: float = 0.7
    # How often a word not read, or read by such a likeness, tells a form where no other does; how likely it is each.
    hidden: float = 0.3
    hidden_form: float = 1.0
    # A meaning in a language the rest of the label does not speak; in one that was not asked for.
    other_language: float = 0.05
    not_asked: float = 0.12
    # A word only strangers to the label know is trusted less, by this power of how far they are strangers.
    foreign: float = 0.25
    other_place: float = 0.3
    # A meaning that holds in some countries only, where the country of the shop is not known.
    some_place: float = 0.2
    # Of the things a word may mean, those that fewer languages mean by it weigh less, by this power.
    fewer: float = 1.0
    # How far what is eaten where the label's language is spoken counts, beside what the world eats.
    market: float = 0.2
    # How far what is sold more in the world is held back among the meanings of one word.
    homonym: float = 0.5
    # A word for one species on a bag of another whose own names hold it (bean, in mung bean).
    shared_head: float = 0.08
    # A second word of the same meaning adds less than the first.
    repeated: float = 0.7
    # How fast a dal goes unsaid as halves make up more of what is sold of a species.
    halves: float = 1.0
    # What a word is worth where it was not the word we took it for.
    background: float = 0.03
    # Softening of the posterior, and what is always left for the unforeseen.
    temperature: float = 0.75
    unforeseen: float = 0.002
    # How seldom a bag weighs what a can does, against cans; how seldom what is no pulse does.
    bag_as_can: float = 0.06
    other_as_can: float = 0.25
    # A single reading is stated from here up; nothing is said to be a pulse below the other.
    certain: float = 0.9
    # Unless its names are as well those of another pulse, at least this likely.
    namesake: float = 0.03
    worth: float = 0.04
    # Or where nothing else is worth asking about, from here up.
    alone: float = 0.7


WEIGHTS = Weights()
FORMS_WITH = {
    "fresh": {"sprouted"}, "whole": {"roasted", "canned", "fresh", "sprouted", "whole-dehulled"},
    "roasted": {"flour", "puffed"}, "split-dehulled": {"roasted", "flour", "grits", "canned"},
    "split-with-skin": {"roasted"}, "whole-dehulled": {"canned", "roasted", "puffed"}, "puffed": {"roasted", "flakes"},
}  # fmt: skip
PEELED = {"whole-dehulled": "split-dehulled", "split-dehulled": "whole-dehulled"}
NEAR_COLOURS = {
    "black": {"brown", "grey", "purple"}, "brown": {"red", "black", "cream", "mottled"},
    "red": {"brown", "pink", "orange", "purple", "mottled"}, "green": {"grey", "yellow"},
    "yellow": {"cream", "orange", "white", "green"}, "white": {"cream", "yellow"},
    "cream": {"white", "yellow", "brown"}, "pink": {"red", "cream"}, "orange": {"red", "yellow"},
    "purple": {"black", "red"}, "grey": {"green", "brown", "black"}, "mottled": {"red", "brown"},
}  # fmt: skip
