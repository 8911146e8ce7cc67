"""Published tables about water, cups, seeds, soaking, heat and additions, typed by hand, each beside what ours says.

A `Figure` is one number or span in print and the range or number of ours that answers it. `python -m
tests.kitchen.tables` prints, group by group, how many lie inside, and the misses.
"""

from __future__ import annotations

import statistics
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from service.glossary.cooking import Figures, Soaking
from service.glossary.model import Glossary, Pulse, Range
from service.kitchen import Guidance, Kitchen, guide, physics, yields
from service.kitchen.effects import ACID, AGE, SODA, height
from service.kitchen.physics import KPA_PER_PSI, boiling_c
from service.kitchen.rules import soaking_for, times_for
from service.kitchen.soak import HOURS, hours_to
from service.kitchen.water import absorbed

from .published import ROWS, WAYS

LB_G = 453.59237
PSI = (10.0, 11.6, 15.0)

# USDA SR28: grams in a cup dry, grams in a cup cooked, water raw, water cooked, and from the balance of dry matter
# the yield by weight (an upper bound: 2 to 12 % of the solids are lost), water taken up per 100 g, cups cooked from
# a cup and from a pound dry.
USDA = """
cicer-arietinum/kabuli/whole 200 164 7.68 60.21 2.32 132 2.83 6.42
phaseolus-vulgaris/kidney/whole 184 177 11.75 66.94 2.67 167 2.77 6.84
phaseolus-vulgaris/black/whole 194 172 11.02 65.74 2.60 160 2.93 6.85
phaseolus-vulgaris/pinto/whole 193 171 11.33 62.95 2.39 139 2.70 6.35
phaseolus-vulgaris/navy/whole 208 182 12.10 63.81 2.43 143 2.78 6.05
phaseolus-vulgaris/great-northern/whole 183 177 10.70 69.00 2.88 188 2.98 7.38
phaseolus-vulgaris/cranberry/whole 195 177 12.39 64.65 2.48 148 2.73 6.35
phaseolus-vulgaris/pink/whole 210 169 10.06 61.20 2.32 132 2.88 6.22
phaseolus-vulgaris/small-white/whole 215 179 11.71 63.24 2.40 140 2.88 6.09
phaseolus-lunatus/large/whole 178 188 10.17 69.79 2.97 197 2.82 7.17
phaseolus-lunatus/baby/whole 202 182 12.07 67.15 2.68 168 2.97 6.67
vigna-unguiculata/black-eyed/whole 167 171 11.95 70.04 2.94 194 2.87 7.80
vigna-angularis//whole 197 230 13.44 66.29 2.57 157 2.20 5.06
vigna-radiata//whole 207 202 9.05 72.66 3.33 233 3.41 7.47
vigna-mungo//whole 207 180 10.80 72.51 3.24 224 3.73 8.18
vigna-aconitifolia//whole 196 177 9.68 69.23 2.94 194 3.25 7.52
lens-culinaris//whole 192 198 8.26 69.64 3.02 202 2.93 6.92
pisum-sativum/green/split-dehulled 197 196 8.62 69.49 3.00 200 3.01 6.93
cajanus-cajan//whole 205 168 10.59 68.55 2.84 184 3.47 7.68
vicia-faba//whole 150 170 10.98 71.54 3.13 213 2.76 8.35
glycine-max//whole 186 172 8.54 62.55 2.44 144 2.64 6.44
lupinus-albus//whole 180 166 10.44 71.08 3.10 210 3.36 8.46
lablab-purpureus//whole 210 194 9.38 69.13 2.94 194 3.18 6.86
vigna-unguiculata/yardlong/whole 167 171 8.43 68.80 2.93 193 2.87 7.79
psophocarpus-tetragonolobus//whole 182 172 8.34 67.19 2.79 179 2.96 7.37
vigna-unguiculata/catjang/whole 167 171 11.05 69.70 2.94 194 2.87 7.79
"""

