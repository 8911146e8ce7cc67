"""The verdict of the dependency audit."""

from __future__ import annotations

from tests.audit import verdict


def test_a_known_weakness_fails_and_silence_is_said() -> None:
    clean = {"name": "a", "version": "1", "vulns": []}
    weak = {"name": "b", "version": "2", "vulns": [{"id": "PYSEC-1"}]}
    silent = {"name": "c", "skip_reason": "not found"}
    assert verdict([clean]) == (0, "dependency audit: 1 of 1 packages checked, 0 known weaknesses")
    code, said = verdict([clean, weak, silent])
    assert (
        code == 1 and "b 2: PYSEC-1" in said and "1 could not be looked up here and were NOT checked" in said
    )
    assert "2 of 3 packages checked, 1 known" in said
