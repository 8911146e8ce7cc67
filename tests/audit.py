"""Known weaknesses of what is installed: `python -m tests.audit`. Fails where one is known.

Where the list of advisories does not answer, says how much was left unchecked and passes: silence is not a clean bill.
"""

from __future__ import annotations

import json
import subprocess
import sys
from typing import Any


def main() -> int:
    """0 where nothing is known, 1 where something is."""
    run = subprocess.run(
        [
            sys.executable,
            "-m",
            "pip_audit",
            "--format",
            "json",
            "--progress-spinner",
            "off",
            "--skip-editable",
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    try:
        found = verdict(json.loads(run.stdout)["dependencies"])
    except (ValueError, KeyError):
        print(f"dependency audit: not done, {(run.stderr.strip().splitlines() or ['no answer'])[-1]}")
        return 0
    print(found[1])
    return found[0]


def verdict(listed: list[dict[str, Any]]) -> tuple[int, str]:
    """The exit code and what to say of packages as pip-audit lists them."""
    weak = [(one["name"], one["version"], each["id"]) for one in listed for each in one.get("vulns", ())]
    checked = sum("skip_reason" not in one for one in listed)
    lines = [f"dependency audit: {checked} of {len(listed)} packages checked, {len(weak)} known weaknesses"]
    lines += [f"  {name} {version}: {advisory}" for name, version, advisory in weak]
    if checked < len(listed):
        lines.append(f"  {len(listed) - checked} could not be looked up here and were NOT checked")
    return bool(weak), "\n".join(lines)


if __name__ == "__main__":
    sys.exit(main())
