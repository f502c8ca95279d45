"""`littlefold sizes`: the built-in chart, or the size of one child."""

from __future__ import annotations

from typing import Literal

from rich.table import Table

from littlefold.body.chart import SIZES, chart_row, read_sizes, source_of
from littlefold.body.register import NAMES, REGISTER
from littlefold.body.tape import ONE_MM, say_length
from littlefold.cli.words import print_document, refused, to_person
from littlefold.problem import Problem


def print_sizes(text: str | None, units: Literal["cm", "in"], *, as_data: bool) -> int:
    """Prints the sizes of the chart; returns the exit status."""
    sizes = SIZES if text is None else read_sizes(text)
    if isinstance(sizes, Problem):
        return refused((sizes,), as_data=as_data)
    if as_data:
        print_document([_record(size) for size in sizes])
        return 0
    table = Table(pad_edge=False, padding=(0, 1))
    table.add_column("Size")
    for size in sizes:
        table.add_column(str(size), justify="right", no_wrap=True)
    for name in NAMES:
        cells = (say_length(chart_row(size).mm(name), units, ONE_MM) for size in sizes)
        table.add_row(REGISTER[name].title, *(cell.removesuffix(f" {units}") for cell in cells))
    console = to_person()
    console.width = max(console.width, 30 + 9 * len(sizes))
    console.print(table)
    console.print(f"All in {units}. Where each number comes from: littlefold sizes --data")
    return 0


def _record(size: int) -> dict[str, object]:
    body = chart_row(size)
    measurements = {name: {"mm": round(body.mm(name), 1), "source": source_of(name, size)} for name in NAMES}
    return {"size": size, "age_months": body.age_months, "measurements": measurements}
