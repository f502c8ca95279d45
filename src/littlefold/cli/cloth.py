"""`littlefold cloth`: a garment laid on cloth, what to buy for it, and the lay to follow with the scissors."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from littlefold.booklet.bundle import cautions
from littlefold.cli.asked import Asked, Understood, understand
from littlefold.cli.cloth_words import cloth_record, empty_cloth_record, print_plan, said_lay
from littlefold.cli.fabric import SAID, ClothWords, Fabric, read_fabric
from littlefold.cli.files import plain_name, write_whole
from littlefold.cli.laying import search
from littlefold.cli.words import aside, print_document, print_findings, to_person
from littlefold.lay.adapter import enlarged, lay_pieces
from littlefold.lay.compare import best_of
from littlefold.lay.draw import lay_drawing
from littlefold.lay.sewn import sewn_lengths
from littlefold.lay.sheet import LayPlan, lay_sheet, marker
from littlefold.lay.shopping import shopping_list
from littlefold.lay.short import enough
from littlefold.lay.shrink import advice
from littlefold.lay.thread import thread_length
from littlefold.pipeline import fulfil
from littlefold.problem import Number, Problem, Severity, has_errors
from littlefold.sheet.svg import write_svg

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date
    from pathlib import Path

    from littlefold.lay.compare import Row
    from littlefold.lay.piece import LayPiece
    from littlefold.pattern.model import Pattern
    from littlefold.pipeline import Outcome


@dataclass(frozen=True, slots=True)
class Laid:
    """What came of the search: the plan of the best lay, None where nothing can be cut so; and all findings."""

    plan: LayPlan | None
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]


def lay_on_cloth(asked: Asked, words: ClothWords, out: Path | None, *, as_data: bool) -> int:
    """Lays a garment on cloth and tells; returns the exit status: 0 fine, 1 an error was found, 2 not understood."""
    today = datetime.now(tz=UTC).astimezone().date()
    understood, fabric = understand(asked, today), read_fabric(words)
    if not isinstance(understood, Understood) or not isinstance(fabric, Fabric):
        faults = (one for one in (understood, fabric) if isinstance(one, tuple))
        return _refuse(tuple(problem for found in faults for problem in found), asked, as_data=as_data)
    outcome = fulfil(understood.wish)
    laid = _lay(outcome, fabric, understood.problems)
    if out is not None and laid.plan is not None:
        fault = _write(laid.plan, plain_name(outcome.recipe.name), understood, out, today)
        if fault is not None:
            return _refuse((fault,), asked, as_data=as_data)
    if as_data:
        print_document(cloth_record(outcome.pattern.draft, laid.plan, laid.rows, laid.problems))
    else:
        print_plan(laid.plan, laid.rows, to_person())
        if laid.problems:
            print_findings(laid.problems, to_person())
    return 1 if laid.plan is None or has_errors(laid.problems) else 0


def _lay(outcome: Outcome, fabric: Fabric, notes: tuple[Problem, ...]) -> Laid:
    """The pieces laid, the best way taken, its shopping list made."""
    pieces, doubts = lay_pieces(outcome.pattern, fabric.cloth.name)
    found = (*notes, *_grave(outcome.problems), *doubts, *_other_cloths(outcome.pattern, fabric.cloth.name))
    if not pieces:
        return Laid(None, (), (_no_such_cloth(outcome.pattern, fabric.cloth.name), *found))
    cut = enlarged(pieces, fabric.cloth)
    rows = _rows(cut, fabric)
    best = best_of(rows)
    if best is None or best.lay is None:
        return Laid(None, rows, (*found, *_reasons(rows)))
    lay = best.lay
    cloth = (*advice(lay.cloth.shrinkage, lay.cloth.treatment), *_folds(cut, fabric, best), *enough(lay))
    problems = (*found, *cloth)
    thread = thread_length(sewn_lengths(outcome.pattern))
    assert not isinstance(thread, Problem), "the usual stitches are known"  # noqa: S101 - our own mistake
    shopping = shopping_list([lay], outcome.pattern.draft.notions, thread)
    warned = cautions(outcome.pattern, outcome.problems)
    return Laid(LayPlan(_title(outcome), lay, rows, shopping, warned), rows, problems)


def _rows(pieces: tuple[LayPiece, ...], fabric: Fabric) -> tuple[Row, ...]:
    console = aside()
    with console.status("Looking for a lay; Ctrl-C takes the best so far."):
        return search(pieces, fabric, lambda lay: console.print(said_lay(lay), markup=False))


def _no_such_cloth(pattern: Pattern, name: str) -> Problem:
    known = ", ".join(dict.fromkeys(piece.cloth for piece in pattern.pieces))
    words = f"Its pieces are cut from: {known}." if known else "The draft made no pieces at all."
    return Problem("nothing-to-lay", f'No piece is cut from the cloth "{name}". {words}')


def _reasons(rows: tuple[Row, ...]) -> Iterator[Problem]:
    """Why nothing goes, each reason once for each piece, however many ways it stops."""
    seen = set()
    for problem in (problem for row in rows for problem in row.problems):
        if (problem.code, problem.place) not in seen:
            seen.add((problem.code, problem.place))
            yield problem


def _folds(pieces: tuple[LayPiece, ...], fabric: Fabric, best: Row) -> Iterator[Problem]:
    """Where the fold decides the length of the way asked for: that it does, and a better way if there is one."""
    if fabric.way is None or best.bounds is None or best.bounds.binding != "fold":
        return
    yield from best.problems
    quick = replace(fabric, way=None, seconds=0.0, steps=None)
    other = best_of(search(pieces, quick, lambda _: None))
    if other is None or other.to_buy is None or best.to_buy is None or other.to_buy >= best.to_buy:
        return
    yield Problem(
        "better-fold",
        f"Laid {other.way}, {other.to_buy / 10:.0f} cm would do instead of {best.to_buy / 10:.0f} cm: say "
        f"--lay {SAID[other.way]}, or leave --lay out.",
        Severity.WARNING,
        numbers=(Number("to buy", best.to_buy), Number("to buy the other way", other.to_buy)),
        cure=f"--lay {SAID[other.way]}",
    )


def _grave(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Of what the draft found, what spoils the garment or is a rule of safety; the rest is told by `draft`."""
    return tuple(one for one in problems if one.severity is Severity.ERROR or one.rule)


