"""Counts for Prometheus: requests by route and status, time, readings by verdict, unread words."""

from __future__ import annotations

from prometheus_client import CollectorRegistry, Counter, Histogram, generate_latest

BUCKETS = (0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1.0, 2.5, 5.0, 10.0)


class Metrics:
    """The counters of one application."""

    def __init__(self) -> None:
        self.registry = CollectorRegistry()
        self.requests = Counter(
            "pulse_requests", "requests", ["route", "method", "status"], registry=self.registry
        )
        self.seconds = Histogram(
            "pulse_seconds", "time to answer", ["route"], buckets=BUCKETS, registry=self.registry
        )
        self.readings = Counter("pulse_readings", "label readings", ["verdict"], registry=self.registry)
        self.unread = Counter(
            "pulse_unread_words", "words of labels that were not read", registry=self.registry
        )

    def text(self) -> bytes:
        """The exposition format."""
        return generate_latest(self.registry)
