"""PostgreSQL stopped and started under load, and two hosts with a network of their own before one server."""

from __future__ import annotations

import os
import shutil
import subprocess
import threading
import time
import uuid
from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path

import httpx
import pytest
from sqlmodel import Session, select

from service.store import repository
from service.store.tables import Suggestion
from tests.faults.cluster import Cluster, cluster
from tests.faults.processes import served
from tests.needs import need


@pytest.fixture
def server() -> Iterator[Cluster]:
    """A PostgreSQL server of this test's own."""
    with cluster() as made:
        yield made


def test_a_server_restarted_in_mid_load(server: Cluster, folder: Path) -> None:
    """Invariant: through a crash and a restart of PostgreSQL what was acknowledged is there, once, and the service
    goes on by itself; what was not is a problem document that can be sent again."""
    acknowledged: list[str] = []
    codes: set[int] = set()
    done = threading.Event()

    def write(writer: int) -> None:
        at = 0
        while not done.is_set() or at < 5:
            name = f"word {writer} {at}"
            while True:
                answer = httpx.post(
                    f"{address}/v1/suggestions",
                    json={"kind": "unread", "text": name},
                    headers={"Idempotency-Key": f"key-{writer}-{at}"},
                    timeout=30,
                )
                codes.add(answer.status_code)
                if answer.is_success:
                    acknowledged.append(name)
                    break
                assert answer.headers["content-type"].startswith("application/problem+json")
                time.sleep(0.05)
            at += 1

    with served(server.address(), folder) as (address, process):
        writers = [threading.Thread(target=write, args=(one,)) for one in range(4)]
        for one in writers:
            one.start()
        for mode in ("immediate", "fast", "immediate"):
            before = len(acknowledged)
            while len(acknowledged) < before + 20:
                time.sleep(0.02)
            server.restart(mode)
        before = len(acknowledged)
        while len(acknowledged) < before + 20:
            time.sleep(0.02)
        done.set()
        for one in writers:
            one.join()
        assert process.poll() is None
        assert httpx.get(f"{address}/readyz", timeout=10).status_code == 200
    engine = repository.engine(server.address())
    with Session(engine) as session:
        held = [one.text for one in session.exec(select(Suggestion)).all()]
    engine.dispose()
    assert len(acknowledged) >= 80 and codes <= {200, 201, 503} and 503 in codes
    assert sorted(held) == sorted(acknowledged)


def test_two_hosts_each_with_a_network_of_its_own(server: Cluster, folder: Path) -> None:
    """Invariant: hosts that share nothing but PostgreSQL serve the same edition, and what one of them accepts the
    other serves within two seconds."""
    engine = repository.engine(server.address())
    with Session(engine) as session:
        key = repository.make_key(session, "ana", ["review"])
    with ExitStack() as stack:
        hosts = []
        for at in (1, 2):
            name, near, far = _host(stack, at)
            run = ("ip", "netns", "exec", name)
            hosts.append(stack.enter_context(served(server.address(near), folder, host=far, within=run))[0])
        one, other = hosts
        body = {"kind": "name", "text": "उरद", "lang": "hi", "script": "Deva"}
        body |= {"row_kind": "base", "ref": "vigna-mungo"}
        number = httpx.post(f"{one}/v1/suggestions", json=body, timeout=10).json()["id"]
        httpx.post(
            f"{one}/v1/suggestions/{number}/decisions",
            json={"verdict": "accepted", "reason": "seen on a pack"},
            headers={"Authorization": f"Bearer {key}"},
            timeout=10,
        ).raise_for_status()
        began, names = time.monotonic(), ""
        while "उरद" not in names and time.monotonic() - began < 2:
            asked = f"{other}/v1/names?species=vigna-mungo&form=whole&language=hi"
            names = httpx.get(asked, timeout=5).text
            time.sleep(0.05)
        assert "उरद" in names
        editions = {httpx.get(f"{host}/v1/pulses", timeout=5).json()["edition"] for host in hosts}
        assert len(editions) == 1
    engine.dispose()


def _host(stack: ExitStack, at: int) -> tuple[str, str, str]:
    """A network namespace and the addresses of the cable's two ends: ours and its own."""
    name, cable = f"pulse{at}-{uuid.uuid4().hex[:6]}", f"p{at}{uuid.uuid4().hex[:6]}"
    near, far = f"10.211.{at}.1", f"10.211.{at}.2"
    made = shutil.which("ip") and os.geteuid() == 0 and not _ip("netns", "add", name)
    need("namespaces", bool(made), "needs root, iproute2 and leave to make network namespaces")
    stack.callback(_ip, "netns", "del", name)
    for words in (
        ("link", "add", cable, "type", "veth", "peer", "name", "eth0", "netns", name),
        ("addr", "add", f"{near}/24", "dev", cable),
        ("link", "set", cable, "up"),
        ("-n", name, "addr", "add", f"{far}/24", "dev", "eth0"),
        ("-n", name, "link", "set", "eth0", "up"),
        ("-n", name, "link", "set", "lo", "up"),
    ):
        need("namespaces", not _ip(*words), f"ip {' '.join(words)} is refused")
    return name, near, far


def _ip(*words: str) -> int:
    return subprocess.run(["ip", *words], stderr=subprocess.DEVNULL, check=False).returncode
