"""Things that break in the night: each test names the invariant that must hold."""

from __future__ import annotations

import os
import resource
import shutil
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import httpx
import pytest
from sqlmodel import Session, select

from service.glossary.build import build
from service.store import files, repository
from service.store.tables import Suggestion
from service.web import Settings, create_app
from tests.conftest import Api
from tests.faults.processes import free_port, served
from tests.store.conftest import postgres_address  # noqa: F401 - a fixture
from tests.tiny import tiny_files

ROOT = Path(__file__).resolve().parents[2]


def _suggest(address: str, at: int) -> bool:
    body = {"kind": "unread", "text": f"word {at}"}
    try:
        return httpx.post(f"{address}/v1/suggestions", json=body, timeout=10).status_code == 201
    except httpx.HTTPError:
        return False


def _kept(database: str) -> set[str]:
    engine = repository.engine(database)
    with Session(engine) as session:
        found = {one.text for one in session.exec(select(Suggestion)).all()}
    engine.dispose()
    return found


def test_what_was_acknowledged_survives_a_kill(tmp_path: Path, folder: Path) -> None:
    """Invariant: an answer of 201 means the suggestion is on disk, whatever happens next."""
    database = f"sqlite:///{tmp_path / 'people.db'}"
    done: list[int] = []
    with served(database, folder) as (address, process):

        def write(part: int) -> None:
            for at in range(part * 100, part * 100 + 40):
                if _suggest(address, at):
                    done.append(at)

        threads = [threading.Thread(target=write, args=(part,)) for part in range(4)]
        for thread in threads:
            thread.start()
        time.sleep(0.8)
        process.send_signal(signal.SIGKILL)
        for thread in threads:
            thread.join()
    assert done
    assert {f"word {at}" for at in done} <= _kept(database)
    with served(database, folder) as (address, _):
        assert _suggest(address, 9999)


def test_a_full_disk_loses_nothing_and_says_so(tmp_path: Path, folder: Path) -> None:
    """Invariant: a write that does not fit gets a problem; what was written before stays readable."""
    database = f"sqlite:///{tmp_path / 'people.db'}"
    code = (
        "import resource, sys; resource.setrlimit(resource.RLIMIT_FSIZE, (700_000, 700_000)); import signal; "
        "signal.signal(signal.SIGXFSZ, signal.SIG_IGN); from service.commands import run; sys.exit(run(['serve']))"
    )
    port = free_port()
    environment = {
        **os.environ,
        "PULSE_DATABASE": database,
        "PULSE_RATE": "0",
        "PULSE_GLOSSARY": str(folder),
        "PULSE_PORT": str(port),
    }
    process = subprocess.Popen(
        [sys.executable, "-c", code], cwd=ROOT, env=environment, stderr=subprocess.DEVNULL
    )
    address = f"http://127.0.0.1:{port}"
    try:
        for _ in range(200):
            try:
                httpx.get(f"{address}/readyz", timeout=1)
                break
            except httpx.HTTPError:
                time.sleep(0.05)
        done, refused = [], None
        for at in range(2000):
            body = {"kind": "unread", "text": f"word {at}", "evidence": "x" * 1900}
            answer = httpx.post(f"{address}/v1/suggestions", json=body, timeout=10)
            if answer.status_code == 201:
                done.append(at)
            else:
                refused = answer
                break
        assert done and refused is not None
        assert refused.status_code >= 500 and refused.headers["content-type"].startswith(
            "application/problem+json"
        )
        assert "Traceback" not in refused.text
        assert httpx.get(f"{address}/v1/pulses", timeout=5).status_code == 200
    finally:
        process.kill()
        process.wait()
    assert {f"word {at}" for at in done} <= _kept(database)
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[1] != 700_000


@pytest.mark.parametrize(
    ("name", "spoil", "says"),
    [
        ("names/hi.csv", lambda data: data + b"hi,Deva,base\n", "names/hi.csv:"),
        ("vocabulary.toml", lambda data: data + b"[form\n", "vocabulary.toml:"),
        ("names/hi.csv", lambda data: data + b"\xff\xfe\n", "names/hi.csv:"),
    ],
)
def test_a_corrupt_glossary_does_not_start_and_names_the_line(
    folder: Path, name: str, spoil: object, says: str
) -> None:
    """Invariant: the service never serves a glossary it could not read whole."""
    path = folder / name
    path.write_bytes(spoil(path.read_bytes()))  # type: ignore[operator]
    found = subprocess.run(
        [sys.executable, "-m", "service", "serve", "--data", str(folder), "--port", str(free_port()), "--database", "sqlite://"],
        cwd=ROOT, capture_output=True, text=True, timeout=60, check=False,
    )  # fmt: skip
    assert found.returncode == 2
    assert says in found.stderr and found.stderr.count("\n") == 1 and "Traceback" not in found.stderr