# Length, width and thickness in mm and weight of 1,000 seeds in g, from the driest to the wettest lot of a study.
SEEDS: Mapping[str, tuple[str, Mapping[str, Range]]] = {
    "lens-culinaris/large-green/whole": ("isik-2007", {"length": (6.72, 6.72), "thickness": (2.58, 2.58), "weight": (72.0, 73.9)}),
    "lens-culinaris/yellow/split-dehulled": ("isik-izli-2016", {"length": (4.29, 4.6), "thickness": (1.22, 1.42), "weight": (15.1, 18.0)}),
    "vigna-unguiculata/black-eyed/whole": ("unal-2006", {"length": (9.15, 10.45), "width": (6.67, 7.31), "thickness": (6.01, 6.55), "weight": (245.0, 279.0)}),
    "cicer-arietinum/black/whole": ("gurhan-2009", {"length": (6.85, 6.85), "width": (5.08, 5.08), "thickness": (4.72, 4.72), "weight": (100.2, 110.4)}),
    "vigna-mungo//whole": ("black-gram-2013", {"length": (4.66, 5.11), "width": (3.71, 3.79), "thickness": (3.2, 3.29)}),
    "lathyrus-sativus//whole": ("zewdu-2008", {"length": (5.02, 5.34), "width": (4.88, 5.01), "thickness": (4.22, 4.5), "weight": (82.0, 114.6)}),
    "pisum-sativum/green/whole": ("ganjloo-2018", {"length": (7.28, 7.28), "width": (5.8, 5.8), "thickness": (5.15, 5.15), "weight": (188.9, 188.9)}),
}  # fmt: skip

# ISO 2533 with IAPWS-IF97: feet, metres, kPa, boiling point, then steam at 10, 11.6 and 15 psi gauge, in C.
AIR = """
0 0 101.33 99.97 115.20 117.14 120.95
1000 305 97.72 98.96 114.54 116.51 120.39
2000 610 94.21 97.95 113.89 115.90 119.84
3000 914 90.81 96.93 113.25 115.29 119.29
4000 1219 87.51 95.92 112.62 114.69 118.75
5000 1524 84.31 94.90 112.00 114.10 118.22
6000 1829 81.20 93.89 111.38 113.52 117.70
7000 2134 78.19 92.87 110.77 112.95 117.19
7500 2286 76.71 92.36 110.47 112.67 116.94
8000 2438 75.26 91.85 110.17 112.38 116.69
9000 2743 72.43 90.83 109.58 111.83 116.19
10000 3048 69.68 89.81 109.00 111.28 115.71
12000 3658 64.44 87.77 107.86 110.22 114.76
14000 4267 59.52 85.72 106.76 109.19 113.85
"""
# Psi gauge at sea level and degrees of saturated steam, IAPWS-IF97.
STEAM = "0 99.97 3 105.26 5 108.39 6 109.86 7.2 111.54 8 112.62 10 115.20 10.2 115.45 11.6 117.14 12 117.61 13 118.75 15 120.95"
# Pounds of steam and degrees Fahrenheit, a wartime canning leaflet; feet and degrees Fahrenheit at which water boils,
# Colorado State University, High Altitude Food Preparation.
LEAFLET = "5 227 10 239 15 250 20 259 25 267"
COLORADO = "0 212 2000 208 5000 203 7500 198 10000 193"


@dataclass(frozen=True, slots=True)
class Figure:
    """`published` from and to, `ours` from and to; `group` is what it is about."""

    group: str
    what: str
    source: str
    published: Range
    ours: Range

    @property
    def id(self) -> str:
        return f"{self.group}: {self.what} ({self.source})"

    @property
    def inside(self) -> bool:
        """A single figure lies within ours; of a span half of the narrower of the two is shared."""
        shared = min(self.ours[1], self.published[1]) - max(self.ours[0], self.published[0])
        narrower = min(self.ours[1] - self.ours[0], self.published[1] - self.published[0])
        return shared >= narrower / 2 - 1e-9


