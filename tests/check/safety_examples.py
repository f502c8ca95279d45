"""A passing and a failing example for every rule of safety."""

from __future__ import annotations

from littlefold.body.measurements import Measurements
from littlefold.check import Circumstances
from littlefold.draft.model import Cutting, EdgeKind, Notion
from littlefold.pattern.trace import trace
from tests.check.examples import Example, casing_top, square_neck
from tests.check.garments import BINDING, BODY, block, body, draft, half_top, spoiled, top, top_with, trousers


def aged(months: float, **mm: float) -> Measurements:
    return Measurements.of({**BODY, **mm}, age_months=months)


def older(stature: float, *notions: Notion, garment: str = "coat", sex: str = "girl") -> object:
    measured = Measurements.of({**BODY, "stature": stature}, age_months=120.0, sex=sex)
    return top_with(*notions, measurements=measured, garment=garment)


def hem_cord(**more: object) -> Notion:
    return Notion("hem_cord", 900.0, **more)


def waist(remark: str) -> Notion:
    return Notion("waist_cord", 800.0, remark=remark)


def sleep_bag(neck: float, months: float) -> object:
    """A square bag with a neck of a given girth, closed."""
    kinds = {"hem": ("hem", 20.0), "side": ("seam", 10.0), "neck": ("bound", 0.0), "middle": ("fold", 0.0)}
    halves = tuple(block(n, neck / 4, 600.0, kinds, Cutting(on_fold=True)) for n in ("front", "back"))
    return trace(draft(halves, garment="sleep_bag", measurements=aged(months)))


def nightshirt(length: float, months: float, pieces: str = "one_piece") -> object:
    kinds = {"hem": ("hem", 20.0), "side": ("seam", 10.0), "neck": ("bound", 0.0), "middle": ("fold", 0.0)}
    halves = tuple(block(n, 160.0, length, kinds, Cutting(on_fold=True)) for n in ("front", "back"))
    choices = {"sleepwear": pieces}
    return trace(draft(halves, garment="sleepwear", measurements=aged(months), choices=choices))


US = Circumstances(region="us", us_size="10")
TACKED = "bar tacked, secured"

SAFETY_EXAMPLES = {
    "cord-at-back": Example(top, lambda: top_with(Notion("tie", 300.0, 2, "at the back"))),
    "cord-at-low-hem": Example(
        lambda: older(1400.0, hem_cord(remark="continuous, inside")), lambda: older(1400.0, hem_cord())
    ),
    "cord-at-neck-older": Example(
        lambda: older(1400.0, Notion("neck_cord", 150.0, remark="loop")),
        lambda: older(1400.0, Notion("neck_cord", 151.0, remark="loop")),
    ),
    "cord-at-neck-us": Example(
        lambda: casing_top(Notion("neck_elastic", 320.0)), lambda: casing_top(Notion("neck_cord", 900.0)), US
    ),
    "cord-at-neck-young": Example(
        lambda: casing_top(Notion("neck_elastic", 320.0)), lambda: casing_top(Notion("neck_cord", 900.0))
    ),
    "cord-at-waist-us": Example(
        lambda: older(1400.0, waist(f"free ends 76 mm, {TACKED}")),
        lambda: older(1400.0, waist(f"free ends 77 mm, {TACKED}")),
        US,
    ),
    "cord-ends-knobbed": Example(
        lambda: top_with(waist(f"free ends 60 mm, {TACKED}")),
        lambda: top_with(waist(f"free ends 60 mm with toggles, {TACKED}")),
    ),
    "cord-ends-too-long": Example(
        lambda: top_with(waist(f"free ends 140 mm, {TACKED}")),
        lambda: top_with(waist(f"free ends 141 mm, {TACKED}")),
    ),
    "cord-not-secured": Example(
        lambda: top_with(waist(f"free ends 60 mm, {TACKED}")), lambda: top_with(waist("free ends 60 mm"))
    ),
    "elastic-too-tight": Example(
        lambda: casing_top(Notion("neck_elastic", 320.0)), lambda: casing_top(Notion("neck_elastic", 240.0))
    ),
    "neck-too-tight": Example(lambda: square_neck(243.0), lambda: square_neck(242.0)),
    "sleep-bag-neck": Example(lambda: sleep_bag(300.0, 4.0), lambda: sleep_bag(340.0, 4.0)),
    "sleepwear-burns": Example(top, lambda: nightshirt(600.0, 48.0)),
    "small-parts": Example(
        lambda: top_with(Notion("buttons", None, 3, "11 mm")),
        lambda: top_with(Notion("buttons", None, 3, "11 mm"), measurements=aged(20.0)),
    ),
    "tapes-near-neck": Example(
        lambda: top_with(Notion("press_studs", None, 2), garment="bib"),
        lambda: top_with(Notion("neck_tapes", 250.0, 2), garment="bib"),
    ),
}

__all__ = ["BINDING", "SAFETY_EXAMPLES", "EdgeKind", "body", "half_top", "spoiled", "trousers"]
