"""The pieces of a pattern drawn at full size, with everything that a cutter and a sewer must know."""

from __future__ import annotations

from itertools import groupby
from typing import TYPE_CHECKING

from littlefold.draft.model import EdgeKind
from littlefold.drawing import (
    Dot,
    Drawing,
    Label,
    Mark,
    Meaning,
    Stroke,
    fold_bracket,
    grain_arrow,
    label_along,
    text_width,
)
from littlefold.geometry import Line, Path, Vector
from littlefold.pattern import notch
from littlefold.pattern.allowance import is_folded, width
from littlefold.pattern.block import Labelling, label_lines
from littlefold.pattern.label import label
from littlefold.pattern.room import room
from littlefold.pattern.unfold import fold_edges

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.draft.model import DraftEdge, Inside
    from littlefold.geometry import Segment
    from littlefold.pattern.model import Pattern, Piece
    from littlefold.pattern.turn import Turn
    from littlefold.pattern.wording import Wording

# A cutting line that keeps this near to the line of a fold lies on it [mm].
ON_FOLD = 1e-3

# Words along a line are written where the line is longer than this [mm].
LONG_ENOUGH = 60.0

# Heights of capitals [mm]: words along the grain, and all others that are no label.
WORDS = 2.5
SMALL_WORDS = 2.2

# Room for the head of the grain arrow at either end [mm].
ARROW = 5.0


def draw_pattern(pattern: Pattern, how: Labelling = Labelling()) -> tuple[Drawing, ...]:  # noqa: B008 - frozen
    """A drawing of each piece, in order, each where the piece lies on its own sheet of the draft."""
    return tuple(draw_piece(piece, pattern, how) for piece in pattern.pieces)


def draw_piece(piece: Piece, pattern: Pattern, how: Labelling = Labelling()) -> Drawing:  # noqa: B008 - frozen
    """One piece at full size: its lines, grain, notches, inside lines, marks and label."""
    lines = (*_cut_lines(piece), *_stitch_lines(piece), *_turn_lines(piece, how.wording))
    within = (*_folds(piece, how.wording), *_grain(piece, how.wording), *_inside(piece, how.wording))
    signs = (*_notches(piece), *_marks(piece))
    free = room(piece.outline.stitch, (*within, *signs, *(mark for mark in lines if isinstance(mark, Label))))
    words = label(piece, label_lines(piece, pattern, how), free)
    return Drawing((*lines, *within, *signs, *words), piece.title)


def _cut_lines(piece: Piece) -> Iterator[Mark]:
    """The cutting line where scissors go, and the fold line where they must not."""
    folds = fold_edges(piece.edges)
    segments = _from_a_change(piece.outline.cut.segments, folds)
    for on_fold, chain in groupby(segments, key=lambda segment: _lies_on_fold(segment, folds)):
        meaning, name = (Meaning.FOLD, "fold") if on_fold else (Meaning.CUT, "cut")
        yield Stroke(Path(tuple(chain)), meaning, f"{piece.name}.{name}")


def _from_a_change(segments: tuple[Segment, ...], folds: tuple[DraftEdge, ...]) -> tuple[Segment, ...]:
    """The segments of a closed line, turned round so that a fold is not parted by its beginning."""
    on = [_lies_on_fold(segment, folds) for segment in segments]
    change = next((k for k, here in enumerate(on) if here and not on[k - 1]), 0)
    return (*segments[change:], *segments[:change])


def _lies_on_fold(segment: Segment, folds: tuple[DraftEdge, ...]) -> bool:
    return isinstance(segment, Line) and any(
        abs((segment.end - fold.path.start).cross(fold.path.start_tangent)) <= ON_FOLD
        and abs(segment.tangent(0.0).cross(fold.path.start_tangent)) <= ON_FOLD
        for fold in folds
    )


def _stitch_lines(piece: Piece) -> Iterator[Mark]:
    """Where the needle goes; folded edges and edges without allowance have lines of other kinds there."""
    return (
        Stroke(edge.path, Meaning.STITCH, f"{piece.name}.{edge.name}")
        for edge in piece.edges
        if width(edge) > 0 and not is_folded(edge)
    )


def _turn_lines(piece: Piece, words: Wording) -> Iterator[Mark]:
    name = f"{piece.name}.turn"
    for turn in piece.folded:
        yield Stroke(turn.path, Meaning.TURN, name)
        said = words.turns[_turn_word(turn)]
        if said and turn.path.length() > LONG_ENOUGH:
            middle = turn.path.length() / 2
            start, end = turn.path.at_length(middle - 10), turn.path.at_length(middle + 10)
            yield label_along(said, start, end, Meaning.TURN, height=SMALL_WORDS, name=name)


def _turn_word(turn: Turn) -> str:
    return f"casing_{turn.order}" if turn.kind is EdgeKind.CASING else turn.order


def _folds(piece: Piece, words: Wording) -> Iterator[Mark]:
    for edge in fold_edges(piece.edges):
        if edge.path.is_straight:
            yield from fold_bracket(edge.path.start, edge.path.end, words.fold, f"{piece.name}.fold")


def _grain(piece: Piece, words: Wording) -> tuple[Mark, ...]:
    start, end = piece.grain
    length = start.distance(end)
    if length == 0:
        return ()
    said = words.grain if text_width(words.grain, WORDS) + 2 * ARROW < length else ""
    return grain_arrow(start, end, said, f"{piece.name}.grain")


def _inside(piece: Piece, words: Wording) -> Iterator[Mark]:
    for inside in piece.inside:
        name = f"{piece.name}.{inside.name}"
        yield Stroke(inside.path, Meaning.INSIDE, name)
        said = _inside_words(inside, words)
        if said:
            yield _named(inside, said, name)


def _inside_words(inside: Inside, words: Wording) -> str:
    """What a line inside is, and its own name where the recipe gave it one and the line has room for both."""
    kind = words.insides.get(inside.kind, inside.kind)
    named = inside.name.replace("_", " ")
    says_no_more = "-" in named or named.startswith(inside.kind) or not kind
    both = f"{kind}: {named}"
    return kind if says_no_more or text_width(both, SMALL_WORDS) > inside.path.length() else both


def _named(inside: Inside, said: str, name: str) -> Label:
    start, end = inside.path.start, inside.path.end
    if start.distance(end) < 1.0:  # a closed line has no direction to write along
        return Label(said, inside.path.bounds().centre, Meaning.INSIDE, SMALL_WORDS, 0.0, "middle", name)
    return label_along(said, start, end, Meaning.INSIDE, height=SMALL_WORDS, name=name)


def _notches(piece: Piece) -> Iterator[Mark]:
    for placed in piece.notches:
        for path in notch.marks(placed, piece.edge(placed.edge)):
            yield Stroke(path, Meaning.NOTCH, f"{piece.name}.{placed.edge}.notch")


def _marks(piece: Piece) -> Iterator[Mark]:
    for said, at in piece.marks:
        yield Dot(at, Meaning.INSIDE, f"{piece.name}.mark")
        beside = at + Vector(SMALL_WORDS, -SMALL_WORDS / 2)
        yield Label(said, beside, Meaning.TEXT, SMALL_WORDS, name=f"{piece.name}.mark")
