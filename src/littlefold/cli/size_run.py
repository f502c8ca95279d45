"""`littlefold draft RECIPE --sizes 92..116`: every size on its own sheets, and all on one."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from littlefold.body.chart import chart_row, read_sizes
from littlefold.body.filling import complete
from littlefold.body.own_chart import read_own_chart
from littlefold.booklet.bundle import bundle
from littlefold.booklet.run_sheets import run_sheets
from littlefold.cli.draft import DEFAULT_FOLDER
from littlefold.cli.files import plain_name, read_text
from littlefold.cli.sheets import write_sheets
from littlefold.cli.understood import Understood, understand
from littlefold.cli.words import aside, print_document, print_findings, to_person
from littlefold.grading import moves
from littlefold.grading.grade import UNMATCHED, grade_bodies
from littlefold.pipeline import fulfil, on_the_shelf
from littlefold.problem import Place, Problem, Severity, has_errors

if TYPE_CHECKING:
    from collections.abc import Mapping
    from datetime import date

    from littlefold.body.measurements import Measurements
    from littlefold.cli.asked import Asked
    from littlefold.grading import SizeRun
    from littlefold.pipeline import Outcome


Bodies = dict[str, "Measurements"]


def draft_size_run(asked: Asked, text: str, out: Path | None, *, as_data: bool) -> int:
    """Drafts every size, writes and tells; returns the exit status.

    Args:
        asked: The words of the command line.
        text: The sizes, `92..116`, or the file of a chart of the maker's own, `mine.csv`.
        out: The folder of the sheets.
        as_data: Whether one JSON document is printed instead of words.
    """
    today = datetime.now(tz=UTC).astimezone().date()
    bodies, remarks = _bodies(text)
    understood = understand(asked, today)
    refused = (*_one_body(asked), *(understood if isinstance(understood, tuple) else ()))
    if not bodies or refused or not isinstance(understood, Understood):
        print_findings((*remarks, *refused), aside())
        return 2
    wish, folder = understood.wish, _folder(out, as_data=as_data)
    run = grade_bodies(
        wish.recipe,
        tuple(bodies.items()),
        dict(wish.choices),
        tape=wish.tape,
        language=wish.language,
        shelf=on_the_shelf,
    )
    outcomes = {label: fulfil(replace(wish, measurements=body)) for label, body in bodies.items()}
    fault = None if folder is None else _write(run, outcomes, understood, folder, today)
    if fault is not None:
        print_findings((fault,), aside())
        return 2
    found = (*remarks, *_together(outcomes, run))
    if as_data:
        print_document(_record(run, found))
    else:
        print_findings(found, to_person())
    return 1 if has_errors(found) else 0


def _folder(out: Path | None, *, as_data: bool) -> Path | None:
    return out if out is not None or as_data else DEFAULT_FOLDER


def _bodies(text: str) -> tuple[Bodies, tuple[Problem, ...]]:
    """The bodies by their labels, every measurement known; none where they cannot be read."""
    if text.endswith(".csv"):
        table = read_text(Path(text))
        if isinstance(table, Problem):
            return {}, (table,)
        chart, remarks = read_own_chart(table)
        labelled = () if chart is None else zip(chart.labels, chart.bodies, strict=True)
        return {label: complete(body)[0] for label, body in labelled}, remarks
    sizes = read_sizes(text)
    if isinstance(sizes, Problem):
        return {}, (sizes,)
    return {str(size): chart_row(size) for size in sizes}, ()


def _one_body(asked: Asked) -> tuple[Problem, ...]:
    given = {"--child": asked.child, "--size": asked.size, "--age": asked.age, "--measure": asked.measure}
    return tuple(
        Problem("option-not-understood", f"A size run has a body for each size; leave {option} out.")
        for option, value in given.items()
        if value
    )


def _together(outcomes: Mapping[str, Outcome], run: SizeRun) -> tuple[Problem, ...]:
    """What was found, once for all sizes that it was found in; notes of single sizes are left out."""
    sizes: dict[tuple[str, Place], list[str]] = {}
    first: dict[tuple[str, Place], Problem] = {}
    for label, outcome in outcomes.items():
        for problem in outcome.problems:
            if problem.severity is not Severity.NOTE:
                key = (problem.code, problem.place)
                first.setdefault(key, problem)
                sizes.setdefault(key, []).append(label)
    unmatched = tuple(problem for problem in run.problems if problem.code == UNMATCHED)
    return (*(_of_sizes(problem, sizes[key]) for key, problem in first.items()), *unmatched)


def _of_sizes(problem: Problem, labels: list[str]) -> Problem:
    listed = ", ".join(dict.fromkeys(labels))
    return replace(problem, message=f"Size {listed}: {problem.message}")


def _write(
    run: SizeRun, outcomes: Mapping[str, Outcome], understood: Understood, folder: Path, today: date
) -> Problem | None:
    """Writes the sheets of the run into a folder, and those of each size into a folder of its own below it."""
    front, speech, paper = plain_name(understood.wish.recipe.name), understood.speech, understood.paper
    fault = write_sheets(run_sheets(run, understood.wish.circumstances, speech, paper, today), folder, front)
    for label, outcome in outcomes.items():
        size = plain_name(label)
        fault = fault or write_sheets(
            bundle(outcome.pattern, outcome.problems, speech, paper, today, least=understood.least),
            folder / f"size-{size}",
            f"{front}-{size}",
        )
    return fault


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
