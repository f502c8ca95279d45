"""From pieces and cloth to lays that can be cut: every lay that leaves here has been verified."""

from __future__ import annotations

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
    from collections.abc import Callable, Iterator, Sequence

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


# With more members than this the engine searches alone, and the planner settles what it finds.
MANY = 16

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
    found = planner.begin(layout)
    if found is None:
        return
    yield found, "planner"
    asked = _put(prepared, found, effort)
    if asked is not None and effort.engine is not None:
        yield from _with_engine(planner, asked, effort.engine, effort)
    while _goes_on(planner, effort):
        better = planner.advance()
        if better is not None:
            yield better, "planner"


def _goes_on(planner: Planner, effort: Effort) -> bool:
    return planner.steps < effort.steps and not planner.is_done and effort.keep_going()


def _with_engine(
    planner: Planner, asked: Asked, engine: Engine, effort: Effort
) -> Iterator[tuple[Found, str]]:
    """Planner and engine side by side; with many members the planner leaves the cores to the engine."""
    alone = len(planner.strip.members) > MANY
    last: Layout | None = None
    for answer in engine.answers(asked.task, WAIT if alone else 0.0, effort.keep_going):
        if answer is not None:
            last = asked.layout(answer)
            if planner.is_worth_settling(last):
                adopted = planner.adopt(last)
                if adopted is not None:
                    yield adopted, "engine"
        if not alone:
            if not _goes_on(planner, effort):
                break
            better = planner.advance()
            if better is not None:
                yield better, "planner"
    adopted = None if last is None else planner.adopt(last)
    if adopted is not None:
        yield adopted, "engine"


def _put(prepared: Prepared, found: Found, effort: Effort) -> Asked | None:
    if effort.engine is None:
        return None
    return put(prepared.question.strip, found.layout, prepared.gap / 2, effort.seconds, effort.seed)


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
