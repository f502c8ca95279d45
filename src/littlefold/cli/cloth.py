"""`littlefold cloth`: a garment laid on cloth, what to buy for it, and the lay to follow with the scissors."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import UTC, datetime
from typing import TYPE_CHECKING

from littlefold.booklet.bundle import cautions
from littlefold.booklet.spoken import spoken
from littlefold.cli.cloth_wishes import Wishes, WishWords, priced_for_nothing, read_wishes
from littlefold.cli.cloth_words import cloth_record, empty_cloth_record, print_other, print_plan
from littlefold.cli.fabric import ClothWords, Fabric, not_understood, read_fabric
from littlefold.cli.files import plain_name, write_whole
from littlefold.cli.one_cloth import lay_one
from littlefold.cli.stored_lay import UNREADABLE, contrary, own_cloth, read_kept
from littlefold.cli.understood import Understood, understand
from littlefold.cli.words import aside, print_document, print_findings, to_person
from littlefold.lay.full_size import marker_drawing
from littlefold.lay.lay import Lay
from littlefold.lay.sewn import thread_of
from littlefold.lay.sheet import LayPlan, lay_sheet, marker
from littlefold.lay.shopping import shopping_list
from littlefold.lay.stored import stored
from littlefold.pipeline import fulfil
from littlefold.problem import Problem, Severity, has_errors
from littlefold.sheet.svg import write_svg

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import date
    from pathlib import Path

    from littlefold.cli.asked import Asked
    from littlefold.cli.cloth_wishes import Also
    from littlefold.cli.one_cloth import OneLaid
    from littlefold.lay.cloth import Cloth
    from littlefold.lay.compare import Row
    from littlefold.pattern.model import Pattern
    from littlefold.pipeline import Outcome


@dataclass(frozen=True, slots=True)
class Laid:
    """What came of the search: a plan for each cloth that could be laid, the rows compared, and all findings."""

    plans: tuple[LayPlan, ...]
    rows: tuple[Row, ...]
    problems: tuple[Problem, ...]
    is_whole: bool = True

    @property
    def plan(self) -> LayPlan | None:
        """The plan of the cloth that was asked for; None where it cannot be cut so."""
        return self.plans[0] if self.plans and self.is_whole else None


@dataclass(frozen=True, slots=True)
class Order:
    """All that is asked for: the cloth and the search, what is wished of single pieces, a lay that was stored."""

    fabric: Fabric
    wishes: Wishes
    stored: Lay | tuple[Problem, ...] | None = None


def lay_on_cloth(
    asked: Asked,
    words: ClothWords,
    out: Path | None,
    *,
    as_data: bool,
    wished: WishWords | None = None,
    stored_at: Path | None = None,
    is_wide: bool = True,
) -> int:
    """Lays a garment on cloth and tells; returns the exit status: 0 fine, 1 an error was found, 2 not understood.

    `is_wide` tells whether a width was typed: a stored lay has its own.
    """
    today = datetime.now(tz=UTC).astimezone().date()
    read = (understand(asked, today), read_fabric(words), read_wishes(wished or WishWords()))
    understood, fabric, wishes = read
    if (
        not isinstance(understood, Understood)
        or not isinstance(fabric, Fabric)
        or not isinstance(wishes, Wishes)
    ):
        faults = (one for one in read if isinstance(one, tuple))
        return _refuse(tuple(problem for found in faults for problem in found), asked, as_data=as_data)
    placed = tuple(_placed_on_nothing(fabric, wishes))
    if placed and stored_at is None:
        return _refuse(placed, asked, as_data=as_data)
    kept = None if stored_at is None else read_kept(stored_at)
    refused = _refused(kept, words, fabric, wished or WishWords(), is_wide=is_wide)
    if refused:
        return _refuse(refused, asked, as_data=as_data)
    outcome = fulfil(understood.wish)
    unneeded = tuple(priced_for_nothing(wishes.prices, outcome.pattern.draft.notions))
    if unneeded:
        return _refuse(unneeded, asked, as_data=as_data)
    fabric = replace(fabric, pins=wishes.pins, holes=wishes.holes)
    if isinstance(kept, Lay):
        kept = own_cloth(kept, fabric)
        fabric = replace(fabric, cloth=kept.cloth)
    laid = _lay(outcome, Order(fabric, wishes, kept), understood)
    if out is not None:
        for plan in laid.plans:
            fault = _write(plan, _front(outcome, plan, laid.plans[0]), understood, out, today)
            if fault is not None:
                return _refuse((fault,), asked, as_data=as_data)
    _tell(outcome, laid, as_data=as_data)
    return 1 if laid.plan is None or has_errors(laid.problems) else 0


def _placed_on_nothing(fabric: Fabric, wishes: Wishes) -> Iterator[Problem]:
    """A problem for places on the spread cloth where nobody said how it is spread."""
    if fabric.way is not None or wishes.scraps:
        return
    for option, places in (("--damaged", wishes.holes), ("--pin", wishes.pins)):
        if places:
            yield not_understood(
                f"{option}: where that place of the cloth comes depends on how it is folded, and --lay is not said. Say "
                "--lay folded, or how else the cloth lies."
            )


def _refused(
    kept: Lay | tuple[Problem, ...] | None,
    words: ClothWords,
    fabric: Fabric,
    wished: WishWords,
    *,
    is_wide: bool,
) -> tuple[Problem, ...]:
    """Why a stored lay cannot be begun with: the file is none, or something else is asked of it."""
    if isinstance(kept, Lay):
        return tuple(contrary(kept, words, fabric, wished, is_wide=is_wide))
    return tuple(problem for problem in kept or () if problem.code in UNREADABLE)


def _tell(outcome: Outcome, laid: Laid, *, as_data: bool) -> None:
    if as_data:
        print_document(cloth_record(outcome.pattern.draft, laid.plans, laid.rows, laid.problems))
        return
    print_plan(laid.plan, laid.rows, to_person())
    for plan in laid.plans[1:]:
        print_other(plan, to_person())
    if laid.problems:
        print_findings(laid.problems, to_person())


def _front(outcome: Outcome, plan: LayPlan, first: LayPlan) -> str:
    """The beginning of the names of a plan's files; a further cloth is named in it."""
    name = plain_name(outcome.recipe.name)
    return name if plan is first else f"{name}-{plain_name(plan.lay.cloth.name)}"


