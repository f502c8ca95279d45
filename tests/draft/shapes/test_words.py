"""What each operation gives its sentence to speak.  The table is kept in step with the table of sentences.

Sorts: name, length [mm], angle [rad], number, word (`none` where the sentence leaves the part out).
"""

from __future__ import annotations

from tests.draft.shapes.frame import BLOCK

FRAME = BLOCK

WORDS = {
    # Draw round `edges`, in order: the outline `name`.
    "shape.outline": {"name": "name", "edges": "name"},
    # Cut `outline` apart along `line`; the part by `nearer` is `first`, the other `second`.
    "shape.split": dict.fromkeys(("outline", "line", "first", "nearer", "second"), "name"),
    # Cut `outline` along `lines` (`count` of them) and open each by `opening` at `edge`; if `second` is not none, also
    # by `second_opening` at `second_edge`; else the other end stays closed.  Draw the edge across: `name`.
    "shape.slash": {
        **dict.fromkeys(("outline", "lines", "name", "edge"), "name"),
        "opening": "length",
        "count": "number",
        "second": "word",
    },
    # Fold the dart `first_leg`-`tip`-`second_leg` of `outline` shut; if `opening` is not none, cut along `line` first, it
    # opens by `angle`.  The new outline is `name`.
    "shape.close_dart": {
        **dict.fromkeys(("dart", "tip", "outline", "first_leg", "second_leg", "name", "line"), "name"),
        "opening": "word",
        "angle": "angle",
    },
    # Cut `outline` along `line`, part it by `taken` (twice the depth; four times for boxed and inverted) and fold
    # `depth` deep, the fold pointing `way`; if `several` is not none, `count` of them `apart` from each other: `name`.
    "shape.pleats": {
        **dict.fromkeys(("outline", "line", "name"), "name"),
        **dict.fromkeys(("depth", "apart", "taken"), "length"),
        "count": "number",
        "way": "word",
        "several": "word",
    },
    # Widen `outline` evenly until `edge` grows from `before` to `length`, that is `ratio` times; `by` is ratio or length;
    # if `between` is not none, only from `start` to `end`.
    "shape.gathers": {
        **dict.fromkeys(("outline", "edge", "name"), "name"),
        **dict.fromkeys(("before", "length"), "length"),
        "by": "word",
        "between": "word",
        "ratio": "number",
    },
    # Lay `second` (turned over if `over` is not none) with its `edge` on that of `first`; both are `length` long: `name`.
    "shape.join": {
        **dict.fromkeys(("first", "second", "edge", "name"), "name"),
        "over": "word",
        "length": "length",
    },
    # Draw a line `width` beyond `edge` of `outline`, fold the paper back along `edge` and copy `before` and `after`
    # through; the old edge stays as `line`: `name`.
    "shape.button_stand": {
        **dict.fromkeys(("edge", "outline", "name", "line", "before", "after"), "name"),
        "width": "length",
    },
    # Draw `name`, `drawn` wide (half of `width` if `fold` is not none) and `height` high.
    "piece.rectangle": {
        "name": "name",
        **dict.fromkeys(("width", "height", "drawn"), "length"),
        "fold": "word",
    },
    # Cut `name` at 45 degrees to the selvedge, `length` long (`drawn` from the fold) and `width` wide.
    "piece.bias": {"name": "name", **dict.fromkeys(("length", "width", "drawn"), "length"), "fold": "word"},
    # Draw `name` as long as `along`, that is `length`, and `width` wide; its left edge is the fold if `fold` is not none.
    "piece.band": {
        "name": "name",
        "along": "name",
        **dict.fromkeys(("length", "width"), "length"),
        "fold": "word",
    },
    # Copy `edges` of `piece`, draw a line `width` inside them from `after` to `before`: `name`.
    "piece.facing": {
        **dict.fromkeys(("name", "piece", "edges", "before", "after"), "name"),
        "width": "length",
    },
}
WORDS["shape.tucks"] = WORDS["shape.pleats"]
ONLY_SOMETIMES = {
    "shape.slash": {"second_opening": "length", "second_edge": "name"},
    "shape.close_dart": {"line": "name"},
    "shape.gathers": {"start": "name", "end": "name"},
}


def told(step):
    return {name: said.sort for name, said in step.words.items()}


def test_every_kind_gives_its_words(drafted):
    """
    line cut from P to Q
    point M right of B by 6 cm
    point N right of B by 10 cm
    point T above Q by 20 cm
    outline again edges middle, hem, side, waist
    split block along cut into inner nearer A and outer
    slash block along P-Q as flared opening 4 cm at hem
    slash block along P-Q as fuller opening 4 cm at hem and 2 cm at waist
    close dart M-T-N of block as swung opening T-C
    close dart M-P-N of block as shut
    pleats in block along P-Q as pleated depth 1 cm leftward
    tucks in block along P-Q as tucked depth 1 cm count 2 apart 4 cm leftward
    gathers in block across waist as gathered by ratio 2
    gathers in block across waist as gathered_too to 30 cm
    gathers in block across hem from M to N as gathered_between to 6 cm
    join inner and outer at cut as whole
    button stand on middle of block by 2 cm as wide
    piece flap rectangle 12 cm by 5 cm cut 1 on fold
    piece binding bias strip 45 cm by 3 cm cut 2
    piece front from block cut 1 on fold
    edges middle fold, hem hem, side seam, waist seam
    piece band band along front.waist by 4 cm cut 1 on fold
    piece lining facing of front.hem by 4 cm cut 1 on fold
    """
    assert not drafted.problems
    steps = [step for step in drafted.steps if step.kind in WORDS]
    assert {step.kind for step in steps} == set(WORDS)
    for step in steps:
        known = WORDS[step.kind] | ONLY_SOMETIMES.get(step.kind, {})
        always = {name for name in WORDS[step.kind] if name not in ONLY_SOMETIMES.get(step.kind, {})}
        assert told(step).items() <= known.items(), step.kind
        assert always <= set(told(step)), step.kind


def test_steps_lie_on_the_sheet_of_what_they_make(drafted):
    """
    line cut from P to Q
    split block along cut into inner nearer A and outer
    """
    split = next(step for step in drafted.steps if step.kind == "shape.split")
    assert (split.name, split.sheet) == ("inner", "inner")
    assert drafted.lines["outer.cut"].step == drafted.lines["inner.cut"].step == split.number
