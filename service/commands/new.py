"""Print the skeleton of a new language or pulse file; it is one file, nothing else changes."""

from __future__ import annotations

import argparse

from ..errors import BadInput
from ..glossary.model import COLOURS, COLUMNS, FORMS
from ..glossary.tags import TAG, canonical
from ..store import files


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("what", choices=("language", "pulse"))
    parser.add_argument("id", help="a BCP 47 tag, or a species slug such as vigna-mungo")
    parser.add_argument("--data", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """Prints to stdout; redirect it to the file it names."""
    glossary = files.load(args.data)
    if args.what == "language":
        tag = canonical(args.id)
        if not TAG.match(tag):
            raise BadInput("language", args.id, "is no BCP 47 tag")
        species = [one.id for one in glossary.species.values() if one.standing == "pulse"]
        print(_language(tag, species), end="")
    else:
        print(_pulse(args.id), end="")
    return 0


def _language(tag: str, species: list[str]) -> str:
    lines = [",".join(COLUMNS)]
    row = "{tag},Latn,{kind},{ref},,preferred,,draft,memory,"
    wanted = [("base", species), ("form", FORMS), ("colour", COLOURS)]
    lines += [row.format(tag=tag, kind=kind, ref=ref) for kind, refs in wanted for ref in refs]
    lines.append(f"{tag},Latn,pattern,default,{{colour}} {{base}} {{form}},preferred,,draft,memory,")
    lines.append(f"{tag},Latn,pattern,whole,{{colour}} {{base}},preferred,,draft,memory,")
    return "\n".join(lines) + "\n"


def _pulse(slug: str) -> str:
    genus, _, epithet = slug.partition("-")
    if not genus.isalpha() or not epithet or slug != slug.lower():
        raise BadInput("pulse", slug, "must be a slug of genus and epithet, such as vigna-mungo")
    latin = f"{genus.title()} {epithet}"
    return (
        f'[species]\nid = "{slug}"\nlatin = "{latin}"\nauthority = ""\nfamily = "Fabaceae"\nenglish = ""\n'
        'standing = "pulse"\nsynonyms = []\nhs = ["0713.90"]\nfao = "Pulses n.e.c."\nsource = "memory"\n\n'
        '[[sold]]\nmarket_class = ""\nform = "whole"\ncolour = "brown"\nshare = 1.0\nsource = "common-practice"\n\n'
        '[[grain]]\nmarket_class = ""\nform = "whole"\nlength_mm = [5, 7]\nwidth_mm = [4, 5]\nthickness_mm = [3, 4]\n'
        'g_per_1000 = [50, 80]\ng_per_cup = 195\nshape = "oval"\nsurface = "smooth"\neye = "none"\ninside = "yellow"\nsource = "memory"\n'
    )