def _other_cloths(pattern: Pattern, name: str) -> Iterator[Problem]:
    """A note on each further cloth of the pattern, which has a lay of its own."""
    for other in dict.fromkeys(piece.cloth for piece in pattern.pieces if piece.cloth != name):
        words = f'Some pieces are cut from "{other}": say --cloth {other} for its own lay and amount.'
        yield Problem("another-cloth", words, Severity.NOTE)


def _title(outcome: Outcome) -> str:
    for_whom = outcome.pattern.draft.measurements.nickname
    return f"{outcome.recipe.title}{f', for {for_whom}' if for_whom else ''}: lay"


def _write(plan: LayPlan, front: str, understood: Understood, folder: Path, today: date) -> Problem | None:
    """Writes the page to follow and the markers, and says which."""
    told = aside()
    sheets = (
        ("lay.pdf", "Lay to follow", lay_sheet(plan, understood.paper, today)),
        ("marker.svg", "Lay at full size", write_svg(lay_drawing(plan.lay)).encode()),
        ("marker.pdf", "Lay at full size, for a copy shop", marker(plan.lay, today)),
    )
    for name, title, content in sheets:
        path = folder / f"{front}-{name}"
        if content is None:
            told.print(f"{title}: left out, no page is {plan.lay.length / 1000:.1f} m long.")
            continue
        told.print(f"{title}: {path}", markup=False)
        fault = write_whole(path, content)
        if fault is not None:
            return fault
    return None


def _refuse(problems: tuple[Problem, ...], asked: Asked, *, as_data: bool) -> int:
    if as_data:
        print_document(empty_cloth_record(problems, asked.recipe))
    else:
        print_findings(problems, aside())
    return 2
