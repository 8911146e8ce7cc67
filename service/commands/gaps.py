"""List what the glossary lacks: languages by pulses, checked rows, names that do not compose."""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence

from ..glossary.gaps import Coverage, gaps
from ..naming import has_name
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("only", nargs="*", help="language tags")
    parser.add_argument("--missing", action="store_true", help="list every pulse without a name")
    parser.add_argument("--markdown", action="store_true", help="print the coverage as a Markdown table")
    out.add_output(parser, batch=False)


def run(args: argparse.Namespace) -> int:
    """Always 0: gaps are no fault."""
    glossary = files.load(args.data)
    found = gaps(glossary, lambda pulse, lang: has_name(glossary, pulse, lang))
    found = tuple(one for one in found if not args.only or one.lang in args.only)
    if args.json:
        out.print_json([{"language": one.lang, "scripts": one.scripts, "rows": one.rows, "checked": round(one.checked, 3),
                         "species": one.species, "named": round(one.named, 4), "missing": one.missing} for one in found])  # fmt: skip
        return 0
    if args.markdown:
        print("\n".join(markdown(found)))
        return 0
    rows = [(one.lang, " ".join(one.scripts), str(one.rows), f"{one.checked:.0%}", str(one.species), f"{one.named:.1%}")
            for one in found]  # fmt: skip
    out.table(("language", "scripts", "rows", "checked", "species", "sold that compose"), rows)
    total = sum(one.rows for one in found)
    checked = sum(one.rows * one.checked for one in found)
    print(
        f"{len(found)} languages, {sum(one.full for one in found)} full, {total} rows, {checked / max(1, total):.0%} checked"
    )
    if args.missing:
        for one in found:
            for key in one.missing:
                print(f"{one.lang}: {key}")
    return 0


def markdown(found: Sequence[Coverage]) -> Iterator[str]:
    """The coverage table of the README, line by line."""
    yield "| language | scripts | rows | checked | species | composes |"
    yield "|---|---|---:|---:|---:|---:|"
    for one in found:
        # Floored: a language is said to be whole only where nothing is missing.
        named = int(one.named * 1000) / 10
        yield (
            f"| {one.lang} | {' '.join(one.scripts)} | {one.rows} | {one.checked:.0%} | {one.species} | {named:g} % |"
        )
    rows = sum(one.rows for one in found)
    checked = sum(one.rows * one.checked for one in found) / max(1, rows)
    scripts = {script for one in found for script in one.scripts}
    full = sum(one.full for one in found)
    yield ""
    yield f"{len(found)} languages in {len(scripts)} scripts, {full} of them whole; {rows} rows, {checked:.0%} checked."
