"""The only reader and writer of glossary_data."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from ..errors import BadInput
from ..glossary.build import build
from ..glossary.model import Glossary

HERE = Path(__file__).resolve().parent.parent.parent / "glossary_data"


def folder(given: str | None = None) -> Path:
    """The glossary folder: the one given, or the one beside the code."""
    path = Path(given) if given else HERE
    if not (path / "vocabulary.toml").is_file():
        raise BadInput(
            "glossary folder", str(path), "holds no vocabulary.toml; give the glossary_data folder"
        )
    return path


def read(path: Path) -> dict[str, bytes]:
    """Every glossary file under the folder, by its path with forward slashes."""
    wanted = [
        *path.glob("*.toml"),
        *path.glob("*.csv"),
        *path.glob("pulses/*.toml"),
        *path.glob("names/*.csv"),
    ]
    return {one.relative_to(path).as_posix(): one.read_bytes() for one in sorted(wanted)}


def load(given: str | None = None) -> Glossary:
    """The glossary of a folder; raises GlossaryFault naming file and line where it cannot be used."""
    return build(read(folder(given)))


def write(path: Path, files: Mapping[str, bytes]) -> None:
    """Write these files, each whole or not at all."""
    for name, data in files.items():
        target = path / name
        target.parent.mkdir(parents=True, exist_ok=True)
        handle, part = tempfile.mkstemp(dir=target.parent, prefix=".part-")
        try:
            with os.fdopen(handle, "wb") as out:
                out.write(data)
                out.flush()
                os.fsync(out.fileno())
            os.replace(part, target)
        except BaseException:
            os.unlink(part)
            raise
