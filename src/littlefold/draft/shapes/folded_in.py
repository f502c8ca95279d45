"""Pleats and tucks laid into an outline: `pleats in skirt along C-D as pleated depth 2 cm count 3 apart 4 cm leftward`.

The outline is opened parallel along the line by twice the depth, for each pleat.  The line is the first; the others
follow on the side away from the first edge of the outline.  Across the gap an edge is cut as scissors cut it
through the folded cloth: it follows the edge it lies under, there and back.

    leftward             the outer fold points left; it is laid on the line left of it
    boxed                two folds that point away from each other, their undersides meet under the line
    inverted             two folds that meet on the line

On the new sheet are the outer folds `fold_1`, `fold_2` ... and the lines they are laid on, `lay_1` ...; of tucks
the folds and their two lines of stitches, `stitch_1` and `stitch_2` for the first.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_number
from littlefold.draft.drawn import named, pencil, word
from littlefold.draft.model import Said
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.cut import crossing, crossing_about_middle
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.opened import halved, put_together
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge
from littlefold.draft.shapes.taken import line_named, noting, outline_taken, short
from littlefold.draft.sides import WAYS
from littlefold.geometry import Affine, Path, Vector
from littlefold.geometry.intersection import meet_line
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.draft.shapes.cut import Crossing
    from littlefold.draft.shapes.opened import Halves
    from littlefold.recipe.recipe import Written

MOST_FOLDS = 50

# A direction less than this (the sine of 5 degrees) from the line's own does not say to which side.
ALONG_LINE = 0.087

# Parallels to the line are looked for so far beyond its ends [mm].
CARRIED_ON = 600.0


@dataclass(frozen=True, slots=True)
class _Order:
    """What is laid in: depth of a fold, how many, how far apart."""

    depth: float
    count: int
    apart: float


@dataclass(frozen=True, slots=True)
class _Turn:
    """One fold: how far from the line it lies before anything is laid in, and whether it points away from the start."""

    offset: float
    outward: bool


@shape_act(tree.FoldIn)
def fold_in(line: Written, desk: Desk) -> None:
    """Lays pleats or tucks into an outline."""
    step: tree.FoldIn = line.statement
    shape = noting(outline_taken(step.outline, desk), (step.line,), step.outline, desk)
    depth = pencil(step.depth, desk)
    apart = pencil(step.apart, desk) if step.apart is not None else None
    order = _Order(depth.value, _count(step, desk), apart.value if apart else 0.0)
    _possible(step, order)
    path = line_named(step.line, step.outline, desk)
    if not path.is_straight:
        raise Refusal(
            "line-not-straight",
            say("{line} is not straight; cloth folds along straight lines.", line=str(step.line)),
            step.line.spot,
        )
    desk.allow_step(step.name, 2 * order.count * shape.size)
    shape = _laid_in(step, shape, path, order)
    lay_down(step.name, shape, desk)
    tell(line, step.name, f"shape.{step.kind}", _words(step, order, depth), desk, depth)


def _words(step: tree.FoldIn, order: _Order, depth: Distance) -> dict[str, Said]:
    words = {"outline": named(step.outline), "line": named(short(step.line)), "name": named(step.name)}
    words |= {"depth": depth.said, "count": Said("number", order.count), "way": word(step.way)}
    words |= {"several": word("several" if order.count > 1 else "none"), "apart": Said("length", order.apart)}
    folds = 2 if step.way in _PAIRED else 1
    return words | {"taken": Said("length", 2 * order.depth * folds)}


_PAIRED = ("boxed", "inverted")


def _count(step: tree.FoldIn, desk: Desk) -> int:
    count = evaluate_number(step.count, desk) if step.count is not None else 1.0
    if count != int(count) or not 1 <= count <= MOST_FOLDS:
        raise Refusal(
            "fold-count",
            say(
                "{count} {kind}: give a whole number from 1 to {most_folds}.",
                count=f"{count:g}",
                kind=str(step.kind),
                most_folds=str(MOST_FOLDS),
            ),
            step.name.spot,
            (Number("count", count, "count"), Number("at most", MOST_FOLDS, "count")),
        )
    return int(count)


def _possible(step: tree.FoldIn, order: _Order) -> None:
    """Refuses depths and distances with which nothing can be folded."""
    if order.depth <= 0:
        raise Refusal(
            "fold-without-depth",
            say("a depth of {depth} folds nothing. Give more than 0 cm.", depth=f"{order.depth / 10:.1f} cm"),
            step.name.spot,
            (Number("depth", order.depth),),
        )
    least = 2 * order.depth if step.way == "boxed" else 0.0
    if order.count > 1 and order.apart <= least:
        raise Refusal(
            "folds-too-near",
            say(
                "{count} {kind} {apart} apart fall on each other; they need more than {least}. Set them "
                "further apart.",
                count=str(order.count),
                kind=str(step.kind),
                apart=f"{order.apart / 10:.1f} cm",
                least=f"{least / 10:.1f} cm",
            ),
            step.name.spot,
            (Number("apart", order.apart), Number("more than", least)),
        )
    if step.kind == "tucks" and step.way in _PAIRED:
        raise Refusal(
            "tucks-have-one-fold",
            say(
                "tucks are stitched and pressed to one side; {way} is for pleats. Write leftward or "
                "rightward.",
                way=str(step.way),
            ),
            step.name.spot,
        )


def _laid_in(step: tree.FoldIn, shape: Shape, path: Path, order: _Order) -> Shape:
    """The outline with everything laid in, and the lines to fold on."""
    first = halved(shape, crossing(shape, path, (str(step.line), step.outline.text), step.line.spot))
    lines: dict[str, Path] = {}
    for index, turn in enumerate(_turns(step, order, first.away)):
        shift = first.away * (turn.offset + 2 * order.depth * index)
        halves = first
        if shift.length > CORNER or index:
            halves = halved(shape, _beside(step, shape, first.cut, shift, index))
        shape, fold = _folded(shape, halves, order.depth, outward=turn.outward)
        lines |= _named_lines(step, fold, index + 1, outward=turn.outward)
    return replace(shape, lines={**shape.lines, **lines})


def _turns(step: tree.FoldIn, order: _Order, away: Vector) -> list[_Turn]:
    """The folds in the order in which they are laid in, away from the part that stays."""
    places = [order.apart * k for k in range(order.count)]
    sides: tuple[tuple[float, bool], ...]
    if step.way == "boxed":
        sides = ((-order.depth, False), (order.depth, True))
    elif step.way == "inverted":
        sides = ((0.0, True), (0.0, False))
    else:
        sides = ((0.0, _points_away(step, away)),)
    return [_Turn(place + beside, outward) for place in places for beside, outward in sides]


def _points_away(step: tree.FoldIn, away: Vector) -> bool:
    lean = away.dot(WAYS[step.way])
    if abs(lean) < ALONG_LINE:
        ways = "upward or downward" if abs(away.y) > abs(away.x) else "leftward or rightward"
        raise Refusal(
            "way-along-line",
            say(
                "{way} runs along {line}, so it does not say to which side the fold points. Write {ways}.",
                way=str(step.way),
                line=str(step.line),
                ways=str(ways),
            ),
            step.line.spot,
        )
    return lean > 0


def _beside(step: tree.FoldIn, shape: Shape, line: Path, shift: Vector, index: int) -> Crossing:
    """Where a parallel to the line crosses the outline."""
    parallel = line.transformed(Affine.translation(shift)).extended_start(CARRIED_ON).extended_end(CARRIED_ON)
    try:
        return crossing_about_middle(shape, parallel, (str(step.line), step.outline.text), step.line.spot)
    except Refusal:
        raise Refusal(
            "no-room-for-folds",
            say(
                "fold {index} would lie {length} from {line}, outside {outline}. Take fewer, or set them "
                "nearer together.",
                index=str(index + 1),
                length=f"{shift.length / 10:.1f} cm",
                line=str(step.line),
                outline=str(step.outline),
            ),
            step.line.spot,
            (Number("from the line", shift.length), Number("fold", index + 1, "count")),
        ) from None


@dataclass(frozen=True, slots=True)
class _Fold:
    """The lines of one fold on paper: at the part that stays, half way, at the part that went."""

    near: Path
    middle: Path
    far: Path


def _folded(shape: Shape, halves: Halves, depth: float, *, outward: bool) -> tuple[Shape, _Fold]:
    """The outline with one fold laid in along the cut."""
    way = halves.away * (2 * depth)
    going = Affine.translation(way)
    begin = _half_way(halves, depth, at_b=False, outward=outward)
    end = _half_way(halves, depth, at_b=True, outward=outward)
    bridge_a = _whole_fold(halves.stays[0].name, _there_and_back(halves, begin, depth).reversed())
    bridge_b = _whole_fold(halves.stays[-1].name, _there_and_back(halves, end, depth))
    opened = put_together(shape, halves, going, (bridge_a,), (bridge_b,))
    near = Path.line_through(halves.a, halves.b)
    return opened, _Fold(near, Path.line_through(begin.end, end.end), near.transformed(going))


def _there_and_back(halves: Halves, half: Path, depth: float) -> Path:
    """The edge across the gap, from the part that stays: to the hidden fold, and mirrored in it back."""
    fold = Affine.mirror(halves.a + halves.away * depth, halves.b - halves.a)
    return Path.joined(half, half.transformed(fold).reversed())


def _whole_fold(name: str, path: Path) -> ShapeEdge:
    return ShapeEdge(name, path, ((0.0, path.length()),))


def _half_way(halves: Halves, depth: float, *, at_b: bool, outward: bool) -> Path:
    """From the end of the cut to the hidden fold, as the edge runs that lies over it.

    An outer fold at the part that stays (it points outward) has its underside under that part; the edge there,
    mirrored in the fold, is the edge of the underside.  Otherwise the underside lies under the other part.  Where
    the covering edge is too short to be followed, the way is straight.
    """
    place = halves.b if at_b else halves.a
    cover = _cover(halves, at_b=at_b, outward=outward)
    beside = halves.a + halves.away * (-depth if outward else depth)
    found = [meeting.first_length for meeting in meet_line(cover, beside, halves.b - halves.a)]
    if not found or min(found) <= CORNER:
        return Path.line_through(place, place + halves.away * depth)
    half = cover.part(0.0, min(found))
    return half.transformed(Affine.mirror(halves.a, halves.b - halves.a)) if outward else half


def _cover(halves: Halves, *, at_b: bool, outward: bool) -> Path:
    """The edge that lies over the underside, from the end of the cut onward."""
    if outward:
        return halves.stays[-1].path.reversed() if at_b else halves.stays[0].path
    return halves.goes[0].path if at_b else halves.goes[-1].path.reversed()


def _named_lines(step: tree.FoldIn, fold: _Fold, number: int, *, outward: bool) -> dict[str, Path]:
    """The lines of one fold by name; the two folds of an inverted pleat are laid on one line."""
    if step.kind == "tucks":
        stitches = {f"stitch_{2 * number - 1}": fold.near, f"stitch_{2 * number}": fold.far}
        return {f"fold_{number}": fold.middle, **stitches}
    outer, laid = (fold.near, fold.far) if outward else (fold.far, fold.near)
    if step.way == "inverted" and not outward:
        return {f"fold_{number}": outer}
    return {f"fold_{number}": outer, f"lay_{number}": laid}
