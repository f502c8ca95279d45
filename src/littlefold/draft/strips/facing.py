"""A facing: a strip of cloth that follows edges of a piece and is turned to the inside.

     next                The edges it is sewn to are its outer edges and keep their names; they are seams, as
.-----------+            wide as on the piece.  Its inner edge lies parallel to them and is left raw.  The
|  inner    |  outer     edges beside them are cut off there and stay what they are.
|     .-----'
'-----' previous
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.draft.drawn import named, pencil
from littlefold.draft.model import DraftEdge, EdgeKind
from littlefold.draft.outline import closed, reaching, snapped
from littlefold.draft.pieces import StatedEdge
from littlefold.draft.refusal import Refusal
from littlefold.draft.shapes.laid_down import lay_down
from littlefold.draft.shapes.shape import Shape, ShapeEdge, numbered
from littlefold.draft.shapes.taken import marks_of, on_sheet
from littlefold.draft.stating import stated_piece
from littlefold.draft.steps import write_step
from littlefold.geometry import Path, offset
from littlefold.problem import Number, say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.model import DraftPiece
    from littlefold.recipe.recipe import Written


@dataclass(frozen=True, slots=True)
class _Faced:
    """The edges a facing follows, in order, and those beside them."""

    before: DraftEdge
    outer: tuple[DraftEdge, ...]
    after: DraftEdge


def facing(line: Written, desk: Desk) -> None:
    """A facing of one edge of a piece, or of several that follow each other."""
    step: tree.PieceFacing = line.statement
    piece = _piece(step, desk)
    faced = _faced(step, piece)
    width = pencil(step.width, desk)
    ring = _ring(step, faced, width.value)
    edges = _stated(step, ring, desk)
    stated = stated_piece(line, step.name.text, desk, made_as="facing")
    stated.grain = piece.grain[1] - piece.grain[0]
    marks = marks_of(piece.sheet, desk)
    shape = Shape(tuple(ShapeEdge(edge.name, edge.path) for edge in edges)).holding(marks)
    lay_down(step.name, shape, desk)
    stated.usual.extend(edges)
    followed = named(", ".join(edge.name for edge in faced.outer))
    words = {"name": named(step.name), "piece": named(piece.name), "edges": followed, "width": width.said}
    words |= {"before": named(faced.before.name), "after": named(faced.after.name)}
    desk.stated = stated
    with on_sheet(step.name.text, desk):
        write_step(line, stated.name, "piece.facing", words, desk, width)


def _piece(step: tree.PieceFacing, desk: Desk) -> DraftPiece:
    """The one piece whose edges are faced."""
    names = {name.text.rpartition(".")[0] for name in step.edges}
    first = step.edges[0]
    if len(names) > 1:
        listed = ", ".join(sorted(names))
        raise Refusal(
            "facing-of-several",
            say(
                "a facing follows the edges of one piece; these belong to {listed}. Make one facing for each.",
                listed=str(listed),
            ),
            first.spot,
        )
    (name,) = names
    if not name:
        raise Refusal(
            "edge-without-piece",
            say('"{first}": write the piece too, such as front.{first}.', first=str(first)),
            first.spot,
        )
    if name not in desk.pieces:
        raise desk.missing(say("piece"), tree.Name(name, first.spot), desk.pieces)
    return desk.pieces[name]


def _faced(step: tree.PieceFacing, piece: DraftPiece) -> _Faced:
    """The edges in their order round the piece.

    Raises:
        Refusal: One is not there, they do not follow each other, or they go all round.
    """
    known = [edge.name for edge in piece.edges]
    wanted = {name.text.rpartition(".")[2]: name for name in step.edges}
    for short, name in wanted.items():
        if short not in known:
            raise Refusal(
                "name-not-known",
                say(
                    "{piece} has no edge {short}. Its edges: {known}.",
                    piece=str(piece.name),
                    short=str(short),
                    known=str(", ".join(known)),
                ),
                name.spot,
            )
    count, many = len(known), len(wanted)
    if many == count:
        raise Refusal(
            "facing-all-round",
            say(
                "all {count} edges of {piece} are named; a facing ends at an edge that is not faced. Leave "
                "one out.",
                count=str(count),
                piece=str(piece.name),
            ),
            step.edges[0].spot,
            (Number("edges", count, "count"),),
        )
    for start in range(count):
        run = [piece.edges[(start + k) % count] for k in range(many)]
        if all(edge.name in wanted for edge in run):
            return _Faced(piece.edges[start - 1], tuple(run), piece.edges[(start + many) % count])
    raise Refusal(
        "edges-apart",
        say(
            "{wanted} do not follow each other round {piece}: {known}. Name neighbours.",
            wanted=str(", ".join(wanted)),
            piece=str(piece.name),
            known=str(", ".join(known)),
        ),
        step.edges[0].spot,
    )


def _ring(step: tree.PieceFacing, faced: _Faced, width: float) -> tuple[DraftEdge, ...]:
    """The edges of the facing, counter-clockwise: before, outer ones, after, inner.

    Raises:
        Refusal: The inner edge misses a neighbour, or nothing is left of it.
    """
    spot = step.edges[0].spot
    outer = Path.joined(*(edge.path for edge in faced.outer))
    inner = offset(outer, width) if width > 0 else None
    if inner is None:
        raise _too_wide(step, faced, width)
    drawn = [faced.before.path, *(edge.path for edge in faced.outer), faced.after.path, inner.reversed()]
    if faced.before.name == faced.after.name:
        drawn[0], drawn[-2] = _end_parts(faced.before.path)
    drawn[-1] = reaching(drawn, len(drawn) - 1)
    names = [faced.before.name, *(edge.name for edge in faced.outer), faced.after.name, "inner"]
    try:
        paths = snapped(closed(drawn, names, [spot] * len(drawn)))
    except (
        Refusal
    ):  # the others follow each other round the piece; only the inner edge can miss its neighbours
        raise _too_wide(step, faced, width) from None
    kinds = [faced.before, *(replace(edge, kind=EdgeKind.SEAM, turns=1) for edge in faced.outer), faced.after]
    kinds.append(DraftEdge("inner", EdgeKind.RAW, inner, "", ""))
    return tuple(replace(edge, path=path) for edge, path in zip(kinds, paths, strict=True))


def _end_parts(path: Path) -> tuple[Path, Path]:
    """The last and the first half of the one edge that is not faced."""
    first, last = path.split_at_length(path.length() / 2)
    return last, first


def _too_wide(step: tree.PieceFacing, faced: _Faced, width: float) -> Refusal:
    beside = (faced.before, faced.after)
    room = min(edge.path.length() for edge in beside)
    return Refusal(
        "facing-too-wide",
        say(
            "a facing {width} wide does not end at {before} and {after}, the shorter of which is {room} "
            "long. Make it narrower, but more than nothing.",
            width=f"{width / 10:.1f} cm",
            before=str(faced.before.name),
            after=str(faced.after.name),
            room=f"{room / 10:.1f} cm",
        ),
        step.edges[0].spot,
        (Number("width", width), Number("edge beside", room)),
    )


def _stated(step: tree.PieceFacing, ring: tuple[DraftEdge, ...], desk: Desk) -> list[StatedEdge]:
    """The edges as stated; the allowance of the inner one by its kind, of the others as on the piece."""
    names = numbered([edge.name for edge in ring])
    inner = desk.allowances[EdgeKind.RAW.value]
    return [
        StatedEdge(
            name,
            edge.kind,
            edge.path,
            inner if edge.kind is EdgeKind.RAW and edge is ring[-1] else edge.allowance,
            step.name.spot,
            turns=edge.turns,
            lap=edge.lap,
        )
        for name, edge in zip(names, ring, strict=True)
    ]
