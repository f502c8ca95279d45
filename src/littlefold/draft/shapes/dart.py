r"""A dart closed by turning about its tip: `close dart A-T-B of front as swung opening T-H`.

   H               The outline runs across the dart from A to B, its tip T lies inside.  The cloth between the
.--+------.        legs is taken out, what remains is cut from T to H, and one part turns about T until the
|  :      |        legs meet; it opens by the same angle at H, where the edge is carried across by a curve.
|  T      |        The dart can then be stated there: H_1-T-H_2.  Where T lies on the outline nothing needs to
| / \     |        open.
A----B----'
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from littlefold.draft.constructions.on_lines import ON_LINE
from littlefold.draft.drawn import named, word
from littlefold.draft.model import Said
from littlefold.draft.outline import CORNER
from littlefold.draft.refusal import Refusal
from littlefold.draft.sewing import SEAM_TOLERANCE
from littlefold.draft.shapes.cut import joined_up, meetings
from littlefold.draft.shapes.laid_down import lay_down, tell
from littlefold.draft.shapes.opened import carried, smooth_bridge
from littlefold.draft.shapes.register import shape_act
from littlefold.draft.shapes.shape import Shape, ShapeEdge, moved, tidied
from littlefold.draft.shapes.taken import line_named, noting, outline_taken, point_named, short
from littlefold.geometry import Affine, Path, turn_between
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.geometry import Point
    from littlefold.recipe.recipe import Written


@dataclass(frozen=True, slots=True)
class _Dart:
    """A dart on an outline: its tip, its legs' ends in order round the outline, and the lengths along it there."""

    tip: Point
    first: float
    last: float


@dataclass(frozen=True, slots=True)
class _Half:
    """One part of what remains round a dart: edges of the outline, and the straight and drawn cuts that close it."""

    edges: tuple[ShapeEdge, ...]
    cuts: tuple[Path, ...]

    def drawn_on(self, shape: Shape) -> Shape:
        """The part as an outline of its own, with what is drawn on it."""
        closing = tuple(ShapeEdge("", path) for path in self.cuts)
        return Shape(joined_up((*self.edges, *closing))).holding(shape.marks)


@shape_act(tree.CloseDart)
def close_dart(line: Written, desk: Desk) -> None:
    """Closes a dart; it opens along another line, or not at all where its tip lies on an edge."""
    step: tree.CloseDart = line.statement
    refs = (step.dart, *((step.opening,) if step.opening is not None else ()))
    shape = noting(outline_taken(step.outline, desk), refs, step.outline, desk)
    dart = _dart(step, shape, desk)
    way, open_at = _way_out(step, shape, dart, desk)
    closed_up, angle = _closed(shape, dart, way, open_at)
    lay_down(step.name, closed_up, desk)
    opening = word("opening" if step.opening is not None else "none")
    words = {"dart": named(step.dart), "tip": named(step.dart.corner), "outline": named(step.outline)}
    words |= {
        "first_leg": named(step.dart.start),
        "second_leg": named(step.dart.end),
        "name": named(step.name),
    }
    words |= {"opening": opening, "angle": Said("angle", abs(angle))}
    if step.opening is not None:
        words["line"] = named(short(step.opening))
    tell(line, step.name, "shape.close_dart", words, desk)


