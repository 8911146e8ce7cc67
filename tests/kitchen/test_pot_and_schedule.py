"""Mixtures in one pot, and the day reckoned backwards."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import icalendar
import pytest

from service.errors import BadInput, Unsafe
from service.glossary.cooking import Figures
from service.glossary.model import Pulse
from service.kitchen import Guidance, Kitchen, Member, calendar, mixed, schedule

Cook = Callable[..., Guidance]
FIVE = (
    "cajanus-cajan//split-dehulled", "cicer-arietinum/desi/split-dehulled", "vigna-radiata//split-dehulled",
    "vigna-mungo//split-dehulled", "lens-culinaris/red/split-dehulled",
)  # fmt: skip
MAKHANI = ("vigna-mungo//whole", "phaseolus-vulgaris/kidney/whole", "cicer-arietinum/desi/split-dehulled")


def _members(figures: Mapping[str, Figures], keys: tuple[str, ...]) -> list[Member]:
    return [Member(Pulse.of(key), figures[key.split("/")[0]], 50.0) for key in keys]


def test_five_dals_in_one_open_pot(figures: Mapping[str, Figures]) -> None:
    plan = mixed(_members(figures, FIVE), Kitchen())
    goes_in = {turn.pulse.key: turn.goes_in for turn in plan.turns}
    assert plan.together and goes_in["cicer-arietinum/desi/split-dehulled"] == 0
    assert max(goes_in, key=lambda key: goes_in[key]) == "lens-culinaris/red/split-dehulled"
    assert {turn.soak for turn in plan.turns} == {"none"}


@pytest.mark.parametrize("words", [{}, {"vessel": "pressure", "gauge_kpa": 103.4, "texture": "creamy"}])
def test_every_member_is_done_when_the_pot_is(
    figures: Mapping[str, Figures], words: dict[str, object]
) -> None:
    for keys in (FIVE, MAKHANI):
        plan = mixed(_members(figures, keys), Kitchen(**words))  # type: ignore[arg-type]
        assert plan.together and plan.minutes
        middle = sum(plan.minutes) / 2
        for turn in plan.turns:
            assert turn.guidance.minutes
            low, high = turn.guidance.minutes
            assert low * 0.85 - 1 <= middle - turn.goes_in <= high * 1.15 + 1


def test_kidney_beans_in_a_mixture_are_boiled_first_or_refused(figures: Mapping[str, Figures]) -> None:
    plan = mixed(_members(figures, MAKHANI), Kitchen(vessel="pressure", gauge_kpa=103.4))
    assert "boiled hard" in plan.why and "lectin-boil" in {one.id for one in plan.cautions}
    slow = mixed(_members(figures, MAKHANI), Kitchen(vessel="slow"))
    assert not slow.together and "kidney" in slow.why


def test_what_lies_too_far_apart_is_cooked_apart(figures: Mapping[str, Figures]) -> None:
    far = ("glycine-max//whole", "pisum-sativum/green/split-dehulled", "lens-culinaris/red/split-dehulled")
    plan = mixed(_members(figures, far), Kitchen(vessel="microwave", boiled_first=True))
    assert not plan.together and "apart" in plan.why
    with pytest.raises(BadInput):
        mixed(_members(figures, FIVE[:1]), Kitchen())


def test_on_the_table_at_seven(cook: Cook) -> None:
    ready = datetime(2026, 11, 28, 19, 0, tzinfo=ZoneInfo("Asia/Kolkata"))
    steps = schedule(cook("phaseolus-vulgaris/kidney/whole", vessel="pressure"), ready)
    assert [one.id for one in steps] == ["soak", "drain", "boil first", "heat", "cook", "release", "rest"]
    assert steps[-1].end == ready and steps[0].start < ready - timedelta(hours=9)
    assert all(before.end == after.start for before, after in zip(steps, steps[1:], strict=False))


def test_the_night_the_clocks_change_is_an_hour_longer(cook: Cook) -> None:
    zone = ZoneInfo("Europe/Berlin")
    found = cook("cicer-arietinum/kabuli/whole")
    night = schedule(found, datetime(2026, 10, 25, 9, 0, tzinfo=zone))
    other = schedule(found, datetime(2026, 10, 26, 9, 0, tzinfo=zone))
    wall = [steps[0].start.replace(tzinfo=None) for steps in (night, other)]
    assert wall[1] - wall[0] == timedelta(hours=23)
    assert night[0].start.date() < night[-1].end.date()


def test_schedules_are_refused_where_cooking_is(cook: Cook) -> None:
    with pytest.raises(Unsafe):
        schedule(cook("phaseolus-vulgaris/kidney/whole", vessel="slow"), datetime.now(UTC))
    with pytest.raises(BadInput):
        schedule(cook("cicer-arietinum/kabuli/whole"), datetime(2026, 1, 1))


def test_the_calendar_is_read_by_an_icalendar_library(cook: Cook) -> None:
    """RFC 5545, read back by the icalendar package."""
    ready = datetime(2026, 11, 28, 19, 0, tzinfo=ZoneInfo("Asia/Kolkata"))
    steps = schedule(cook("cicer-arietinum/kabuli/whole"), ready)
    text = calendar(steps, "छोले, राजमा; दाल " * 5, datetime(2026, 11, 1, tzinfo=UTC))
    assert all(len(line.encode()) <= 75 for line in text.split("\r\n"))
    events = icalendar.Calendar.from_ical(text).walk("VEVENT")
    assert [event.decoded("dtstart") for event in events] == [one.start for one in steps]
    assert str(events[0]["summary"]) == "छोले, राजमा; दाल " * 5 + ": soak"
    assert len({str(event["uid"]) for event in events}) == len(steps)
