"""Cooking times in print, typed by hand from the sources named, and where ours disagree with them and why.

A row: pulse key, way, soak, texture, minutes from and to, source. Ways: `open`, `15psi` (103.4 kPa stove-top),
`electric` (an electric cooker on high), `electric-low`. Where a source says the short end is for salads and
the long end for soups the row is held against the span from firm to tender; one that cooks for soups alone
against creamy, one that stops early for whole beans against firm; the rest against tender.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

WAYS: dict[str, dict[str, Any]] = {
    "open": {"vessel": "open"},
    "15psi": {"vessel": "pressure", "gauge_kpa": 103.42},
    "electric": {"vessel": "electric", "setting": "high"},
    "electric-low": {"vessel": "electric", "setting": "low"},
}


@dataclass(frozen=True)
class Row:
    """One figure in print."""

    key: str
    way: str
    soak: str
    texture: str
    low: float
    high: float
    source: str

    @property
    def id(self) -> str:
        return f"{self.source}: {self.key} {self.way} {self.soak}"


TEXT = """
cicer-arietinum/kabuli/whole open overnight tender 90 120 usapulses
lens-culinaris/brown/whole open none tender 20 40 usapulses
lens-culinaris/red/split-dehulled open none tender 5 10 usapulses
pisum-sativum/green/split-dehulled open none tender 35 40 usapulses
phaseolus-vulgaris//whole open overnight tender 60 120 usapulses
cicer-arietinum/kabuli/whole open overnight tender 90 120 cooking-with-pulses
lens-culinaris/brown/whole open none tender 15 20 cooking-with-pulses
lens-culinaris/red/split-dehulled open none tender 6 12 cooking-with-pulses
pisum-sativum/green/split-dehulled open none tender 30 40 cooking-with-pulses
pisum-sativum/green/whole open overnight tender 35 40 cooking-with-pulses
phaseolus-vulgaris//whole open overnight tender 45 60 pulse-canada
pisum-sativum/green/whole open overnight tender 60 90 pulse-canada
pisum-sativum/green/split-dehulled open none tender 40 45 pulse-canada
lens-culinaris/large-green/whole open none tender 30 45 pulse-canada
lens-culinaris/red/split-dehulled open none tender 10 15 pulse-canada
cicer-arietinum/kabuli/whole open overnight tender 60 90 pulse-canada
phaseolus-vulgaris/black/whole open overnight tender 60 90 michigan-beans
vigna-unguiculata/black-eyed/whole open overnight tender 60 90 michigan-beans
cicer-arietinum/kabuli/whole open overnight tender 120 150 michigan-beans
phaseolus-vulgaris/great-northern/whole open overnight tender 60 90 michigan-beans
phaseolus-vulgaris/kidney/whole open overnight tender 90 120 michigan-beans
phaseolus-lunatus/baby/whole open overnight tender 60 90 michigan-beans
phaseolus-vulgaris/pink/whole open overnight tender 90 120 michigan-beans
phaseolus-vulgaris/pinto/whole open overnight tender 90 120 michigan-beans
phaseolus-vulgaris/small-red/whole open overnight tender 90 120 michigan-beans
phaseolus-vulgaris/navy/whole open overnight tender 60 90 michigan-beans
glycine-max//whole open overnight tender 180 210 michigan-beans
lens-culinaris/brown/whole open none tender 30 45 michigan-beans
pisum-sativum/green/split-dehulled open none tender 35 45 michigan-beans
phaseolus-vulgaris/kidney/whole open overnight tender 90 120 illinois-extension
phaseolus-vulgaris/black/whole open overnight tender 90 120 illinois-extension
phaseolus-vulgaris/great-northern/whole open overnight tender 90 120 illinois-extension
vigna-unguiculata/black-eyed/whole open overnight tender 90 120 illinois-extension
phaseolus-vulgaris/pinto/whole open overnight tender 60 120 nebraska-beans
phaseolus-vulgaris/navy/whole open overnight tender 60 120 nebraska-beans
phaseolus-vulgaris/pinto/whole open hot tender 30 45 nebraska-beans
vigna-unguiculata/black-eyed/whole open overnight tender 30 40 retail-simmer-table
vigna-angularis//whole open none tender 45 55 retail-simmer-table
vigna-radiata//whole open overnight tender 45 60 retail-simmer-table
vicia-faba//whole open overnight tender 40 50 retail-simmer-table
phaseolus-lunatus/large/whole open overnight tender 60 60 retail-simmer-table
glycine-max//whole open overnight tender 180 240 retail-simmer-table
vigna-mungo//whole open none tender 35.3 42.7 black-gram-2013
phaseolus-vulgaris//whole open none tender 109.5 109.5 ciat-soaking
phaseolus-vulgaris//whole open overnight tender 84.6 84.6 ciat-soaking
vigna-angularis//whole 15psi overnight firm-tender 1 3 stove-top-manual-us
phaseolus-vulgaris/black/whole 15psi overnight firm-tender 2 4 stove-top-manual-us
vigna-unguiculata/black-eyed/whole 15psi none firm-tender 2 4 stove-top-manual-us
cicer-arietinum/kabuli/whole 15psi overnight firm-tender 7 10 stove-top-manual-us
phaseolus-vulgaris/great-northern/whole 15psi overnight firm-tender 2 5 stove-top-manual-us
phaseolus-vulgaris/kidney/whole 15psi overnight firm-tender 1 3 stove-top-manual-us
lens-culinaris/brown/whole 15psi none firm-tender 3 5 stove-top-manual-us
phaseolus-lunatus/large/whole 15psi overnight firm-tender 0 1 stove-top-manual-us
phaseolus-lunatus/baby/whole 15psi overnight firm-tender 1 3 stove-top-manual-us
phaseolus-vulgaris/navy/whole 15psi overnight firm-tender 1 3 stove-top-manual-us
pisum-sativum/green/whole 15psi overnight firm-tender 6 9 stove-top-manual-us
phaseolus-vulgaris/pinto/whole 15psi overnight firm-tender 3 6 stove-top-manual-us
phaseolus-vulgaris/small-red/whole 15psi overnight firm-tender 3 6 stove-top-manual-us
glycine-max//whole 15psi overnight firm-tender 8 11 stove-top-manual-us
phaseolus-vulgaris/navy/whole 15psi overnight creamy 25 25 adams-pressure
glycine-max//whole 15psi overnight creamy 30 30 adams-pressure
phaseolus-vulgaris/kidney/whole 15psi overnight creamy 25 25 adams-pressure
phaseolus-lunatus/large/whole 15psi overnight creamy 35 35 adams-pressure
phaseolus-lunatus/baby/whole 15psi overnight creamy 30 30 adams-pressure
pisum-sativum/green/whole 15psi overnight creamy 20 20 adams-pressure
pisum-sativum/green/split-dehulled 15psi none creamy 15 15 adams-pressure
lens-culinaris/large-green/whole 15psi none creamy 20 20 adams-pressure
cajanus-cajan//split-dehulled 15psi none tender 1 1 stove-top-manual-in
vigna-radiata//split-dehulled 15psi none tender 0 0 stove-top-manual-in
phaseolus-vulgaris/black/whole electric overnight tender 6 9 electric-manual-us
vigna-unguiculata/black-eyed/whole electric none tender 6 9 electric-manual-us
cicer-arietinum/kabuli/whole electric overnight tender 14 17 electric-manual-us
phaseolus-vulgaris/great-northern/whole electric overnight tender 6 9 electric-manual-us
phaseolus-vulgaris/kidney/whole electric overnight tender 5 8 electric-manual-us
lens-culinaris/brown/whole electric none tender 6 9 electric-manual-us
phaseolus-lunatus/large/whole electric overnight tender 2 5 electric-manual-us
phaseolus-lunatus/baby/whole electric overnight tender 5 8 electric-manual-us
phaseolus-vulgaris/navy/whole electric overnight tender 5 8 electric-manual-us
pisum-sativum/green/whole electric overnight tender 13 16 electric-manual-us
phaseolus-vulgaris/pinto/whole electric overnight tender 7 10 electric-manual-us
phaseolus-vulgaris/small-red/whole electric overnight tender 7 10 electric-manual-us
glycine-max//whole electric overnight tender 12 15 electric-manual-us
phaseolus-vulgaris/black/whole electric overnight tender 5 8 pulses-org
phaseolus-vulgaris/black/whole electric none tender 15 25 pulses-org
vigna-unguiculata/black-eyed/whole electric overnight tender 5 8 pulses-org
vigna-unguiculata/black-eyed/whole electric none tender 15 25 pulses-org
phaseolus-vulgaris/navy/whole electric overnight tender 5 8 pulses-org
phaseolus-vulgaris/navy/whole electric none tender 15 25 pulses-org
phaseolus-vulgaris/small-red/whole electric none tender 15 25 pulses-org
phaseolus-vulgaris/kidney/whole electric overnight tender 7 12 pulses-org
phaseolus-vulgaris/kidney/whole electric none tender 20 40 pulses-org
phaseolus-vulgaris/pinto/whole electric overnight tender 7 12 pulses-org
phaseolus-vulgaris/pinto/whole electric none tender 20 40 pulses-org
phaseolus-vulgaris/great-northern/whole electric overnight tender 7 12 pulses-org
phaseolus-vulgaris/great-northern/whole electric none tender 20 40 pulses-org
phaseolus-lunatus/large/whole electric none tender 20 40 pulses-org
cicer-arietinum/kabuli/whole electric overnight tender 7 12 pulses-org
cicer-arietinum/kabuli/whole electric none tender 20 40 pulses-org
lens-culinaris/brown/whole electric-low none tender 10 15 pulses-org
pisum-sativum/green/whole electric-low none tender 10 15 pulses-org
pisum-sativum/green/split-dehulled electric-low none tender 10 15 pulses-org
phaseolus-lunatus/large/whole electric overnight tender 7 12 pulses-org
phaseolus-vulgaris/small-red/whole electric overnight tender 5 8 pulses-org
phaseolus-vulgaris/white-kidney/whole electric overnight tender 7 12 pulses-org
phaseolus-vulgaris/white-kidney/whole electric none tender 20 40 pulses-org
cicer-arietinum/kabuli/whole electric-low brine firm 6 6 csu-extension
phaseolus-vulgaris/great-northern/whole electric-low brine firm 2 2 csu-extension
phaseolus-vulgaris/kidney/whole electric-low brine firm 4 4 csu-extension
phaseolus-vulgaris/black/whole electric-low brine firm 6 6 csu-extension
phaseolus-vulgaris/navy/whole electric-low brine firm 6 6 csu-extension
phaseolus-vulgaris/small-red/whole electric-low brine firm 6 6 csu-extension
phaseolus-vulgaris/pinto/whole electric-low brine firm 3 3 csu-extension
vigna-unguiculata/black-eyed/whole electric-low brine firm 3 3 csu-extension
phaseolus-vulgaris/white-kidney/whole electric-low brine firm 3 3 csu-extension
phaseolus-coccineus//whole electric-low brine firm 7 7 csu-extension
"""


def _row(line: str) -> Row:
    key, way, soak, texture, low, high, source = line.split()
    return Row(key, way, soak, texture, float(low), float(high), source)


ROWS = tuple(_row(line) for line in TEXT.strip().splitlines())