def _dart(step: tree.CloseDart, shape: Shape, desk: Desk) -> _Dart:
    """The dart with its legs' ends on the outline, in the order in which the outline passes its mouth.

    Raises:
        Refusal: A leg does not end on the outline, the legs differ, or the dart is no wedge.
    """
    a, tip, b = (
        point_named(name, step.outline, desk) for name in (step.dart.start, step.dart.corner, step.dart.end)
    )
    lengths = [
        _on_outline(step, name, shape, place) for name, place in ((step.dart.start, a), (step.dart.end, b))
    ]
    legs = [place.distance(tip) for place in (a, b)]
    if abs(legs[0] - legs[1]) > SEAM_TOLERANCE:
        raise Refusal(
            "dart-legs-differ",
            say(
                "the legs of the dart are {legs} and {legs_2} long; they are sewn together, so they may "
                "differ by {seam_tolerance}. Move {start} or {end}.",
                legs=f"{legs[0] / 10:.2f} cm",
                legs_2=f"{legs[1] / 10:.2f} cm",
                seam_tolerance=f"{SEAM_TOLERANCE:g} mm",
                start=str(step.dart.start),
                end=str(step.dart.end),
            ),
            step.dart.spot,
            (Number("first leg", legs[0]), Number("second leg", legs[1]), Number("allowed", SEAM_TOLERANCE)),
        )
    if min(legs) <= CORNER or a.distance(b) <= CORNER or not shape.region.holds(tip):
        raise Refusal(
            "dart-without-room",
            say(
                "{dart} is no dart of {outline}: its tip has to lie inside, away from both ends.",
                dart=str(step.dart),
                outline=str(step.outline),
            ),
            step.dart.spot,
        )
    return _Dart(tip, *_mouth(shape, lengths, tip))


def _on_outline(step: tree.CloseDart, name: tree.Name, shape: Shape, place: Point) -> float:
    """The length along the outline at which a point lies on it."""
    nearest = shape.outline.nearest(place)
    if nearest.distance > ON_LINE:
        raise Refusal(
            "not-on-outline",
            say(
                "{name} does not lie on the outline of {outline}; it misses it by {distance}. Take a point "
                "on an edge.",
                name=str(name),
                outline=str(step.outline),
                distance=f"{nearest.distance / 10:.2f} cm",
            ),
            name.spot,
            (Number("misses by", nearest.distance), Number("at most", ON_LINE)),
        )
    return nearest.length


def _mouth(shape: Shape, lengths: list[float], tip: Point) -> tuple[float, float]:
    """Where the mouth of the dart begins and ends: the way round on which the wedge lies."""
    low, high = sorted(lengths)
    wedge = Path.joined(
        Path.line_through(tip, shape.place(low)),
        *(edge.path for edge in shape.stretch(low, high)),
        Path.line_through(shape.place(high), tip),
    )
    turn = turn_between(shape.place(low) - tip, shape.place(high) - tip)
    return (low, high) if turn > 0 and wedge.signed_area() > 0 else (high, low)


def _way_out(step: tree.CloseDart, shape: Shape, dart: _Dart, desk: Desk) -> tuple[Path | None, float]:
    """The line along which the dart opens, from its tip, and the length along the outline at its other end.

    Raises:
        Refusal: There is none and the tip lies inside; or the line does not run from the tip to one edge.
    """
    if step.opening is None:
        nearest = shape.outline.nearest(dart.tip)
        if nearest.distance > ON_LINE:
            raise Refusal(
                "nothing-opens",
                say(
                    "{corner} lies {distance} inside {outline}, so the dart cannot close unless another opens. "
                    "Add: opening {corner}-H, with H on an edge.",
                    corner=str(step.dart.corner),
                    distance=f"{nearest.distance / 10:.1f} cm",
                    outline=str(step.outline),
                ),
                step.dart.corner.spot,
                (Number("inside", nearest.distance), Number("at most", ON_LINE)),
            )
        return None, nearest.length
    _across(step, shape, dart)
    path = line_named(step.opening, step.outline, desk)
    if path.end.distance(dart.tip) < path.start.distance(dart.tip):
        path = path.reversed()
    gap = path.start.distance(dart.tip)
    if gap > ON_LINE:
        raise Refusal(
            "opening-not-from-tip",
            say(
                "{opening} begins {gap} from the tip {corner}. Draw it from the tip to an edge.",
                opening=str(step.opening),
                gap=f"{gap / 10:.1f} cm",
                corner=str(step.dart.corner),
            ),
            step.opening.spot,
            (Number("misses by", gap), Number("at most", ON_LINE)),
        )
    return _to_edge(step, step.opening, shape, path, dart)


