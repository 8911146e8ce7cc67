"""Say what a label names: species, form and colour, how sure, and what would settle it."""

from __future__ import annotations

import argparse
import sys

from ..contracts import question_record, read_line, reading_record
from ..label import Reader, Reading
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("text", nargs="*", help="the label; from stdin where left out")
    parser.add_argument("--place", default="", help="ISO 3166 country of the shop")
    parser.add_argument(
        "--language", action="append", default=[], help="BCP 47 tag to prefer; may be repeated"
    )
    parser.add_argument("--each", action="store_true", help="one reading for each product in the text")
    out.add_output(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the label was read, whatever it said."""
    reader = Reader(files.load(args.data))
    if args.jsonl:
        return out.run_batch(lambda record: read_line(record, reader))
    text = " ".join(args.text) or sys.stdin.read()
    readings = (
        reader.read_each(text, args.language, args.place)
        if args.each
        else (reader.read(text, args.language, args.place),)
    )
    if args.json:
        records = [reading_record(one, reader.glossary) for one in readings]
        out.print_json(records if args.each else records[0])
        return 0
    for reading in readings:
        _show(reading, reader)
    return 0


def _show(reading: Reading, reader: Reader) -> None:
    glossary = reader.glossary
    if reading.verdict == "none":
        print("This does not read as a dried pulse.")
    else:
        rows = [
            (glossary.species[one.pulse.species].english, glossary.species[one.pulse.species].latin,
             one.pulse.market_class or "-", one.pulse.form, one.pulse.colour or "-", f"{int(one.probability * 100)}%")
            for one in reading.readings if one.probability >= 0.02
        ]  # fmt: skip
        out.table(("pulse", "species", "market class", "form", "colour", "sure"), rows)
    words = [f"{one.text} = {one.ref}" for one in reading.used if one.kind != "noise"]
    if words:
        print("read: " + "; ".join(words))
    asked = question_record(reading)
    if asked:
        print("to settle it: " + asked["text"])
        for answer in asked["answers"]:
            print(f"  {answer['text']}: {', '.join(answer['pulses'])}")
    for note in reading.look_alikes[:4]:
        lead = "DANGER, " if note.danger and reading.verdict == "none" else "not to be taken for "
        print(f"{lead}{note.key}: {note.tell}")