def figures_in_print(glossary: Glossary) -> list[Figure]:
    """Every figure of the tables above and of the sentences below, beside ours."""
    found: list[Figure] = []
    for part in (_usda, _seeds, _water, _soaking, _heat, _rules, _additions):
        found += part(glossary)
    return found


def _near(value: float, within: float) -> Range:
    return value - within, value + within


def _pairs(text: str) -> Iterator[tuple[float, float]]:
    numbers = [float(one) for one in text.split()]
    return zip(numbers[::2], numbers[1::2], strict=True)


def _cooking(glossary: Glossary, key: str) -> Figures:
    return glossary.species[key.split("/")[0]].cooking


def _usda(glossary: Glossary) -> Iterator[Figure]:
    for line in USDA.strip().splitlines():
        key, *rest = line.split()
        dry, cooked, raw_water, cooked_water, weight, drunk, cups, per_lb = map(float, rest)
        balance = _cooking(glossary, key).balance_of(Pulse.of(key))
        assert balance, key
        ours = yields.yields(balance)
        pound = [one * LB_G / balance.cup_dry_g for one in ours.cooked_cups_per_cup]
        for what, published, held in (
            ("g in a cup dry", dry, _near(balance.cup_dry_g, 0.5)),
            ("g in a cup cooked", cooked, _near(balance.cup_cooked_g, 0.5)),
            ("% water raw", raw_water, _near(balance.water_raw, 0.005)),
            ("% water cooked", cooked_water, _near(balance.water_cooked, 0.005)),
            ("g from a gram", weight, (ours.cooked_g_per_100g[0] / 100, ours.cooked_g_per_100g[1] / 100)),
            ("ml drunk by 100 g", drunk, _near(100 * absorbed(balance), 1)),
            ("cups from a cup", cups, ours.cooked_cups_per_cup),
            ("cups from a pound", per_lb, (pound[0], pound[1])),
        ):
            yield Figure("water and cups", f"{key} {what}", "usda-sr28", (published, published), held)


def _seeds(glossary: Glossary) -> Iterator[Figure]:
    for key, (source, sizes) in SEEDS.items():
        species = glossary.species[key.split("/")[0]]
        grain = next(one for one in species.grains if one.pulse.key == key)
        held = {
            "length": grain.length_mm,
            "width": grain.width_mm,
            "thickness": grain.thickness_mm,
            "weight": grain.g_per_1000,
        }
        for what, published in sizes.items():
            ours = held[what]
            assert ours, key
            yield Figure("seeds", f"{key} {what}", source, published, ours)


