"""Questions to 90 % certainty over everything sold: `python -m tests.benchmarks.grains`.

For every kind of grain a shopper is played who answers each question with the kind's own trait (sizes to the
nearest step); counted until the identification is settled or asks no more.
"""

from __future__ import annotations

import statistics
from dataclasses import replace

from service.grain import Traits, identify
from service.grain.identify import SIZE_STEPS, kinds
from service.store import files


def main() -> None:
    """Print the distribution and what is never settled."""
    glossary = files.load()
    counts, right, unsettled = [], 0, []
    known = [kind for kind in kinds(glossary) if not kind.poison]
    for kind in known:
        seen, asked = Traits(), 0
        found = identify(glossary, seen)
        while found.ask and not found.settled and asked < 8:
            trait = found.ask.trait
            if trait == "length_mm":
                low, high = kind.grain.length_mm or (6.0, 6.0)
                middle = (low + high) / 2
                seen = replace(seen, length_mm=min(SIZE_STEPS, key=lambda step: abs(step - middle)))
            else:
                seen = replace(seen, **{trait: kind.value(trait) or found.ask.answers[0]})
            asked += 1
            found = identify(glossary, seen)
        species, form = kind.grain.pulse.species, kind.grain.pulse.form
        top = found.ranked[0].pulse
        right += (top.species, top.form) == (species, form)
        counts.append(asked)
        if not found.settled:
            unsettled.append(kind.key)
    print(
        f"{len(known)} kinds: {statistics.mean(counts):.1f} questions on average, {statistics.median(counts):g} in the middle, "
        f"{max(counts)} at most; settled {1 - len(unsettled) / len(known):.0%}, top right {right / len(known):.0%}"
    )
    print("not settled:", ", ".join(unsettled))


if __name__ == "__main__":
    main()
