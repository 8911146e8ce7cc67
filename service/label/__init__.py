"""What the bag says: label text in, a reading with probabilities out."""

from .reading import Read, Reader, Reading

__all__ = ["Read", "Reader", "Reading"]
