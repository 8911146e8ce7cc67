"""How to change a recipe: another pulse in place of one, and what follows from it."""

from .swap import Swap, swaps

__all__ = ["Swap", "swaps"]
