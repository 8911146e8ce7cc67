"""Inputs bred against the code they reach: `python -m tests.benchmarks.fuzz [seconds]` (600 unless told).

What comes in from outside - labels, recipe lines, chat turns, traits of grains, article numbers, picture files - is
fed with inputs of up to 10 kB that atheris mutates towards branches not yet taken. Prints runs, branches reached,
exceptions other than the declared ones, and for each target its slowest input, timed again without instruments.
Exits 1 where anything was raised.
"""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
import tempfile
import time
import traceback
from collections import Counter, defaultdict
from collections.abc import Callable
from pathlib import Path
from typing import Any

LONGEST = 10_240
KEPT = 8
SEEDS = {
    "label": ("URAD DAL DHULI 1 kg", "साबुत मूंग", "عدس أحمر", "去皮绿豆", "ถั่วแดง", "mung 2.5e9 kg / 1,000 г"),
    "recipe": ("200 g red lentils, rinsed", "1½ cups chana dal (soaked overnight)", "2 x 400g tins kidney beans", "१ कटोरी तूर डाल"),
    "chat": ("how long for rajma in a cooker at 1500 m", "urad dal\0in hindi?\0and soaked?", "मसूर दाल", "2"),
    "grain": ("0123456789abcdef",),
    "gtin": ("4006381333931", "96385074"),
}  # fmt: skip


def targets() -> dict[str, Callable[[bytes], object]]:
    """What is fed, by name."""
    from service.glossary.model import COLOURS
    from service.grain import Traits, identify
    from service.grain.identify import kinds
    from service.grain.traits import STATES
    from service.label import Reader
    from service.photo import opened
    from service.recipe import ingredient
    from service.store import files, repository
    from service.talk import State, Tongue, turn

    glossary = files.load()
    reader, tongue = Reader(glossary), Tongue("en")
    words = {
        trait: ("", *sorted({kind.value(trait) for kind in kinds(glossary)}), "nothing known")
        for trait in ("shape", "surface", "eye")
    } | {"state": ("", *STATES, "other"), "outside": ("", *COLOURS), "inside": ("", *COLOURS, "other")}

    def text(data: bytes) -> str:
        return data.decode("utf-8", "replace")

    def chat(data: bytes) -> None:
        state = State()
        for said in text(data).split("\0")[:4]:
            state, _ = turn(State.of(state.plain()), said, reader, tongue)

    def grain(data: bytes) -> None:
        told: dict[str, Any] = {
            trait: known[byte % len(known)] for (trait, known), byte in zip(words.items(), data, strict=False)
        }
        sizes = ("length_mm", "width_mm", "thickness_mm", "halves")
        told |= {
            trait: int.from_bytes(data[at : at + 2]) / 1000 - 1 if data[at : at + 1] else None
            for trait, at in zip(sizes, range(6, 14, 2), strict=True)
        }
        found = identify(glossary, Traits(**told))
        assert all(0 <= one.probability <= 1 for one in found.ranked)

    return {
        "label": lambda data: reader.read(text(data)),
        "recipe": lambda data: [ingredient(line, reader) for line in text(data).splitlines()[:20]],
        "chat": chat,
        "grain": grain,
        "gtin": lambda data: repository.gtin14(text(data)),
        "picture": opened,
    }


class _Watch:
    """Runs one input in the target its first byte names, and keeps what is told at the end."""

    def __init__(self, fed: dict[str, Callable[[bytes], object]], seconds: float, folder: Path) -> None:
        from service.errors import PulseError

        self.fed, self.folder, self.declared = fed, folder, PulseError
        self.end = time.monotonic() + seconds
        self.runs: Counter[str] = Counter()
        self.raised: dict[str, tuple[str, bytes]] = {}
        self.slow: dict[str, list[tuple[float, bytes]]] = defaultdict(list)

    def __call__(self, data: bytes) -> None:
        if time.monotonic() > self.end:
            self._tell()
        if not data:
            return
        name = list(self.fed)[data[0] % len(self.fed)]
        begun = time.perf_counter()
        try:
            self.fed[name](data[1:])
        except self.declared:
            pass
        except Exception as error:
            last = traceback.extract_tb(error.__traceback__)[-1]
            self.raised.setdefault(
                f"{name}: {type(error).__name__} at {Path(last.filename).name}:{last.lineno}: {error}"[:200],
                (name, data[1:]),
            )
        took = time.perf_counter() - begun
        self.runs[name] += 1
        slow = self.slow[name]
        if len(slow) < KEPT or took > slow[-1][0]:
            self.slow[name] = sorted([*slow, (took, data[1:])], key=lambda one: -one[0])[:KEPT]

    def _tell(self) -> None:
        kept = {name: [data.hex() for _, data in slow] for name, slow in self.slow.items()}
        (self.folder / "slow.json").write_text(json.dumps(kept))
        (self.folder / "told.json").write_text(
            json.dumps(
                {"runs": self.runs, "raised": {what: data.hex() for what, (_, data) in self.raised.items()}}
            )
        )
        sys.stdout.flush()
        os._exit(0)


