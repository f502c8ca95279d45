"""What a recipe makes on paper for one child: named points and lines, their steps, and the pieces as stated.

Every number is worked out; nothing here depends on units of speech.  Lengths are millimetres, x to the right,
y up, as drawn (a piece on the fold is its half).
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import TYPE_CHECKING, Literal

from littlefold.draft.guides import Guide, guides

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.body.measurements import Measurements
    from littlefold.geometry import Path, Point
    from littlefold.problem import Place, Problem

LineKind = Literal["line", "arc", "curve"]


@dataclass(frozen=True, slots=True)
class DraftPoint:
    """A named point; `name` is qualified by its drawing (`body.A`), `step` is the number of the step that made it."""

    name: str
    at: Point
    step: int


@dataclass(frozen=True, slots=True)
class DraftLine:
    """A named line, arc or curve; `start` and `end` name the points at its ends (empty where none is named).

    `folds` are the stretches that pleats and tucks fold away, from and to [mm along it].
    """

    name: str
    path: Path
    kind: LineKind
    start: str
    end: str
    step: int
    folds: tuple[tuple[float, float], ...] = ()

    @property
    def guides(self) -> tuple[Guide, ...]:
        """Points by which a hand plots it; worked out when asked for, since few lines are plotted."""
        return () if self.kind == "line" else guides(self.path)

    @property
    def folded(self) -> float:
        """How much of it pleats and tucks fold away when it is sewn [mm]."""
        return sum(end - start for start, end in self.folds)


@dataclass(frozen=True, slots=True)
class Said:
    """A value that a sentence speaks: a length [mm], an angle [rad], a number, a name or words, told apart by `sort`.

    `own` is a length in a unit that the recipe declares, `2 nail`, where it is written so.
    """

    sort: Literal["length", "angle", "number", "name", "word"]
    value: float | str
    own: str = ""


@dataclass(frozen=True, slots=True)
class Step:
    """One act of the pencil.

    Attributes:
        number: Counts from 1 over the whole draft.
        name: The qualified name of what it makes.
        sheet: The drawing it is drawn on.
        kind: The construction, e.g. `point.offset`; a table of sentences has an entry for each kind.
        words: What the sentence speaks, by the name of its place in the sentence.
        formula: The distance as the recipe writes it, e.g. `chest / 4 + 1 cm`; empty where there is none.
        terms: The names and the lengths of lines in the formula and their values, to show it with numbers put in.
        value: The same distance worked out, after tape rounding [mm]; None where there is none.
        exact: The distance before tape rounding [mm].
        source: Where the formula comes from.
        line: The line in the recipe.
        column: The column in the recipe.
        remark: The recipe's own words about it.
    """

    number: int
    name: str
    sheet: str
    kind: str
    words: Mapping[str, Said]
    formula: str
    value: float | None
    exact: float | None
    source: str
    line: int
    column: int
    remark: str = ""
    terms: tuple[tuple[str, Said], ...] = ()


class EdgeKind(StrEnum):
    """What becomes of an edge when the garment is made."""

    FOLD = "fold"
    SEAM = "seam"
    HEM = "hem"
    CASING = "casing"
    BOUND = "bound"
    FACED = "faced"
    GATHERED = "gathered"
    BUTTON = "button"
    SELVEDGE = "selvedge"
    RAW = "raw"


@dataclass(frozen=True, slots=True)
class DraftEdge:
    """One edge of a piece, in order round it (counter-clockwise).

    Attributes:
        name: Unique in the piece.
        kind: What becomes of it.
        path: The stitch line, cut where its neighbours meet.
        start: The point at its start, as the recipe names it; empty where it has no name.
        end: The point at its end.
        allowance: The width of cloth beyond the stitch line [mm]; 0 on a fold.
        included: Whether the line as drawn was the cutting line, so that the stitch line lies `allowance` inside it.
        turns: How often a hem is turned (1, or 2 for turned twice; allowance is the finished depth of the hem).
        lap: How far a button edge laps over its partner beyond the closing line [mm].
        folded: How much of its length pleats and tucks fold away before it is sewn [mm].
    """

    name: str
    kind: EdgeKind
    path: Path
    start: str
    end: str
    allowance: float = 0.0
    included: bool = False
    turns: int = 1
    lap: float = 0.0
    folded: float = 0.0

    @property
    def sewn_length(self) -> float:
        """The length at which it is sewn [mm]: as drawn, less what pleats and tucks fold away."""
        return self.path.length() - self.folded


@dataclass(frozen=True, slots=True)
class Cutting:
    """How often and how a piece is cut: `pair` are mirror images; `side` is the wearer's, where it matters."""

    count: int = 1
    on_fold: bool = False
    pair: bool = False
    side: Literal["", "left", "right"] = ""

    @property
    def layers(self) -> int:
        """How many times the drawn outline goes round the body: a fold counts twice."""
        return self.count * (2 if self.on_fold else 1)


