"""Paper: page sizes, pages to join, and one writer per format that only replays a drawing."""

from littlefold.sheet.arrange import Arrangement, arrange
from littlefold.sheet.one_sheet import one_sheet
from littlefold.sheet.page import Page
from littlefold.sheet.paper import Paper, read_paper
from littlefold.sheet.pdf import typeset, write_pdf
from littlefold.sheet.printer_advice import printer_advice
from littlefold.sheet.printer_check import printer_check_page
from littlefold.sheet.reduced import picture_page, shrunk
from littlefold.sheet.replay import drawing_as_data, looks_as_data
from littlefold.sheet.svg import write_svg
from littlefold.sheet.tile import tile
from littlefold.sheet.too_large import too_large

__all__ = [
    "Arrangement",
    "Page",
    "Paper",
    "arrange",
    "drawing_as_data",
    "looks_as_data",
    "one_sheet",
    "picture_page",
    "printer_advice",
    "printer_check_page",
    "read_paper",
    "shrunk",
    "tile",
    "too_large",
    "typeset",
    "write_pdf",
    "write_svg",
]
