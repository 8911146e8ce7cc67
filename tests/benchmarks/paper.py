"""How long paper takes: `python -m tests.benchmarks.paper`. A chart of 30 pulses in 24 languages, with its parts."""

from __future__ import annotations

import time

from service.paper import chart
from service.paper.charts import MOST_LANGUAGES, default_pulses
from service.press import pressed
from service.store import files


def main() -> None:
    """Print seconds and sizes."""
    glossary = files.load()
    tags, pulses = list(glossary.rows)[:MOST_LANGUAGES], default_pulses(glossary, 30)
    start = time.perf_counter()
    sheet = chart(glossary, tags, pulses)
    named = time.perf_counter()
    print(f"{len(pulses)} pulses in {len(tags)} languages: names and drawings {named - start:.2f} s")
    for kind in ("pdf", "html", "xlsx"):
        start = time.perf_counter()
        size = len(pressed(sheet, kind))
        print(f"  {kind} {time.perf_counter() - start:.2f} s, {size / 1024:.0f} kB")


if __name__ == "__main__":
    main()
