"""The desk on which a draft grows: values, points, lines and pieces made so far, and how they are looked up.

It is the only thing in this stage that changes.  It lives as long as one evaluation; what comes out is a
`Draft`, which does not change.
"""

from __future__ import annotations

import itertools
from dataclasses import dataclass, field
from difflib import get_close_matches
from typing import TYPE_CHECKING

from littlefold.draft.model import DraftLine
from littlefold.draft.quantity import UNITS, Quantity
from littlefold.draft.refusal import Exhausted, Missing, Refusal
from littlefold.geometry import Line, Path, Point
from littlefold.problem import say
from littlefold.recipe import tree

if TYPE_CHECKING:
    from collections.abc import Iterable

    from littlefold.body.measurements import Measurements
    from littlefold.body.tape import TapeMark
    from littlefold.draft.model import (
        Amount,
        Comparison,
        DraftPiece,
        DraftPoint,
        DraftSeam,
        DraftSheet,
        Notion,
        Step,
    )
    from littlefold.draft.pieces import StatedPiece
    from littlefold.draft.shapes.shape import Shape
    from littlefold.problem import Problem, Saying
    from littlefold.recipe.recipe import Written

Value = Quantity | str
"""A length, number, angle, age; or the name of an option."""

DEFAULT_ALLOWANCES = {
    "fold": 0.0,
    "seam": 10.0,
    "hem": 20.0,
    "casing": 20.0,
    "bound": 0.0,
    "faced": 6.0,
    "gathered": 10.0,
    "button": 0.0,
    "selvedge": 0.0,
    "raw": 0.0,
}
"""The allowance of an edge of which nothing is said [mm]: plain seam 1 cm (see docs/decisions.md), faced edge 1/4 in
 rounded to 6 mm; hem and casing 2 cm, common practice, no source."""

JOINT = 1e-3
"""Lines of a run meet within this [mm]: less than a pencil can show."""

MOST_STEPS = 2_000
"""A draft of more steps is refused: a garment has fewer than a hundred."""

FOLLOWS = "follows-from-another"
"""The code of a refusal whose cause has been reported already; it is not reported again."""

MOST_ACTS = 20_000
"""Constructions done in one evaluation, trials of `find` among them; bounds the time a stranger's recipe can take."""


@dataclass(slots=True)
class Budget:
    """What is left of the acts allowed; one for a desk and all its trials."""

    acts: int = MOST_ACTS

    def spend(self, made: tree.Name, acts: int) -> None:
        """Counts some acts.

        Raises:
            Exhausted: There is none left.
        """
        self.acts -= acts
        if self.acts < 0:
            raise Exhausted(
                "too-much-to-draw",
                f"the recipe asks for more than {MOST_STEPS} steps or {MOST_ACTS} trials. Make it shorter.",
                made.spot,
            )


@dataclass(slots=True)
class Branch:
    """A `when` in force: whether its present part holds, and whether one of its parts has held."""

    holds: bool
    has_held: bool


@dataclass(frozen=True, slots=True)
class Laid:
    """An outline as it lies on its sheet, and the number of the step that laid it there."""

    shape: Shape
    step: int