def _water(glossary: Glossary) -> Iterator[Figure]:
    """Cups of water to a cup, litres to a weight, cups and cans that come of it, as sentences in print."""

    def cups(key: str, dish: str = "thick", **words: Any) -> Range:
        return _guided(glossary, key, dish=dish, **words).water_cups_per_cup

    def litres(key: str, grams: float, **words: Any) -> Range:
        low, high = _guided(glossary, key, dish="soupy", **words).water_ml_per_100g
        return low * grams / 1e5, high * grams / 1e5

    bean, pea, lentil, chickpea = "phaseolus-vulgaris//whole", "pisum-sativum/green/split-dehulled", "lens-culinaris/brown/whole", "cicer-arietinum/kabuli/whole"  # fmt: skip
    pressure = {"vessel": "pressure", "gauge_kpa": 103.42}
    toor, moong, kidney = "cajanus-cajan//split-dehulled", "vigna-radiata//split-dehulled", "phaseolus-vulgaris/kidney/whole"  # fmt: skip
    for what, source, published, ours in (
        ("split peas, cups to a cup", "usapulses", 2.0, cups(pea, soak="none")),
        ("beans soaked, cups to a cup", "usapulses", 2.0, cups(bean, "drained")),
        ("lentils, cups to a cup", "usapulses", 2.5, cups(lentil, "drained", soak="none")),
        ("chickpeas soaked, cups to a cup", "usapulses", 3.0, cups(chickpea, "soupy")),
        ("beans soaked under pressure, cups to a cup", "pulses-org", 1.0, cups(bean, "thick", **pressure)),
        ("beans dry under pressure, cups to a cup", "pulses-org", 2.0, cups(bean, soak="none", **pressure)),
        ("350 g pigeon pea dal under pressure, l", "stove-top-manual-in", 1.1, litres(toor, 350, soak="none", **pressure)),
        ("350 g pigeon pea dal in an open pot, l", "stove-top-manual-in", 1.7, litres(toor, 350, soak="none")),
        ("300 g mung dal under pressure, l", "stove-top-manual-in", 1.1, litres(moong, 300, soak="none", **pressure)),
        ("300 g mung dal in an open pot, l", "stove-top-manual-in", 1.4, litres(moong, 300, soak="none")),
        ("500 g kidney beans under pressure, l", "stove-top-manual-in", 1.5, litres(kidney, 500, **pressure)),
        ("500 g kidney beans in an open pot, l", "stove-top-manual-in", 2.4, litres(kidney, 500)),
    ):  # fmt: skip
        yield Figure("water and cups", what, source, (published, published), ours)
    balance = _cooking(glossary, bean).balance_of(Pulse.of(bean))
    assert balance
    cooked = yields.yields(balance).cooked_cups_per_cup
    for what, source, published, held in (
        ("beans, cups from a cup", "usa-dry-bean-council", 3.0, cooked),
        ("beans, cups from a cup", "alberta-pulse", 2.5, cooked),
        ("beans, cups from a pound", "nebraska-beans", 6.0, tuple(one * LB_G / balance.cup_dry_g for one in cooked)),
        ("cups in a can", "nebraska-beans", 1.5, yields.CAN_CUPS),
        ("cups in a can", "illinois-extension", 1.75, yields.CAN_CUPS),
    ):  # fmt: skip
        yield Figure("water and cups", what, source, (published, published), (held[0], held[1]))


def _guided(glossary: Glossary, key: str, **words: Any) -> Guidance:
    pulse = Pulse.of(key)
    species = glossary.species[pulse.species]
    return guide(pulse, Kitchen(**words), species.cooking, species.hazards)


def _peleg(glossary: Glossary, key: str) -> Soaking:
    pulse, figures = Pulse.of(key), _cooking(glossary, key)
    return soaking_for(pulse, figures, times_for(pulse, figures))


def _soaking(glossary: Glossary) -> Iterator[Figure]:
    bean, chickpea = _peleg(glossary, "phaseolus-vulgaris//whole"), _peleg(glossary, "cicer-arietinum//whole")
    saved = 1 - hours_to(bean, 0.9, 55.0) / hours_to(bean, 0.9, 25.0)
    for what, source, published, ours in (
        ("hot soak, h", "nebraska-beans", (1.0, 4.0), HOURS["hot"]),
        ("hot soak, h", "stove-top-manual-us", (1.0, 2.0), HOURS["hot"]),
        ("hot soak, h", "usapulses", (1.0, 1.0), HOURS["hot"]),
        ("cold soak, h", "usapulses", (8.0, 8.0), HOURS["overnight"]),
        ("cold soak of chickpeas, h", "usapulses", (8.0, 24.0), HOURS["overnight"]),
        ("cold soak, h", "illinois-extension", (8.0, 8.0), HOURS["fridge"]),
        ("soak in the fridge, h", "alberta-pulse", (12.0, 12.0), HOURS["fridge"]),
        ("cold soak, h", "stove-top-manual-in", (8.0, 10.0), HOURS["overnight"]),
        ("salted soak, h", "csu-extension", (12.0, 24.0), HOURS["brine"]),
        ("beans at 25 C, h to equilibrium", "kwofie-2019", (10.0, 10.0), (hours_to(bean, 0.9, 25.0), hours_to(bean, 0.98, 25.0))),
        ("beans at 35 C, h to equilibrium", "kwofie-2019", (6.0, 6.0), (hours_to(bean, 0.9, 35.0), hours_to(bean, 0.98, 35.0))),
        ("beans at 45 C, h to equilibrium", "kwofie-2019", (4.0, 4.0), (hours_to(bean, 0.9, 45.0), hours_to(bean, 0.98, 45.0))),
        ("share of the hours saved at 55 C", "ulloa-2016", (0.455, 0.609), (saved * 0.9, saved * 1.1)),
        ("chickpeas, % water at the limit", "yildirim-2010", (134.2, 134.2), _near(1 / chickpea.k2, 0.1)),
    ):  # fmt: skip
        yield Figure("soaking", what, source, published, ours)


