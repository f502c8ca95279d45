"""Faults sown into the text of a recipe, one at a time, as they happen at the table.

    points swapped        two points change places, or one line goes to the wrong point
    wrong seam partner    an edge is sewn to another edge of the same piece
    lost allowance        a seam, hem or casing without cloth beyond its line
    wrong formula basis   a half for a quarter, an eighth for a quarter, another measurement

The real reports behind them stand in ../shared/reference/drafting.md section 1.2.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

KINDS = ("points swapped", "wrong seam partner", "lost allowance", "wrong formula basis")

_DRAWN = re.compile(r"(line|curve|arc) (\w+) (?:from|through|about) ")
_POINT = re.compile(r"point (\w+) ")
_LENGTH = r"\d+(?: \d+/\d+|/\d+|\.\d+)? (?:cm|mm|in)"
_ALLOWANCE = re.compile(rf"\b(seam|hem|casing|gathered|faced) ((?:{_LENGTH})|[a-z_]+_(?:depth|width))")
_SHARE = re.compile(r"/ (2|4|6|8|12)\b(?! in| cm)")
_GIRTHS = (
    "chest",
    "waist",
    "hip",
    "head",
    "neck",
    "upper_arm",
    "back_waist",
    "stature",
    "wrist",
    "thigh",
    "inside_leg",
)
_MEASURE = re.compile(rf"\b({'|'.join(_GIRTHS)})\b")
_FORMULA = re.compile(r"(amount \w+ = |point \w+ .* by |find )")


@dataclass(frozen=True, slots=True)
class Fault:
    """A recipe's text with one fault in it; `line` counts from 1."""

    kind: str
    line: int
    text: str


def whole_lines(text: str) -> list[str]:
    """The lines of a recipe without indents, each with those that carry it on."""
    return [line.strip() for line in re.sub(r",\n\s+", ", ", text).split("\n")]


def faults(text: str) -> Iterator[Fault]:
    """All faults that can be sown into a recipe, whose lines are taken whole and without their indents."""
    lines = whole_lines(text)
    for kind, sow in zip(KINDS, (_points, _partners, _allowances, _formulas), strict=True):
        for number, changed in sow(lines):
            if changed != lines:
                yield Fault(kind, number, "\n".join(changed))


def _with(lines: list[str], number: int, line: str) -> tuple[int, list[str]]:
    return number + 1, [*lines[:number], line, *lines[number + 1 :]]


def _points(lines: list[str]) -> Iterator[tuple[int, list[str]]]:
    """Every two neighbouring points exchanged, and every end of a drawn line moved to the point named before it."""
    for points in _drawings(lines):
        for (one, number), (other, _) in pairwise(points):
            yield number + 1, _exchanged(lines, one, other, number)
        for number, line in enumerate(lines):
            if _DRAWN.match(line):
                names = [name for name, drawn in points if drawn < number]
                used = [name for name in names if re.search(rf"\b(?:from|to) {name}\b", line)]
                for name in used:
                    other = names[names.index(name) - 1]
                    if other not in used:
                        yield _with(lines, number, re.sub(rf"\b(from|to) {name}\b", rf"\1 {other}", line))


def _drawings(lines: list[str]) -> Iterator[list[tuple[str, int]]]:
    """The points of each drawing with the indices of their lines."""
    points: list[tuple[str, int]] = []
    for number, line in enumerate(lines):
        if line.startswith(("drawing ", "redraw ")):
            if points:
                yield points
            points = []
        found = _POINT.match(line)
        if found and not line.startswith("with"):
            points.append((found[1], number))
    if points:
        yield points


def _exchanged(lines: list[str], one: str, other: str, number: int) -> list[str]:
    """The lines after both are drawn with the two names exchanged."""
    names = {one: other, other: one}
    start = max(k for k, line in enumerate(lines) if (m := _POINT.match(line)) and m[1] in names) + 1
    swap = re.compile(rf"(?<![\w.]){one}(?![\w.])|(?<![\w.]){other}(?![\w.])")
    stop = next(
        (k for k in range(max(start, number), len(lines)) if lines[k].startswith(("drawing ", "redraw "))),
        len(lines),
    )
    changed = [swap.sub(lambda m: names[m[0]], line) for line in lines[start:stop]]
    return [*lines[:start], *changed, *lines[stop:]]


def _partners(lines: list[str]) -> Iterator[tuple[int, list[str]]]:
    edges = _edges(lines)
    for number, line in enumerate(lines):
        sewn = re.match(r"sew (.*?) to (\w+)\.(\w+)(.*)$", line)
        if sewn:
            for other in edges.get(sewn[2], []):
                if f"{sewn[2]}.{other}" not in line:
                    yield _with(lines, number, f"sew {sewn[1]} to {sewn[2]}.{other}{sewn[4]}")


def _edges(lines: list[str]) -> dict[str, list[str]]:
    """The names of the edges of each piece, as far as they are listed or taken from another piece."""
    edges: dict[str, list[str]] = {}
    piece = ""
    for line in lines:
        if line.startswith("piece "):
            piece = line.split()[1]
        elif line.startswith("edges as "):
            edges[piece] = list(edges.get(line.split()[2], []))
        elif line.startswith("edges "):
            edges[piece] = [_edge_name(part) for part in line.removeprefix("edges ").split(", ")]
    return edges


def _edge_name(part: str) -> str:
    words = part.split()
    return words[words.index("as") + 1] if "as" in words else words[0]


def _allowances(lines: list[str]) -> Iterator[tuple[int, list[str]]]:
    for number, line in enumerate(lines):
        if line.startswith(("edges ", "allowances ")):
            for found in _ALLOWANCE.finditer(line):
                yield _with(lines, number, line[: found.start(2)] + "0 cm" + line[found.end(2) :])


def _formulas(lines: list[str]) -> Iterator[tuple[int, list[str]]]:
    measured = [m for m in _GIRTHS if re.search(rf"^measure .*\b{m}\b", "\n".join(lines), re.MULTILINE)]
    for number, line in enumerate(lines):
        if not _FORMULA.match(line):
            continue
        bare = line.partition('"')[0]
        for found in _SHARE.finditer(bare):
            for share in (int(found[1]) // 2, int(found[1]) * 2):
                yield _with(lines, number, f"{line[: found.start(1)]}{share}{line[found.end(1) :]}")
        for found in _MEASURE.finditer(bare):
            for other in measured:
                if other != found[1]:
                    yield _with(lines, number, line[: found.start(1)] + other + line[found.end(1) :])
