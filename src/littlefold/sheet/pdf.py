"""The one door to the typesetter, and the writer of PDF pages that replays drawings through it.

The typesetter sees constant text of this package and one JSON string.  Its root is an empty folder made for
the call, so a document can read nothing; no template asks for a package, so nothing is ever fetched.
"""

from __future__ import annotations

import json
import re
from datetime import UTC, date, datetime
from functools import lru_cache
from importlib.resources import files
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Any

import typst

from littlefold.drawing import plain
from littlefold.geometry import Bounds
from littlefold.sheet.replay import drawing_as_data, looks_as_data

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.sheet.page import Page

# Letters that the typesetter's own faces have: Latin, Greek, Cyrillic, marks and signs.  Words in any other
# script are set with whatever faces the machine has.
_OWN_LETTERS = re.compile("[\u0000-\u052f\u1e00-\u22ff\ufb00-\ufb06]*")

# Files without a date still need one that never changes.
_NO_DATE = date(2000, 1, 1)


def write_pdf(pages: tuple[Page, ...], title: str = "", made: date | None = None) -> bytes:
    """The pages as one PDF, 100 mm printed for 100 mm drawn; the same pages and date give the same bytes."""
    data = {
        "title": plain(title),
        "made": None if made is None else {"year": made.year, "month": made.month, "day": made.day},
        "looks": looks_as_data(),
        "pages": [_page(page) for page in pages],
    }
    return typeset(_resource("pages.typ"), data, made)


def _page(page: Page) -> dict[str, Any]:
    sheet = Bounds(0.0, 0.0, page.width, page.height)
    window = page.window or sheet
    return {
        "width": page.width,
        "height": page.height,
        "window": {"left": window.left, "top": page.height - window.top},
        "drawing": drawing_as_data(page.drawing, window),
        "surround": drawing_as_data(page.surround, sheet),
    }


def typeset(
    template: str, data: Mapping[str, Any], made: date | None = None, *, tagged: bool = False
) -> bytes:
    """A PDF from a constant template and data.

    The template finds the data under the name `data`, and `replay(drawing, data.looks)` puts in a drawing
    that came through `drawing_as_data` (pass `looks_as_data()` as `looks`).  Words of a user belong into
    the data, never into the template.

    Args:
        template: The text of a `.typ` resource.
        data: What JSON can hold; numbers must be finite.
        made: The date of the document.
        tagged: Whether screen readers get the structure of the text.

    Raises:
        typst.TypstError: The template does not fit the data, which is our own mistake.
    """
    words = _json(data)
    source = f"{_resource('replay.typ')}\n#let data = json(bytes(sys.inputs.data))\n{template}"
    stamp = datetime.combine(made or _NO_DATE, datetime.min.time(), UTC)
    with TemporaryDirectory() as empty:
        compiler = typst.Compiler(root=empty, font_paths=_faces(_OWN_LETTERS.fullmatch(words) is None))
        pdf = compiler.compile(
            input=source.encode(), format="pdf", sys_inputs={"data": words}, timestamp=stamp, pdf_tags=tagged
        )
    assert isinstance(pdf, bytes), "one document makes one file"  # noqa: S101 - our own mistake
    return pdf


def _json(data: Mapping[str, Any]) -> str:
    """The data as JSON; halves of letters that no file can hold become question marks."""
    words = json.dumps(data, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    return words.encode("utf-8", "replace").decode("utf-8")


@lru_cache(maxsize=2)
def _faces(of_the_machine: bool) -> typst.Fonts:  # noqa: FBT001 - the key of a cache of two
    """The typesetter's own faces, and on demand those of the machine."""
    return typst.Fonts(include_system_fonts=of_the_machine, include_embedded_fonts=True)


@lru_cache(maxsize=4)
def _resource(name: str) -> str:
    """The text of a file of this package."""
    return files("littlefold.sheet").joinpath(name).read_text("utf-8")
