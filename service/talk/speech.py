"""A reply for a voice: SSML 1.1 (W3C), each stretch in its own language."""

from __future__ import annotations

from collections.abc import Sequence
from xml.sax.saxutils import escape, quoteattr

HEAD = '<speak version="1.1" xmlns="http://www.w3.org/2001/10/synthesis" xml:lang={}>'


def ssml(parts: Sequence[tuple[str, str]], tag: str) -> str:
    """A speak element of sentences. `parts` are (text, BCP 47 tag); one in another language is marked so."""
    said = "".join(_sentence(text, lang, tag) for text, lang in parts if text.strip())
    return HEAD.format(quoteattr(tag)) + said + "</speak>"


def _sentence(text: str, lang: str, tag: str) -> str:
    body = escape("".join(char for char in text if char.isprintable() or char in "\n\t"))
    if lang and lang != tag:
        body = f"<lang xml:lang={quoteattr(lang)}>{body}</lang>"
    return f"<s>{body}</s>"
