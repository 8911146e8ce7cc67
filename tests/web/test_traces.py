"""Spans for those who collect them: the route and the status, never a label's text."""

from __future__ import annotations

from opentelemetry.sdk.trace.export.in_memory_span_exporter import InMemorySpanExporter

from service.glossary.build import build
from service.web import Settings, create_app
from service.web.traces import trace
from tests.conftest import Api
from tests.tiny import tiny_files


def test_spans_carry_the_route_and_not_the_query() -> None:
    app = create_app(Settings(database="sqlite://", rate=0), build(tiny_files()))
    spans = InMemorySpanExporter()
    provider = trace(app, "", spans)
    api = Api(app)
    api.get("/v1/names?species=vigna-mungo&language=hi")
    api.get("/healthz")
    provider.force_flush()
    held = [one for one in spans.get_finished_spans() if one.kind.name == "SERVER"]
    provider.shutdown()
    app.state.engine.dispose()
    assert [one.name for one in held] == ["GET /v1/names"]
    values = dict(held[0].attributes or {})
    assert 200 in values.values()
    assert not [value for value in values.values() if "vigna" in str(value)]
