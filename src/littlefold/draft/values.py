"""The numbers a recipe works with: measurements, choices, amounts, units, tables."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.body.measurements import Origin, Reading
from littlefold.draft.arithmetic import evaluate, evaluate_length
from littlefold.draft.model import Amount
from littlefold.draft.names import names_in
from littlefold.draft.old_units import unit_of
from littlefold.draft.quantity import UNIT_NAMES, Dimension, Quantity, length
from littlefold.draft.refusal import Refusal
from littlefold.draft.spoken import compared, spoken
from littlefold.problem import Number, Saying, say
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import suggestion
from littlefold.recipe.wording import leftmost_spot, written

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.draft.desk import Desk, Value
    from littlefold.recipe.recipe import Written


MISSING = "measurement-missing"
"""The code of the refusal of a draft whose measurement is not given and cannot be estimated."""


def measure(line: Written, desk: Desk) -> None:
    """Takes the measurements a recipe asks for from the child's; those that are missing are told together."""
    missing: list[tree.Name] = []
    for wanted in line.statement.wanted:
        try:
            _take(line, wanted.name, wanted.fallback, "", desk)
        except Refusal as refusal:
            if refusal.code != MISSING:
                raise
            desk.failed.add(wanted.name.text)
            missing.append(wanted.name)
    if missing:
        names = ", ".join(name.text for name in missing)
        raise Refusal(
            MISSING,
            say(
                "needed and not given: {names}. Measure them, or give a height to estimate them.",
                names=str(names),
            ),
            missing[0].spot,
        )


def own_measure(line: Written, desk: Desk) -> None:
    """Takes a measurement of the recipe's own."""
    step: tree.OwnMeasure = line.statement
    _take(line, step.name, step.fallback, desk.words(step.how), desk)


def _take(line: Written, name: tree.Name, fallback: tree.Expr | None, how: str, desk: Desk) -> None:
    if name.text in desk.used:
        return
    reading = desk.measurements.get(name.text)
    if fallback is not None and (reading is None or reading.origin is Origin.ESTIMATED):
        reading = Reading(evaluate_length(fallback, desk), Origin.ESTIMATED)
        desk.measurements = desk.measurements.with_reading(name.text, reading)
    if reading is None:
        told = say(" How to take it: {how}.", how=how) if how else Saying("")
        raise Refusal(
            MISSING,
            say("the measurement {name} is needed and not given.{told}", name=str(name), told=told),
            name.spot,
        )
    if reading.mm <= 0:
        raise Refusal(
            "measurement-not-positive",
            say(
                "{name} is {reading}; it must be larger than 0.",
                name=str(name),
                reading=f"{reading.mm / 10:.1f} cm",
            ),
            name.spot,
            (Number(name.text, reading.mm),),
        )
    desk.used.append(name.text)
    enter(line, name, length(reading.mm), desk, title=how)


def unit(line: Written, desk: Desk) -> None:
    """Declares an old unit."""
    step: tree.Unit = line.statement
    if step.name.text in desk.units:
        raise Refusal(
            "name-taken", say("the unit {name} is known already.", name=str(step.name)), step.name.spot
        )
    value = evaluate(step.value, desk)
    if value.value <= 0 or value.dimension not in {Dimension.LENGTH, Dimension.ANGLE, Dimension.AGE}:
        raise Refusal(
            "not-a-unit",
            say("the unit {name} must be a length, angle or age larger than 0.", name=str(step.name)),
            step.name.spot,
        )
    desk.units[step.name.text] = value


def choice_length(line: Written, desk: Desk, choices: Mapping[str, float | str]) -> None:
    """A choice between two bounds."""
    step: tree.ChoiceLength = line.statement
    default, low, high = (evaluate(part, desk) for part in (step.default, step.low, step.high))
    if len({default.dimension, low.dimension, high.dimension}) > 1:
        raise Refusal(
            "choice-of-mixed-kinds",
            say("the numbers of the choice {name} must be of one kind.", name=str(step.name)),
            step.name.spot,
        )
    value = default.value
    chosen = choices.get(step.name.text)
    if isinstance(chosen, (int, float)):
        value = float(chosen)
    taken = Quantity(value, default.dimension)
    enter(line, step.name, taken, desk, title=desk.words(step.text))
    desk.choices.append(step.name.text)
    if low.value >= high.value:
        raise _no_choice(step, low, high)
    if not low.value - 1e-9 <= value <= high.value + 1e-9:
        raise (
            _outside(step, taken, low.value, high.value)
            if chosen is not None
            else _default_outside(step, taken, low.value, high.value)
        )


def _no_choice(step: tree.ChoiceLength, low: Quantity, high: Quantity) -> Refusal:
    return Refusal(
        "bounds-leave-no-choice",
        say(
            "{name}: the bounds {low} .. {high} leave no choice. Write the smaller first.",
            name=str(step.name),
            low=str(written(step.low)),
            high=str(written(step.high)),
        ),
        leftmost_spot(step.low),
        (compared("least", low.value, low.dimension), compared("most", high.value, high.dimension)),
    )


