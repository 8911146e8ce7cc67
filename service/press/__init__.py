"""Sheets printed: PDF and PNG by typst, spreadsheets by xlsxwriter, text as text. Outer: it writes to a folder of its own."""

from .codes import code
from .formats import FORMATS, accepted, pressed
from .printing import to_pdf, to_png, to_xlsx

__all__ = ["FORMATS", "accepted", "code", "pressed", "to_pdf", "to_png", "to_xlsx"]