def _heat(glossary: Glossary) -> Iterator[Figure]:
    del glossary
    for line in AIR.strip().splitlines():
        feet, metres, kpa, boils, *steam = map(float, line.split())
        height_m = feet * 0.3048
        assert abs(height_m - metres) < 1
        air = _near(physics.air_kpa(height_m), 0.05)
        yield Figure("heat", f"kPa at {feet:g} ft", "iso-2533", (kpa, kpa), air)
        degrees = _near(boiling_c(height_m), 0.02)
        yield Figure("heat", f"boiling at {feet:g} ft", "iso-2533, if97", (boils, boils), degrees)
        for psi, celsius in zip(PSI, steam, strict=True):
            ours = _near(boiling_c(height_m, psi * KPA_PER_PSI), 0.02)
            yield Figure("heat", f"{psi} psi at {feet:g} ft", "iso-2533, if97", (celsius, celsius), ours)
    for psi, celsius in _pairs(STEAM):
        ours = _near(boiling_c(0.0, psi * KPA_PER_PSI), 0.02)
        yield Figure("heat", f"steam at {psi} psi", "if97", (celsius, celsius), ours)
    for psi, fahrenheit in _pairs(LEAFLET):
        ours = _near(_fahrenheit(boiling_c(0.0, psi * KPA_PER_PSI)), 0.5)
        yield Figure("heat", f"F of steam at {psi} psi", "canning leaflet", (fahrenheit, fahrenheit), ours)
    for feet, fahrenheit in _pairs(COLORADO):
        ours = _near(_fahrenheit(boiling_c(feet * 0.3048)), 0.7)
        yield Figure("heat", f"F of boiling at {feet:g} ft", "csu-extension", (fahrenheit, fahrenheit), ours)
    at_6000 = _near(boiling_c(6000 * 0.3048, 13 * KPA_PER_PSI), 0.2)
    flat = boiling_c(0.0, 10 * KPA_PER_PSI)
    yield Figure("heat", "13 psi at 6,000 ft is 10 at sea level", "uwyo-altitude", (flat, flat), at_6000)


def _fahrenheit(celsius: float) -> float:
    return celsius * 9 / 5 + 32


def _rules(glossary: Glossary) -> Iterator[Figure]:
    """What height costs by the makers' rule and by kinetics; z-values by pulse."""
    del glossary
    for feet, makers in ((3000, 1.05), (5000, 1.15), (8000, 1.30)):
        ours = height(
            Kitchen(vessel="pressure", gauge_kpa=103.42, altitude_m=feet * 0.3048),
            (16.0, 19.0),
            (103.42, 103.42),
        )
        assert ours
        yield Figure("height", f"pressure at {feet} ft", "altitude-manual-uk", (makers, makers), ours.factor)
    for feet, low, high in ((3000, 1.44, 1.55), (5000, 1.85, 2.07), (7000, 2.36, 2.78), (10000, 3.43, 4.32)):
        for z, value in ((19.0, low), (16.0, high)):
            found = height(Kitchen(vessel="open", altitude_m=feet * 0.3048), (z, 19.0), (0.0, 0.0))
            assert found
            ours_at = (found.factor[0], found.factor[1] + 0.005)
            yield Figure("height", f"open at {feet} ft, z {z:g}", "quast-1977", (value, value), ours_at)
    for feet, low, high in ((5000, 1.20, 1.55), (3000, 1.12, 1.33)):
        found = height(Kitchen(vessel="open", altitude_m=feet * 0.3048), (16.0, 19.0), (0.0, 0.0))
        assert found
        yield Figure("height", f"open at {feet} ft", "uwyo-altitude", (low, high), found.factor)


