"""A PostgreSQL server of the test's own: made, restarted and thrown away."""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.faults.processes import free_port
from tests.needs import need

OWNER = "postgres"


@dataclass(frozen=True, slots=True)
class Cluster:
    """A server on every address of this host, for whom everyone on it is trusted."""

    programs: Path
    data: Path
    port: int

    def address(self, host: str = "127.0.0.1") -> str:
        """Its URL as the service takes it."""
        return f"postgresql+psycopg://{OWNER}@{host}:{self.port}/postgres"

    def control(self, *words: str) -> None:
        """`pg_ctl` with these words, as its owner; raises CalledProcessError where it fails."""
        command = [str(self.programs / "pg_ctl"), "-D", str(self.data), "-w", "-s", *words]
        _as_owner(command)

    def restart(self, mode: str) -> None:
        """Stop at once (`immediate`: as a crash; `fast`: connections are cut) and start again."""
        self.control("-m", mode, "-l", str(self.data / "log"), "restart")


@contextmanager
def cluster() -> Iterator[Cluster]:
    """A new server; skips where PostgreSQL's programs are not installed."""
    found = shutil.which("initdb") or next(
        iter(sorted(map(str, Path("/usr/lib/postgresql").glob("*/bin/initdb")), reverse=True)), None
    )
    need("postgres", found is not None, "install postgresql (initdb and pg_ctl)")
    need("postgres", os.geteuid() != 0 or _known(OWNER), f"as root, a user called {OWNER} is needed")
    programs = Path(str(found)).resolve().parent
    folder = Path(tempfile.mkdtemp(prefix="pulse-"))
    if os.geteuid() == 0:
        shutil.chown(folder, OWNER, OWNER)
    made = Cluster(programs, folder / "data", free_port())
    try:
        _as_owner([str(programs / "initdb"), "-D", str(made.data), "-U", OWNER, "-A", "trust", "-N"])
        with (made.data / "pg_hba.conf").open("a") as rules:
            rules.write("host all all samenet trust\n")
        # fsync as in production: a crash must not lose what was acknowledged.
        options = f"-p {made.port} -c listen_addresses=* -c unix_socket_directories={folder}"
        made.control("-o", options, "-l", str(made.data / "log"), "start")
        yield made
    finally:
        if (made.data / "postmaster.pid").exists():
            made.control("-m", "immediate", "stop")
        shutil.rmtree(folder, ignore_errors=True)


def _known(user: str) -> bool:
    try:
        return bool(pwd.getpwnam(user))
    except KeyError:
        return False


def _as_owner(command: list[str]) -> None:
    before = ["runuser", "-u", OWNER, "--"] if os.geteuid() == 0 else []
    subprocess.run([*before, *command], check=True, stdout=subprocess.DEVNULL, cwd="/")
