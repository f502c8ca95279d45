"""Works out expressions and conditions."""

from __future__ import annotations

from math import ceil, isfinite, isnan, pi
from typing import TYPE_CHECKING

from littlefold.body.tape import read_unit
from littlefold.draft.quantity import (
    Dimension,
    DimensionFault,
    Quantity,
    length,
    number,
    product,
    quotient,
    root,
)
from littlefold.draft.refusal import Refusal
from littlefold.draft.spoken import compared
from littlefold.draft.tables import look_up
from littlefold.draft.worn import drawn_length, worn_length
from littlefold.problem import Number, say
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean
from littlefold.recipe.wording import leftmost_spot, written

if TYPE_CHECKING:
    from collections.abc import Callable

    from littlefold.draft.desk import Desk
    from littlefold.problem import Saying

LARGEST = 1e9
"""No value may grow beyond this [mm]: a thousand kilometres is no garment, and infinity has no place on paper."""

# Two lengths that differ by less than this [mm] are equal in a condition or check: it is a hundredth of the
# width of a pencil line.
EQUAL = 1e-3


def evaluate(expr: tree.Expr, desk: Desk) -> Quantity:
    """The value of an expression.

    Raises:
        Refusal: It has no value, with the spot at which it fails.
    """
    try:
        found = _EVALUATORS[type(expr)](expr, desk)
    except DimensionFault as fault:
        numbers = _both(expr, desk) if isinstance(expr, (tree.Times, tree.Over)) else ()
        raise Refusal(
            "numbers-do-not-go-together", f"{written(expr)}: {fault}", leftmost_spot(expr), numbers
        ) from None
    if isnan(found.value):
        raise Refusal(
            "number-out-of-bounds",
            f"{written(expr)} divides by 0, and nothing can be divided by 0. Change it.",
            leftmost_spot(expr),
            (Number("divided by", 0.0, "ratio"),),
        )
    if not isfinite(found.value) or abs(found.value) > LARGEST:
        raise Refusal(
            "number-out-of-bounds",
            f"{written(expr)} is {found.value:g}, which is no number to draw with. Change the amounts in it.",
            leftmost_spot(expr),
        )
    return found


def _both(expr: tree.Times | tree.Over, desk: Desk) -> tuple[Number, ...]:
    """Both sides of an operation, for a problem."""
    sides = ((written(side), evaluate(side, desk)) for side in (expr.left, expr.right))
    return tuple(compared(said, value.value, value.dimension) for said, value in sides)


def evaluate_length(expr: tree.Expr, desk: Desk) -> float:
    """The value of an expression that has to be a length [mm]."""
    return _of_dimension(expr, desk, Dimension.LENGTH)


def evaluate_angle(expr: tree.Expr, desk: Desk) -> float:
    """The value of an expression that has to be an angle [rad]."""
    return _of_dimension(expr, desk, Dimension.ANGLE)


def evaluate_number(expr: tree.Expr, desk: Desk) -> float:
    """The value of an expression that has to be a plain number."""
    return _of_dimension(expr, desk, Dimension.NUMBER)


def whole_number(expr: tree.Expr, what: str, most: int, desk: Desk) -> int:
    """A count of things, from 1 to a most."""
    count = evaluate_number(expr, desk)
    if count != int(count) or not 1 <= count <= most:
        raise Refusal(
            "count-not-possible",
            f"{count:g} {what}: give a whole number from 1 to {most}.",
            leftmost_spot(expr),
            (Number("count", count, "count"), Number("at most", most, "count")),
        )
    return int(count)


def _of_dimension(expr: tree.Expr, desk: Desk, dimension: Dimension) -> float:
    found = evaluate(expr, desk)
    if found.dimension is not dimension:
        raise Refusal("wrong-kind-of-number", _wrong_kind(expr, found, dimension), leftmost_spot(expr))
    return found.value


_UNITS_TO_WRITE = {
    Dimension.LENGTH: ("cm", "in"),
    Dimension.AGE: ("months", "y"),
    Dimension.ANGLE: ("degrees",),
}


