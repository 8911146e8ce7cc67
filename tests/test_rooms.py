"""Who may import whom: a literal table, and the modules must keep to it."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

SERVICE = Path(__file__).resolve().parent.parent / "service"
CORE = {"kitchen", "naming", "label", "grain", "glossary"}
# Room -> rooms it may import. `errors` is open to all.
ALLOWED: dict[str, set[str]] = {
    "glossary": set(),
    "kitchen": {"glossary"},
    "naming": {"glossary"},
    "label": {"glossary"},
    "grain": {"glossary"},
    "recipe": {"kitchen", "naming", "label", "glossary"},
    "paper": {"kitchen", "naming", "label", "glossary"},
    "answer": {"kitchen", "naming", "label", "glossary"},
    "contracts": {"kitchen", "naming", "label", "glossary", "answer"},
    "talk": {"recipe", "paper", *CORE},
    "press": {"paper"},
    "store": {"glossary"},
    "photo": {"glossary"},
    "web": {"answer", "contracts", "recipe", "paper", "talk", "store", "photo", "press", *CORE},
    "commands": {"answer", "contracts", "recipe", "paper", "talk", "store", "photo", "press", "web", *CORE},
    "__main__": {"commands"},
    "__init__": set(),
    "errors": set(),
}
PURE = {*CORE, "recipe", "paper", "talk", "answer", "contracts", "errors"}
# What pure rooms may take from outside: the standard library without I/O, and small pure packages.
FORBIDDEN = {
    "os", "pathlib", "socket", "time", "random", "subprocess", "shutil", "tempfile", "glob", "fastapi", "starlette",
    "sqlmodel", "sqlalchemy", "httpx", "uvicorn", "urllib", "http", "asyncio", "threading", "secrets",
}  # fmt: skip


def _modules() -> list[Path]:
    return sorted(SERVICE.rglob("*.py"))


def _room(path: Path) -> str:
    parts = path.relative_to(SERVICE).parts
    return parts[0] if len(parts) > 1 else path.stem


def _imports(path: Path) -> set[tuple[str, str]]:
    """(room, "") for an own room, ("", package) for one from outside."""
    depth = len(path.relative_to(SERVICE).parts)
    found: set[tuple[str, str]] = set()
    for node in ast.walk(ast.parse(path.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            found |= {("", alias.name.split(".")[0]) for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and node.level == 0:
            found.add(("", (node.module or "").split(".")[0]))
        elif isinstance(node, ast.ImportFrom) and node.level == depth:
            names = [node.module.split(".")[0]] if node.module else [alias.name for alias in node.names]
            found |= {(name, "") for name in names}
    return found


@pytest.mark.parametrize("path", _modules(), ids=lambda path: path.relative_to(SERVICE).as_posix())
def test_rooms_keep_to_the_table(path: Path) -> None:
    room = _room(path)
    assert room in ALLOWED, f"{room} is no room of the design"
    others = {name for name, _ in _imports(path) if name} - {room, "errors"}
    assert others <= ALLOWED[room], f"{path.name} imports {sorted(others - ALLOWED[room])}"


@pytest.mark.parametrize(
    "path",
    [path for path in _modules() if _room(path) in PURE],
    ids=lambda path: path.relative_to(SERVICE).as_posix(),
)
def test_pure_rooms_touch_nothing_outside(path: Path) -> None:
    assert not {package for _, package in _imports(path)} & FORBIDDEN


def test_rapidfuzz_is_known_to_likeness_alone() -> None:
    users = {
        path.relative_to(SERVICE).as_posix() for path in _modules() if ("", "rapidfuzz") in _imports(path)
    }
    assert users == {"label/letters.py", "label/near.py"}


def test_no_behaviour_hangs_on_a_language_code() -> None:
    for path in _modules():
        if _room(path) in CORE:
            text = path.read_text("utf-8")
            assert "if lang ==" not in text and "if tag ==" not in text, path
