"""The statements that make up a piece: begun, its edges, grain, notches, inside lines and marks, and its end."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, get_args

from littlefold.draft.arithmetic import evaluate_angle, evaluate_length, whole_number
from littlefold.draft.attempt import attempt
from littlefold.draft.constructions.on_lines import ON_LINE, off_line
from littlefold.draft.desk import FOLLOWS
from littlefold.draft.model import Cutting, DraftEdge, DraftNotch, EdgeKind, Inside, InsideKind
from littlefold.draft.pieces import StatedEdge, StatedPiece, finished, place_key, traced_edges
from littlefold.draft.refusal import Exhausted, Refusal
from littlefold.geometry import Path
from littlefold.problem import Number, say
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.recipe.recipe import Written

WAYS: dict[str, dict[str, Any]] = {
    "on fold": {"on_fold": True},
    "on the fold": {"on_fold": True},
    "as a pair": {"pair": True},
    "for the wearer's left": {"side": "left"},
    "for the wearer's right": {"side": "right"},
}
INSIDE_KINDS: tuple[InsideKind, ...] = get_args(InsideKind)


def begin_piece(line: Written, desk: Desk) -> None:
    """Begins a piece traced from a sheet: the one named, the one of its own name, or the one in hand."""
    step: tree.Piece = line.statement
    sheet = (
        step.sheet.text if step.sheet else (step.name.text if step.name.text in desk.sheets else desk.sheet)
    )
    if sheet not in desk.sheets:
        raise desk.missing(say("drawing"), step.sheet or step.name, desk.sheets)
    desk.stated = stated_piece(line, sheet, desk)


def stated_piece(line: Written, sheet: str, desk: Desk, **how: Any) -> StatedPiece:
    """A piece in the making, from the parts that every piece line has."""
    step = line.statement
    if len(desk.pieces) >= MOST_PIECES:
        raise Exhausted(
            "too-many-pieces",
            f"the recipe has more than {MOST_PIECES} pieces. Make it shorter.",
            step.name.spot,
        )
    if step.name.text in desk.pieces:
        raise Refusal("name-taken", f'there is a piece "{step.name}" already.', step.name.spot)
    title = desk.words(step.text) or step.name.text.replace("_", " ").capitalize()
    cloth = step.cutting.cloth.text if step.cutting.cloth else "main"
    return StatedPiece(
        step.name.text,
        title,
        sheet,
        cutting(step.cutting),
        cloth,
        line.place(step.name.spot),
        step.name.spot,
        line,
        **how,
    )


def cutting(order: tree.CutOrder) -> Cutting:
    """How often and how a piece is cut."""
    count = order.count.value
    if count != int(count) or not 1 <= count <= MOST_CUT:
        raise Refusal(
            "cut-number",
            f"cut {order.count.text}: a piece is cut a whole number of times, from 1 to {MOST_CUT}.",
            order.count.spot,
        )
    return Cutting(int(count), **WAYS.get(order.way or "", {}))


MOST_CUT = 50
MOST_PIECES = 200


def piece_edges(line: Written, desk: Desk) -> None:
    """States the edges of the piece in hand."""
    stated = in_hand(desk)
    stated.edges_line = line
    _state_edges(line.statement.edges, stated, desk)


def piece_edges_as(line: Written, desk: Desk) -> None:
    """States the same edges as another piece, some of them otherwise."""
    step: tree.EdgesAs = line.statement
    stated = in_hand(desk)
    stated.edges_line = line
    if step.piece.text not in desk.stated_edges:
        raise desk.missing(say("piece with edges"), step.piece, desk.stated_edges)
    instead = {_edge_name(edge): edge for edge in step.but or ()}
    edges = [instead.pop(_edge_name(edge), edge) for edge in desk.stated_edges[step.piece.text]]
    if instead:
        raise Refusal(
            "nothing-to-change",
            f"{step.piece} has no edge {', '.join(instead)}. Its edges: {', '.join(map(_edge_name, edges))}.",
            step.piece.spot,
        )
    _state_edges(tuple(edges), stated, desk)


def _edge_name(edge: tree.Edge) -> str:
    return str(edge.name or edge.line)


def _state_edges(edges: tuple[tree.Edge, ...], stated: StatedPiece, desk: Desk) -> None:
    if stated.edges:
        raise Refusal("edges-twice", f"the edges of {stated.name} are stated already.", edges[0].line.spot)
    desk.stated_edges[stated.name] = edges
    stated.edges.extend(_stated_edge(edge, desk) for edge in edges)
    names = [edge.name for edge in stated.edges]
    for edge in stated.edges:
        if names.count(edge.name) > 1:
            raise Refusal(
                "name-taken",
                f'{stated.name} has two edges "{edge.name}". Name one of them: as NAME.',
                edge.spot,
            )


def _stated_edge(edge: tree.Edge, desk: Desk) -> StatedEdge:
    kind = edge_kind(edge.kind)
    allowance = (
        desk.allowances[kind.value] if edge.allowance is None else evaluate_length(edge.allowance, desk)
    )
    if allowance < 0 or (kind is EdgeKind.FOLD and allowance > 0):
        raise Refusal(
            "allowance-not-possible",
            f"{_edge_name(edge)}: an allowance of {allowance / 10:g} cm is not possible on this edge (a fold has none).",
            edge.line.spot,
            (Number("allowance", allowance),),
        )
    return StatedEdge(
        _edge_name(edge),
        kind,
        desk.line(edge.line),
        allowance,
        edge.line.spot,
        edge.included == "included",
        2 if edge.turns == "turned twice" else 1,
        evaluate_length(edge.lap, desk) if edge.lap is not None else 0.0,
        desk.folded(edge.line),
    )


def edge_kind(name: tree.Name) -> EdgeKind:
    """The kind of edge of that name."""
    try:
        return EdgeKind(name.text)
    except ValueError:
        known = ", ".join(EdgeKind)
        raise Refusal(
            "unknown-edge-kind",
            f'"{name}" is no kind of edge.{did_you_mean(name.text, EdgeKind)} Kinds: {known}.',
            name.spot,
        ) from None


def grain(line: Written, desk: Desk) -> None:
    """States the grain, along a line or an edge of the piece, or at an angle to it."""
    stated, step = in_hand(desk), line.statement
    edge = next((edge.path for edge in stated.edges if edge.name == str(step.line)), None)
    way = edge.start_tangent if edge is not None and edge.is_straight else desk.straight(step.line).tangent(0)
    if isinstance(step, tree.GrainAngle):
        way = way.turned(evaluate_angle(step.angle, desk))
    stated.grain = way


def notch(line: Written, desk: Desk) -> None:
    """Keeps a notch until the edges are traced."""
    in_hand(desk).notches.append(line)


def inside(line: Written, desk: Desk) -> None:
    """A slit, placket, dart or other line inside the piece."""
    stated, step = in_hand(desk), line.statement
    found: InsideKind | None = next((known for known in INSIDE_KINDS if known == step.kind.text), None)
    if found is None:
        known = ", ".join(INSIDE_KINDS)
        raise Refusal(
            "unknown-inside-line",
            f'"{step.kind}" is no kind of inside line.{did_you_mean(step.kind.text, INSIDE_KINDS)} Kinds: {known}.',
            step.kind.spot,
        )
    name = str(step.name or step.line)
    _room_inside(stated, 1, step.kind.spot)
    stated.inside.append(Inside(name, found, desk.line(step.line), str(step.edge or "")))


def holes(line: Written, desk: Desk) -> None:
    """Buttonholes or buttons, evenly spaced along a line from end to end."""
    stated, step = in_hand(desk), line.statement
    path = desk.line(step.line)
    count = whole_number(step.count, step.kind, MOST_CUT, desk) if step.count is not None else 1
    _room_inside(stated, count, step.line.spot)
    half = (evaluate_length(step.length, desk) if step.length is not None else DEFAULT_HOLE) / 2
    kind: InsideKind = "buttonhole" if step.kind == "buttonholes" else "button"
    for index in range(count):
        at = path.length() * (index / (count - 1) if count > 1 else 0.5)
        place = path.at_length(at)
        across = path.tangent_at_length(at).turned_left() * half
        stated.inside.append(
            Inside(f"{kind} {index + 1}", kind, Path.line_through(place + across, place + -across))
        )


def _room_inside(stated: StatedPiece, more: int, spot: tree.Spot) -> None:
    """Refuses more lines inside a piece than any has."""
    count = len(stated.inside) + more
    if count > MOST_INSIDE:
        raise Refusal(
            "too-much-inside",
            f"{stated.name} would have {count} lines, holes and buttons inside; at most {MOST_INSIDE} are drawn.",
            spot,
            (Number("inside", count, "count"), Number("at most", MOST_INSIDE, "count")),
        )


MOST_INSIDE = 200

DEFAULT_HOLE = 15.0
"""The length of a buttonhole of which nothing is said [mm]: an 11 mm button and its thickness; common practice."""


def mark(line: Written, desk: Desk) -> None:
    """Words at a point."""
    in_hand(desk).marks.append((desk.words(line.statement.text), desk.point(line.statement.point)))


def in_hand(desk: Desk) -> StatedPiece:
    """The piece being stated."""
    if desk.stated is None and (desk.piece_refused or "piece" in desk.unread):
        raise Refusal(FOLLOWS, "the piece could not be begun.")
    if desk.stated is None:
        raise Refusal("no-piece-yet", say("this belongs to a piece. Begin with a line: piece NAME cut 1."))
    return desk.stated


def refused(line: Written, desk: Desk) -> None:
    """Without its first line or its edges there is no piece; what else belongs to it is passed over."""
    if isinstance(line.statement, PIECES):
        desk.lost_piece = desk.piece_refused = True
    elif isinstance(line.statement, (tree.Edges, tree.EdgesAs)) and desk.stated is not None:
        desk.failed.add(desk.stated.name)
        desk.stated, desk.lost_piece, desk.piece_refused = None, True, True


PIECES = (tree.Piece, tree.PieceRectangle, tree.PieceBias, tree.PieceBand, tree.PieceFacing)
"""Statements that begin a piece."""


def end_piece(desk: Desk) -> None:
    """Traces the piece in hand, if there is one, and puts it among the pieces; a fault is reported where it lies."""
    desk.piece_refused = False
    if desk.stated is None:
        return
    stated = desk.stated
    if not attempt(stated.edges_line or stated.written, desk, lambda: _trace(stated, desk)):
        desk.failed.add(stated.name)
        desk.lost_piece = True
    desk.stated = None


def _trace(stated: StatedPiece, desk: Desk) -> None:
    """The piece with its edges cut where neighbours meet, and those of its notches that lie on their edges."""
    front = f"{stated.sheet}."
    ends = {
        place_key(point.at): full.removeprefix(front)
        for full, point in desk.points.items()
        if full.startswith(front) and "." not in full[len(front) :]
    }
    edges = traced_edges(stated, ends)
    notches: list[DraftNotch] = []
    for line in stated.notches:
        attempt(line, desk, lambda line=line: notches.append(_notch(line.statement, edges, stated, desk)))  # type: ignore[misc]
    desk.pieces[stated.name] = finished(stated, edges, tuple(notches))


def _notch(
    step: tree.NotchAt | tree.NotchShare | tree.NotchBy,
    edges: tuple[DraftEdge, ...],
    stated: StatedPiece,
    desk: Desk,
) -> DraftNotch:
    edge = next((edge for edge in edges if edge.name == step.edge.text), None)
    if edge is None:
        raise desk.missing(
            say("edge of {piece}", piece=str(stated.name)), step.edge, (one.name for one in edges)
        )
    count = 2 if step.double else 1
    whole = edge.path.length()
    match step:
        case tree.NotchAt(_, point):
            nearest = edge.path.nearest(desk.point(point))
            if nearest.distance > ON_LINE + edge.allowance * edge.included:
                raise off_line(point, step.edge, nearest.distance)
            return DraftNotch(edge.name, nearest.length, count)
        case tree.NotchShare(_, share, base):
            return DraftNotch(edge.name, _from(edge, base, share.value * whole, step.edge, desk), count)
        case tree.NotchBy(_, distance, base):
            return DraftNotch(
                edge.name, _from(edge, base, evaluate_length(distance, desk), step.edge, desk), count
            )


def _from(edge: DraftEdge, base: tree.Name | None, along: float, name: tree.Name, desk: Desk) -> float:
    """The length along an edge, counted from the end that is named."""
    whole = edge.path.length()
    if not 0 <= along <= whole:
        raise Refusal(
            "beyond-the-end",
            f"the notch lies {along / 10:.1f} cm along {edge.name}, which is {whole / 10:.1f} cm long. Bring it nearer.",
            name.spot,
            (Number("notch", along), Number("edge", whole)),
        )
    if base is None:
        if abs(along - whole / 2) > ON_LINE:
            raise Refusal("which-end", f"from which end of {edge.name}? Write: from POINT.", name.spot)
        return along
    place = desk.point(base)
    return along if edge.path.start.distance(place) <= edge.path.end.distance(place) else whole - along
