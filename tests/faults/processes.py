"""The service as a process of its own, on this host or on another made for the test."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx
import pytest

ROOT = Path(__file__).resolve().parents[2]


def free_port() -> int:
    """A port nobody listens on."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return int(free.getsockname()[1])


@contextmanager
def served(
    database: str, folder: Path, host: str = "127.0.0.1", within: tuple[str, ...] = (), **environment: str
) -> Iterator[tuple[str, subprocess.Popen[bytes]]]:
    """The address and the process; `within` is what the command is run under (`ip netns exec ...`)."""
    port = free_port()
    words = {
        "PULSE_DATABASE": database,
        "PULSE_RATE": "0",
        "PULSE_GLOSSARY": str(folder),
        "PULSE_PORT": str(port),
        **environment,
    }
    process = subprocess.Popen(
        [*within, sys.executable, "-m", "service", "serve", "--host", host],
        cwd=ROOT,
        env={**os.environ, **words},
        stderr=subprocess.DEVNULL,
    )
    address = f"http://{host}:{port}"
    try:
        for _ in range(300):
            try:
                if httpx.get(f"{address}/readyz", timeout=1).status_code == 200:
                    break
            except httpx.HTTPError:
                time.sleep(0.05)
        else:
            pytest.fail("the service did not come up")
        yield address, process
    finally:
        process.kill()
        process.wait()
