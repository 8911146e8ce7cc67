"""Files for running it: read by readers of their formats, and true to the settings."""

from __future__ import annotations

import configparser
import re
from pathlib import Path

import pytest

from service.web.settings import SETTINGS

DEPLOY = Path(__file__).resolve().parent.parent / "service" / "deploy"
KNOWN = {f"PULSE_{one.name.upper()}" for one in SETTINGS}


def test_only_settings_that_exist_are_set() -> None:
    for path in DEPLOY.iterdir():
        assert set(re.findall(r"PULSE_[A-Z_]+", path.read_text("utf-8"))) <= KNOWN, path.name


def test_manifests_fit_the_schemas_of_kubernetes() -> None:
    yaml = pytest.importorskip("yaml")
    checker = pytest.importorskip("kubernetes_validate")
    kinds = []
    for manifest in yaml.safe_load_all((DEPLOY / "kubernetes.yaml").read_text("utf-8")):
        checker.validate(manifest, "1.28", strict=True)
        kinds.append(manifest["kind"])
    assert {"Deployment", "Service", "HorizontalPodAutoscaler"} <= set(kinds)
    services = yaml.safe_load((DEPLOY / "compose.yaml").read_text("utf-8"))["services"]
    assert set(services["pulse"]["depends_on"]) <= set(services)


def test_the_unit_is_a_unit() -> None:
    unit = configparser.RawConfigParser(strict=False)
    unit.optionxform = str  # type: ignore[assignment, method-assign]
    unit.read_string((DEPLOY / "pulse-glossary.service").read_text("utf-8"))
    assert unit["Service"]["ExecStart"].endswith("pulse-glossary serve")
    assert unit["Service"]["NoNewPrivileges"] == "yes"
