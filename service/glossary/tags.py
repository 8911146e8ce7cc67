"""BCP 47 language tags: their shape, their fallback, and the best of those we hold."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

TAG = re.compile(r"^[a-z]{2,3}(-[A-Z][a-z]{3})?(-([A-Z]{2}|[0-9]{3}))?$")

# Aliases and likely scripts as in CLDR's supplemental metadata: what people write, and what we keep.
ALIASES = {
    "no": "nb", "nn": "nb", "fil": "tl", "iw": "he", "in": "id", "prs": "fa-AF", "kmr": "ku", "bcs": "sr",
    "bs": "hr", "sh": "sr", "cmn": "zh-Hans", "yue": "zh-Hant-HK", "zh": "zh-Hans", "zh-CN": "zh-Hans",
    "zh-SG": "zh-Hans", "zh-MY": "zh-Hans", "zh-TW": "zh-Hant", "zh-HK": "zh-Hant-HK",
    "zh-MO": "zh-Hant", "pnb": "pa-PK", "ory": "or", "swh": "sw", "pes": "fa", "tgl": "tl",
}  # fmt: skip


def canonical(tag: str) -> str:
    """The tag with standard case and today's subtag; a tag of no known shape comes back as it is."""
    parts = tag.strip().replace("_", "-").split("-")
    cased = [parts[0].lower()]
    for part in parts[1:]:
        cased.append(part.title() if len(part) == 4 and part.isalpha() else part.upper())
    joined = "-".join(cased)
    if joined in ALIASES:
        return ALIASES[joined]
    head = ALIASES.get(cased[0])
    return "-".join([head, *cased[1:]]) if head and len(cased) > 1 and cased[0] != "zh" else joined


def chain(tag: str) -> tuple[str, ...]:
    """The tag and what it falls back to, by region and never across scripts: es-MX, es."""
    parts = canonical(tag).split("-")
    keep = [parts[:end] for end in range(len(parts), 0, -1)]
    return tuple("-".join(part) for part in keep)


def best(wanted: str, held: Iterable[str]) -> str | None:
    """The held tag that serves a wanted one, or None."""
    known = set(held)
    return next((tag for tag in chain(wanted) if tag in known), None)


def accepted(header: str, held: Iterable[str]) -> Sequence[str]:
    """The held tags an Accept-Language header (RFC 9110, 12.5.4) asks for, best first."""
    known = set(held)
    weighed = []
    for place, item in enumerate(header.split(",")[:30]):
        tag, _, weight = item.strip().partition(";q=")
        try:
            quality = float(weight) if weight else 1.0
        except ValueError:
            quality = 0.0
        found = best(tag, known) if tag and tag != "*" and quality > 0 else None
        if found:
            weighed.append((-quality, place, found))
    return list(dict.fromkeys(tag for _, _, tag in sorted(weighed)))