def _across(step: tree.CloseDart, shape: Shape, dart: _Dart) -> None:
    """Refuses an outline that runs into the dart instead of across its mouth."""
    if shape.outline.distance(dart.tip) <= ON_LINE:
        raise Refusal(
            "outline-into-dart",
            say(
                "{corner} lies on the outline of {outline}. Let the outline run across the dart, from "
                "{start} to {end}; closing takes the dart out.",
                corner=str(step.dart.corner),
                outline=str(step.outline),
                start=str(step.dart.start),
                end=str(step.dart.end),
            ),
            step.dart.corner.spot,
        )


def _to_edge(
    step: tree.CloseDart, ref: tree.LineRef, shape: Shape, path: Path, dart: _Dart
) -> tuple[Path, float]:
    places = [place for place in meetings(shape, path) if place.along > CORNER]
    if len(places) != 1 or _is_in_mouth(places[0].ring, dart):
        raise Refusal(
            "opening-not-to-edge",
            say(
                "{ref} has to run from {corner} to one edge of {outline}, outside the dart; it meets the "
                "outline at {places} {place}. Draw it to an edge.",
                ref=str(ref),
                corner=str(step.dart.corner),
                outline=str(step.outline),
                places=str(len(places)),
                place=say("place" if len(places) == 1 else "places"),
            ),
            ref.spot,
            (Number("places", len(places), "count"), Number("needed", 1, "count")),
        )
    along = min(places[0].along, path.length())
    return path.part(0.0, along), places[0].ring


def _is_in_mouth(ring: float, dart: _Dart) -> bool:
    if dart.first <= dart.last:
        return dart.first <= ring <= dart.last
    return ring >= dart.first or ring <= dart.last


def _closed(shape: Shape, dart: _Dart, way: Path | None, open_at: float) -> tuple[Shape, float]:
    """The outline with the dart closed, and the angle by which a part was turned [rad].

    The part after the mouth runs from its last end to the opening, the part before it from the opening to its
    first end; the one with the beginning of the first edge stays.
    """
    first, last = shape.place(dart.first), shape.place(dart.last)
    out = (way,) if way is not None else ()
    back = tuple(path.reversed() for path in out)
    after = _Half(shape.stretch(dart.last, open_at), (*back, Path.line_through(dart.tip, last)))
    before = _Half(shape.stretch(open_at, dart.first), (Path.line_through(first, dart.tip), *out))
    after_stays = _begins_in(shape, dart.last, open_at)
    angle = turn_between(first - dart.tip, last - dart.tip)
    angle = angle if after_stays else -angle
    turn = Affine.rotation(angle, dart.tip)
    staying, going = (after, before) if after_stays else (before, after)
    gone = tuple(edge.moved(turn) for edge in going.edges)
    around = _around(staying.edges, gone, after_stays=after_stays)
    marks = carried(staying.drawn_on(shape).marks, moved(going.drawn_on(shape).marks, turn))
    return Shape(tidied(joined_up(around), shape.edges[0].name), marks.points, marks.lines), angle


def _begins_in(shape: Shape, start: float, end: float) -> bool:
    """Whether the outline's own beginning lies in the stretch."""
    whole = shape.corners[-1]
    return start > end or min(start, whole - start) <= CORNER


def _around(
    staying: tuple[ShapeEdge, ...], gone: tuple[ShapeEdge, ...], *, after_stays: bool
) -> tuple[ShapeEdge, ...]:
    """The new outline: both parts and the bridge over the opening; the legs, and the dart, are gone."""
    if after_stays:
        return (*staying, *smooth_bridge(staying[-1], gone[0], ""), *gone)
    return (*staying, *gone, *smooth_bridge(gone[-1], staying[0], ""))
