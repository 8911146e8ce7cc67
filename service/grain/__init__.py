"""What it looks like: traits of loose grains in, ranked pulses and the next question out."""

from .identify import Identification, identify
from .traits import Traits

__all__ = ["Identification", "Traits", "identify"]
