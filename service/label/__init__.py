"""What the bag says: label text in, a reading with probabilities out."""

from .question import Question, question
from .reading import Read, Reader, Reading

__all__ = ["Question", "Read", "Reader", "Reading", "question"]
