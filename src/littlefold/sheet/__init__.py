"""Paper: page sizes, pages to join, and one writer per format that only replays a drawing."""

from littlefold.sheet.page import Page
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.pdf import typeset, write_pdf
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.svg import write_svg

__all__ = [
    "Page",
    "Paper",
    "drawing_as_data",
    "looks_as_data",
    "read_paper",
    "typeset",
    "write_pdf",
    "write_svg",
]
