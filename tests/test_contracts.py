"""The three batch contracts over a thousand mixed lines, in order, each bad line at its own cost."""

from __future__ import annotations

import io
import json
from collections.abc import Callable, Mapping
from typing import Any

import pytest

from service.commands.out import run_batch
from service.contracts import cook_line, name_line, read_line
from service.glossary.model import Glossary
from service.label import Reader

Record = Mapping[str, Any]
BAD = [
    "{",
    "[1]",
    '"text"',
    '{"id": 7}',
    '{"id": 8, "text": 5, "species": 5}',
    '{"id": 9, "text": "", "species": ""}',
]


def _lines(good: Callable[[int], dict[str, Any]]) -> str:
    return "\n".join(
        BAD[at % len(BAD)] if at % 10 == 9 else json.dumps({"id": at, **good(at)}, ensure_ascii=False)
        for at in range(1000)
    )


def _answers(capsys: pytest.CaptureFixture[str], answer: Callable[[Record], Record], text: str) -> list[Any]:
    assert run_batch(answer, io.StringIO(text)) == 1
    return [json.loads(line) for line in capsys.readouterr().out.splitlines()]


def _kept(found: list[Any]) -> None:
    assert len(found) == 1000
    for at, one in enumerate(found):
        if at % 10 == 9:
            assert one["error"]["detail"] and "Traceback" not in json.dumps(one)
        else:
            assert one["id"] == at and "error" not in one


def test_read(capsys: pytest.CaptureFixture[str], reader: Reader) -> None:
    texts = ("Urad Dal Dhuli 1 kg", "காபூலி கொண்டைக்கடலை", "Basmati rice", "kala chana", "???")
    found = _answers(capsys, lambda one: read_line(one, reader), _lines(lambda at: {"text": texts[at % 5]}))
    _kept(found)
    for at, one in enumerate(found):
        if at % 10 != 9:
            total = sum(each["probability"] for each in one["readings"]) + one["none"]
            assert total == pytest.approx(1, abs=0.002)
            least = {"one": 1, "several": 2, "none": 0}[one["verdict"]]
            assert len(one["readings"]) >= least


def test_name(capsys: pytest.CaptureFixture[str], glossary: Glossary) -> None:
    sold = [one.pulse for one in glossary.sold if glossary.species[one.pulse.species].standing == "pulse"]
    tags = list(glossary.rows)

    def good(at: int) -> dict[str, Any]:
        pulse = sold[at % len(sold)]
        latin = glossary.species[pulse.species].latin
        return {
            "species": latin,
            "market_class": pulse.market_class,
            "form": pulse.form,
            "language": tags[at % len(tags)],
        }

    found = _answers(capsys, lambda one: name_line(one, glossary), _lines(good))
    _kept(found)
    keys = {"text", "script", "romanised", "use", "status"}
    assert all(set(name) == keys for one in found for name in one.get("names", ()))


def test_cook(capsys: pytest.CaptureFixture[str], glossary: Glossary) -> None:
    sold = [one.pulse for one in glossary.sold if glossary.species[one.pulse.species].standing == "pulse"]
    ways = (
        {"vessel": "open", "soak": "overnight"},
        {"vessel": "pressure", "gauge_kpa": 80, "soak": "none", "texture": "creamy"},
        {"vessel": "slow", "soak": "hot", "altitude_m": 1500, "dry_g": 500},
    )

    def good(at: int) -> dict[str, Any]:
        pulse = sold[at % len(sold)]
        return {
            "species": pulse.species,
            "market_class": pulse.market_class,
            "form": pulse.form,
            **ways[at % 3],
        }

    found = _answers(capsys, lambda one: cook_line(one, glossary), _lines(good))
    _kept(found)
    for one in found:
        if "error" in one:
            continue
        for field in ("soak_hours", "water_ml_per_100g", "water_cups_per_cup", "cooked_g_per_100g"):
            low, high = one[field]
            assert 0 <= low <= high
        assert (one["minutes"] is None) == (one["refused"] is not None)
        assert one["sources"] and all(key in glossary.sources for key in one["sources"])
        assert one["cautions"]
