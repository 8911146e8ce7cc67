"""How to ask for it: names composed from form word, colour word and base, and their romanisation."""

from .compose import Name, compose, has_name
from .grammar import scripts
from .romanise import romanise

__all__ = ["Name", "compose", "has_name", "romanise", "scripts"]
