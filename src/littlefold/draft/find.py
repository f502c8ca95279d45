"""What paper cannot solve: the value for which two quantities become equal.

The goal speaks of lines that are drawn only after the unknown is known.  So the statements that follow are drawn
for trial on a copy of the desk, until both sides of the goal have a value; the difference is the function whose
nought is sought.  The search goes outward from the start value (`bracket.py`), so that of several solutions the one
nearest to it is found.
"""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from scipy.optimize import brentq

from littlefold.body.tape import round_to_mark
from littlefold.draft.arithmetic import evaluate
from littlefold.draft.bracket import bracket
from littlefold.draft.dependence import fixed_and_changing
from littlefold.draft.desk import FOLLOWS
from littlefold.draft.model import Amount
from littlefold.draft.quantity import UNIT_NAMES, Dimension, Quantity
from littlefold.draft.refusal import Exhausted, Missing, Refusal
from littlefold.draft.spoken import compared, spoken
from littlefold.problem import Number, Problem, Severity, say
from littlefold.recipe.wording import leftmost_spot, written

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from littlefold.draft.desk import Desk
    from littlefold.recipe import tree
    from littlefold.recipe.recipe import Written

    Play = Callable[[Sequence[Written], int, Desk], None]

GOAL = "goal-never-drawn"
"""The code of the refusal of a trial in which the goal got no value."""

LAID_OUT = 50
"""Laying out so many points and lines for a trial takes about as long as one act."""

SOLVED = 1e-3
"""The unknown is found to a thousandth of a millimetre (or degree of its unit), ten times finer than promised."""


def find(line: Written, following: Sequence[Written], desk: Desk, play: Play) -> None:
    """Solves for the unknown and puts it among the values of the sheet in hand.

    Args:
        line: The `find` statement.
        following: The statements after it, in order.
        desk: The desk; only the found value is added.
        play: Draws one statement of several on a desk.

    Raises:
        Refusal: There is no solution between the bounds, or the goal cannot be worked out.
    """
    step: tree.Find = line.statement
    low, high = evaluate(step.low, desk), evaluate(step.high, desk)
    start = (
        evaluate(step.start, desk) if step.start else Quantity((low.value + high.value) / 2, low.dimension)
    )
    _bounds_make_sense(step, low, high, start)
    _not_too_deep(step, desk)
    trial = _Trial(step, following, desk, play, low.dimension)
    between = bracket(partial(_gap, trial), low.value, high.value, start.value)
    if between is None:
        raise trial.last if not trial.is_narrowed and trial.last else _no_solution(step, trial, low, high)
    one, other = between
    exact = one if one == other else float(brentq(trial.gap, one, other, xtol=SOLVED / 10))
    _put(line, exact, low.dimension, desk, trial)


def _bounds_make_sense(step: tree.Find, low: Quantity, high: Quantity, start: Quantity) -> None:
    alike = low.dimension is high.dimension is start.dimension
    if not alike or not low.value <= start.value <= high.value or low.value == high.value:
        raise Refusal(
            "bounds-do-not-fit",
            say(
                "find {name}: the bounds {low} and {high} must be of one kind, the lower first, and the "
                "start between them.",
                name=str(step.name),
                low=str(written(step.low)),
                high=str(written(step.high)),
            ),
            step.name.spot,
            (compared("from", low.value, low.dimension), compared("to", high.value, high.dimension)),
        )


MOST_WITHIN = 3
"""Searches within each other: a sleeve on a bodice, a cuff on the sleeve, and one more."""


def _not_too_deep(step: tree.Find, desk: Desk) -> None:
    if desk.trials_within > MOST_WITHIN:
        raise Exhausted(
            "too-many-searches",
            say(
                "find {name} stands within {trials_within} others that are not solved yet; at most "
                "{most_within} are tried. State each goal before the next search begins.",
                name=str(step.name),
                trials_within=str(desk.trials_within),
                most_within=str(MOST_WITHIN),
            ),
            step.name.spot,
        )


