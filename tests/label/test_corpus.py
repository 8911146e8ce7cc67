"""Readings of the untouched half of the corpora: a floor under what was measured, so that nothing is lost unseen.

What the numbers are, beside baselines and by language, script and noise: `python -m tests.benchmarks.labels test`.
"""

from __future__ import annotations

import pytest

from service.label import Reader
from tests.benchmarks.labels import ours
from tests.label.score import labels, score


@pytest.mark.parametrize(
    ("corpus", "one", "several", "none"),
    [("packs", 0.95, 0.55, 0.98), ("hand", 0.94, 0.35, 0.96), ("made", 0.9, 0.0, 0.98)],
)
def test_the_untouched_half(reader: Reader, corpus: str, one: float, several: float, none: float) -> None:
    found, wrong = score(ours(reader), list(labels(corpus, "test")))
    assert found.total > 400
    assert found.share("one") >= one, [label.text for label in wrong][:20]
    assert found.share("several") >= several
    assert found.share("none") >= none
    assert found.falsely_sure / found.total <= 0.015
    assert found.calibration_error <= 0.045


def test_clean_labels(reader: Reader) -> None:
    clean = [label for label in labels("made", "test") if label.noise in ("clean", "pack", "upper")]
    found, wrong = score(ours(reader), clean)
    assert found.share("one") >= 0.97, [label.text for label in wrong][:20]


def test_the_halves_do_not_touch() -> None:
    for corpus in ("hand", "made"):
        train, test = ({label.text for label in labels(corpus, half)} for half in ("train", "test"))
        assert train and test and not train & test