def _outside(step: tree.ChoiceLength, value: Quantity, low: float, high: float) -> Refusal:
    """The refusal of a value that somebody chose."""
    sort = value.dimension
    return Refusal(
        "choice-out-of-bounds",
        say(
            "{name} is {value}; the recipe allows {low} to {high}. Choose a value between them.",
            name=str(step.name),
            value=str(spoken(value.value, sort)),
            low=str(spoken(low, sort)),
            high=str(spoken(high, sort)),
        ),
        step.name.spot,
        _bounds(step, value, low, high),
    )


def _default_outside(step: tree.ChoiceLength, value: Quantity, low: float, high: float) -> Refusal:
    """The refusal of the value that stands when nobody chooses."""
    return Refusal(
        "default-out-of-bounds",
        say(
            "{name} is {value} when nobody chooses, outside {low} .. {high}. Change it, or its bounds.",
            name=str(step.name),
            value=str(spoken(value.value, value.dimension)),
            low=str(written(step.low)),
            high=str(written(step.high)),
        ),
        leftmost_spot(step.default),
        _bounds(step, value, low, high),
    )


def _bounds(step: tree.ChoiceLength, value: Quantity, low: float, high: float) -> tuple[Number, ...]:
    sort = value.dimension
    return (
        compared(step.name.text, value.value, sort),
        compared("least", low, sort),
        compared("most", high, sort),
    )


def choice_option(line: Written, desk: Desk, choices: Mapping[str, float | str]) -> None:
    """A choice between options; the first stands when nobody chooses."""
    step: tree.ChoiceOption = line.statement
    options = tuple(option.text for option in step.options)
    desk.options[step.name.text] = options
    chosen = choices.get(step.name.text, options[0])
    enter(line, step.name, chosen if chosen in options else options[0], desk, title=desk.words(step.text))
    desk.choices.append(step.name.text)
    if chosen not in options:
        raise Refusal(
            "unknown-option",
            say(
                '"{chosen}" is no option of {name}.{hint} Options: {options}.',
                chosen=str(chosen),
                name=str(step.name),
                hint=suggestion(str(chosen), options),
                options=str(", ".join(options)),
            ),
            step.name.spot,
        )


def amount(line: Written, desk: Desk) -> None:
    """A named value."""
    step: tree.Amount = line.statement
    value = evaluate(step.value, desk)
    if not desk.sought.isdisjoint(names_in(step.value)):
        desk.sought |= {step.name.text}
    note_printed(line, step.clauses, value, desk)
    unit_name = unit_of(step.value, desk)
    enter(
        line,
        step.name,
        value,
        desk,
        written(step.value),
        desk.words(step.clauses.text),
        source_words(step.clauses.source, desk.language),
    )
    if unit_name:
        desk.old_units[step.name.text] = unit_name


def table(line: Written, desk: Desk) -> None:
    """A table; it is looked up when it is used."""
    step: tree.Table = line.statement
    _free(step.name, desk)
    desk.tables[step.name.text] = step


def allowances(line: Written, desk: Desk) -> None:
    """The allowances of the recipe, by kind of edge."""
    step: tree.Allowances = line.statement
    for rule in step.rules:
        if rule.kind.text not in desk.allowances:
            known = ", ".join(desk.allowances)
            raise Refusal(
                "unknown-edge-kind",
                say(
                    '"{kind}" is no kind of edge.{hint} Kinds: {known}.',
                    kind=str(rule.kind),
                    hint=suggestion(rule.kind.text, desk.allowances),
                    known=str(known),
                ),
                rule.kind.spot,
            )
        desk.allowances[rule.kind.text] = evaluate_length(rule.width, desk)


def enter(  # noqa: PLR0917
    line: Written,
    name: tree.Name,
    value: Value,
    desk: Desk,
    formula: str = "",
    title: str = "",
    source: str = "",
) -> None:
    """Puts a value under a name, once."""
    _free(name, desk)
    desk.values[name.text] = value
    if desk.is_trial:
        return
    said = value if isinstance(value, str) else value.value
    unit_name = "" if isinstance(value, str) else UNIT_NAMES[value.dimension]
    desk.amounts.append(Amount(name.text, said, unit_name, formula, title, source, line.line))


def _free(name: tree.Name, desk: Desk) -> None:
    if name.text in desk.values or name.text in desk.tables:
        raise Refusal(
            "name-taken",
            say('"{name}" has a meaning already. Choose another name.', name=str(name)),
            name.spot,
        )
    if "." in name.text:
        raise Refusal(
            "name-with-dot", say('"{name}": a name that is made here has no dot.', name=str(name)), name.spot
        )


def note_printed(line: Written, clauses: tree.Clauses, value: Quantity, desk: Desk) -> None:
    """Remembers the book's own number, to be compared where the book's own example is drafted."""
    if clauses.printed is not None:
        desk.printed.append((line, clauses.printed, value))


COMMON_PRACTICE = {"en": "common practice, no source", "de": "allgemeiner Brauch, ohne Quelle"}
"""What stands for the source of a rule that every sewing room knows and no book could be named for."""


def source_words(source: tree.Text | tree.CommonPractice | None, language: str) -> str:
    """A source in words; empty where none is named."""
    if isinstance(source, tree.CommonPractice):
        return COMMON_PRACTICE.get(language, COMMON_PRACTICE["en"])
    return source.said_in(language) if source else ""
