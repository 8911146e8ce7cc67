"""A client generated from the OpenAPI document compiles, and reads a label."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

import httpx
import pytest

from tests.conftest import Api

GENERATOR = shutil.which("openapi-python-client", path=str(Path(sys.executable).parent))


@pytest.mark.skipif(GENERATOR is None, reason="pip install openapi-python-client")
def test_a_generated_client_works(api: Api, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "openapi.json").write_text(json.dumps(api.get("/openapi.json").json()), "utf-8")
    made = subprocess.run(
        [str(GENERATOR), "generate", "--path", "openapi.json", "--output-path", "made", "--meta", "none"],
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert made.returncode == 0, made.stdout + made.stderr
    assert "WARNING" not in made.stdout, made.stdout
    monkeypatch.syspath_prepend(str(tmp_path))
    subprocess.run([sys.executable, "-m", "compileall", "-q", "made"], cwd=tmp_path, check=True)
    found = _read(api)
    assert found.answers[0][0].readings[0].species == "Vigna mungo"


def _read(api: Api) -> Any:
    import anyio
    from made.api.readings import readings  # type: ignore[import-not-found]
    from made.client import Client  # type: ignore[import-not-found]
    from made.models import ReadingsRequest  # type: ignore[import-not-found]

    client = Client(base_url="http://test")
    transport = httpx.ASGITransport(app=api.app)
    client.set_async_httpx_client(httpx.AsyncClient(transport=transport, base_url="http://test"))

    async def ask() -> Any:
        return await readings.asyncio(client=client, body=ReadingsRequest(text="Urad Dal Dhuli 1 kg"))

    return anyio.run(ask)
