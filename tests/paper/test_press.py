"""Sheets in their formats: what is printed can be read again, in every script."""

from __future__ import annotations

import csv
import io
import unicodedata
import zipfile
from collections import Counter

import pytest

from service.errors import BadInput
from service.glossary.model import Glossary, Pulse
from service.label import Reader
from service.paper import cards, chart, menu
from service.paper.charts import default_pulses
from service.paper.render import to_csv, to_html
from service.press import accepted, pressed
from tests.needs import typesetting

WIDE = (
    "en",
    "hi",
    "ta",
    "te",
    "kn",
    "bn",
    "gu",
    "pa",
    "am",
    "ru",
    "el",
    "ka",
    "hy",
    "zh-Hans",
    "ja",
    "ko",
    "th",
)


def _letters(text: str) -> Counter[str]:
    """Letters regardless of order: extraction of complex scripts reorders marks within a cluster."""
    folded = unicodedata.normalize("NFKC", text)
    return Counter(char for char in folded if unicodedata.category(char)[0] == "L")


def test_text_of_a_pdf_is_the_text_of_the_sheet(glossary: Glossary) -> None:
    typesetting()
    pypdf = pytest.importorskip("pypdf")
    for tag in WIDE:
        sheet = chart(glossary, ["en", tag] if tag != "en" else ["en"], default_pulses(glossary, 6))
        pages = pypdf.PdfReader(io.BytesIO(pressed(sheet, "pdf"))).pages
        printed = _letters("".join(page.extract_text() for page in pages))
        wanted = _letters(to_csv(sheet))
        missing = sum((wanted - printed).values())
        assert missing <= 0.05 * sum(wanted.values()), (tag, (wanted - printed).most_common(8))


def test_a_pdf_is_tagged_and_carries_its_title(glossary: Glossary) -> None:
    typesetting()
    pypdf = pytest.importorskip("pypdf")
    sheet = chart(glossary, ["ur", "en"], default_pulses(glossary, 3), title="Three pulses")
    read = pypdf.PdfReader(io.BytesIO(pressed(sheet, "pdf")))
    assert read.metadata.title == "Three pulses" and "/StructTreeRoot" in read.trailer["/Root"]


def test_a_card_is_a_picture_and_a_chart_a_workbook(glossary: Glossary) -> None:
    typesetting()
    card = cards(glossary, [Pulse.of("vigna-mungo//split-dehulled/white")], ["hi"])
    assert pressed(card, "png")[:8] == b"\x89PNG\r\n\x1a\n"
    book = zipfile.ZipFile(io.BytesIO(pressed(chart(glossary, ["hi"], default_pulses(glossary, 4)), "xlsx")))
    assert "उड़द" in book.read("xl/sharedStrings.xml").decode() or book.namelist()


def test_right_to_left_columns_say_so(glossary: Glossary) -> None:
    page = to_html(chart(glossary, ["ur", "ar", "en"], default_pulses(glossary, 2)))
    assert page.count('dir="rtl"') >= 4 and '<html lang="' in page


def test_hostile_text_stays_text(glossary: Glossary, reader: Reader) -> None:
    evil = "<script>alert(1)</script>#{7*7} =cmd|'/c calc'!A1 $(id) {{ 7*7 }} #import \"x\""
    given = {
        "title": evil, "languages": ["en", "ur"],
        "sections": [{"name": evil, "dishes": [{"name": evil, "pulses": ["tuvar dal"], "price": "=1+1"}]}],
    }  # fmt: skip
    sheet = menu(given, glossary, reader.read)
    page = to_html(sheet)
    assert "<script>" not in page and "&lt;script&gt;" in page
    cells = [cell for row in csv.reader(io.StringIO(to_csv(sheet))) for cell in row]
    assert "'=1+1" in cells and "=1+1" not in cells
    typesetting()
    pypdf = pytest.importorskip("pypdf")
    text = "".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pressed(sheet, "pdf"))).pages)
    assert "{{ 7*7 }}" in text and "#import" in text and "49" not in text


@pytest.mark.parametrize(
    ("changed", "field"),
    [
        ({"languages": ["xx"]}, "xx"),
        ({"languages": []}, "languages"),
        ({"sections": []}, "sections"),
        ({"law": "mars"}, "law"),
        ({"sections": [{"name": "s", "dishes": [{"name": "d", "pulses": ["dal"]}]}]}, "several"),
        ({"sections": [{"name": "s", "dishes": [{"name": "d", "pulses": ["basmati rice"]}]}]}, "pulses"),
        ({"sections": [{"name": "s", "dishes": [{"name": "d"}] * 5000}]}, "dishes"),
        ({"colour": 1}, "colour"),
    ],
)
def test_a_bad_menu_gets_a_clear_problem(
    glossary: Glossary, reader: Reader, changed: dict[str, object], field: str
) -> None:
    given = {
        "title": "t",
        "languages": ["en"],
        "sections": [{"name": "s", "dishes": [{"name": "d"}]}],
        **changed,
    }
    with pytest.raises(Exception, match=field):
        menu(given, glossary, reader.read)


def test_accept_headers() -> None:
    assert accepted("") == "html" and accepted("application/pdf") == "pdf"
    assert accepted("text/html;q=0.3, text/csv;q=0.9") == "csv" and accepted("text/*") == "html"
    with pytest.raises(BadInput):
        accepted("application/x-tar")