class _Trial:
    """Draws what follows for a value of the unknown, and gives the gap between both sides of the goal."""

    def __init__(
        self, step: tree.Find, following: Sequence[Written], desk: Desk, play: Play, dimension: Dimension
    ) -> None:
        self.step, self.following, self.desk, self.play, self.dimension = (
            step,
            following,
            desk,
            play,
            dimension,
        )
        self.is_narrowed = False
        self.last: Refusal | None = None
        self.known: dict[float, float] = {}
        self.sort = Dimension.LENGTH  # what both sides of the goal measure

    def gap(self, value: float) -> float:
        """Left side minus right side of the goal; each value is tried once."""
        if value not in self.known:
            self.known[value] = self._tried(value)
        return self.known[value]

    def _tried(self, value: float) -> float:
        """The gap of the draft for a value."""
        self.desk.budget.spend(self.step.name, 1 + (len(self.desk.points) + len(self.desk.lines)) // LAID_OUT)
        desk = self.desk.trial()
        desk.values[desk.qualified(self.step.name.text)] = Quantity(value, self.dimension)
        desk.sought |= {self.step.name.text}
        for index in range(len(self.following)):
            self.play(self.following, index, desk)
            if not self.is_narrowed and self._worked_out(desk) is not None:
                self._narrow(index + 1)
                break
        found = self._worked_out(desk)
        if found is None:
            raise self._never(desk)
        return found

    def _narrow(self, count: int) -> None:
        """From now on only so many statements are drawn, those that are the same in all trials once."""
        tables = self.desk.tables.values()
        fixed, self.following = fixed_and_changing(self.step, self.following[:count], tables)
        self.is_narrowed = True
        if fixed:
            self.desk = self.desk.trial()
            for index in range(len(fixed)):
                self.play(fixed, index, self.desk)

    def _worked_out(self, desk: Desk) -> float | None:
        try:
            left, right = evaluate(self.step.left, desk), evaluate(self.step.right, desk)
        except Missing:
            return None
        if left.dimension is not right.dimension:
            raise Refusal(
                "numbers-do-not-go-together",
                say(
                    "{left} and {right} are not of one kind.",
                    left=str(written(self.step.left)),
                    right=str(written(self.step.right)),
                ),
                self.step.name.spot,
            )
        self.sort = left.dimension
        return left.value - right.value

    def _never(self, desk: Desk) -> Refusal:
        try:
            evaluate(self.step.left, desk)
            evaluate(self.step.right, desk)
        except Refusal as refusal:
            if (
                refusal.code == FOLLOWS and not desk.problems
            ):  # it failed before the search, and was told there
                return refusal
            return Refusal(GOAL, f"find {self.step.name}: {refusal.message}", refusal.spot)
        return Refusal(
            GOAL, say("find {name}: its goal is never drawn.", name=str(self.step.name)), self.step.name.spot
        )


def _gap(trial: _Trial, value: float) -> float | None:
    """The gap at a trial value; None where the draft is impossible for it."""
    try:
        return trial.gap(value)
    except Refusal as refusal:
        if refusal.code != GOAL:
            raise
        trial.last = refusal
        return None


def _no_solution(step: tree.Find, trial: _Trial, low: Quantity, high: Quantity) -> Refusal:
    gaps = [(value, _gap(trial, value)) for value in (low.value, high.value)]
    told = "; ".join(f"at {spoken(value, low.dimension)} {_told_gap(gap, trial.sort)}" for value, gap in gaps)
    return Refusal(
        "no-solution",
        say(
            "find {name}: between its bounds {left} never becomes {right}: {told}. Widen the bounds or "
            "change a choice.",
            name=str(step.name),
            left=str(written(step.left)),
            right=str(written(step.right)),
            told=str(told),
        ),
        step.name.spot,
        tuple(
            compared(f"difference at {spoken(value, low.dimension)}", gap, trial.sort)
            for value, gap in gaps
            if gap is not None
        ),
    )


def _told_gap(gap: float | None, sort: Dimension) -> str:
    """How far apart both sides of the goal are at one end of the bounds."""
    if gap is None:
        return "it cannot be drawn"
    return f"the first is {'larger' if gap > 0 else 'smaller'} by {spoken(abs(gap), sort)}"


def _put(line: Written, exact: float, dimension: Dimension, desk: Desk, trial: _Trial) -> None:
    """Keeps the found value, rounded to the tape where one is in force, and judges what rounding leaves."""
    step: tree.Find = line.statement
    value = round_to_mark(exact, desk.tape) if dimension is Dimension.LENGTH else exact
    name = desk.qualified(step.name.text)
    if name in desk.values or step.name.text in desk.values:
        raise Refusal(
            "name-taken",
            say('"{name}" has a meaning already. Choose another name.', name=str(step.name)),
            step.name.spot,
        )
    desk.values[name] = Quantity(value, dimension)
    title = desk.words(step.clauses.text)
    formula = f"{written(step.left)} = {written(step.right)}"
    desk.amounts.append(Amount(name, value, UNIT_NAMES[dimension], formula, title, "", line.line))
    if value != exact:
        _judge(line, exact, value, trial, desk)


def _judge(line: Written, exact: float, value: float, trial: _Trial, desk: Desk) -> None:
    step: tree.Find = line.statement
    rest = _gap(trial, value)
    sort = trial.sort
    allowed = _allowed(step, sort, desk)
    left = (
        say("it can no longer be drawn")
        if rest is None
        else say("a difference of {rest} remains", rest=spoken(abs(rest), sort))
    )
    severity = Severity.NOTE if rest is not None and abs(rest) <= allowed else Severity.WARNING
    said = say(
        "{name} is {exact}, rounded to {rounded} on the tape; {left} between {one} and {other} (allowed {allowed}).",
        name=str(step.name),
        exact=spoken(exact, Dimension.LENGTH),
        rounded=spoken(value, Dimension.LENGTH),
        left=left,
        one=written(step.left),
        other=written(step.right),
        allowed=spoken(allowed, sort),
    )
    numbers = (
        Number("exact", exact),
        Number("rounded", value),
        compared("remains", rest or 0.0, sort),
        compared("allowed", allowed, sort),
    )
    place = line.place(step.name.spot)
    desk.problems.append(Problem("found-value-rounded", str(said), severity, place, numbers, said=(said,)))


def _allowed(step: tree.Find, sort: Dimension, desk: Desk) -> float:
    """What may remain between both sides of the goal; between others than lengths nothing, unless it is said."""
    if step.within is None:
        return DEFAULT_REST if sort is Dimension.LENGTH else 0.0
    within = evaluate(step.within, desk)
    if within.dimension is not sort:
        raise Refusal(
            "numbers-do-not-go-together",
            say(
                "find {name}: within {within} is not of the kind of its goal, {left}.",
                name=str(step.name),
                within=str(written(step.within)),
                left=str(written(step.left)),
            ),
            leftmost_spot(step.within),
        )
    return within.value


DEFAULT_REST = 3.0
"""What rounding may leave between two lengths where the recipe says nothing [mm]: 1/8 in, the looser of the two
tolerances published for seams (docs/decisions.md)."""
