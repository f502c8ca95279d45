"""One passing and one failing example for every rule; `test_register.py` asks for both by its code."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from littlefold.body.measurements import Origin, Reading
from littlefold.check import Circumstances
from littlefold.draft.model import (
    Comparison,
    Cutting,
    DraftNotch,
    DraftPoint,
    DraftSheet,
    EdgeKind,
    Inside,
    Notion,
)
from littlefold.geometry import Path, Point
from littlefold.pattern.trace import trace
from littlefold.problem import Place
from tests.check.garments import (
    TOP_SEAMS,
    TROUSER_SEAMS,
    block,
    body,
    draft,
    edge,
    half_top,
    leg,
    line,
    piece,
    redrawn,
    sew,
    sleeve,
    sleeved_top,
    spoiled,
    top,
    top_with,
    trousers,
    with_edge,
)

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.model import DraftPiece
    from littlefold.pattern.model import Pattern


@dataclass(frozen=True, slots=True)
class Example:
    """Makers of a pattern that passes a rule and of one that fails it."""

    passes: Callable[[], Pattern]
    fails: Callable[[], Pattern]
    circumstances: Circumstances = field(default_factory=Circumstances)


def open_outline() -> Pattern:
    sound = top()
    short = with_edge(sound.piece("front"), "hem", path=line((0.0, 0.0), (155.0, 0.0)))
    return redrawn(sound, "front", edges=short)


def with_outline(stitch: Path, cut: Path | None = None) -> Pattern:
    sound = top()
    outline = replace(
        sound.piece("front").outline, stitch=stitch, cut=cut or sound.piece("front").outline.cut
    )
    return redrawn(sound, "front", outline=outline)


def bow_tie() -> Pattern:
    return with_outline(line((0, 0), (160, 0), (0, 300), (160, 300), (0, 0)))


def clockwise() -> Pattern:
    return with_outline(top().piece("front").outline.stitch.reversed())


def cut_too_small() -> Pattern:
    stitch = top().piece("front").outline.stitch
    return with_outline(stitch, line((0, 0), (155, 0), (155, 300), (0, 300), (0, 0)))


def band(kinds: dict[str, tuple[str, float]], *, count: int = 1, width: float = 480.0) -> DraftPiece:
    return block("strip", width, 60.0, kinds, Cutting(count=count))


PLAIN = {"long": ("seam", 10.0), "end": ("seam", 10.0), "top": ("hem", 10.0), "start": ("seam", 10.0)}


def short_edge() -> Pattern:
    return trace(draft((block("strip", 480.0, 1.5, PLAIN, Cutting()),)))


def gathered(length: float) -> Pattern:
    """A strip of 40 cm to which another is gathered, notched on both."""
    marks = (DraftNotch("long", 100.0),)
    plain = replace(band(PLAIN, width=400.0), name="plain", notches=marks)
    full = replace(band(PLAIN, width=length), name="full", notches=marks)
    return trace(draft((plain, full), (sew("plain.long", "full.long", gather=True),)))


def slanted_hem(rise: float) -> DraftPiece:
    """The front with a side seam that ends higher, so that hem and side no longer stand square."""
    sound = half_top("front")
    hem = spoiled(sound, "hem", path=line((0.0, 0.0), (160.0, rise)))
    return spoiled(hem, "side", path=line((160.0, rise), (160.0, 250.0)))


def lopsided(cutting: Cutting) -> Pattern:
    edges = (
        edge("low", "hem", line((0, 0), (200, 0)), 10.0),
        edge("slant", "hem", line((200, 0), (60, 180)), 10.0),
        edge("back", "hem", line((60, 180), (0, 0)), 10.0),
    )
    return trace(draft((piece("flap", edges, cutting),)))


def inside(kind: str, *points: tuple[float, float], at: str = "") -> tuple[Inside, ...]:
    return (Inside("line", kind, line(*points), at),)


def round_hem(depth: float) -> Pattern:
    """A half circle of 10 cm radius on the fold, hemmed all round."""
    from littlefold.geometry import Arc  # noqa: PLC0415 - only here

    arc = Path((Arc(Point(0, 0), 100.0, -1.5707963267948966, 3.141592653589793),))
    edges = (edge("hem", "hem", arc, depth), edge("middle", "fold", Path.line_through(arc.end, arc.start)))
    return trace(draft((piece("round", edges, Cutting(on_fold=True)),)))


def buttoned(lap: float, *notions: Notion) -> Pattern:
    kinds = {**PLAIN, "end": ("button", 10.0)}
    strip = spoiled(band(kinds), "end", lap=lap)
    return trace(draft((strip,), notions=notions))


def casing_top(*notions: Notion) -> Pattern:
    """The top with a casing at the neck."""
    pieces = tuple(
        spoiled(half_top(n), "neck", kind=EdgeKind.CASING, allowance=20.0) for n in ("front", "back")
    )
    return top(*pieces, notions=(Notion("bias_binding", 600.0), *notions))


def bodied(build: Callable[..., Pattern], **mm: float) -> Pattern:
    return build(measurements=body(**mm))


def collared(length: float) -> Pattern:
    kinds = {"neck": ("seam", 10.0), "end": ("seam", 10.0), "outer": ("seam", 10.0), "middle": ("fold", 0.0)}
    collar = block("collar", length, 50.0, kinds, Cutting(count=2, on_fold=True))
    parts = (half_top("front"), half_top("back"), collar)
    return trace(draft(parts, TOP_SEAMS))


def square_neck(girth: float, garment: str = "top") -> Pattern:
    """A sack whose neck is its upper edge."""
    kinds = {"hem": ("hem", 20.0), "side": ("seam", 10.0), "neck": ("bound", 0.0), "middle": ("fold", 0.0)}
    halves = tuple(block(n, girth / 4, 300.0, kinds, Cutting(on_fold=True)) for n in ("front", "back"))
    return trace(draft(halves, garment=garment))


def estimated(origin: Origin) -> Pattern:
    measured = body().with_reading("chest", Reading(533.0, origin))
    return top(measurements=measured, used=("chest", "neck"))


def compared(*, passes: bool) -> Pattern:
    said = Comparison(
        500.0, ">=", 520.0, "mm", "round of neck", "head + 2 cm", passes, "It must pass.", "error", Place()
    )
    return top(comparisons=(said,))


def sheeted(*names: str) -> Pattern:
    drawn = {
        f"body.{n}": DraftPoint(f"body.{n}", at, 1) for n, at in (("A", Point(0, 0)), ("B", Point(160, 300)))
    }
    sheets = tuple(DraftSheet(name, "", on_fold=True) for name in names)
    return top(sheets=sheets, points=drawn)


def notched(at: float) -> Pattern:
    sound = top()
    moved = tuple(replace(notch, at=at) for notch in sound.piece("front").notches)
    return redrawn(sound, "front", notches=moved)


def grained(*ends: Point) -> Pattern:
    return redrawn(top(), "front", grain=ends)


def tops(**changes: object) -> Pattern:
    return top(*(half_top(name, **changes) for name in ("front", "back")))


def plain_waist(half: Callable[[str], DraftPiece]) -> Pattern:
    """Trousers of which nothing draws in the waist."""
    pieces = tuple(
        spoiled(half(name), "waist", kind=EdgeKind.BOUND, allowance=0.0) for name in ("front", "back")
    )
    return trousers(*pieces, notions=())


def legs(**changes: object) -> Pattern:
    return trousers(*(leg(name, **changes) for name in ("front", "back")))


EXAMPLES = {
    "allowance-missing": Example(top, lambda: top(spoiled(half_top("front"), "side", allowance=0.0))),
    "allowance-unusual": Example(top, lambda: top(spoiled(half_top("front"), "side", allowance=100.0))),
    "allowances-differ": Example(top, lambda: top(spoiled(half_top("front"), "side", allowance=15.0))),
    "armhole-too-tight": Example(top, lambda: bodied(top, upper_arm=240.0)),
    "binding-short": Example(top, lambda: top(notions=(Notion("bias_binding", 900.0),))),
    "block-neck-wide": Example(
        lambda: square_neck(310.0, garment="block"), lambda: square_neck(320.0, garment="block")
    ),
    "body-outside-suits": Example(top, lambda: bodied(top, stature=1400.0)),
    "button-edge-lap": Example(lambda: buttoned(20.0), lambda: buttoned(5.0)),
    "cap-ease": Example(sleeved_top, lambda: sleeved_top(sleeve(cap=290.0), ease=24.33)),
    "casing-empty": Example(lambda: casing_top(Notion("neck_elastic", 320.0)), casing_top),
    "casing-too-narrow": Example(
        lambda: casing_top(Notion("neck_elastic", 320.0, remark="12 mm wide")),
        lambda: casing_top(Notion("neck_elastic", 320.0, remark="15 mm wide")),
    ),
    "chest-ease": Example(top, lambda: tops(width=140.0)),
    "cloth-too-narrow": Example(top, top, Circumstances(cloth_width=335.0)),
    "collar-length": Example(lambda: collared(280.0), lambda: collared(240.0)),
    "corner-at-fold": Example(top, lambda: top(slanted_hem(20.0))),
    "crotch-depth": Example(trousers, lambda: bodied(trousers, body_rise=230.0)),
    "cuff-passes-fist": Example(sleeved_top, lambda: sleeved_top(sleeve(hem=160.0))),
    "cut-inside-stitch": Example(top, cut_too_small),
    "edge-sewn-twice": Example(top, lambda: top(seams=(*TOP_SEAMS, sew("front.side", "back.shoulder")))),
    "edge-too-short": Example(top, short_edge),
    "edges-bend-at-seam": Example(top, lambda: top(slanted_hem(20.0))),
    "elastic-length": Example(trousers, lambda: trousers(notions=(Notion("waist_elastic", 300.0),))),
    "elastic-reach": Example(trousers, lambda: trousers(notions=(Notion("waist_elastic", 250.0),))),
    "fastener-missing": Example(lambda: buttoned(20.0, Notion("buttons", None, 3)), lambda: buttoned(20.0)),
    "fold-bent": Example(
        top,
        lambda: top(
            spoiled(half_top("front"), "middle", path=line((0.0, 300.0), (-20.0, 150.0), (0.0, 0.0)))
        ),
    ),
    "fold-not-cut-on-fold": Example(top, lambda: top(replace(half_top("front"), cutting=Cutting()))),
    "gather-ratio": Example(lambda: gathered(800.0), lambda: gathered(1400.0)),
    "grain-missing": Example(top, lambda: grained(Point(50, 50), Point(50, 55))),
    "hem-passes-foot": Example(trousers, lambda: legs(hem=100.0)),
    "hem-too-curved": Example(lambda: round_hem(10.0), lambda: round_hem(40.0)),
    "inside-line-outside": Example(
        lambda: top(half_top("front", slit=inside("buttonhole", (50, 50), (50, 60)))),
        lambda: top(half_top("front", slit=inside("buttonhole", (300, 50), (300, 60)))),
    ),
    "label-does-not-fit": Example(top, lambda: trace(draft((block("strip", 40.0, 20.0, PLAIN, Cutting()),)))),
    "measurements-estimated": Example(lambda: estimated(Origin.GIVEN), lambda: estimated(Origin.ESTIMATED)),
    "neck-passes-head": Example(top, lambda: tops(neck=75.0)),
    "notch-missing": Example(
        trousers, lambda: trousers(replace(leg("front"), notches=()), replace(leg("back"), notches=()))
    ),
    "notch-off-edge": Example(top, lambda: notched(300.0)),
    "outline-crosses-itself": Example(top, bow_tie),
    "outline-open": Example(top, open_outline),
    "outline-wrong-way": Example(top, clockwise),
    "paper-needed": Example(top, lambda: sheeted("body")),
    "paper-too-small": Example(top, top, Circumstances(paper=(297.0, 350.0))),
    "recipe-check-fails": Example(lambda: compared(passes=True), lambda: compared(passes=False)),
    "seam-lengths-differ": Example(top, lambda: top(slanted_hem(20.0))),
    "seam-without-partner": Example(top, lambda: top(seams=TOP_SEAMS[:1])),
    "seat-ease": Example(trousers, lambda: bodied(trousers, hip=720.0)),
    "sewn-fold": Example(top, lambda: top(seams=(*TOP_SEAMS, sew("front.middle", "back.middle")))),
    "side-not-said": Example(lambda: lopsided(Cutting(side="left")), lambda: lopsided(Cutting())),
    "sleeve-too-tight": Example(sleeved_top, lambda: sleeved_top(measurements=body(upper_arm=190.0))),
    "trips-on-hem": Example(
        lambda: bodied(trousers, inside_leg=230.0), lambda: bodied(trousers, inside_leg=210.0)
    ),
    "two-of-a-side": Example(lambda: lopsided(Cutting(2, pair=True)), lambda: lopsided(Cutting(2))),
    "waist-slips": Example(trousers, lambda: plain_waist(leg)),
    "waist-too-tight": Example(trousers, lambda: bodied(trousers, waist=700.0)),
    "waist-passes-hip": Example(trousers, lambda: bodied(trousers, hip=700.0)),
}

# These depend on what the circumstances say; the passing example is the same pattern with nothing said.
SAID_NOTHING = ("cloth-too-narrow", "paper-too-small")
__all__ = ["EXAMPLES", "SAID_NOTHING", "TROUSER_SEAMS", "Example", "top_with"]
