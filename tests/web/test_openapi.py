"""The whole OpenAPI document exercised by schemathesis: no 5xx, every answer as documented."""

from __future__ import annotations

import tempfile
import warnings

import pytest
from hypothesis import HealthCheck, settings

from service.store import files
from service.web import Settings, create_app

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    schemathesis = pytest.importorskip("schemathesis", reason="pip install schemathesis")
    from schemathesis.checks import not_a_server_error
    from schemathesis.specs.openapi.checks import (
        content_type_conformance,
        response_schema_conformance,
        status_code_conformance,
    )

FOLDER = tempfile.TemporaryDirectory(prefix="pulse-")
APP = create_app(Settings(database=f"sqlite:///{FOLDER.name}/api.db", rate=0), files.load())
SCHEMA = schemathesis.openapi.from_asgi("/openapi.json", APP)
CHECKS = [
    not_a_server_error,
    status_code_conformance,
    content_type_conformance,
    response_schema_conformance,
]


@SCHEMA.parametrize()
@settings(max_examples=12, deadline=None, suppress_health_check=list(HealthCheck))
@pytest.mark.filterwarnings("ignore")
def test_every_answer_is_as_documented(case: object) -> None:
    case.call_and_validate(checks=CHECKS)  # type: ignore[attr-defined]
