"""Small garments made by hand for the tests of the checks: each is sound, and each test spoils one thing.

The body is a child of 104 cm: the medians of Snyder et al. 1977 as ../shared/reference/standards.md 2.1
gives them (head 50.3, neck 24.3, chest 53.3, waist 49.8, hip 53.9, upper arm 16.2, wrist 11.6, fist 17.3,
foot 16.4 cm); body rise and ankle stand beside them as round numbers.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from littlefold.body.measurements import Measurements
from littlefold.draft.model import (
    Cutting,
    Draft,
    DraftEdge,
    DraftNotch,
    DraftPiece,
    DraftSeam,
    EdgeKind,
    EdgeRef,
    Notion,
)
from littlefold.geometry import Cubic, Path, Point, Vector
from littlefold.pattern.trace import trace
from littlefold.problem import Place

if TYPE_CHECKING:
    from littlefold.pattern.model import Pattern, Piece

BODY = {
    "stature": 1040.0,
    "head": 503.0,
    "neck": 243.0,
    "chest": 533.0,
    "waist": 498.0,
    "hip": 539.0,
    "upper_arm": 162.0,
    "wrist": 116.0,
    "fist": 173.0,
    "foot": 164.0,
    "ankle": 150.0,
    "body_rise": 190.0,
}


def body(**mm: float) -> Measurements:
    return Measurements.of({**BODY, **mm}, age_months=54.0)


def line(*points: tuple[float, float]) -> Path:
    return Path.line_through(*(Point(x, y) for x, y in points))


def curve(start: tuple[float, float], way_out: Vector, way_in: Vector, end: tuple[float, float]) -> Path:
    """A cubic that sets out and arrives in given directions, with handles of 0.4 of its chord."""
    p, q = Point(*start), Point(*end)
    reach = 0.4 * p.distance(q)
    return Path((Cubic(p, p + way_out.unit() * reach, q + way_in.unit() * -reach, q),))


def edge(name: str, kind: str, path: Path, allowance: float = 0.0, **more: float) -> DraftEdge:
    return DraftEdge(name, EdgeKind(kind), path, "", "", allowance, **more)


def piece(name: str, edges: tuple[DraftEdge, ...], cutting: Cutting, **more: object) -> DraftPiece:
    """A piece whose grain runs upright through its middle, unless told otherwise."""
    bounds = Path.joined(*(e.path for e in edges)).bounds()
    middle = bounds.centre
    grain = (Point(middle.x, middle.y - bounds.height / 4), Point(middle.x, middle.y + bounds.height / 4))
    whole = {
        "title": name.title(),
        "sheet": "body",
        "cloth": "main",
        "grain": grain,
        "place": Place(line=1),
        **more,
    }
    return DraftPiece(name=name, cutting=cutting, edges=edges, **whole)


def block(
    name: str,
    width: float,
    height: float,
    kinds: dict[str, tuple[str, float]],
    cutting: Cutting,
    **more: object,
) -> DraftPiece:
    """A rectangle; its edges in order are those at the bottom, right, top and left."""
    corners = ((0.0, 0.0), (width, 0.0), (width, height), (0.0, height), (0.0, 0.0))
    edges = tuple(
        edge(edge_name, kind, line(corners[k], corners[k + 1]), allowance)
        for k, (edge_name, (kind, allowance)) in enumerate(kinds.items())
    )
    return piece(name, edges, cutting, **more)


def sew(
    first: str, second: str, *, ease: float = 0.0, gather: bool = False, tolerance: float = 1.5
) -> DraftSeam:
    """A seam from words like `front.side` or `back.armhole+front.armhole`."""
    return DraftSeam(_run(first), _run(second), ease, gather, tolerance, Place(line=9))


def _run(words: str) -> tuple[EdgeRef, ...]:
    return tuple(EdgeRef(*word.split(".")) for word in words.split("+"))


def draft(pieces: tuple[DraftPiece, ...], seams: tuple[DraftSeam, ...] = (), **more: object) -> Draft:
    known = {
        "recipe": "test",
        "title": "Test",
        "garment": "top",
        "recipe_hash": "",
        "stature_range": (800.0, 1340.0),
        "measurements": body(),
        "used": (),
        "choices": {},
        "tape": None,
    }
    return Draft(pieces=pieces, seams=seams, **{**known, **more})


def half_top(name: str, *, width: float = 160.0, neck: float = 112.0, slit: tuple = ()) -> DraftPiece:
    """Half a sleeveless top on the fold: hem, side, armhole, shoulder, neck and fold, all corners true."""
    tip, point, centre = (135.0, 362.0), (neck, 370.0), (0.0, 300.0)
    along = Point(*point) - Point(*tip)
    edges = (
        edge("hem", "hem", line((0.0, 0.0), (width, 0.0)), 20.0),
        edge("side", "seam", line((width, 0.0), (width, 250.0)), 10.0),
        edge("armhole", "bound", curve((width, 250.0), Vector(-1, 0), along.turned_right(), tip)),
        edge("shoulder", "seam", line(tip, point), 10.0),
        edge("neck", "bound", curve(point, along.turned_left(), Vector(-1, 0), centre)),
        edge("middle", "fold", line(centre, (0.0, 0.0))),
    )
    return piece(name, edges, Cutting(on_fold=True), notches=(DraftNotch("side", 125.0),), inside=slit)


TOP_SEAMS = (sew("front.side", "back.side"), sew("front.shoulder", "back.shoulder"))
BINDING = Notion("bias_binding", 1200.0)


def top(front: DraftPiece | None = None, back: DraftPiece | None = None, **more: object) -> Pattern:
    pieces = (front or half_top("front"), back or half_top("back"))
    return trace(draft(pieces, **{"seams": TOP_SEAMS, "notions": (BINDING,), **more}))


def top_with(*notions: Notion, **more: object) -> Pattern:
    return top(notions=(BINDING, *notions), **more)


def spoiled(whole: DraftPiece, name: str, **changes: object) -> DraftPiece:
    """A piece with one edge changed."""
    edges = tuple(replace(e, **changes) if e.name == name else e for e in whole.edges)
    return replace(whole, edges=edges)


def redrawn(pattern: Pattern, name: str, **changes: object) -> Pattern:
    """A pattern with one traced piece changed."""
    pieces = tuple(replace(p, **changes) if p.name == name else p for p in pattern.pieces)
    return replace(pattern, pieces=pieces)


def with_edge(traced: Piece, name: str, **changes: object) -> tuple[DraftEdge, ...]:
    """The edges of a traced piece with one of them changed."""
    return tuple(replace(e, **changes) if e.name == name else e for e in traced.edges)


def sleeve(cap: float = 270.0, width: float = 200.0, hem: float = 200.0) -> DraftPiece:
    """A short sleeve with a symmetrical cap of a given length and straight sides."""
    low, high = 0.0, 300.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if 2 * _half_cap(middle, width).length() < cap else (low, middle)
    right, left = (100.0 + width / 2, 100.0), (100.0 - width / 2, 100.0)
    first = _half_cap(low, width)
    head = (first.end.x, first.end.y)
    edges = (
        edge("hem", "hem", line((100.0 - hem / 2, 0.0), (100.0 + hem / 2, 0.0)), 20.0),
        edge("under_front", "seam", line((100.0 + hem / 2, 0.0), right), 10.0),
        edge("cap_front", "seam", first, 10.0),
        edge("cap_back", "seam", curve(head, Vector(-1, 0), Vector(-1, 0), left), 10.0),
        edge("under_back", "seam", line(left, (100.0 - hem / 2, 0.0)), 10.0),
    )
    notches = (DraftNotch("cap_front", 40.0), DraftNotch("cap_back", 40.0, 2))
    return piece("sleeve", edges, Cutting(count=2, pair=True), notches=notches)


def _half_cap(rise: float, width: float) -> Path:
    return curve((100.0 + width / 2, 100.0), Vector(-1, 0), Vector(-1, 0), (100.0, 100.0 + rise))


def sleeved_top(arm: DraftPiece | None = None, ease: float = 4.33, **more: object) -> Pattern:
    """The top with a sleeve whose cap is sewn to both armholes."""
    body_pieces = tuple(
        spoiled(half_top(n), "armhole", kind=EdgeKind.SEAM, allowance=10.0) for n in ("front", "back")
    )
    seams = (
        *TOP_SEAMS,
        sew("front.armhole+back.armhole", "sleeve.cap_front+sleeve.cap_back", ease=ease),
        sew("sleeve.under_front", "sleeve.under_back"),
    )
    return trace(draft((*body_pieces, arm or sleeve()), seams, **{"notions": (BINDING,), **more}))


def leg(name: str, *, width: float = 160.0, rise: float = 210.0, hem: float = 130.0) -> DraftPiece:
    """Half a trouser leg: hem, inside leg, crotch, waist with a casing, outside leg."""
    fork, up, top = (width + 40.0, 240.0), Vector(1.0, 2.0), (width, 240.0 + rise)
    edges = (
        edge("hem", "hem", line((0.0, 0.0), (hem, 0.0)), 20.0),
        edge("inside", "seam", curve((hem, 0.0), Vector(0, 1), up, fork), 10.0),
        edge("crotch", "seam", curve(fork, up.turned_left(), Vector(0, 1), top), 10.0),
        edge("waist", "casing", line(top, (0.0, 240.0 + rise)), 25.0),
        edge("outside", "seam", line((0.0, 240.0 + rise), (0.0, 0.0)), 10.0),
    )
    notches = (DraftNotch("outside", 200.0), DraftNotch("inside", 120.0), DraftNotch("crotch", 100.0))
    return piece(name, edges, Cutting(count=2, pair=True), notches=notches)


TROUSER_SEAMS = (
    sew("front.outside", "back.outside"),
    sew("front.inside", "back.inside"),
    sew("front.crotch", "front.crotch"),
    sew("back.crotch", "back.crotch"),
)
WAIST_ELASTIC = Notion("waist_elastic", 470.0, remark="12 mm wide")


def trousers(front: DraftPiece | None = None, back: DraftPiece | None = None, **more: object) -> Pattern:
    pieces = (front or leg("front"), back or leg("back"))
    known = {"seams": TROUSER_SEAMS, "garment": "trousers", "notions": (WAIST_ELASTIC,)}
    return trace(draft(pieces, **{**known, **more}))