def _pictures() -> list[bytes]:
    """Small pictures of each kind taken, and of one that is not."""
    from PIL import Image

    out = []
    for kind, mode in (
        ("PNG", "RGBA"),
        ("PNG", "P"),
        ("JPEG", "RGB"),
        ("JPEG", "CMYK"),
        ("WEBP", "RGB"),
        ("GIF", "P"),
    ):
        held = io.BytesIO()
        Image.new(mode, (9, 7)).save(
            held, kind, exif=b"Exif\0\0MM\0*\0\0\0\x08\0\1\1\x12\0\3\0\0\0\1\0\6\0\0\0\0\0\0"
        )
        out.append(held.getvalue())
    return out


def _bred(seconds: float, folder: Path) -> None:
    """The instrumented run, in a process of its own since the fuzzer does not return."""
    import atheris

    with atheris.instrument_imports(include=["service", "PIL"]):
        fed, pictures = targets(), _pictures()
    seeds = {name: [one.encode() for one in SEEDS[name]] if name in SEEDS else pictures for name in fed}
    for at, (name, given) in enumerate(seeds.items()):
        long = [(b"\n".join(given) * LONGEST)[: LONGEST - 1]] if name in ("label", "recipe") else []
        for number, seed in enumerate([*given, *long]):
            (folder / "corpus" / f"{name}-{number}").write_bytes(bytes([at]) + seed)
    atheris.Setup(
        [sys.argv[0], f"-max_len={LONGEST}", "-len_control=0", "-timeout=60", "-rss_limit_mb=4096", str(folder / "corpus")],
        _Watch(fed, seconds, folder),
    )  # fmt: skip
    atheris.Fuzz()


def _timed(folder: Path) -> dict[str, tuple[float, int]]:
    """For each target the slowest of its kept inputs, best of five: milliseconds and bytes."""
    from service.errors import PulseError

    fed = targets()
    out = {}
    for name, kept in json.loads((folder / "slow.json").read_text()).items():
        times = []
        for data in map(bytes.fromhex, kept):
            best = float("inf")
            for _ in range(5):
                begun = time.perf_counter()
                try:
                    fed[name](data)
                except PulseError:
                    pass
                except Exception:
                    break
                best = min(best, time.perf_counter() - begun)
            if best < float("inf"):
                times.append((best * 1000, len(data)))
        out[name] = max(times, default=(0.0, 0))
    return out


def main() -> int:
    """Breed for so many seconds, then print what was found."""
    if sys.argv[1:2] == ["--in"]:
        _bred(float(sys.argv[2]), Path(sys.argv[3]))
    seconds = float(sys.argv[1]) if sys.argv[1:] else 600.0
    with tempfile.TemporaryDirectory() as place:
        folder = Path(place)
        (folder / "corpus").mkdir()
        done = subprocess.run(
            [sys.executable, "-m", "tests.benchmarks.fuzz", "--in", str(seconds), place],
            capture_output=True, text=True, check=False,
        )  # fmt: skip
        if not (folder / "told.json").is_file():
            print(done.stderr[-4000:])
            return 1
        told = json.loads((folder / "told.json").read_text())
        reached = [line.split("cov: ")[1].split()[0] for line in done.stderr.splitlines() if "cov: " in line]
        slowest = _timed(folder)
    print(
        f"{sum(told['runs'].values())} runs in {seconds:.0f} s, {reached[-1] if reached else '?'} branches reached"
    )
    for name, runs in told["runs"].items():
        took, size = slowest.get(name, (0.0, 0))
        print(f"{name:8} {runs:8} runs, slowest input {took:6.1f} ms for {size} bytes")
    for what, data in told["raised"].items():
        print(f"raised   {what}\n         {bytes.fromhex(data)[:300]!r}")
    print(f"{len(told['raised'])} exceptions")
    return 1 if told["raised"] else 0


if __name__ == "__main__":
    sys.exit(main())
