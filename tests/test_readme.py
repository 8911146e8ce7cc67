"""The README says what is so: its commands are run, its tables are made again."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from service.commands import run
from service.commands.gaps import markdown
from service.glossary.gaps import gaps
from service.glossary.model import Glossary
from service.naming import has_name
from service.web.settings import SETTINGS

README = (Path(__file__).resolve().parent.parent / "README.md").read_text("utf-8")
SHOWN = re.findall(r"```\n\$ pulse-glossary ([^\n]*)\n(.*?)\n```", README, re.S)


@pytest.mark.parametrize(("command", "output"), SHOWN, ids=[command[:40] for command, _ in SHOWN])
def test_what_it_shows_is_what_it_prints(
    command: str, output: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "110")
    assert run(shlex.split(command)) == 0
    assert capsys.readouterr().out.rstrip() == output


def test_three_labels_in_three_scripts() -> None:
    labels = [command for command, _ in SHOWN if command.startswith("read")]
    assert len(labels) >= 3
    blocks = ("\u0900-\u097f", "\u0b80-\u0bff", "\u0400-\u04ff")
    for block in blocks:
        assert any(re.search(f"[{block}]", label) for label in labels)


def test_every_setting_is_in_the_table() -> None:
    for one in SETTINGS:
        assert f"| `PULSE_{one.name.upper()}` | `{one.default!r}` | {one.help} |" in README


def test_the_coverage_table_is_up_to_date(glossary: Glossary) -> None:
    found = gaps(glossary, lambda pulse, lang: has_name(glossary, pulse, lang))
    assert "\n".join(markdown(found)) in README


def test_the_command_that_runs_the_tests_is_named() -> None:
    assert ".venv/bin/python -m pytest -q" in README
