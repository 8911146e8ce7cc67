"""Mixed pots, days reckoned backwards and what comes to the table, over HTTP and on the command line."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from zoneinfo import ZoneInfo

import icalendar
import pytest

from service.commands import run
from tests.conftest import Api

TOOR, RED, KIDNEY = "cajanus-cajan//split-dehulled", "lens-culinaris/red/split-dehulled", "phaseolus-vulgaris/kidney/whole"  # fmt: skip
CHICKPEA = {"species": "Cicer arietinum", "market_class": "kabuli", "form": "whole"}
SEVEN = {"ready": "2026-11-28T19:00", "zone": "Asia/Kolkata"}


def _members(*keys: str, dry_g: float = 100.0) -> list[dict[str, object]]:
    return [{"pulse": key, "dry_g": dry_g} for key in keys]


def test_a_pot_says_what_goes_in_when(api: Api) -> None:
    body = api.post("/v1/pots", json={"members": _members(TOOR, RED)}).json()
    assert body["together"] and [one["key"] for one in body["turns"]] == [TOOR, RED]
    assert body["turns"][0]["goes_in"] == 0 < body["turns"][1]["goes_in"]
    kidney = api.post("/v1/pots", json={"members": _members(TOOR, KIDNEY), "vessel": "pressure"}).json()
    assert kidney["cautions"][0]["severity"] == "danger" and "boiled hard" in kidney["why"]
    slow = api.post("/v1/pots", json={"members": _members(TOOR, KIDNEY), "vessel": "slow"}).json()
    assert not slow["together"] and slow["minutes"] is None and "kidney" in slow["why"]


def test_water_of_a_mixture_lies_between_its_members(api: Api) -> None:
    """Twice a pulse in one pot takes what the double weight of it takes, steam lost once."""
    alone = api.post("/v1/guidance", json={"species": "Cajanus cajan", "form": "split-dehulled", "soak": "none", "dry_g": 200.0}).json()  # fmt: skip
    twice = api.post("/v1/pots", json={"members": _members(TOOR, TOOR)}).json()
    assert twice["water_ml"] == pytest.approx(alone["water_total_ml"], abs=25)
    small = api.post(
        "/v1/pots", json={"members": _members(TOOR, RED), "pot_l": 1.0, "vessel": "pressure"}
    ).json()
    assert small["fill"]["limit"] == pytest.approx(1 / 3) and small["fill"]["batches"] > 1


@pytest.mark.parametrize(
    ("members", "field"),
    [(_members(TOOR), "members"), (_members(*[TOOR] * 7), "members"), ([{"pulse": "rice"}, {"pulse": TOOR}], "rice"), (_members(TOOR, RED, dry_g=-1), "dry_g")],
)  # fmt: skip
def test_a_pot_that_cannot_be_is_a_problem(api: Api, members: list[dict[str, object]], field: str) -> None:
    answer = api.post("/v1/pots", json={"members": members})
    assert answer.status_code in (404, 422) and field in answer.text


def test_a_day_is_reckoned_backwards(api: Api) -> None:
    body = api.post(
        "/v1/schedules", json={**CHICKPEA, **SEVEN, "vessel": "pressure", "language": "hi"}
    ).json()
    steps = body["steps"]
    assert datetime.fromisoformat(steps[-1]["end"]) == datetime(
        2026, 11, 28, 19, tzinfo=ZoneInfo("Asia/Kolkata")
    )
    assert [one["id"] for one in steps] == ["soak", "drain", "heat", "cook", "release", "rest"]
    assert body["cautions"] and body["language"] == "hi"
    assert all(any("\u0900" <= char <= "\u097f" for char in one["text"]) for one in steps)


def test_a_day_as_a_calendar(api: Api) -> None:
    answer = api.post("/v1/schedules", json={**CHICKPEA, **SEVEN}, headers={"accept": "text/calendar"})
    assert answer.headers["content-type"].startswith("text/calendar")
    events = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
    assert len(events) == 5 and str(events[0]["summary"]) == "chickpea: soak"


def test_every_event_carries_the_danger(api: Api) -> None:
    kidney = {"species": "Phaseolus vulgaris", "market_class": "kidney", "form": "whole"}
    answer = api.post("/v1/schedules", json={**kidney, **SEVEN}, headers={"accept": "text/calendar"})
    events = icalendar.Calendar.from_ical(answer.text).walk("VEVENT")
    assert events and all("Poisonous until boiled" in str(one["description"]) for one in events)


@pytest.mark.parametrize(
    ("words", "status", "said"),
    [
        ({"ready": "2026-11-28T19:00"}, 422, "time zone"),
        ({"ready": "soon", "zone": "Asia/Kolkata"}, 422, "ready"),
        ({"ready": "25:00", "zone": "Asia/Kolkata"}, 422, "ready"),
        ({"ready": "19:00"}, 422, "zone"),
        ({"ready": "2026-11-28T19:00", "zone": "Mars/Olympus"}, 422, "zone"),
        ({"ready": "2026-11-28T19:00", "zone": "../../etc/passwd"}, 422, "zone"),
        ({"ready": "0001-01-01T00:00:00+00:00"}, 422, "between"),
    ],
)
def test_a_time_that_is_none_is_a_problem(api: Api, words: dict[str, str], status: int, said: str) -> None:
    answer = api.post("/v1/schedules", json={**CHICKPEA, **words})
    assert answer.status_code == status and said in answer.text


def test_a_clock_time_is_the_next_that_can_be_met(api: Api) -> None:
    """Twelve hours of soaking and cooking at the most: never is the first step in the past."""
    now = datetime.now(ZoneInfo("Asia/Kolkata"))
    for hour in range(0, 24, 5):
        steps = api.post(
            "/v1/schedules", json={**CHICKPEA, "ready": f"{hour}:30", "zone": "Asia/Kolkata"}
        ).json()["steps"]
        start, end = (datetime.fromisoformat(one) for one in (steps[0]["start"], steps[-1]["end"]))
        assert start > now and (end.hour, end.minute) == (hour, 30) and (end - now).days < 2


def test_a_refused_way_has_no_day(api: Api) -> None:
    kidney = {"species": "Phaseolus vulgaris", "market_class": "kidney", "form": "whole", "vessel": "slow"}
    answer = api.post("/v1/schedules", json={**kidney, **SEVEN})
    assert answer.status_code == 422 and "poison" in answer.text


def test_what_comes_to_the_table(api: Api) -> None:
    """USDA SR28 record 16056, 378 kcal and 20.5 g protein in 100 g: a portion of 70 g dry has seven tenths."""
    served = api.post("/v1/guidance", json={**CHICKPEA, "dry_g": 140.0}).json()["served"]
    assert served["portion"]["kcal"] == pytest.approx(378 * 0.7, abs=0.1) and served["record"] == "16056"
    assert served["portion"]["protein_g"] == pytest.approx(20.47 * 0.7, abs=0.1)
    assert served["portions"][0] <= 2 <= served["portions"][1] and "usda-sr28" in served["sources"]
    # Nebraska Dry Bean Commission: a pound dry is about six cups cooked; so 140 g about 1.85.
    assert served["cooked_cups"][0] <= 1.85 <= served["cooked_cups"][1] and "lysine" in served["note"]


def test_a_pot_and_a_day_on_the_command_line(capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert run(["pot", f"{TOOR}:150", RED, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["together"]
    assert run(["pot", TOOR, f"{KIDNEY}:50"]) == 0
    told = capsys.readouterr().out
    assert "in first" in told and "danger" in told
    assert run(["pot", f"{TOOR}:much", RED]) == 2
    capsys.readouterr()
    day = tmp_path / "day.ics"
    words = ["schedule", "cicer-arietinum/kabuli/whole", "--zone", "Asia/Kolkata", "--calendar", str(day)]
    assert run([*words, "--ready", "2026-11-28T19:00"]) == 0
    assert "Sat 19:00  On the table." in capsys.readouterr().out
    assert icalendar.Calendar.from_ical(day.read_bytes()).walk("VEVENT")
    assert run([*words, "--ready", "tomorrow"]) == 2
    assert capsys.readouterr().err.count("\n") == 1
