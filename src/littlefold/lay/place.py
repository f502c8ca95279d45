"""From pieces and cloth to lays that can be cut: every lay that leaves here has been verified."""

from __future__ import annotations

from contextlib import closing
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import shapely

from littlefold.lay.bounds import Bounds, lower_bounds
from littlefold.lay.conversation import put
from littlefold.lay.deal import deal
from littlefold.lay.lay import Lay
from littlefold.lay.planner import Planner
from littlefold.lay.pose import Question, ask, pin, with_holes
from littlefold.lay.strip import length_of, window
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way, spread
from littlefold.problem import Number, Place, Problem

if TYPE_CHECKING:
    from collections.abc import Callable, Generator, Iterator, Sequence

    from littlefold.lay.cloth import Cloth
    from littlefold.lay.conversation import Asked
    from littlefold.lay.engine import Engine
    from littlefold.lay.lay import Placement
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.planner import Found
    from littlefold.lay.strip import Layout
    from littlefold.lay.ways import Spread

GAP = 3.0
"""The usual distance between two cuts [mm], so that scissors go through; common practice, no source."""


# With more members than this on the fold the engine searches alone, and the planner settles what it finds.
MANY = 32

# An answer of the engine is settled at once if it is shorter than the best by this share: settling takes time from
# the search, the more so the more members there are.
SHORTER = 0.003
MUCH_SHORTER = 0.01

# How long to wait for an answer of the engine when there is nothing else to do [s].
WAIT = 0.1


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
    `seconds` is what the engine is told, since it counts in seconds alone.
    """

    steps: int = 20_000
    seed: int = 1
    keep_going: Callable[[], bool] = field(default=lambda: True)
    engine: Engine | None = None
    seconds: int = 10


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
    bounds = lower_bounds(dealt.cuts, spread_cloth, gap)
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


def lays(prepared: Prepared, effort: Effort) -> Iterator[Lay]:
    """Lays of falling length, the first at once; each is verified, and what does not hold is not shown."""
    planner = Planner(prepared.question.strip, effort.seed, prepared.bounds.most)
    layout = planner.first()
    assert layout is not None, "an ample strip holds every member"  # noqa: S101 - our own mistake
    best = _shown(prepared, layout, _length(prepared, layout), "first")
    if best is not None:
        yield best
    for found, maker in _searched(prepared, planner, layout, effort):
        better = _shown(prepared, found.layout, found.length, maker)
        if better is not None and (best is None or better.length < best.length):
            best = better
            yield better


def _searched(
    prepared: Prepared, planner: Planner, layout: Layout, effort: Effort
) -> Iterator[tuple[Found, str]]:
    """All that planner and engine find.

    On open cloth, and with many members, the engine is the better searcher and gets all cores.
    """
    asked = _put(prepared, layout, effort)
    alone = asked is not None and (asked.comb is None or len(planner.strip.members) > MANY)
    with closing(_answers(asked, effort, WAIT if alone else 0.0)) as answers:
        next(answers, None)  # the engine sets to work while the first layout is settled
        found = planner.begin(layout)
        if found is None:
            return
        yield found, "planner"
        if alone:
            yield from _engine_alone(planner, answers)
        yield from _side_by_side(planner, answers, effort)


def _engine_alone(planner: Planner, answers: Iterator[Layout | None]) -> Iterator[tuple[Found, str]]:
    last: Layout | None = None
    for layout in answers:
        last = layout or last
        yield from _adopted(planner, layout, MUCH_SHORTER)
    yield from _adopted(planner, last, 0.0)


def _side_by_side(
    planner: Planner, answers: Iterator[Layout | None], effort: Effort
) -> Iterator[tuple[Found, str]]:
    last: Layout | None = None
    while planner.steps < effort.steps and not planner.is_done and effort.keep_going():
        better = planner.advance()
        if better is not None:
            yield better, "planner"
        layout = next(answers, None)
        last = layout or last
        yield from _adopted(planner, layout, SHORTER)
    yield from _adopted(planner, last, 0.0)


def _adopted(planner: Planner, layout: Layout | None, shorter: float) -> Iterator[tuple[Found, str]]:
    """The engine's layout, settled, if it is shorter than the best by a share."""
    if layout is None or not planner.is_worth_settling(layout, shorter):
        return
    adopted = planner.adopt(layout)
    if adopted is not None:
        yield adopted, "engine"


def _answers(asked: Asked | None, effort: Effort, wait: float) -> Generator[Layout | None]:
    """The engine's layouts, None while there is none; nothing at all where there is no engine for it."""
    if asked is None or effort.engine is None:
        return
    for answer in effort.engine.answers(asked.task, wait, effort.keep_going):
        yield None if answer is None else asked.layout(answer)


def _put(prepared: Prepared, layout: Layout, effort: Effort) -> Asked | None:
    if effort.engine is None:
        return None
    return put(prepared.question.strip, layout, prepared.gap / 2, effort.seconds, effort.seed)


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
