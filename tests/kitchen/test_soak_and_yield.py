"""Soaking after Peleg, water balance after USDA, and what follows from them."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import pytest
from scipy.integrate import quad

from service.errors import BadInput
from service.glossary.cooking import Figures, Soaking
from service.glossary.model import Pulse
from service.kitchen import Guidance, Kitchen, kitchen_of, yields
from service.kitchen.soak import capacity, gain, hours_to, peleg_k1
from service.kitchen.water import absorbed

Cook = Callable[..., Guidance]
# Check value 5, Yildirim, Oner and Bayram 2010: chickpea at 20 C.
CHICKPEA = Soaking("", 96.28, 0.00745, 20.0, 28.69, 9.34, 61.5, "published", "yildirim-2010")


@pytest.mark.parametrize(("hours", "percent"), [(8, 92.7), (12, 103.3), (1e7, 134.2)])
def test_chickpea_hydration_after_peleg(hours: float, percent: float) -> None:
    assert gain(CHICKPEA, hours * 3600, 20) == pytest.approx(percent, abs=0.1)


def test_the_glossary_holds_the_published_constants(figures: Mapping[str, Figures]) -> None:
    assert figures["cicer-arietinum"].soaking_of(Pulse("cicer-arietinum")) == CHICKPEA


def test_gain_is_the_integral_of_its_rate() -> None:
    k1 = peleg_k1(CHICKPEA, 20)
    area, _ = quad(lambda t: k1 / (k1 + CHICKPEA.k2 * t) ** 2, 0, 8 * 3600)
    assert gain(CHICKPEA, 8 * 3600, 20) == pytest.approx(area, rel=0.01)


def test_warm_water_soaks_faster_and_hours_invert_the_gain() -> None:
    assert peleg_k1(CHICKPEA, 97) < peleg_k1(CHICKPEA, 61.5) < peleg_k1(CHICKPEA, 20) < peleg_k1(CHICKPEA, 4)
    hours = hours_to(CHICKPEA, 0.9, 20)
    assert 8 < hours < 16  # 10 to 16 h is usual at room temperature (Taylor and Francis chapter)
    assert gain(CHICKPEA, hours * 3600, 20) == pytest.approx(0.9 * capacity(CHICKPEA), rel=1e-6)


@pytest.mark.parametrize(
    ("key", "bound"),
    [
        ("cicer-arietinum/kabuli/whole", 2.32),
        ("phaseolus-vulgaris/kidney/whole", 2.67),
        ("lens-culinaris//whole", 3.02),
        ("vigna-radiata//whole", 3.33),
        ("phaseolus-vulgaris/great-northern/whole", 2.88),
        ("glycine-max//whole", 2.44),
    ],
)
def test_yield_by_the_balance_of_dry_matter(figures: Mapping[str, Figures], key: str, bound: float) -> None:
    """Check value 6, USDA SR28: an upper bound; 2 to 12 % of the solids go into the water."""
    balance = figures[key.split("/")[0]].balance_of(Pulse.of(key))
    assert balance
    assert 1 + absorbed(balance) == pytest.approx(bound, abs=0.006)
    low, high = yields.yields(balance).cooked_g_per_100g
    assert 100 * bound * 0.87 <= low + 6 and high <= 100 * bound + 5


def test_chickpea_nutrition_is_record_16056(figures: Mapping[str, Figures]) -> None:
    """Check value 7, USDA SR28."""
    found = figures["cicer-arietinum"].nutrition_of(Pulse("cicer-arietinum", "kabuli", "whole"))
    assert found and found.record == "16056"
    assert yields.per_portion(found, 100) == {
        "kcal": 378.0, "protein_g": 20.5, "fat_g": 6.0, "carbohydrate_g": 63.0,
        "iron_mg": 4.3, "folate_ug": 557.0, "fibre_g": 12.2,
    }  # fmt: skip


def test_cans_to_dry_and_back(figures: Mapping[str, Figures]) -> None:
    """Nebraska Dry Bean Commission and Illinois Extension: a can is 1.5 to 1.75 cups, a cup dry gives about 3."""
    balance = figures["phaseolus-vulgaris"].balance_of(Pulse("phaseolus-vulgaris", "kidney", "whole"))
    assert balance
    low, high = yields.dry_for_cans(1, balance)
    assert low <= 100 <= high
    cans = yields.cans_for_dry((low + high) / 2, balance)
    assert cans[0] <= 1 <= cans[1]
    cups = yields.cups_from_dry(yields.dry_from_cups(2, balance, 240), balance, 240)
    assert cups == pytest.approx(2)
    with pytest.raises(BadInput):
        yields.portions(-1)


def test_soak_hours_and_what_soaking_saves(cook: Cook) -> None:
    dry = cook("phaseolus-vulgaris//whole", soak="none")
    wet = cook("phaseolus-vulgaris//whole", soak="overnight")
    assert wet.soak_hours == (8, 12) and cook("phaseolus-vulgaris//whole", soak="hot").soak_hours == (1, 2)
    assert dry.minutes and wet.minutes
    # Check value 10: 109.5 to 84.6 minutes, -22.7 %.
    assert dry.minutes[0] <= 109.5 <= dry.minutes[1] and wet.minutes[0] <= 84.6 <= wet.minutes[1]


@pytest.mark.parametrize("soak", ["none", "hot", "overnight"])
def test_split_is_never_soaked(cook: Cook, soak: str) -> None:
    assert cook("lens-culinaris/red/split-dehulled", soak=soak).soak_hours == (0, 0)


def test_pots_and_batches(cook: Cook) -> None:
    big = cook("cajanus-cajan//split-dehulled", vessel="pressure", soak="none", dry_g=1000, pot_l=5.0)
    assert big.fill and big.fill.limit == pytest.approx(1 / 3) and big.fill.batches > 1
    assert big.fill.batch_g * big.fill.batches == pytest.approx(1000, abs=1)
    assert cook("cajanus-cajan//split-dehulled", soak="none").fill is None


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("altitude_m", 12_000), ("altitude_m", float("nan")), ("gauge_kpa", -5), ("dry_g", 0), ("vessel", "wok"),
        ("texture", None), ("gauge_kpa", "much"), ("altitude_m", True), ("boiled_first", "yes"), ("pot_l", 1e9),
    ],
)  # fmt: skip
def test_an_absurd_kitchen_is_told_which_field_and_why(field: str, value: object) -> None:
    with pytest.raises(BadInput) as caught:
        Kitchen(**{field: value})  # type: ignore[arg-type]
    assert caught.value.field == field


def test_a_kitchen_from_a_record() -> None:
    found = kitchen_of({"id": 7, "vessel": "pressure", "gauge_psi": 15, "altitude_m": None, "species": "x"})
    assert found.gauge_kpa == pytest.approx(103.42, abs=0.01) and found.altitude_m == 0
    with pytest.raises(BadInput):
        kitchen_of({"gauge_psi": 15, "gauge_kpa": 100})
