"""`littlefold draft RECIPE --sizes 92..116`: every size on its own sheets, and all on one."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from typing import TYPE_CHECKING, Any

from littlefold.body.chart import chart_row, read_sizes
from littlefold.booklet.bundle import bundle
from littlefold.booklet.run_sheets import run_sheets
from littlefold.cli.asked import Asked, Understood, understand
from littlefold.cli.draft import DEFAULT_FOLDER
from littlefold.cli.files import plain_name, write_whole
from littlefold.cli.words import aside, print_document, print_findings, to_person
from littlefold.grading import grade, moves
from littlefold.pipeline import fulfil, on_the_shelf
from littlefold.problem import Problem, Severity, has_errors

if TYPE_CHECKING:
    from datetime import date
    from pathlib import Path

    from littlefold.grading import SizeRun
    from littlefold.pipeline import Wish


def draft_size_run(asked: Asked, text: str, out: Path | None, *, as_data: bool) -> int:
    """Drafts every size, writes and tells; returns the exit status."""
    today = datetime.now(tz=UTC).astimezone().date()
    sizes, understood = read_sizes(text), understand(asked, today)
    refused = (
        *((sizes,) if isinstance(sizes, Problem) else ()),
        *(understood if isinstance(understood, tuple) else ()),
        *_one_body(asked),
    )
    if refused or isinstance(sizes, Problem) or not isinstance(understood, Understood):
        print_findings(refused, aside())
        return 2
    wish = understood.wish
    run = grade(
        wish.recipe, sizes, dict(wish.choices), tape=wish.tape, language=wish.language, shelf=on_the_shelf
    )
    outcomes = {size: fulfil(replace(wish, measurements=chart_row(size))).problems for size in sizes}
    folder = out if out is not None else (None if as_data else DEFAULT_FOLDER)
    fault = None if folder is None else _write(run, outcomes, understood, folder, today)
    if fault is not None:
        print_findings((fault,), aside())
        return 2
    found = _together(outcomes, run)
    if as_data:
        print_document(_record(run, found))
    else:
        print_findings(found, to_person())
    return 1 if has_errors(found) else 0


def _one_body(asked: Asked) -> tuple[Problem, ...]:
    given = {"--child": asked.child, "--size": asked.size, "--age": asked.age, "--measure": asked.measure}
    return tuple(
        Problem("option-not-understood", f"A size run has a body for each size; leave {option} out.")
        for option, value in given.items()
        if value
    )


def _together(outcomes: dict[int, tuple[Problem, ...]], run: SizeRun) -> tuple[Problem, ...]:
    """What was found, once for all sizes that it was found in; notes of single sizes are left out."""
    sizes: dict[str, list[int]] = {}
    first: dict[str, Problem] = {}
    for size, problems in outcomes.items():
        for problem in problems:
            if problem.severity is not Severity.NOTE:
                key = f"{problem.code} {problem.place}"
                first.setdefault(key, problem)
                sizes.setdefault(key, []).append(size)
    told = tuple(
        replace(problem, message=f"{_named(sizes[key])}: {problem.message}") for key, problem in first.items()
    )
    return (*told, *(problem for problem in run.problems if problem.code == "seam-lengths-differ"))


def _named(sizes: list[int]) -> str:
    listed = ", ".join(map(str, dict.fromkeys(sizes)))
    return f"Size {listed}"


def _write(
    run: SizeRun,
    outcomes: dict[int, tuple[Problem, ...]],
    understood: Understood,
    folder: Path,
    today: date,
) -> Problem | None:
    told, front = aside(), plain_name(understood.wish.recipe.name)
    for sheet in run_sheets(run, understood.speech, understood.paper, today):
        path = folder / f"{front}-{sheet.name}"
        told.print(f"{sheet.title}: {path}", markup=False)
        fault = write_whole(path, sheet.make())
        if fault is not None:
            return fault
    for size in run.sizes:
        fault = _write_size(size.label, understood, outcomes[int(size.label)], folder, today)
        if fault is not None:
            return fault
        told.print(f"Size {size.label}: {folder / f'size-{size.label}'}", markup=False)
    return None


def _write_size(
    label: str, understood: Understood, problems: tuple[Problem, ...], folder: Path, today: date
) -> Problem | None:
    wish: Wish = replace(understood.wish, measurements=chart_row(int(label)))
    front = plain_name(wish.recipe.name)
    for sheet in bundle(fulfil(wish).pattern, problems, understood.speech, understood.paper, today):
        fault = write_whole(folder / f"size-{label}" / f"{front}-{label}-{sheet.name}", sheet.make())
        if fault is not None:
            return fault
    return None


def _record(run: SizeRun, problems: tuple[Problem, ...]) -> dict[str, Any]:
    return {
        "format": "littlefold-size-run/1",
        "title": run.title,
        "sizes": [size.label for size in run.sizes],
        "moves": [
            {"point": move.point, "steps_mm": [[round(step.x, 3), round(step.y, 3)] for step in move.steps]}
            for move in moves(run)
        ],
        "seams": [
            {
                "size": size.label,
                "lengths_mm": [seam.first_length, seam.second_length],
                "matched": seam.matched,
            }
            for size in run.sizes
            for seam in size.pattern.seams
        ],
        "problems": [
            {"code": one.code, "severity": one.severity.value, "message": one.message} for one in problems
        ],
    }
