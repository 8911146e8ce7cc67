"""Start-up, memory and requests: `python -m tests.benchmarks.start`. Rates are shares of an empty endpoint in one run."""

from __future__ import annotations

import asyncio
import resource
import subprocess
import sys
import time
from typing import Any

import httpx
from fastapi import FastAPI

START = """
import resource, time
begin, busy = time.perf_counter(), time.process_time()
from service.store import files
glossary = files.load()
loaded = time.perf_counter()
from service.label import Reader
Reader(glossary).read("urad dal dhuli")
done = time.perf_counter()
print(f"glossary {loaded - begin:.2f} s, reader {done - loaded:.2f} s, first reading ready after {done - begin:.2f} s "
      f"({time.process_time() - busy:.2f} s of processor), {resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB at most, "
      f"{len(glossary.all_rows)} rows")
"""
LABELS = (
    "Urad Dal Dhuli 1 kg",
    "kandi pappu",
    "கடலைப் பருப்பு",
    "Rote Linsen 500 g",
    "Basmati rice 5 kg",
    "Чечевица красная",
)


async def rate(app: Any, method: str, path: str, bodies: list[Any], seconds: float = 4.0) -> float:
    """Requests a second, one after the other, in the same process."""
    transport = httpx.ASGITransport(app=app)
    async with httpx.AsyncClient(transport=transport, base_url="http://test") as client:
        for body in bodies[: len(LABELS)]:
            (await client.request(method, path, json=body)).raise_for_status()
        start, count = time.perf_counter(), 0
        while time.perf_counter() - start < seconds:
            await client.request(method, path, json=bodies[count % len(bodies)])
            count += 1
        return count / (time.perf_counter() - start)


def main() -> None:
    """Print everything."""
    print(
        subprocess.run(
            [sys.executable, "-c", START], capture_output=True, text=True, check=True
        ).stdout.strip()
    )
    from service.store import files
    from service.web import Settings, create_app

    empty = FastAPI()

    @empty.post("/v1/readings")
    async def nothing() -> dict[str, str]:
        return {}

    bodies: list[Any] = [{"text": one} for one in LABELS]
    # No two alike, as far as the run may go.
    fresh = [{"text": f"{LABELS[at % len(LABELS)]} batch {at}"} for at in range(40_000)]
    full = create_app(Settings(database="sqlite://", rate=0, metrics=False), files.load())
    least = asyncio.run(rate(empty, "POST", "/v1/readings", bodies))
    for name, asked in (("met before", bodies), ("never met", fresh)):
        ours = asyncio.run(rate(full, "POST", "/v1/readings", asked))
        print(
            f"/v1/readings, labels {name}: {ours:,.0f} a second, an empty endpoint {least:,.0f}: {ours / least:.0%}"
        )
    print(f"{resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024:.0f} MB with the whole service")


if __name__ == "__main__":
    main()