@dataclass(frozen=True, slots=True)
class DraftNotch:
    """A notch on an edge, `at` millimetres from the start of the edge; `count` 1 is single, 2 double."""

    edge: str
    at: float
    count: int = 1


InsideKind = Literal[
    "slit", "placket", "buttonhole", "button", "opening", "dart", "pleat", "tuck", "gather", "line"
]


@dataclass(frozen=True, slots=True)
class Inside:
    """A line inside a piece; `edge` is the edge it opens on to (slit, placket, dart), empty where it touches none."""

    name: str
    kind: InsideKind
    path: Path
    edge: str = ""


@dataclass(frozen=True, slots=True)
class DraftPiece:
    """A piece as the recipe states it, traced from the draft; `made_as` tells strips and facings from the body's own."""

    name: str
    title: str
    sheet: str
    cutting: Cutting
    cloth: str
    edges: tuple[DraftEdge, ...]
    grain: tuple[Point, Point]
    notches: tuple[DraftNotch, ...] = ()
    inside: tuple[Inside, ...] = ()
    marks: tuple[tuple[str, Point], ...] = ()
    place: Place | None = None
    made_as: Literal["traced", "rectangle", "bias", "band", "facing"] = "traced"


@dataclass(frozen=True, slots=True)
class EdgeRef:
    """An edge of a piece, by name."""

    piece: str
    edge: str


@dataclass(frozen=True, slots=True)
class DraftSeam:
    """Two runs of edges to be sewn together.

    `ease` is how much longer the second run is meant to be [mm]; with `gather` the second run is drawn up to the
    first, whatever its length.
    """

    first: tuple[EdgeRef, ...]
    second: tuple[EdgeRef, ...]
    ease: float
    gather: bool
    tolerance: float
    place: Place


@dataclass(frozen=True, slots=True)
class Notion:
    """Something to buy or cut beside the cloth.

    Attributes:
        name: What it is: `elastic`, `cord`, `tape`, `buttons` ...
        length: Of each [mm]; None for things that are counted only.
        count: How many.
        remark: The recipe's words about it.
        where: The part of the garment it sits at: `neck`, `waist`, `hem`, `hood` ...; empty where the recipe says none.
        fixed: Whether it is sewn fast at its middle, so that it cannot be pulled out.
        free_end: How far each end hangs free when the garment is opened to its largest [mm].
    """

    name: str
    length: float | None
    count: int = 1
    remark: str = ""
    where: str = ""
    fixed: bool = False
    free_end: float | None = None


@dataclass(frozen=True, slots=True)
class Comparison:
    """A check line of the recipe, worked out; lengths in mm."""

    left: float
    sign: str
    right: float
    unit: str
    left_text: str
    right_text: str
    passes: bool
    reason: str
    severity: str
    place: Place


@dataclass(frozen=True, slots=True)
class Amount:
    """A named value of the recipe: measurement, choice, table value or amount; `unit` as in `problem.Number`."""

    name: str
    value: float | str
    unit: str
    formula: str
    title: str
    source: str
    line: int


@dataclass(frozen=True, slots=True)
class DraftSheet:
    """One drawing of the recipe: its name, its remark about the paper, and whether its left edge is a fold."""

    name: str
    remark: str
    on_fold: bool = False


@dataclass(frozen=True, slots=True)
class Draft:
    """Everything a recipe makes for one child, before allowances.

    `openings` are those that the recipe states itself, by the part of the body (`neck`) [mm], fully undone;
    `stretch` is how much longer the main cloth stretches, as a part of itself; 0 for a woven cloth.
    """

    recipe: str
    title: str
    garment: str
    recipe_hash: str
    stature_range: tuple[float, float]
    measurements: Measurements
    used: tuple[str, ...]
    choices: Mapping[str, float | str]
    tape: str | None
    amounts: tuple[Amount, ...] = ()
    sheets: tuple[DraftSheet, ...] = ()
    points: Mapping[str, DraftPoint] = field(default_factory=dict)
    lines: Mapping[str, DraftLine] = field(default_factory=dict)
    steps: tuple[Step, ...] = ()
    pieces: tuple[DraftPiece, ...] = ()
    seams: tuple[DraftSeam, ...] = ()
    notions: tuple[Notion, ...] = ()
    work: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    source: str = ""
    comparisons: tuple[Comparison, ...] = ()
    openings: Mapping[str, float] = field(default_factory=dict)
    stretch: float = 0.0
    problems: tuple[Problem, ...] = ()
