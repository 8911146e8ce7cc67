"""Cooking figures of a species, from the tables of its TOML file. What each column means is said here."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from .model import Pulse, Range

SIZES = ("split", "small", "large")
SOAKS = ("none", "helps", "advised", "demanded")


@dataclass(frozen=True, slots=True)
class Times:
    """When one pulse is tender, at two reference places; every figure a range.

    `open_min`: minutes at the boil at sea level after a full soak (where one is wanted at all).
    `pressure_min`: minutes at 103.4 kPa gauge at sea level after a full soak, pressure falling of itself.
    `unsoaked_*`: minutes more where it was not soaked. `z_c`: kelvin for a tenfold change of softening rate.
    `published_open`, `published_pressure`: from the shortest to the longest figure found in print.
    """

    market_class: str
    form: str
    size: str
    soak: str
    open_min: Range
    pressure_min: Range
    unsoaked_open_min: Range
    unsoaked_pressure_min: Range
    z_c: Range
    z_source: str
    published_open: Range | None
    published_pressure: Range | None
    basis: str
    note: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Soaking:
    """Water uptake after Peleg: gain = t / (k1 + k2 t), in % of dry matter; t in s.

    `k1_s` s/% at `at_c`; `k2` 1/%. `ea_low`, `ea_high` kJ/mol below and above `break_c`.
    """

    form: str
    k1_s: float
    k2: float
    at_c: float
    ea_low: float
    ea_high: float
    break_c: float
    basis: str
    source: str


@dataclass(frozen=True, slots=True)
class Balance:
    """Water in the seed before and after cooking, in % by weight, and grams in a US cup (236.6 ml)."""

    market_class: str
    form: str
    water_raw: float
    water_cooked: float
    cup_dry_g: float
    cup_cooked_g: float
    basis: str
    source: str


@dataclass(frozen=True, slots=True)
class Nutrition:
    """Per 100 g dry. Carbohydrate is total by difference and includes the fibre."""

    market_class: str
    form: str
    record: str
    kcal: float
    protein_g: float
    fat_g: float
    carbohydrate_g: float
    fibre_g: float | None
    iron_mg: float
    folate_ug: float
    source: str


@dataclass(frozen=True, slots=True)
class Figures:
    """All cooking figures of one species; empty tuples where the files say nothing."""

    standing: str = "pulse"
    times: tuple[Times, ...] = ()
    soaking: tuple[Soaking, ...] = ()
    balance: tuple[Balance, ...] = ()
    nutrition: tuple[Nutrition, ...] = ()

    def times_of(self, pulse: Pulse) -> Times | None:
        """The most special row that covers the pulse: its class before any class."""
        found: Times | None = _closest(self.times, pulse, strict=True)
        return found

    def balance_of(self, pulse: Pulse) -> Balance | None:
        """Water balance; where no row has the form, the nearest form of the same species."""
        found: Balance | None = _closest(self.balance, pulse, strict=False)
        return found

    def nutrition_of(self, pulse: Pulse) -> Nutrition | None:
        """Nutrition; where no row has the form, the nearest form of the same species."""
        found: Nutrition | None = _closest(self.nutrition, pulse, strict=False)
        return found

    def soaking_of(self, pulse: Pulse) -> Soaking | None:
        """Soaking row of the form, or of any form."""
        fit = [one for one in self.soaking if one.form in ("", pulse.form)]
        return max(fit, key=lambda one: bool(one.form), default=None)


def parse(table: Mapping[str, object], file: str) -> Figures:
    """The figures of a species file; raises ValueError saying which row of `file` is at fault."""
    head = table.get("species")
    standing = str(head.get("standing", "pulse")) if isinstance(head, Mapping) else "pulse"
    return Figures(
        standing,
        tuple(_times(row, _where(file, "cooking", n)) for n, row in _rows(table, "cooking")),
        tuple(_soaking(row, _where(file, "soaking", n)) for n, row in _rows(table, "soaking")),
        tuple(_balance(row, _where(file, "balance", n)) for n, row in _rows(table, "balance")),
        tuple(_nutrition(row) for _, row in _rows(table, "nutrition")),
    )


def sources_of(figures: Figures) -> set[str]:
    """Every source key these figures rest on."""
    found = {key for one in figures.times for key in (*one.sources, one.z_source)}
    found |= {one.source for one in figures.soaking} | {one.source for one in figures.balance}
    return found | {one.source for one in figures.nutrition}


def _closest(rows: Sequence[Any], pulse: Pulse, *, strict: bool) -> Any:
    """The row covering the pulse with most slots filled; unless strict, one of another form may stand in."""
    form = pulse.form or "whole"
    fit = [one for one in rows if one.market_class in ("", pulse.market_class)]
    exact = [one for one in fit if one.form in ("", form)]
    if strict or exact:
        fit = exact
    return max(fit, key=lambda one: (bool(one.market_class), bool(one.form)), default=None)


def _where(file: str, name: str, number: int) -> str:
    return f"{file}, {name} {number}"


def _rows(table: Mapping[str, object], name: str) -> list[tuple[int, Mapping[str, Any]]]:
    rows = table.get(name, ())
    if not isinstance(rows, Sequence) or isinstance(rows, str):
        raise ValueError(f"{name} must be an array of tables")
    return list(enumerate(rows, 1))


def _times(row: Mapping[str, Any], where: str) -> Times:
    one = Times(
        market_class=row.get("market_class", ""),
        form=row["form"],
        size=_word(row, "size", SIZES, where),
        soak=_word(row, "soak", SOAKS, where),
        open_min=_pair(row["open_min"], where),
        pressure_min=_pair(row["pressure_min"], where),
        unsoaked_open_min=_pair(row.get("unsoaked_open_min", (0, 0)), where),
        unsoaked_pressure_min=_pair(row.get("unsoaked_pressure_min", (0, 0)), where),
        z_c=_pair(row["z_c"], where),
        z_source=row["z_source"],
        published_open=_pair(row["published_open"], where) if "published_open" in row else None,
        published_pressure=_pair(row["published_pressure"], where) if "published_pressure" in row else None,
        basis=row.get("basis", "published"),
        note=row.get("note", ""),
        sources=tuple(row["sources"]),
    )
    near = any(o <= p + 6 for o, p in zip(one.open_min, one.pressure_min, strict=True))
    if near or one.z_c[0] <= 0 or one.unsoaked_pressure_min > one.unsoaked_open_min:
        raise ValueError(
            f"{where}: open minutes must exceed pressure minutes by more than 6, z must be above 0, and a "
            "missing soak must cost no more under pressure than in the open"
        )
    return one


def _soaking(row: Mapping[str, Any], where: str) -> Soaking:
    numbers = {name: float(row[name]) for name in ("k1_s", "k2", "at_c", "ea_low", "ea_high", "break_c")}
    if min(numbers["k1_s"], numbers["k2"], numbers["ea_low"], numbers["ea_high"]) <= 0:
        raise ValueError(f"{where}: k1_s, k2 and both energies must be above 0")
    return Soaking(row.get("form", ""), **numbers, basis=row.get("basis", "published"), source=row["source"])


def _balance(row: Mapping[str, Any], where: str) -> Balance:
    raw, cooked = float(row["water_raw"]), float(row["water_cooked"])
    if not 0 < raw < cooked < 100:
        raise ValueError(f"{where}: water_raw must be below water_cooked, both within 0 and 100")
    return Balance(
        row.get("market_class", ""), row.get("form", ""), raw, cooked, float(row["cup_dry_g"]),
        float(row["cup_cooked_g"]), row.get("basis", "published"), row["source"],
    )  # fmt: skip


def _nutrition(row: Mapping[str, Any]) -> Nutrition:
    names = ("kcal", "protein_g", "fat_g", "carbohydrate_g", "iron_mg", "folate_ug")
    fibre = row.get("fibre_g")
    return Nutrition(
        market_class=row.get("market_class", ""),
        form=row.get("form", ""),
        record=str(row["record"]),
        fibre_g=None if fibre is None else float(fibre),
        source=row["source"],
        **{name: float(row[name]) for name in names},
    )


def _word(row: Mapping[str, Any], name: str, words: tuple[str, ...], where: str) -> str:
    word = str(row[name])
    if word not in words:
        raise ValueError(f"{where}: {name} {word!r}; use one of {', '.join(words)}")
    return word


def _pair(value: Any, where: str) -> Range:
    low, high = value
    if not 0 <= low <= high:
        raise ValueError(f"{where}: the range {value} must run from a low of 0 or more to a high")
    return float(low), float(high)
