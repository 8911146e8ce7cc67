"""How to cook it: a pulse and a kitchen in; soak, minutes, water, yield and cautions out."""

from .caution import Caution, Refusal
from .guide import Guidance, as_line, guide
from .kitchen import Kitchen, kitchen_of

__all__ = ["Caution", "Guidance", "Kitchen", "Refusal", "as_line", "guide", "kitchen_of"]