@dataclass(slots=True)
class Desk:
    """All that has been made so far."""

    measurements: Measurements
    tape: TapeMark | None
    language: str = "en"
    values: dict[str, Value] = field(default_factory=dict)
    units: dict[str, Quantity] = field(default_factory=lambda: dict(UNITS))
    old_units: dict[str, str] = field(default_factory=dict)
    """Amounts that are lengths in a unit of the recipe's own, and which."""
    options: dict[str, tuple[str, ...]] = field(default_factory=dict)
    choices: list[str] = field(default_factory=list)
    """The names of all choices, those of a recipe begun with among them."""
    tables: dict[str, tree.Table] = field(default_factory=dict)
    amounts: list[Amount] = field(default_factory=list)
    sheets: dict[str, DraftSheet] = field(default_factory=dict)
    sheet: str = ""
    points: dict[str, DraftPoint] = field(default_factory=dict)
    lines: dict[str, DraftLine] = field(default_factory=dict)
    outlines: dict[str, Laid] = field(default_factory=dict)
    runs: dict[str, tuple[tree.Name, ...]] = field(default_factory=dict)
    steps: list[Step] = field(default_factory=list)
    pieces: dict[str, DraftPiece] = field(default_factory=dict)
    seams: list[DraftSeam] = field(default_factory=list)
    notions: list[Notion] = field(default_factory=list)
    work: list[str] = field(default_factory=list)
    cautions: list[str] = field(default_factory=list)
    comparisons: list[Comparison] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    budget: Budget = field(default_factory=Budget)
    trials_within: int = 0
    """How many searches the desk is a trial of, one within the other."""
    sought: frozenset[str] = frozenset()
    """Values that stand for trial and change without steps: what `find` seeks, and what is worked out from it."""
    history: dict[str, list[Written]] = field(default_factory=dict)
    failed: set[str] = field(default_factory=set)
    unread: frozenset[str] = frozenset()
    """Words of lines of the recipe that could not be read; what those lines would have made is not missed again."""
    stated: StatedPiece | None = None
    lost_piece: bool = False
    piece_refused: bool = False
    stated_edges: dict[str, tuple[tree.Edge, ...]] = field(default_factory=dict)
    allowances: dict[str, float] = field(default_factory=lambda: dict(DEFAULT_ALLOWANCES))
    later: list[Written] = field(default_factory=list)
    printed: list[tuple[Written, tree.Printed, Quantity]] = field(default_factory=list)
    used: list[str] = field(default_factory=list)
    openings: dict[str, float] = field(default_factory=dict)
    stretch: float = 0.0
    branches: list[Branch] = field(default_factory=list)

    @property
    def is_trial(self) -> bool:
        """Whether what is drawn is thrown away again, so that no steps and amounts are written down."""
        return self.trials_within > 0

    @property
    def is_active(self) -> bool:
        """Whether the conditions in force all hold."""
        return not self.branches or all(branch.holds for branch in self.branches)

    def trial(self) -> Desk:
        """A desk on which the same things lie, for a trial that leaves this one as it is."""
        copy = Desk(self.measurements, self.tape, self.language, budget=self.budget)
        copy.values, copy.units, copy.old_units = dict(self.values), self.units, dict(self.old_units)
        copy.options, copy.tables, copy.runs = self.options, self.tables, dict(self.runs)
        copy.sheets, copy.sheet = dict(self.sheets), self.sheet
        copy.points, copy.lines, copy.outlines = dict(self.points), dict(self.lines), dict(self.outlines)
        copy.steps, copy.pieces, copy.seams = self.steps, dict(self.pieces), list(self.seams)
        copy.history = {sheet: list(written) for sheet, written in self.history.items()}
        copy.stated_edges, copy.allowances = dict(self.stated_edges), self.allowances
        copy.unread, copy.lost_piece = self.unread, self.lost_piece
        copy.failed, copy.sought, copy.trials_within = set(self.failed), self.sought, self.trials_within + 1
        copy.branches = [Branch(branch.holds, branch.has_held) for branch in self.branches]
        return copy

    def allow_step(self, made: tree.Name, cost: int = 1) -> None:
        """Takes one more step from the budget.

        Raises:
            Exhausted: There are too many steps, or too many trials.
        """
        self.budget.spend(made, cost)
        if len(self.steps) >= MOST_STEPS:
            raise Exhausted(
                "too-much-to-draw",
                f"the recipe asks for more than {MOST_STEPS} steps. Make it shorter.",
                made.spot,
            )

    def words(self, text: tree.Text | None) -> str:
        """The recipe's own words in the maker's language, or as first written; empty where there are none."""
        return text.said_in(self.language) if text else ""

    def qualified(self, name: str) -> str:
        """The full name of something on the sheet in hand, or on that of the piece being stated."""
        sheet = self.stated.sheet if self.stated else self.sheet
        return f"{sheet}.{name}" if sheet else name

    def point(self, name: tree.Name) -> Point:
        """The place of a point, by its name on the sheet in hand or its full name."""
        found = self.points.get(self.qualified(name.text)) or self.points.get(name.text)
        if found is None:
            raise self.missing(say("point"), name, self.points)
        return found.at

    def line(self, ref: tree.LineRef) -> Path:
        """The path of a line by name, or of the straight lines between points."""
        if isinstance(ref, tree.Name):
            return self.named_line(ref).path
        ends = (ref.start, ref.end) if isinstance(ref, tree.Span) else (ref.start, ref.corner, ref.end)
        edge = self.lines.get(self.qualified(str(ref)))
        if edge is not None and (self.stated or not all(self.has_point(name.text) for name in ends)):
            return (
                edge.path
            )  # an edge of an outline named by its points, which may be cut short or bent by now
        places = [self.point(name) for name in ends]
        self._apart(ref, places)
        return Path.line_through(*places)

    def named_line(self, name: tree.Name) -> DraftLine:
        """A drawn line, or a run of them as one line, by its name on the sheet in hand or its full name."""
        run = self.run(name.text)
        if run:
            return DraftLine(name.text, self._run_path(run), "curve", "", "", 0)
        found = self.lines.get(self.qualified(name.text)) or self.lines.get(name.text)
        if found is None:
            raise self.missing(say("line"), name, self.lines)
        return found

    def folded(self, ref: tree.LineRef) -> float:
        """How much of a line pleats and tucks fold away [mm]."""
        found = self.lines.get(self.qualified(str(ref))) or self.lines.get(str(ref))
        return found.folded if found else 0.0

    def run(self, name: str) -> tuple[tree.Name, ...]:
        """The parts of a run, by its name on the sheet in hand or for the whole recipe; empty where there is none."""
        return self.runs.get(self.qualified(name)) or self.runs.get(name) or ()

    def edges_of_run(self, name: tree.Name) -> tuple[tree.Name, ...]:
        """The edges that a name stands for: the parts of a run, or the edge of that name alone."""
        piece, _, edge = name.text.rpartition(".")
        if piece in self.pieces and any(one.name == edge for one in self.pieces[piece].edges):
            return (name,)
        return self.run(name.text) or (name,)

    def _run_path(self, parts: tuple[tree.Name, ...]) -> Path:
        """The lines of a run as one line, each turned so that it goes on from the one before."""
        paths = [self.named_line(part).path for part in parts]
        for index in range(1, len(paths)):
            before, path = paths[index - 1], paths[index]
            if index == 1 and min(before.start.distance(end) for end in (path.start, path.end)) < min(
                before.end.distance(end) for end in (path.start, path.end)
            ):
                paths[0] = before = before.reversed()
            if before.end.distance(path.end) < before.end.distance(path.start):
                paths[index] = path.reversed()
            gap = before.end.distance(paths[index].start)
            if gap > JOINT:
                raise Refusal(
                    "run-with-gap",
                    f"{parts[index - 1]} and {parts[index]} do not meet; there are {gap / 10:.2f} cm between them.",
                    parts[index].spot,
                )
        return Path.joined(*paths)

    def straight(self, ref: tree.LineRef) -> Line:
        """A line that has to be straight, from its first to its last point."""
        path = self.line(ref)
        if not path.is_straight:
            raise Refusal(
                "line-not-straight", f"{ref} is not straight; a straight line is needed here.", ref.spot
            )
        return Line(path.start, path.end)

    def has_point(self, name: str) -> bool:
        """Whether a point of that name is there, on the sheet in hand or anywhere."""
        return self.qualified(name) in self.points or name in self.points

    def value(self, name: tree.Name) -> Value:
        """A value by name: one found on the sheet in hand, or one of the whole recipe."""
        found = self.values.get(self.qualified(name.text), self.values.get(name.text))
        if found is None:
            raise self.missing(say("amount, measurement or choice"), name, self.values)
        return found

    def has_failed(self, name: str) -> bool:
        """Whether something, or the sheet or piece it belongs to, could not be made: the cause was told then."""
        owner = name.partition(".")[0]
        return owner in self.unread or not self.failed.isdisjoint((name, owner, self.qualified(name)))

    def missing(self, kind: Saying, name: tree.Name, known: Iterable[str]) -> Missing:
        """The refusal of a name that is not there (yet)."""
        if self.has_failed(name.text):
            return Missing(FOLLOWS, f"{name} could not be made.", name.spot)
        front = f"{self.sheet}." if self.sheet else ""
        return Missing("name-not-known", lambda: _not_there(kind, name, known, front), name.spot)

    def _apart(self, ref: tree.LineRef, places: list[Point]) -> None:
        for one, other in itertools.pairwise(places):
            if one.distance(other) < 1e-6:  # noqa: PLR2004 - geometry.tolerance.SAME_POINT: no direction between
                raise Refusal(
                    "points-fall-together",
                    f"two points of {ref} lie in the same place, so it has no direction. Move one of them.",
                    ref.spot,
                )


def _not_there(kind: Saying, name: tree.Name, known: Iterable[str], front: str) -> Saying:
    """What is said of a name that is not there: those that are, without the sheet in front, and the likest."""
    names = [full.removeprefix(front) for full in known]
    close = get_close_matches(name.text, names, n=1)
    return say(
        'there is no {kind} "{name}" yet. So far: {listed}.{hint} Make {name} before you use it.',
        kind=kind,
        name=str(name),
        listed=", ".join(names[:24]) or say("none"),
        hint=say(' Did you mean "{word}"?', word=close[0]) if close else "",
    )
