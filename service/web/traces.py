"""OpenTelemetry spans of each request, for those who collect them; nothing is loaded where they are not asked for."""

from __future__ import annotations

from typing import Any

from fastapi import FastAPI

from ..errors import Missing

QUERIES = ("http.url", "http.target", "url.full", "url.query")
QUIET = "/healthz,/readyz,/metrics"


def trace(app: FastAPI, address: str, exporter: Any = None) -> Any:
    """Send spans over OTLP/HTTP to an address, or to an exporter of the caller's; returns the provider to shut down.

    Queries are left out of the spans: they hold label texts. Raises Missing without the `telemetry` extra.
    """
    try:
        from opentelemetry.instrumentation.fastapi import FastAPIInstrumentor
        from opentelemetry.sdk.resources import Resource
        from opentelemetry.sdk.trace import TracerProvider
        from opentelemetry.sdk.trace.export import BatchSpanProcessor
    except ImportError:
        raise Missing("traces", "pip install '.[telemetry]'") from None
    if exporter is None:
        from opentelemetry.exporter.otlp.proto.http.trace_exporter import OTLPSpanExporter

        exporter = OTLPSpanExporter(endpoint=address)
    provider = TracerProvider(resource=Resource.create({"service.name": "pulse-glossary"}))
    provider.add_span_processor(BatchSpanProcessor(exporter))
    FastAPIInstrumentor.instrument_app(
        app, tracer_provider=provider, excluded_urls=QUIET, server_request_hook=_without_query
    )
    return provider


def _without_query(span: Any, scope: dict[str, Any]) -> None:
    for name in QUERIES:
        if name in (span.attributes or {}):
            span.set_attribute(name, scope["path"] if name != "url.query" else "")
