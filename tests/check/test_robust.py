"""No pattern, however odd, makes a rule fail by exception."""

from __future__ import annotations

from math import isfinite

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from littlefold.check import Circumstances, check
from littlefold.check.report import cm
from littlefold.draft.model import Cutting, DraftNotch, EdgeKind, Inside, Notion
from littlefold.pattern.trace import trace
from tests.check.garments import body, draft, edge, line, piece, sew

places = st.tuples(st.integers(-300, 300), st.integers(-300, 300))
names = st.sampled_from(["neck", "armhole", "side", "hem", "crotch", "waist", "cap", "wrist", "shoulder"])
kinds = st.sampled_from([kind.value for kind in EdgeKind])
cuttings = st.builds(Cutting, st.integers(1, 4), st.booleans(), st.booleans(), st.sampled_from(["", "left"]))
words = st.sampled_from(
    ["elastic", "neck_cord", "buttons", "sash", "bias_binding", "hem drawstring 3 mm wide", "tie free 4 cm"]
)
notions = st.builds(Notion, words, st.one_of(st.none(), st.floats(1, 2000)), st.integers(1, 3))
garments = st.sampled_from(["top", "bib", "trousers", "sleepwear", "sleep_bag", "block", "skirt", "hat", ""])
boxes = st.builds(
    Circumstances,
    region=st.sampled_from(["eu", "us", ""]),
    us_size=st.sampled_from(["", "2T", "10", "nonsense"]),
    paper=st.one_of(st.none(), st.just((210.0, 297.0))),
    cloth_width=st.one_of(st.none(), st.just(300.0)),
    stretch=st.floats(0, 1),
)


@st.composite
def pieces(draw, name: str):
    """A polygon of three to six corners in any order, each edge of any name and kind."""
    corners = draw(st.lists(places, min_size=3, max_size=6, unique=True))
    edge_names = draw(st.lists(names, min_size=len(corners), max_size=len(corners), unique=True))
    ways = zip(corners, [*corners[1:], corners[0]], edge_names, strict=True)
    widths = st.floats(0, 60)
    edges = tuple(edge(n, draw(kinds), line(p, q), draw(widths), lap=draw(widths)) for p, q, n in ways)
    at = draw(st.floats(0, 300))
    slit = Inside("slit", "slit", line(draw(places), (301, 301)), edge_names[0])
    return piece(name, edges, draw(cuttings), notches=(DraftNotch(edge_names[0], at),), inside=(slit,))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.data())
def test_any_pattern_is_judged_in_words(data):
    first, second = data.draw(pieces("front")), data.draw(pieces("back_facing"))
    whole = draft(
        (first, second),
        (
            sew(
                f"front.{first.edges[0].name}",
                f"back_facing.{second.edges[0].name}",
                gather=data.draw(st.booleans()),
            ),
        ),
        garment=data.draw(garments),
        notions=tuple(data.draw(st.lists(notions, max_size=3))),
        measurements=body().without(
            *data.draw(st.lists(st.sampled_from(["stature", "head", "waist", "neck"]), unique=True))
        ),
    )
    for problem in check(trace(whole), data.draw(boxes)):
        assert problem.message
        assert all(isfinite(number.value) for number in problem.numbers)


@given(st.floats(-3000, 3000))
def test_lengths_are_said_to_a_tenth_of_a_millimetre(mm: float):
    said = str(cm(mm))
    assert said.endswith(" cm")
    assert abs(float(said.removesuffix(" cm")) * 10 - mm) <= 0.0501


def test_nothing_is_said_as_minus_nothing():
    assert str(cm(-0.001)) == "0 cm"
    assert str(cm(212.5)) == "21.25 cm"
