"""The pieces of one cloth laid: by search, on scraps, or as a lay that was stored says."""

from __future__ import annotations

import time
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.cli.cloth_words import said_lay
from littlefold.cli.fabric import SAID
from littlefold.cli.laying import NO_END, Patience, search, stopping
from littlefold.cli.stored_lay import told
from littlefold.cli.words import aside
from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.asked import tilted
from littlefold.lay.compare import Row, best_of
from littlefold.lay.meeting import meetings
from littlefold.lay.place import Effort
from littlefold.lay.scraps import FromScraps, lay_on_scraps
from littlefold.lay.short import enough
from littlefold.lay.shrink import advice
from littlefold.lay.spoken import cloth, units_of
from littlefold.lay.stripes import paired, stripes_met
from littlefold.lay.twins import Twinned, no_twins, twinned
from littlefold.lay.ways import Way
from littlefold.problem import Number, Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.cli.cloth import Order
    from littlefold.cli.fabric import Fabric
    from littlefold.lay.lay import Lay
    from littlefold.lay.piece import LayPiece
    from littlefold.lay.stripes import Met
    from littlefold.pattern.model import Pattern


@dataclass(frozen=True, slots=True)
class OneLaid:
    """The best lay of one cloth, None where there is none; the ways that were tried; what is to be said.

    `stripes` tells of each seam whether the stripes meet in it; `together` how pieces are parted that are cut at once.
    """

    lay: Lay | None
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]
    stripes: tuple[Met, ...] = ()
    together: tuple[Problem, ...] = ()


def lay_one(pattern: Pattern, order: Order, fabric: Fabric) -> OneLaid:
    """The pieces of the fabric's cloth laid as the order says."""
    pieces, doubts = lay_pieces(pattern, fabric.cloth.name)
    if not pieces:
        return OneLaid(None, (), (_no_such_cloth(pattern, fabric.cloth.name), *doubts))
    here = {piece.name for piece in pieces}
    matches = tuple(one for one in order.wishes.match if fabric is order.fabric or one[0] in here)
    seams = meetings(pattern, fabric.cloth.name)
    wished = paired(enlarged(pieces, fabric.cloth), seams, fabric.cloth.repeat, matches)
    cut = wished if isinstance(wished, Problem) else tilted(wished, order.wishes.tilt)
    if isinstance(cut, Problem):
        return OneLaid(None, (), (cut, *doubts))
    twins = twinned(cut) if order.wishes.together else Twinned(cut, ())
    notes = (no_twins(),) if order.wishes.together and not twins.notes else twins.notes
    laid = _laid(twins.pieces, order, fabric)
    stripes = () if laid.lay is None else stripes_met(laid.lay, seams)
    problems = (*doubts, *notes, *laid.problems)
    return replace(laid, problems=problems, stripes=stripes, together=laid.together or twins.notes)


def _laid(pieces: tuple[LayPiece, ...], order: Order, fabric: Fabric) -> OneLaid:
    if order.stored is not None:
        return _as_stored(pieces, order.stored)
    if order.wishes.scraps and fabric is order.fabric:
        return _on_scraps(pieces, order, fabric)
    rows = _rows(pieces, fabric)
    best = best_of(rows)
    if best is None or best.lay is None:
        return OneLaid(None, rows, tuple(_reasons(rows)))
    return OneLaid(best.lay, rows, (*_said_of(best.lay), *_folds(pieces, fabric, best)))


def _said_of(lay: Lay) -> tuple[Problem, ...]:
    return (*advice(lay.cloth.shrinkage, lay.cloth.treatment), *enough(lay))


def _as_stored(pieces: tuple[LayPiece, ...], lay: Lay | tuple[Problem, ...]) -> OneLaid:
    """The lay of a file, if it holds and is one of these very pieces."""
    if isinstance(lay, tuple):
        return OneLaid(None, (), lay)
    together = twinned(pieces)
    if _wanted(lay.pieces) == _wanted(together.pieces):
        return OneLaid(lay, (), (told(lay), *together.notes, *_said_of(lay)), together=together.notes)
    if _wanted(lay.pieces) != _wanted(pieces):
        words = "The stored lay has other pieces than this draft: other measurements, choices or enlargement."
        return OneLaid(None, (), (Problem("lay-of-other-pieces", words),))
    return OneLaid(lay, (), (told(lay), *_said_of(lay)))


def _wanted(pieces: tuple[LayPiece, ...]) -> dict[str, tuple[object, ...]]:
    """Of each piece what a lay of it must agree with: shape, number, hand, fold and grain; not what was wished of it."""
    return {
        one.name: (one.ring, one.copies, one.on_fold, one.pair, one.bias, one.crossgrain, one.one_way)
        for one in pieces
    }


def _on_scraps(pieces: tuple[LayPiece, ...], order: Order, fabric: Fabric) -> OneLaid:
    with stopping() as stopped:
        patience = Patience(time.monotonic() + fabric.seconds, stopped)
        steps = NO_END if fabric.steps is None else fabric.steps
        holds = patience.holds if fabric.steps is None else lambda: not stopped.is_set()
        found = lay_on_scraps(pieces, fabric.cloth, order.wishes.scraps, Effort(steps, fabric.seed, holds))
    if not isinstance(found, FromScraps):
        return OneLaid(None, (Row(Way.SCRAPS, fabric.cloth.width, None, None, found),), found)
    wash = advice(fabric.cloth.shrinkage, fabric.cloth.treatment)
    return OneLaid(found.lay, (), (*wash, *found.problems))


def _rows(pieces: tuple[LayPiece, ...], fabric: Fabric) -> tuple[Row, ...]:
    console = aside()
    with console.status("Looking for a lay; Ctrl-C takes the best so far."):
        return search(pieces, fabric, lambda lay: console.print(said_lay(lay), markup=False))


def _no_such_cloth(pattern: Pattern, name: str) -> Problem:
    known = ", ".join(dict.fromkeys(piece.cloth for piece in pattern.pieces))
    words = f"Its pieces are cut from: {known}." if known else "The draft made no pieces at all."
    return Problem("nothing-to-lay", f'No piece is cut from the cloth "{name}". {words}')


def _reasons(rows: Sequence[Row]) -> Iterator[Problem]:
    """Why nothing goes, each reason once for each piece, however many ways it stops."""
    seen = set()
    for problem in (problem for row in rows for problem in row.problems):
        if (problem.code, problem.place) not in seen:
            seen.add((problem.code, problem.place))
            yield problem


def _folds(pieces: tuple[LayPiece, ...], fabric: Fabric, best: Row) -> Iterator[Problem]:
    """For a way that was asked for: whether the fold decides its length, and a better way if there is one."""
    if fabric.way is None or fabric.way is Way.TUBE or best.bounds is None:
        return
    yield from best.problems
    if fabric.holes or fabric.pins:
        return  # their places are of this way alone
    quick = replace(fabric, way=None, seconds=0.0, steps=None, other_widths=())
    other = best_of(search(pieces, quick, lambda _: None))
    if other is None or other.to_buy is None or best.to_buy is None or other.to_buy >= best.to_buy:
        return
    units = units_of(fabric.cloth)
    yield Problem(
        "better-fold",
        f"Laid {other.way}, {cloth(other.to_buy, units)} would do instead of {cloth(best.to_buy, units)}: say "
        f"--lay {SAID[other.way]}, or leave --lay out.",
        Severity.WARNING,
        numbers=(Number("to buy", best.to_buy), Number("to buy the other way", other.to_buy)),
        cure=f"--lay {SAID[other.way]}",
    )
