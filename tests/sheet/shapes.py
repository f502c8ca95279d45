"""Small drawings for the tests of sheets: invented pieces of a playgroup's sewing room."""

from __future__ import annotations

from datetime import date
from math import pi

from littlefold.drawing import Dot, Drawing, Label, Meaning, Stroke, fold_bracket, grain_arrow, text_block
from littlefold.geometry import Arc, Cubic, Line, Path, Point

MADE = date(2026, 11, 25)


def half_top(name="front", width=180.0, height=420.0, left=0.0):
    """Half a loose top with a quarter circle for the neck, a curved armhole and a slanted side."""

    def p(x, y):
        return Point(left + x, y)

    cut = Path(
        (
            Line(p(0, -20), p(width + 42, -20)),
            Line(p(width + 42, -20), p(width + 12, height - 170)),
            Cubic(
                p(width + 12, height - 170),
                p(width - 28, height - 150),
                p(width - 48, height - 80),
                p(width - 43, height),
            ),
            Line(p(width - 43, height), p(48, height)),
            Arc(p(0, height), 48.0, 0.0, -pi / 2),
            Line(p(0, height - 48), p(0, -20)),
        )
    )
    marks = (
        Stroke(cut, Meaning.CUT, f"{name}.cut"),
        Stroke(Path((Arc(p(0, height), 60.0, 0.0, -pi / 2),)), Meaning.STITCH, f"{name}.neck"),
        *grain_arrow(p(width * 0.75, 60), p(width * 0.75, height - 200), "grain", f"{name}.grain"),
        *fold_bracket(p(0, height - 60), p(0, 0), "place on the fold", f"{name}.fold"),
        *text_block(
            (name.title(),), p(45, height / 2), height=6.0, meaning=Meaning.TITLE, name=f"{name}.title"
        ),
        *text_block(
            ("Loose top for Mira, 92 cm", "cut 1 on the fold"), p(45, height / 2 - 10), name=f"{name}.words"
        ),
        Dot(p(0, height), Meaning.LETTER, f"{name}.A"),
        Label("A", p(-6, height + 2), Meaning.LETTER, 3.5, name=f"{name}.A"),
    )
    return Drawing(marks, name.title())


def two_pieces():
    """A front and a back side by side."""
    front, back = half_top("front"), half_top("back", 180.0, 440.0, 260.0)
    return Drawing((*front.marks, *back.marks), "Loose top for Mira")
