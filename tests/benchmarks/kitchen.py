"""Guidance computations per second on one core: `python -m tests.benchmarks.kitchen`. Wanted: 5,000."""

from __future__ import annotations

import time
from itertools import cycle, islice, product

from service.kitchen import Kitchen, guide
from service.store import files


def main(count: int = 20_000) -> float:
    """Guidance for many pulses in many kitchens; prints and returns computations per second."""
    glossary = files.load()
    pulses = [one.pulse for one in glossary.sold]
    kitchens = [
        Kitchen(vessel=vessel, altitude_m=float(height), soak=soak, texture=texture)
        for vessel, height, soak, texture in product(
            ("open", "pressure", "slow"),
            range(0, 3000, 37),
            ("none", "hot", "overnight"),
            ("firm", "tender", "creamy"),
        )
    ]
    work = list(islice(zip(cycle(pulses), cycle(kitchens), strict=False), count))
    start = time.perf_counter()
    for pulse, kitchen in work:
        species = glossary.species[pulse.species]
        guide(pulse, kitchen, species.cooking, species.hazards)
    speed = count / (time.perf_counter() - start)
    print(f"{speed:,.0f} guidance computations a second, {len(pulses)} pulses, {len(kitchens)} kitchens")
    return speed


if __name__ == "__main__":
    main()
