"""From pieces and cloth to lays that can be cut: every lay that leaves here has been verified."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import shapely

from littlefold.lay.bounds import Bounds, lower_bounds
from littlefold.lay.conversation import put
from littlefold.lay.deal import deal
from littlefold.lay.lay import Lay
from littlefold.lay.one_way import lies_one_way, shows_way_up
from littlefold.lay.planner import Planner
from littlefold.lay.pose import Question, ask, pin, with_holes
from littlefold.lay.strip import length_of, window
from littlefold.lay.together import searched, seconds_for_engine
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way, spread
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.conversation import Asked
    from littlefold.lay.engine import Engine
    from littlefold.lay.lay import Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.strip import Layout
    from littlefold.lay.ways import Spread

GAP = 3.0
"""The usual distance between two cuts [mm], so that scissors go through; common practice, no source."""


@dataclass(frozen=True, slots=True)
class Prepared:
    """A lay before it is searched: the cloth spread, the cuts dealt, the packing question put."""

    cloth: Cloth
    spread: Spread
    pieces: tuple[LayPiece, ...]
    question: Question
    bounds: Bounds
    gap: float
    holes: tuple[shapely.Polygon, ...] = ()


@dataclass(frozen=True, slots=True)
class Effort:
    """How long to search: until `steps` moves are made or `keep_going` says no.

    Only the planner's own lays are repeatable: same seed, same steps, no engine, and `keep_going` never says no.
    `seconds` is how long the engine may take with all that comes after it.
    """

    steps: int = 20_000
    seed: int = 1
    keep_going: Callable[[], bool] = field(default=lambda: True)
    engine: Engine | None = None
    seconds: float = 10


def prepare(
    pieces: Sequence[LayPiece],
    cloth: Cloth,
    way: Way,
    gap: float = GAP,
    *,
    pins: Sequence[Placement] = (),
    holes: Sequence[shapely.Polygon] = (),
) -> Prepared | tuple[Problem, ...]:
    """Spread the cloth and deal the cuts; or the reasons, in words, why these pieces cannot be cut so."""
    spread_cloth = spread(cloth, way, pieces)
    if isinstance(spread_cloth, Problem):
        return (spread_cloth,)
    problems = (*_impossible(pieces, cloth, spread_cloth), *_unsound(pieces))
    if problems:
        return problems
    dealt = deal(pieces, cloth, spread_cloth)
    if dealt.problems:
        return dealt.problems
    question: Question | Problem = with_holes(ask(dealt.cuts, cloth, spread_cloth, gap), holes)
    if pins and isinstance(question, Question):
        question = pin(question, pins)
    if isinstance(question, Problem):
        return (question,)
    if off_stripe := tuple(_off_stripe(question)):
        return off_stripe
    bounds = lower_bounds(
        dealt.cuts, spread_cloth, gap, nap=all(lies_one_way(piece, cloth) for piece in pieces)
    )
    return Prepared(cloth, spread_cloth, tuple(pieces), question, bounds, gap, tuple(holes))


def _impossible(pieces: Sequence[LayPiece], cloth: Cloth, spread_cloth: Spread) -> tuple[Problem, ...]:
    found = []
    if not pieces:
        found.append(Problem("nothing-to-lay", f'No piece is cut from the cloth "{cloth.name}".'))
    if spread_cloth.height <= 0:
        numbers = (Number("width", cloth.width), Number("selvedge", cloth.selvedge))
        words = "Nothing of this cloth is left between the selvedges."
        found.append(Problem("cloth-too-narrow", words, numbers=numbers))
    repeat = cloth.repeat
    if repeat and repeat.across > 0 and spread_cloth.fold_high:
        words = "Stripes along the cloth can be matched at one fold only. Fold it once, or lay it open."
        found.append(
            Problem("stripes-at-two-folds", words, numbers=(Number("repeat across", repeat.across),))
        )
    if spread_cloth.turns_layers and any(shows_way_up(piece, cloth) for piece in pieces):
        words = (
            f'The stripes of the cloth "{cloth.name}" are uneven. {spread_cloth.way.capitalize()}, half of the layers '
            "would show them turned round. Fold it lengthwise or lay it open."
        )
        found.append(Problem("stripes-folded-crosswise", words))
    return tuple(found)


def _unsound(pieces: Sequence[LayPiece]) -> Iterator[Problem]:
    """Pieces whose outline cannot be cut: one that crosses itself, or has no area."""
    for piece in pieces:
        if not shapely.is_valid(piece.polygon) or piece.polygon.area <= 0:
            yield Problem(
                "outline-crosses-itself",
                f'The cutting line of "{piece.name}" crosses or touches itself, so it cannot be cut. Mend the draft.',
                place=Place(piece=piece.name),
            )


def _off_stripe(question: Question) -> Iterator[Problem]:
    """Pieces that have no place across the cloth at which their stripes meet."""
    strip = question.strip
    endless = sum(shape.size for shape in strip.shapes) * 4 + strip.height
    for cut, member in zip(question.cuts, strip.members, strict=False):
        if all(window(strip, stance, endless).is_empty for stance in member.stances):
            yield Problem(
                "stripes-do-not-fit",
                f'"{cut.piece.name}" cannot be matched to the stripes within the width of this cloth. Take a wider '
                "cloth, or do not match this piece.",
                place=Place(piece=cut.piece.name),
            )


def lays(prepared: Prepared, effort: Effort, start: Sequence[Placement] = ()) -> Iterator[Lay]:
    """Lays of falling length, the first at once; each is verified, and what does not hold is not shown.

    A `start` of the same question, such as an earlier search found, is gone on from in place of the first layout.
    """
    planner = Planner(prepared.question.strip, effort.seed, prepared.bounds.most)
    known = prepared.question.layout(start) if start else None
    layout = planner.first() if known is None else known
    assert layout is not None, "an ample strip holds every member"  # noqa: S101 - our own mistake
    best = _shown(prepared, layout, _length(prepared, layout), "first" if known is None else "before")
    if best is not None:
        yield best
    for found, maker in searched(planner, layout, _put(prepared, layout, effort), effort):
        better = _shown(prepared, found.layout, found.length, maker)
        if better is not None and (best is None or better.length < best.length):
            best = better
            yield better


def _put(prepared: Prepared, layout: Layout, effort: Effort) -> Asked | None:
    if effort.engine is None:
        return None
    strip = prepared.question.strip
    seconds = seconds_for_engine(effort.seconds, len(strip.members))
    return put(strip, layout, prepared.gap / 2, seconds, effort.seed)


def _length(prepared: Prepared, layout: Layout) -> float:
    return length_of(prepared.question.strip, layout)


def _shown(prepared: Prepared, layout: Layout, length: float, maker: str) -> Lay | None:
    """The layout as a lay, if it stands up to verification."""
    lay = Lay(
        prepared.cloth,
        prepared.spread,
        prepared.pieces,
        prepared.question.placements(layout),
        length,
        prepared.gap,
        maker,
        prepared.holes,
    )
    return None if verify(lay) else lay
