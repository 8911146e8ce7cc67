"""A pulse-glossary service for assistants, over the Model Context Protocol: read, name, cook, swap, menu.

Run `python clients/mcp/server.py http://127.0.0.1:8000`; it speaks on standard input and output. Needs the
packages mcp and httpx and the client in clients/python.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

from mcp.server import MCPServer

sys.path.insert(0, str(Path(__file__).resolve().parents[1] / "python"))

from pulse_glossary_client import AsyncClient, Problem

ABOUT = (
    "Dried pulses (beans, peas, lentils, chickpeas, grams): what a label names, what to ask for in another language, how "
    "to soak and cook, what to use instead. Always pass on the cautions; they are about food that can hurt."
)


def build(client: AsyncClient) -> MCPServer:
    """The server over a client of the service."""
    server = MCPServer("pulse-glossary", instructions=ABOUT)

    @server.tool()
    async def read(text: str, place: str = "") -> dict[str, Any]:
        """Say what a label, menu line or shelf ticket names: species, form, colour, probabilities, and the question
        that settles it best. `place` is the ISO 3166 country of the shop."""
        return await _said(client.read(text, place=place))

    @server.tool()
    async def name(
        species: str, language: str, form: str = "", market_class: str = "", colour: str = ""
    ) -> dict[str, Any]:
        """Names of a pulse in a language (BCP 47 tag): native script, everyday Latin spelling, romanised."""
        return await _said(
            client.names(species, language, form=form, market_class=market_class, colour=colour)
        )

    @server.tool()
    async def cook(
        species: str, form: str = "whole", market_class: str = "", vessel: str = "open", gauge_kpa: float | None = None,
        altitude_m: float = 0.0, soak: str = "overnight", texture: str = "tender",
    ) -> dict[str, Any]:  # fmt: skip
        """Soak, minutes, water, yield, steps and cautions. vessel: open, pressure, electric, slow ...; soak: none, hot,
        overnight; texture: firm, tender, creamy. Repeat every caution to the user."""
        kitchen: dict[str, Any] = {
            "vessel": vessel,
            "altitude_m": altitude_m,
            "soak": soak,
            "texture": texture,
        }
        if gauge_kpa is not None:
            kitchen["gauge_kpa"] = gauge_kpa
        return await _said(client.guidance(species, form=form, market_class=market_class, **kitchen))

    @server.tool()
    async def swap(
        species: str, form: str = "whole", market_class: str = "", colour: str = ""
    ) -> dict[str, Any]:
        """What can be used instead, the likest first, with what changes and what to beware of."""
        return await _said(client.swaps(species, form=form, market_class=market_class, colour=colour))

    @server.tool()
    async def menu(
        title: str, languages: list[str], sections: list[dict[str, Any]], law: str = "eu"
    ) -> dict[str, Any]:
        """A bilingual menu as Markdown. sections: [{"name", "dishes": [{"name", "pulses": [label text or keys], "price"}]}]."""
        body = {"title": title, "languages": languages, "sections": sections, "law": law}
        return await _said(client.printed("menus", body, "text/markdown"))

    return server


async def _said(call: Any) -> dict[str, Any]:
    """The answer, or the problem as an answer: an assistant can mend a bad input."""
    try:
        found = await call
    except Problem as problem:
        return {"problem": str(problem), **getattr(problem, "facts", {})}
    return found if isinstance(found, dict) else {"text": found.decode("utf-8")}


if __name__ == "__main__":
    build(AsyncClient(sys.argv[1] if len(sys.argv) > 1 else "http://127.0.0.1:8000")).run()
