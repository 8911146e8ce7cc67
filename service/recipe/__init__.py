"""How to change a recipe: another pulse in place of one, ingredient lines read, times and amounts rewritten."""

from .ingredients import Ingredient, ingredient
from .rewrite import Rewritten, rewrite
from .swap import Swap, swaps
from .work import Line

__all__ = ["Ingredient", "Line", "Rewritten", "Swap", "ingredient", "rewrite", "swaps"]
