"""All sizes of a run on one sheet, each with its own kind of line and its number beside it.

Pieces of one name lie on each other as they were drafted: the first point of their drawing stands still, folds lie on
folds.  Grain and words stand within the smallest size, where no other line runs.  Lines of hems are left out: the words
say how wide they are.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from itertools import chain
from typing import TYPE_CHECKING, Final

import shapely

from littlefold.body.measurements import Measurements
from littlefold.drawing import Drawing, Label, Mark, Meaning, Stroke
from littlefold.geometry import Path, Point
from littlefold.grading.moves import SAME
from littlefold.grading.numbers import size_numbers
from littlefold.pattern.block import Labelling
from littlefold.pattern.picture import draw_piece
from littlefold.pattern.simple import line_string

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from littlefold.grading.grade import SizeRun
    from littlefold.pattern.model import Pattern, Piece

KINDS: Final = (
    Meaning.SIZE_1,
    Meaning.SIZE_2,
    Meaning.SIZE_3,
    Meaning.SIZE_4,
    Meaning.SIZE_5,
    Meaning.SIZE_6,
    Meaning.SIZE_7,
    Meaning.SIZE_8,
)
"""Line kinds in their order; a run of more sizes begins again, so that neighbours always differ."""

WORDS_OF: Final = (Meaning.GRAIN, Meaning.TEXT, Meaning.TITLE, Meaning.CAUTION, Meaning.GUIDE)
"""What is drawn once: of the smallest size, within which no other line runs, or of the largest if that is too small."""

# The list of line kinds [mm]: length of a sample, from one to the next, height of a capital.
SAMPLE, LINE, WORDS = 30.0, 7.0, 2.8


@dataclass(frozen=True, slots=True)
class _Layer:
    """One size of one piece, with its line kind."""

    label: str
    kind: Meaning
    piece: Piece
    drawing: Drawing


def stacked(run: SizeRun, how: Labelling = Labelling()) -> tuple[Drawing, ...]:  # noqa: B008 - frozen
    """A drawing of each piece in all its sizes, and last the list of line kinds."""
    names = dict.fromkeys(piece.name for size in run.sizes for piece in size.pattern.pieces)
    pieces = tuple(_stacked_piece(tuple(_layers(run, name, how))) for name in names)
    return (*pieces, line_kinds(run)) if pieces else ()


def kind_of(number: int) -> Meaning:
    """The line kind of a size, counted from the smallest, which is 0."""
    return KINDS[number % len(KINDS)]


def line_kinds(run: SizeRun) -> Drawing:
    """A sample of every line with its size, the smallest on top."""
    heading = Label(run.title, Point(0.0, LINE), Meaning.TITLE, WORDS * 1.4, name="sizes")
    return Drawing((heading, *_samples(run)), "Sizes")


def _samples(run: SizeRun) -> Iterator[Mark]:
    for number, size in enumerate(run.sizes):
        level = -number * LINE
        sample = Path.line_through(Point(0.0, level), Point(SAMPLE, level))
        yield Stroke(sample, kind_of(number), f"size.{size.label}")
        at = Point(SAMPLE + WORDS, level - WORDS / 2)
        yield Label(size.label, at, Meaning.TITLE, WORDS, name=f"size.{size.label}")


def _layers(run: SizeRun, name: str, how: Labelling) -> Iterator[_Layer]:
    for number, size in enumerate(run.sizes):
        for piece in size.pattern.pieces:
            if piece.name == name:
                drawing = draw_piece(piece, _for_all(run, size.pattern), how)
                yield _Layer(size.label, kind_of(number), piece, drawing)


def _for_all(run: SizeRun, pattern: Pattern) -> Pattern:
    """The pattern of one size, with words that name all of them."""
    body = Measurements(nickname=f"sizes {run.sizes[0].label} to {run.sizes[-1].label}")
    return replace(pattern, draft=replace(pattern.draft, measurements=body))


def _stacked_piece(layers: tuple[_Layer, ...]) -> Drawing:
    smallest, largest = layers[0], layers[-1]
    told = largest if smallest.drawing.only(Meaning.GUIDE).marks else smallest
    if _is_one_size(layers):
        return largest.drawing
    lines = chain.from_iterable(_lines(layer) for layer in layers)
    numbers = size_numbers([(layer.label, layer.piece.outline.cut) for layer in layers])
    shared = (*largest.drawing.only(Meaning.FOLD).marks, *told.drawing.only(*WORDS_OF).marks)
    return Drawing((*lines, *numbers, *shared), largest.piece.title)


def _is_one_size(layers: tuple[_Layer, ...]) -> bool:
    """Whether a piece is the same in all sizes, so that it is drawn and cut as one."""
    first, *others = (line_string(layer.piece.outline.cut) for layer in layers)
    return bool(others) and all(shapely.hausdorff_distance(first, other) < SAME for other in others)


def _lines(layer: _Layer) -> Iterable[Mark]:
    """The cutting line, slits and notches of one size in its line kind; notches keep their own."""
    for mark in layer.drawing.marks:
        if not isinstance(mark, Stroke):
            continue
        name = f"{mark.name}.{layer.label}"
        if mark.meaning in {Meaning.CUT, Meaning.INSIDE}:
            kind = layer.kind if mark.meaning is Meaning.CUT else mark.meaning
            yield replace(mark, meaning=kind, name=name)
        elif mark.meaning is Meaning.NOTCH:
            yield replace(mark, name=name)