def _what(said: str, units: tuple[str, ...]) -> Saying:
    """A number without a unit, and what to write instead."""
    cures = [f"{said} {unit}" for unit in units]
    if len(cures) == 1:
        return say("{said} what? Write {cure}.", said=said, cure=cures[0])
    return say("{said} what? Write {cure} or {other}.", said=said, cure=cures[0], other=cures[1])


def _wrong_kind(expr: tree.Expr, found: Quantity, wanted: Dimension) -> str | Saying:
    """What is wrong with a value that measures something else than is wanted, and what to write."""
    said = written(expr)
    units = _UNITS_TO_WRITE.get(wanted, ())
    if isinstance(expr, tree.Plain) and units:
        return _what(said, units)
    cure = f"Give it in {' or '.join(units)}, or change the formula." if units else "Write it without a unit."
    return f"{said} is {_kind(found)}, not {_kind(Quantity(0, wanted))}. {cure}"


def _kind(quantity: Quantity) -> str:
    word = "plain number" if quantity.dimension is Dimension.NUMBER else quantity.dimension.value
    return f"{'an' if word[0] in 'aeiou' else 'a'} {word}"


def _plain(expr: tree.Plain, desk: Desk) -> Quantity:  # noqa: ARG001
    return number(expr.numeral.value)


def _quantity(expr: tree.Quantity, desk: Desk) -> Quantity:
    unit = desk.units.get(expr.unit.text)
    if unit is None:
        meant = read_unit(expr.unit.text)
        hint = f' Did you mean "{meant}"?' if meant else did_you_mean(expr.unit.text, desk.units)
        known = ", ".join(desk.units)
        raise Refusal(
            "unknown-unit", f'there is no unit "{expr.unit}".{hint} Units: {known}.', expr.unit.spot
        )
    return Quantity(expr.numeral.value * unit.value, unit.dimension)


def _named(expr: tree.Named, desk: Desk) -> Quantity:
    if expr.name.text in desk.tables:
        return look_up(desk.tables[expr.name.text], expr.name, desk, evaluate)
    value = desk.value(expr.name)
    if isinstance(value, str):
        raise Refusal(
            "choice-is-no-number",
            f'{expr.name} stands at "{value}", which is no number. Ask "when {expr.name} is {value}".',
            expr.name.spot,
        )
    return value


def _sum(one: Quantity, other: Quantity, expr: tree.Plus | tree.Minus, sign: int) -> Quantity:
    if one.dimension is not other.dimension:
        raise _unlike(one, other, expr.left, expr.right)
    return Quantity(one.value + sign * other.value, one.dimension)


def _unlike(one: Quantity, other: Quantity, left: tree.Expr, right: tree.Expr) -> Refusal:
    """The refusal of two numbers that measure different things; a bare number wants its unit."""
    bare = right if other.dimension is Dimension.NUMBER else left
    if Dimension.NUMBER in {one.dimension, other.dimension}:
        said = written(bare)
        kind = one if bare is right else other
        units = _UNITS_TO_WRITE.get(kind.dimension, ("square cm",))
        return Refusal("number-without-unit", _what(said, units), leftmost_spot(bare))
    return Refusal(
        "numbers-do-not-go-together",
        f"{written(left)} is {_kind(one)} and {written(right)} is {_kind(other)}; they cannot be put together.",
        leftmost_spot(left),
        tuple(compared(written(e), q.value, q.dimension) for e, q in ((left, one), (right, other))),
    )


def alike(left: tree.Expr, right: tree.Expr, desk: Desk) -> tuple[Quantity, Quantity]:
    """The values of two expressions that have to be of one kind."""
    one, other = evaluate(left, desk), evaluate(right, desk)
    if one.dimension is not other.dimension:
        raise _unlike(one, other, left, right)
    return one, other


