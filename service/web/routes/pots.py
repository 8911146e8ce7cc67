"""Several pulses in one pot, and the day reckoned backwards from the meal."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Annotated, Any

from fastapi import APIRouter, Header
from fastapi.responses import Response
from pydantic import BaseModel, Field

from ...contracts import guidance_for, plan_for
from ...glossary import find
from ...kitchen import calendar, kitchen_of
from .. import records, shapes
from ..dependencies import ShelfDep
from ..moments import planned
from ..tongues import spoken
from .kitchen import CautionOut, CookIn, FillOut, KitchenIn, Pair

router = APIRouter(tags=["kitchen"])
CALENDAR = "text/calendar"


class MemberIn(shapes.Strict):
    """One pulse of a mixture."""

    pulse: str = Field(max_length=160, examples=["cajanus-cajan//split-dehulled"])
    dry_g: float = Field(100.0, ge=1, le=100_000, description="g")


class PotIn(KitchenIn):
    """Two to six pulses and a kitchen; how each is soaked is worked out."""

    members: list[MemberIn] = Field(max_length=20)
    language: str = Field("en", max_length=35)


class TurnOut(shapes.PulseShape):
    """When one member goes in: minutes after the first, and its soak."""

    soak: str
    soak_hours: Pair
    goes_in: float
    minutes: Pair | None


class PotOut(BaseModel):
    """One pot, or apart and why; minutes count from the boil or from full pressure."""

    edition: str
    together: bool
    why: str
    turns: list[TurnOut]
    minutes: Pair | None
    water_ml: Pair
    fill: FillOut | None
    cautions: list[CautionOut]


class ScheduleIn(CookIn):
    """A pulse, a kitchen, and when it shall be on the table."""

    ready: str = Field(
        max_length=40,
        examples=["2026-11-28T19:00"],
        description="RFC 3339; local where `zone` is given; or a clock time, for the next that can be met",
    )
    zone: str = Field("", max_length=60, examples=["Asia/Kolkata"], description="IANA time zone")
    title: str = Field("", max_length=200, description="of the calendar's entries")


class StepOut(BaseModel):
    """One stretch of the day."""

    id: str
    text: str
    start: datetime
    end: datetime


class ScheduleOut(BaseModel):
    """The steps in order, the last of which ends when the meal is ready."""

    edition: str
    pulse: shapes.PulseShape
    steps: list[StepOut]
    cautions: list[CautionOut]
    language: str


@router.post("/pots", response_model=PotOut)
async def pots(asked: PotIn, shelf: ShelfDep) -> dict[str, Any]:
    """What to soak, what goes in when, or why these pulses must be cooked apart."""
    members = [(one.pulse, one.dry_g) for one in asked.members]
    plan = plan_for(shelf.glossary, members, kitchen_of(asked.model_dump()))
    return {
        "edition": shelf.glossary.edition,
        "together": plan.together,
        "why": plan.why,
        "turns": [
            {
                **records.pulse_record(one.pulse, shelf.glossary),
                "soak": one.soak,
                "soak_hours": one.guidance.soak_hours,
                "goes_in": one.goes_in,
                "minutes": one.guidance.minutes,
            }
            for one in plan.turns
        ],
        "minutes": plan.minutes,
        "water_ml": plan.water_ml,
        "fill": records.fill_record(plan.fill),
        "cautions": records.caution_records(plan.cautions, spoken(asked.language)),
    }


@router.post(
    "/schedules",
    response_model=ScheduleOut,
    responses={200: {"content": {CALENDAR: {}, "application/json": {}}}},
)
async def schedules(
    asked: ScheduleIn, shelf: ShelfDep, accept: Annotated[str, Header(max_length=200)] = ""
) -> Any:
    """When each step starts, from soaking to the table; as iCalendar (RFC 5545) where text/calendar is accepted."""
    pulse = find.pulse(shelf.glossary, asked.species, asked.market_class, asked.form, asked.colour)
    guidance = guidance_for(shelf.glossary, pulse, kitchen_of(asked.model_dump()))
    steps = planned(guidance, asked.ready, asked.zone)
    if CALENDAR in accept:
        title = asked.title or shelf.glossary.species[pulse.species].english
        return Response(
            calendar(steps, title, datetime.now(UTC), [one.text for one in guidance.cautions]),
            media_type=CALENDAR,
        )
    speaks = spoken(asked.language)
    return {
        "edition": shelf.glossary.edition,
        "pulse": records.pulse_record(pulse, shelf.glossary),
        "steps": [
            {"id": one.id, "text": speaks.translate(one.text), "start": one.start, "end": one.end}
            for one in steps
        ],
        "cautions": records.caution_records(guidance.cautions, speaks),
        "language": speaks.tag,
    }