def _lay(outcome: Outcome, order: Order, understood: Understood) -> Laid:
    """The pieces of each cloth laid, the best way of each taken, one shopping list made."""
    names = (order.fabric.cloth.name, *(one.name for one in order.wishes.also))
    drafted = spoken((*understood.problems, *_grave(outcome.problems)), understood.speech)
    found = (*drafted, *_other_cloths(outcome.pattern, names))
    done = [lay_one(outcome.pattern, order, order.fabric)]
    for also in order.wishes.also:
        other = replace(
            order.fabric, cloth=_other_cloth(order.fabric.cloth, also), other_widths=(), pins=(), holes=()
        )
        done.append(lay_one(outcome.pattern, replace(order, stored=None), other))
    lays = [one.lay for one in done if one.lay is not None]
    thread = thread_of(outcome.pattern, order.wishes.stitching)
    shopping = shopping_list(lays, outcome.pattern.draft.notions, thread, order.wishes.prices)
    warned = cautions(outcome.pattern, spoken(outcome.problems, understood.speech))
    units = understood.speech.units
    plans = tuple(
        LayPlan(_title(outcome), one.lay, one.rows, shopping, (*_parting(one), *warned), units, one.stripes)
        for one in done
        if one.lay is not None
    )
    problems = (*found, *(problem for one in done for problem in one.problems))
    return Laid(plans, done[0].rows, problems, is_whole=done[0].lay is not None)


def _parting(laid: OneLaid) -> tuple[str, ...]:
    """How pieces that are cut at once are parted: it must be read before the scissors are put away."""
    return tuple(problem.message for problem in laid.together)


def _other_cloth(cloth: Cloth, also: Also) -> Cloth:
    """A further cloth of the garment: washed and sold as the first one, but plain and of its own width and price."""
    return replace(
        cloth,
        name=also.name,
        width=also.width,
        price=also.price,
        nap=False,
        repeat=None,
        in_hand=None,
        tube=False,
    )


def _grave(problems: tuple[Problem, ...]) -> tuple[Problem, ...]:
    """Of what the draft found, what spoils the garment or is a rule of safety; the rest is told by `draft`."""
    return tuple(one for one in problems if one.severity is Severity.ERROR or one.rule)


def _other_cloths(pattern: Pattern, names: tuple[str, ...]) -> Iterator[Problem]:
    """A note on each further cloth of the pattern, which has a lay of its own."""
    for other in dict.fromkeys(piece.cloth for piece in pattern.pieces if piece.cloth not in names):
        words = (
            f'Some pieces are cut from "{other}": say --also {other}=140cm (its width) to lay it in the same run, or '
            f"--cloth {other} for that lay alone."
        )
        yield Problem("another-cloth", words, Severity.NOTE)


def _title(outcome: Outcome) -> str:
    for_whom = outcome.pattern.draft.measurements.nickname
    return f"{outcome.recipe.title}{f', for {for_whom}' if for_whom else ''}: lay"


def _write(plan: LayPlan, front: str, understood: Understood, folder: Path, today: date) -> Problem | None:
    """Writes the page to follow and the markers, and says which."""
    told = aside()
    sheets = (
        ("lay.pdf", "Lay to follow", lay_sheet(plan, understood.paper, today)),
        ("marker.svg", "Lay at full size", write_svg(marker_drawing(plan.lay, plan.units)).encode()),
        ("marker.pdf", "Lay at full size, for a copy shop", marker(plan.lay, today, plan.units)),
        ("lay.json", "Lay, to be read again with --stored", stored(plan.lay)),
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
