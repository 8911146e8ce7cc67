"""Menus, charts, shopping cards and grain drawings, as sheets of blocks and as text."""

from .cards import cards
from .charts import atlas, chart
from .drawing import draw
from .menus import menu
from .sheet import Picture, Sheet

__all__ = ["Picture", "Sheet", "atlas", "cards", "chart", "draw", "menu"]
