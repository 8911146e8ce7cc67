"""Photos: words on a pack with their boxes, barcodes, and loose grains measured. Outer: it opens images and engines."""

from .grains import Grains, measure
from .images import opened
from .pack import Seen, words

__all__ = ["Grains", "Seen", "measure", "opened", "words"]