def test_a_database_that_cuts_every_connection_in_mid_load(postgres_address: str, folder: Path) -> None:  # noqa: F811
    """Invariant: what PostgreSQL drops (as at a restart) is a 503 and is sent again; nothing is lost or kept twice."""
    kept: list[str] = []
    codes: set[int] = set()

    def write(writer: int) -> None:
        for at in range(25):
            name = f"word {writer} {at}"
            for _ in range(50):
                answer = httpx.post(
                    f"{address}/v1/suggestions",
                    json={"kind": "unread", "text": name},
                    headers={"Idempotency-Key": f"key-{writer}-{at}"},
                    timeout=20,
                )
                codes.add(answer.status_code)
                if answer.is_success:
                    kept.append(name)
                    break
                assert answer.headers["content-type"].startswith("application/problem+json")
                time.sleep(0.05)

    admin = repository.engine(postgres_address)
    with served(postgres_address, folder) as (address, _):
        writers = [threading.Thread(target=write, args=(one,)) for one in range(4)]
        for one in writers:
            one.start()
        cuts = 0
        while any(one.is_alive() for one in writers):
            with Session(admin) as session:
                rows = session.connection().exec_driver_sql(
                    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity "
                    "WHERE datname = current_database() AND pid <> pg_backend_pid()"
                )
                cuts += len(rows.all())
            time.sleep(0.1)
        for one in writers:
            one.join()
    with Session(admin) as session:
        held = [one.text for one in session.exec(select(Suggestion)).all()]
    admin.dispose()
    assert cuts > 0 and codes <= {200, 201, 503}
    assert len(kept) == 100
    assert sorted(held) == sorted(kept)


def test_without_redis_each_worker_counts_for_itself() -> None:
    """Invariant: limits fail open to memory, never to errors and never to no limit at all."""
    held = tiny_files()
    app = create_app(
        Settings(database="sqlite://", rate=3, redis=f"redis://127.0.0.1:{free_port()}/0"), build(held)
    )
    api = Api(app)
    codes = [api.get("/v1/pulses").status_code for _ in range(8)]
    assert codes.count(200) >= 3 and 429 in codes and set(codes) <= {200, 429}
    app.state.engine.dispose()


def test_two_hosts_and_one_database(postgres_address: str, folder: Path) -> None:  # noqa: F811
    """Invariant: an accepted suggestion is served by every host within two seconds, without a restart."""
    engine = repository.engine(postgres_address)
    with served(postgres_address, folder) as (one, _), served(postgres_address, folder) as (other, _):
        with Session(engine) as session:
            key = repository.make_key(session, "ana", ["review"])
        body = {
            "kind": "name",
            "text": "उरद",
            "lang": "hi",
            "script": "Deva",
            "row_kind": "base",
            "ref": "vigna-mungo",
        }
        number = httpx.post(f"{one}/v1/suggestions", json=body, timeout=10).json()["id"]
        bearer = {"Authorization": f"Bearer {key}"}
        answer = {"verdict": "accepted", "reason": "seen on a pack"}
        httpx.post(
            f"{one}/v1/suggestions/{number}/decisions", json=answer, headers=bearer, timeout=10
        ).raise_for_status()
        began = time.monotonic()
        while time.monotonic() - began < 2:
            if (
                "उरद"
                in httpx.get(f"{other}/v1/names?species=vigna-mungo&form=whole&language=hi", timeout=5).text
            ):
                break
            time.sleep(0.05)
        else:
            pytest.fail("the other host did not learn of it within two seconds")
        editions = {httpx.get(f"{host}/v1/pulses", timeout=5).json()["edition"] for host in (one, other)}
        assert len(editions) == 1
    engine.dispose()


def test_a_half_finished_move_of_the_files_is_not_seen(folder: Path) -> None:
    """Invariant: files are written whole or not at all."""
    before = files.read(folder)
    shutil.copytree(folder, folder.with_name("copy"))
    with pytest.raises(TypeError):
        files.write(folder, {"names/hi.csv": b"good", "names/zz.csv": None})  # type: ignore[dict-item]
    after = files.read(folder)
    assert set(after) == set(before)
    assert not list(folder.rglob(".part-*"))
