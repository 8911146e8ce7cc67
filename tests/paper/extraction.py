"""How much of what is printed can be read out of the PDF again: `python -m tests.paper.extraction [names a script]`.

For each script, names of its languages are set one to a row and read back; a name counts where the text is the same
but for white space and the form of composition (NFC).
"""

from __future__ import annotations

import random
import subprocess
import sys
import unicodedata
from collections import defaultdict
from collections.abc import Sequence

from service.glossary.model import Glossary
from service.naming import compose
from service.paper.sheet import RIGHT_TO_LEFT, Cell, Sheet, Table
from service.press import pressed
from service.store import files

MOST = 60
# Scripts whose marks the typesetter sets apart from their letters: the letters are all there, some of them twice.
DOUBLED = ("Khmr", "Mtei")


def names(glossary: Glossary, most: int = MOST) -> dict[str, list[tuple[str, str]]]:
    """Script -> language and name, drawn evenly from everything sold in every language of the script."""
    dice = random.Random(1)
    sold = [one.pulse for one in glossary.sold]
    found: dict[str, dict[str, str]] = defaultdict(dict)
    for tag in glossary.rows:
        for pulse in dice.sample(sold, 40):
            for name in compose(glossary, pulse, tag):
                if name.use == "preferred":
                    found[name.script].setdefault(name.text, tag)
    return {
        script: [(tag, text) for text, tag in dice.sample(sorted(held.items()), min(most, len(held)))]
        for script, held in sorted(found.items())
    }


def printed(script: str, given: Sequence[tuple[str, str]]) -> Sheet:
    """A sheet with one name to a row."""
    rows = tuple((Cell.of(text, tag, script),) for tag, text in given)
    return Sheet("Names", given[0][0], (Table((Cell.of("names"),), rows),))


def lines(pdf: bytes) -> list[str]:
    """The lines of text, as Poppler reads them: it heeds the actual text that goes with shaped letters."""
    run = subprocess.run(["pdftotext", "-layout", "-", "-"], input=pdf, capture_output=True, check=True)
    return run.stdout.decode().splitlines()


def lost(script: str, given: Sequence[tuple[str, str]]) -> list[tuple[str, str]]:
    """Names that cannot be found in the text of their PDF."""
    held = {_plain(line) for line in lines(pressed(printed(script, given), "pdf"))}
    return [(tag, text) for tag, text in given if _plain(text) not in held]


def _plain(text: str) -> str:
    kept = (char for char in unicodedata.normalize("NFC", text) if unicodedata.category(char) != "Cf")
    return "".join("".join(kept).split())


def main(most: int = MOST) -> None:
    """Print the share of each script, then what was lost."""
    glossary = files.load()
    for script, given in names(glossary, most).items():
        gone = lost(script, given)
        turned = ", right to left" if script in RIGHT_TO_LEFT else ""
        print(f"{script}: {1 - len(gone) / len(given):4.0%} of {len(given)} names{turned}")
        for tag, text in gone:
            print(f"   lost: {tag} {text}")


if __name__ == "__main__":
    main(*(int(one) for one in sys.argv[1:2]))
