"""A Sheet in; HTML, Markdown, rows for CSV and spreadsheets, or Typst data out. Pure: text and values only."""

from __future__ import annotations

import csv
import io
from html import escape
from typing import Any

from .sheet import Card, Cell, Heading, Item, Lines, Picture, Sheet, Table, Words

STYLE = (
    "body{font:11pt/1.4 'Noto Sans',sans-serif;margin:12mm;color:#26221b}h1{font-size:18pt}h2{font-size:13pt}"
    "table{border-collapse:collapse;width:100%}th,td{border-bottom:.3mm solid #c9bfae;padding:1.5mm;text-align:start;"
    "vertical-align:top}p{margin:.4mm 0}.small{font-size:.8em;color:#5f574a}.strong{font-weight:600}.large{font-size:22pt}"
    ".mark{font-size:.7em;border:.2mm dashed #8a8172;display:inline-block;padding:0 1mm}"
    ".card{border:.4mm solid #8a8172;border-radius:2mm;padding:4mm;margin:3mm 0;break-inside:avoid;max-width:90mm}"
    "tr{break-inside:avoid}@page{margin:12mm}"
)


def to_html(sheet: Sheet) -> str:
    """A whole HTML page with a print style; every text is escaped and carries its language and direction."""
    body = "\n".join(_html(block) for block in sheet.blocks)
    return (
        f'<!doctype html>\n<html lang="{escape(sheet.lang)}"><head><meta charset="utf-8">'
        f"<title>{escape(sheet.title)}</title><style>{STYLE}</style></head>\n<body>\n{body}\n</body></html>\n"
    )


def _html(block: object) -> str:
    if isinstance(block, Heading):
        return f"<h{block.level}>{' · '.join(_span(one) for one in block.words)}</h{block.level}>"
    if isinstance(block, Lines):
        return "".join(f'<p class="{block.kind}">{_span(one)}</p>' for one in block.words)
    if isinstance(block, Card):
        return f'<div class="card">{"".join(map(_item, block.items))}</div>'
    if isinstance(block, Picture):
        return block.svg
    assert isinstance(block, Table)
    head = "".join(f"<th>{_cell(cell)}</th>" for cell in block.head)
    rows = "".join(
        "<tr>" + "".join(f"<td>{_cell(cell)}</td>" for cell in row) + "</tr>\n" for row in block.rows
    )
    return f"<table><thead><tr>{head}</tr></thead><tbody>\n{rows}</tbody></table>"


def _cell(cell: Cell) -> str:
    return "".join(map(_item, cell.items))


def _item(item: Item) -> str:
    if isinstance(item, Picture):
        return f"<div>{item.svg}</div>"
    lines = escape(item.text).replace("\n", "<br>")
    return f'<p class="{item.size}"{_direction(item)}>{lines}</p>'


def _span(words: Words) -> str:
    return f'<span class="{words.size}"{_direction(words)}>{escape(words.text)}</span>'


def _direction(words: Words) -> str:
    return f' lang="{escape(words.lang)}" dir="{"rtl" if words.rtl else "ltr"}"'


def to_markdown(sheet: Sheet) -> str:
    """Markdown with pipe tables; marks that would be read as markup are escaped."""
    out: list[str] = []
    for block in sheet.blocks:
        if isinstance(block, Heading):
            out.append("#" * block.level + " " + " · ".join(_plain(one.text) for one in block.words))
        elif isinstance(block, Lines):
            out += [_plain(one.text) for one in block.words]
        elif isinstance(block, Card):
            out.append(
                "\n".join("> " + _plain(item.text) + "  " for item in block.items if isinstance(item, Words))
            )
        elif isinstance(block, Table):
            lines = [block.head, *block.rows]
            cells = [
                ["<br>".join(map(_plain, cell.text().split("\n"))) if cell.items else "" for cell in line]
                for line in lines
            ]
            ruled = [cells[0], ["---"] * len(cells[0]), *cells[1:]]
            out.append("\n".join("| " + " | ".join(line) + " |" for line in ruled))
    return "\n\n".join(out) + "\n"


def _plain(text: str) -> str:
    for mark in "\\`*_{}[]<>#|":
        text = text.replace(mark, "\\" + mark)
    return text


def to_rows(sheet: Sheet) -> list[list[str]]:
    """The tables of a sheet as rows of text, for CSV and spreadsheets."""
    rows: list[list[str]] = []
    for block in sheet.blocks:
        if isinstance(block, Table):
            rows.append([cell.text() for cell in block.head])
            rows += [[cell.text() for cell in row] for row in block.rows]
        elif isinstance(block, Card):
            rows.append([item.text for item in block.items if isinstance(item, Words)])
    return rows


def to_csv(sheet: Sheet) -> str:
    """RFC 4180 text; a cell that a spreadsheet would run as a formula is defused with an apostrophe."""
    out = io.StringIO()
    csv.writer(out).writerows([[defused(cell) for cell in row] for row in to_rows(sheet)])
    return out.getvalue()


def defused(cell: str) -> str:
    """A text no spreadsheet takes for a formula."""
    return "'" + cell if cell[:1] in "=+-@\t" and cell[:1] else cell


def to_data(sheet: Sheet) -> dict[str, Any]:
    """The sheet as plain values, for a typesetter that takes JSON; pictures by their place in `pictures`."""
    pictures: list[str] = []

    def item(one: Item) -> dict[str, Any]:
        if isinstance(one, Picture):
            pictures.append(one.svg)
            return {"kind": "picture", "at": len(pictures) - 1, "alt": one.alt}
        return {
            "kind": "words",
            "text": one.text,
            "lang": one.lang,
            "script": one.script,
            "size": one.size,
            "rtl": one.rtl,
        }

    blocks: list[dict[str, Any]] = []
    for block in sheet.blocks:
        if isinstance(block, Heading):
            blocks.append(
                {"kind": "heading", "level": block.level, "items": [item(one) for one in block.words]}
            )
        elif isinstance(block, Lines):
            blocks.append({"kind": "lines", "items": [item(one) for one in block.words]})
        elif isinstance(block, Card):
            blocks.append({"kind": "card", "items": [item(one) for one in block.items]})
        elif isinstance(block, Picture):
            blocks.append({"kind": "lines", "items": [item(block)]})
        else:
            head = [[item(one) for one in cell.items] for cell in block.head]
            rows = [[[item(one) for one in cell.items] for cell in row] for row in block.rows]
            widths = list(block.widths) or [1.0] * len(head)
            blocks.append({"kind": "table", "head": head, "rows": rows, "widths": widths})
    return {
        "title": sheet.title,
        "lang": sheet.lang,
        "rtl": sheet.rtl,
        "landscape": sheet.landscape,
        "blocks": blocks,
        "pictures": pictures,
    }
