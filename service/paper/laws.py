"""Pulses that food law calls allergens. For a printed menu only; the law itself and its local form decide.

EU: Regulation (EU) No 1169/2011, Annex II, points 5, 6 and 13 (peanuts, soybeans, lupin).
US: Food Allergen Labeling and Consumer Protection Act of 2004 (peanuts, soybeans).
India: Food Safety and Standards (Labelling and Display) Regulations, 2020 (peanuts, soybeans).
Codex: General Standard for the Labelling of Prepackaged Foods, CXS 1-1985, as revised in 2024
(peanuts on the first list; soybean and lupin on the list left to national law).
"""

from __future__ import annotations

from ..errors import BadInput

PEANUT, SOY = "arachis-hypogaea", "glycine-max"
LUPINS = ("lupinus-albus", "lupinus-angustifolius", "lupinus-luteus", "lupinus-mutabilis")
_WORDS = {PEANUT: "peanuts", SOY: "soybeans", **dict.fromkeys(LUPINS, "lupin")}
LAWS: dict[str, frozenset[str]] = {
    "eu": frozenset({PEANUT, SOY, *LUPINS}),
    "us": frozenset({PEANUT, SOY}),
    "india": frozenset({PEANUT, SOY}),
    "codex": frozenset({PEANUT, SOY, *LUPINS}),
}
# Not on a list, but known to cross-react or to hurt some: said to staff, never instead of the law.
STAFF = {
    "cicer-arietinum": "Chickpea can set off allergy in people with pea, lentil or peanut allergy; tell a guest who asks.",
    "lens-culinaris": "Lentil can set off allergy in people with pea, chickpea or peanut allergy; tell a guest who asks.",
    "pisum-sativum": "Pea can set off allergy in people with lentil, chickpea or peanut allergy; tell a guest who asks.",
    "vicia-faba": "Broad beans can make people with G6PD deficiency (favism) seriously ill; name them to every guest who asks.",
    **dict.fromkeys(LUPINS, "Lupin can set off allergy in people with peanut allergy; bitter lupin must be debittered before it is cooked."),
    "phaseolus-vulgaris": "Dry beans must be soaked and boiled hard for at least ten minutes before any slow or gentle cooking.",
    "phaseolus-coccineus": "Runner beans must be soaked and boiled hard for at least ten minutes before any slow or gentle cooking.",
    "lathyrus-sativus": "Grass pea eaten often, as the main food, can harm the nerves; it is banned or limited in some places.",
    "phaseolus-lunatus": "Lima beans must be boiled with the lid off and the water poured away; coloured wild kinds are not for the kitchen.",
}  # fmt: skip


def allergens(species: list[str], law: str) -> list[str]:
    """Words for the allergens among these species under a law (eu, us, india, codex); raises BadInput."""
    if law not in LAWS:
        raise BadInput("law", law, f"use one of {', '.join(LAWS)}")
    return list(dict.fromkeys(_WORDS[one] for one in species if one in LAWS[law]))


def warnings(species: list[str]) -> list[str]:
    """What staff should know of these species beyond the list of the law."""
    return list(dict.fromkeys(STAFF[one] for one in species if one in STAFF))