def _additions(glossary: Glossary) -> Iterator[Figure]:
    """Eight bean varieties by water, unsoaked and soaked: tap 109.5 and 84.6 min; with acid and soda."""
    soda, acid, year = SODA["water"], ACID["water"], AGE["year"]
    assert soda and acid and year
    z = "quast-1977"
    for key, kelvin in (
        ("phaseolus-vulgaris/black/whole", 19.0), ("phaseolus-vulgaris/pinto/whole", 18.0), ("glycine-max//whole", 16.0),
        ("pisum-sativum/green/whole", 16.0),
    ):  # fmt: skip
        times = _cooking(glossary, key).times_of(Pulse.of(key))
        assert times
        yield Figure("z-values", key, z, (kelvin, kelvin), times.z_c)
    bean = "phaseolus-vulgaris//whole"
    for what, published, ours in (
        ("unsoaked, min", 109.5, _guided(glossary, bean, soak="none").minutes),
        ("soaked, min", 84.6, _guided(glossary, bean).minutes),
        ("unsoaked with acid", 115.9 / 109.5, acid.factor),
        ("soaked with acid", 92.7 / 84.6, acid.factor),
        ("unsoaked with soda", 82.0 / 109.5, soda.factor),
        ("soaked with soda", 51.2 / 84.6, soda.factor),
        ("unsoaked with acid, min", 115.9, _guided(glossary, bean, soak="none", acid="water").minutes),
        ("soaked with acid, min", 92.7, _guided(glossary, bean, acid="water").minutes),
        ("unsoaked with soda, min", 82.0, _guided(glossary, bean, soak="none", soda="water").minutes),
        ("soaked with soda, min", 51.2, _guided(glossary, bean, soda="water").minutes),
    ):
        assert ours
        yield Figure("additions", what, "ciat-soaking", (published, published), ours)
    # Nine months in store against three: six minutes more on some eighty-five.
    yield Figure("additions", "nine months in store", "ars-1995", (1 + 6 / 84.6, 1 + 6 / 84.6), year.factor)


def times_in_print(glossary: Glossary) -> Iterator[Figure]:
    """The cooking times of `published`, beside ours."""
    for row in ROWS:
        spans = [
            _guided(glossary, row.key, soak=row.soak, texture=texture, **WAYS[row.way]).minutes
            for texture in row.texture.split("-")
        ]
        first, last = spans[0], spans[-1]
        assert first and last
        yield Figure("cooking times", row.id, row.texture, (row.low, row.high), (first[0], last[1]))


def main() -> None:
    """Shares by group, median error, and the misses."""
    from service.store import files

    glossary = files.load()
    found = [*times_in_print(glossary), *figures_in_print(glossary)]
    groups: dict[str, list[Figure]] = {}
    for one in found:
        groups.setdefault(one.group, []).append(one)
    for name, rows in groups.items():
        inside = sum(one.inside for one in rows)
        off = statistics.median(abs(sum(one.ours) / (sum(one.published) or 1) - 1) for one in rows)
        print(f"{name:<16}{inside:>4} of {len(rows):<4}{inside / len(rows):>6.0%}  middle off by {off:.1%}")
    print(f"{'all':<16}{sum(one.inside for one in found):>4} of {len(found)}")
    for one in found:
        if not one.inside:
            print(f"  {one.id}: {one.published}, ours {one.ours[0]:.4g} to {one.ours[1]:.4g}")


if __name__ == "__main__":
    main()
