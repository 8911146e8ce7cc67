"""The MCP server exercised by the SDK's own client, against the service in the same process."""

from __future__ import annotations

import importlib.util
import json
import sys
import warnings
from pathlib import Path
from typing import Any

import anyio
import httpx
import pytest

from tests.conftest import Api

ROOT = Path(__file__).resolve().parents[2]
with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    pytest.importorskip("mcp", reason="pip install mcp")
    from mcp import Client


def _server(api: Api) -> Any:
    sys.path.insert(0, str(ROOT / "clients" / "python"))
    spec = importlib.util.spec_from_file_location("pulse_mcp", ROOT / "clients" / "mcp" / "server.py")
    assert spec and spec.loader
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    transport = httpx.ASGITransport(app=api.app)
    return module.build(module.AsyncClient("http://test", transport=transport))


@pytest.mark.filterwarnings("ignore")
def test_every_tool_answers(api: Api) -> None:
    asked = [
        ("read", {"text": "Urad Dal Dhuli 1 kg"}, "Vigna mungo"),
        ("name", {"species": "Vigna mungo", "language": "ta", "form": "split-dehulled"}, "உளு"),
        ("cook", {"species": "Phaseolus vulgaris", "market_class": "kidney", "vessel": "slow"}, "slow cooker"),
        ("swap", {"species": "Cajanus cajan", "form": "split-dehulled"}, "Pisum sativum"),
        ("menu", {"title": "Supper", "languages": ["en", "hi"],
                  "sections": [{"name": "Dals", "dishes": [{"name": "Dal", "pulses": ["toor dal"]}]}]}, "# Supper"),
        ("name", {"species": "Vigna mango", "language": "ta"}, "problem"),
    ]  # fmt: skip

    async def play() -> list[str]:
        async with Client(_server(api)) as session:
            tools = {tool.name for tool in (await session.list_tools()).tools}
            assert tools == {"read", "name", "cook", "swap", "menu"}
            said = []
            for name, words, _ in asked:
                found = await session.call_tool(name, words)
                assert not found.is_error
                said.append(json.dumps([part.text for part in found.content], ensure_ascii=False))
            return said

    for text, (name, _, wanted) in zip(anyio.run(play), asked, strict=True):
        assert wanted in text, (name, text[:300])
