"""A sheet of paper as a value: blocks in order, every text with its language and script. No renderer is known here."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

# Scripts written from right to left (Unicode bidirectional classes R and AL).
RIGHT_TO_LEFT = frozenset({"Arab", "Hebr", "Thaa", "Syrc", "Nkoo"})


@dataclass(frozen=True, slots=True)
class Words:
    """A stretch of text; `lang` BCP 47 and `script` ISO 15924 decide font and direction."""

    text: str
    lang: str = "en"
    script: str = "Latn"
    size: str = "plain"

    @property
    def rtl(self) -> bool:
        """True where it reads from right to left."""
        return self.script in RIGHT_TO_LEFT


@dataclass(frozen=True, slots=True)
class Picture:
    """An SVG drawing at its own size in millimetres, with words for who cannot see it."""

    svg: str
    alt: str


Item = Words | Picture


@dataclass(frozen=True, slots=True)
class Cell:
    """A cell of a table: items below each other; empty for a gap that is left blank."""

    items: tuple[Item, ...] = ()

    @staticmethod
    def of(text: str, lang: str = "en", script: str = "Latn", size: str = "plain") -> Cell:
        """A cell with one text."""
        return Cell((Words(text, lang, script, size),) if text else ())

    def text(self) -> str:
        """Its words alone, parted by line ends."""
        return "\n".join(item.text for item in self.items if isinstance(item, Words))


@dataclass(frozen=True, slots=True)
class Heading:
    """A heading of level 1 to 3, in one or several languages."""

    level: int
    words: tuple[Words, ...]


@dataclass(frozen=True, slots=True)
class Lines:
    """Lines of text below each other."""

    words: tuple[Words, ...]
    kind: str = "plain"


@dataclass(frozen=True, slots=True)
class Table:
    """A table; `widths` are relative."""

    head: tuple[Cell, ...]
    rows: tuple[tuple[Cell, ...], ...]
    widths: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Card:
    """A pocket card: items in a frame that is never broken over pages."""

    items: tuple[Item, ...]


Block = Heading | Lines | Table | Card | Picture


@dataclass(frozen=True, slots=True)
class Sheet:
    """What one document holds."""

    title: str
    lang: str
    blocks: tuple[Block, ...]
    landscape: bool = False

    @property
    def rtl(self) -> bool:
        """True where the first language is written from right to left on this sheet."""
        own = [words.rtl for words in self.words() if words.lang == self.lang and words.script != "Latn"]
        return any(own)

    def words(self) -> Sequence[Words]:
        """Every text of the sheet in reading order."""
        return [words for block in self.blocks for words in _words(block)]


def _words(block: Block) -> list[Words]:
    if isinstance(block, Heading | Lines):
        return list(block.words)
    if isinstance(block, Card):
        return [item for item in block.items if isinstance(item, Words)]
    if isinstance(block, Table):
        cells = [*block.head, *(cell for row in block.rows for cell in row)]
        return [item for cell in cells for item in cell.items if isinstance(item, Words)]
    return []
