"""How to cook it: a pulse and a kitchen in; soak, minutes, water, yield and cautions out."""

from .caution import CANNING, Caution, Refusal
from .guide import Guidance, as_line, guide
from .kitchen import Kitchen, kitchen_of
from .pot import Member, Plan, mixed
from .schedule import Step, calendar, schedule
from .water import Fill

__all__ = [
    "CANNING", "Caution", "Fill", "Guidance", "Kitchen", "Member", "Plan", "Refusal", "Step",
    "as_line", "calendar", "guide", "kitchen_of", "mixed", "schedule",
]  # fmt: skip