def _chosen_of(pick: Callable[[float, float], float]) -> Callable[[tree.Expr, tree.Expr, Desk], Quantity]:
    def choose(left: tree.Expr, right: tree.Expr, desk: Desk) -> Quantity:
        one, other = alike(left, right, desk)
        return Quantity(pick(one.value, other.value), one.dimension)

    return choose


_larger, _smaller = _chosen_of(max), _chosen_of(min)


def _round_up(expr: tree.RoundUp, desk: Desk) -> Quantity:
    value, step = alike(expr.value, expr.step, desk)
    if step.value <= 0:
        raise Refusal(
            "step-not-positive",
            f"round up to {written(expr.step)}: the step must be larger than 0.",
            leftmost_spot(expr.step),
        )
    # A value a hair above a mark through rounding of the machine stays on that mark.
    return Quantity(ceil(value.value / step.value - 1e-9) * step.value, value.dimension)


_EVALUATORS: dict[type, Callable[..., Quantity]] = {
    tree.Plain: _plain,
    tree.Quantity: _quantity,
    tree.Share: lambda e, d: product(number(e.numeral.value), evaluate(e.whole, d)),
    tree.Named: _named,
    tree.Pi: lambda e, d: number(pi),  # noqa: ARG005
    tree.Negative: lambda e, d: product(number(-1), evaluate(e.of, d)),
    tree.Plus: lambda e, d: _sum(evaluate(e.left, d), evaluate(e.right, d), e, 1),
    tree.Minus: lambda e, d: _sum(evaluate(e.left, d), evaluate(e.right, d), e, -1),
    tree.Times: lambda e, d: product(evaluate(e.left, d), evaluate(e.right, d)),
    tree.Over: lambda e, d: quotient(evaluate(e.left, d), evaluate(e.right, d)),
    tree.AtLeast: lambda e, d: _larger(e.value, e.floor, d),
    tree.AtMost: lambda e, d: _smaller(e.value, e.ceiling, d),
    tree.Larger: lambda e, d: _larger(e.left, e.right, d),
    tree.Smaller: lambda e, d: _smaller(e.left, e.right, d),
    tree.RoundUp: _round_up,
    tree.SquareRoot: lambda e, d: root(evaluate(e.of, d)),
    tree.LengthOf: lambda e, d: length(drawn_length(e.line, d)),
    tree.RoundOf: lambda e, d: length(worn_length(e.edges, d)),
    tree.Bracketed: lambda e, d: evaluate(e.inner, d),
}


def holds(condition: tree.Condition, desk: Desk) -> bool:
    """Whether a condition holds for this child and these choices."""
    match condition:
        case tree.Either(left, right):
            return holds(left, desk) or holds(right, desk)
        case tree.BothHold(left, right):
            return holds(left, desk) and holds(right, desk)
        case tree.Negation(of):
            return not holds(of, desk)
        case tree.Chosen(choice, option):
            return _option(choice, option, desk)
        case tree.NotChosen(choice, option):
            return not _option(choice, option, desk)
        case tree.Compared(left, sign, right):
            one, other = alike(left, right, desk)
            return compare(one.value, sign, other.value, EQUAL)


def compare(one: float, sign: str, other: float, slack: float) -> bool:
    """Whether a comparison holds, give or take the slack."""
    match sign:
        case ">=":
            return one >= other - slack
        case "<=":
            return one <= other + slack
        case ">":
            return one > other + slack
        case "<":
            return one < other - slack
        case _:
            return abs(one - other) <= slack


def _option(choice: tree.Name, option: tree.Name, desk: Desk) -> bool:
    options = desk.options.get(choice.text)
    if options is None:
        known, hint = ", ".join(desk.options) or "none", did_you_mean(choice.text, desk.options)
        raise Refusal(
            "unknown-choice",
            f'"{choice}" is no choice between options.{hint} Such choices: {known}.',
            choice.spot,
        )
    if option.text not in options:
        listed = ", ".join(options)
        raise Refusal(
            "unknown-option",
            f'"{option}" is no option of {choice}.{did_you_mean(option.text, options)} Options: {listed}.',
            option.spot,
        )
    return desk.values[choice.text] == option.text
