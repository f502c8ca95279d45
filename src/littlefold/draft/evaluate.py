"""A recipe and a child's measurements make a draft.

    draft = evaluate(recipe, measurements, choices)

Statement after statement is played on a desk.  One that cannot be played is reported, and so is nothing that only
follows from it; the rest is still drawn.
"""

from __future__ import annotations

from functools import partial
from types import MappingProxyType
from typing import TYPE_CHECKING

from littlefold.draft import find, sewing, sheets, stating, values
from littlefold.draft.acts import ACTS, PART_OF_PIECE, TAKEN_OVER
from littlefold.draft.arithmetic import evaluate as value_of
from littlefold.draft.arithmetic import holds
from littlefold.draft.attempt import attempt, problem_of
from littlefold.draft.desk import Branch, Desk
from littlefold.draft.model import Draft
from littlefold.draft.printed import compare_printed
from littlefold.draft.refusal import Exhausted, Refusal
from littlefold.draft.suits import stature_range
from littlefold.draft.usual import usual_allowances
from littlefold.recipe import tree
from littlefold.recipe.faults.fault import did_you_mean
from littlefold.recipe.shelf import shipped_names

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from littlefold.body.measurements import Measurements
    from littlefold.body.tape import TapeMark
    from littlefold.recipe.recipe import Recipe, Written

    Shelf = Callable[[str], Recipe | None]

MOST_BEGINNINGS = 4
"""A recipe may begin with one that begins with another, so many times."""


def evaluate(
    recipe: Recipe,
    measurements: Measurements,
    choices: Mapping[str, float | str] | None = None,
    *,
    tape: TapeMark | None = None,
    shelf: Shelf = lambda name: None,  # noqa: ARG005
    language: str = "en",
) -> Draft:
    """The draft of a recipe for one child.

    Args:
        recipe: As parsed.
        measurements: The child's, completed as far as they can be.
        choices: Values of choices by name: lengths [mm], angles [rad], numbers, names of options; and the maker's own
            allowances, see `draft.usual`.
        tape: The mark of the tape to which distances are rounded; None draws exactly.
        shelf: Gives a recipe by name, for recipes that begin with another's draft.
        language: The language of the maker; the recipe's own words are in it where they are translated.

    Returns:
        All that could be drawn, with every problem of the recipe and of this draft.
    """
    desk = Desk(measurements, tape, language, allowances=usual_allowances(choices or {}))
    desk.unread = recipe.unread
    player = _Player(choices or {}, shelf)
    try:
        player.play_all(recipe.written, desk)
        stating.end_piece(desk)
    except Exhausted as exhausted:
        desk.problems.append(problem_of(exhausted, exhausted.line or recipe.written[-1]))
    for line in desk.later:
        attempt(line, desk, partial(sewing.LATER[type(line.statement)], line, desk))
    desk.problems.extend(compare_printed(recipe, desk, player.choices))
    return _draft(recipe, desk)


class _Player:
    """Plays statements on a desk, with the choices made and the shelf to take recipes from."""

    def __init__(self, choices: Mapping[str, float | str], shelf: Shelf) -> None:
        self.choices = dict(choices)
        self.shelf = shelf
        self.opened: list[str] = []
        self.begun: set[str] = set()

    def play_all(self, written: Sequence[Written], desk: Desk) -> None:
        """Plays statements in order."""
        lines = sheets.with_changes(written)
        for index in range(len(lines)):
            self.play(lines, index, desk)

    def play(self, lines: Sequence[Written], index: int, desk: Desk) -> None:
        """Plays one of several statements; `find` looks at those after it."""
        line = lines[index]
        if type(line.statement) not in PART_OF_PIECE:
            stating.end_piece(desk)
        if not attempt(line, desk, lambda: self._play(line, lines, index, desk)):
            stating.refused(line, desk)

    def _play(self, line: Written, lines: Sequence[Written], index: int, desk: Desk) -> None:
        statement = line.statement
        if isinstance(statement, (tree.WhenBegins, tree.Otherwise, tree.EndWhen)):
            _branch(statement, desk)
            return
        if not desk.is_active or not _wanted(statement, desk):
            return
        act = ACTS.get(type(statement))
        if act is not None:
            sheets.remember(line, desk)
            act(line, desk)
            return
        match statement:
            case tree.ChoiceLength():
                values.choice_length(line, desk, self.choices)
            case tree.ChoiceOption():
                values.choice_option(line, desk, self.choices)
            case tree.Find():
                sheets.remember(line, desk)
                find.find(line, lines[index + 1 :], desk, self.play)
            case sheets.Redrawing():
                sheets.redraw(line, desk, self.play)
            case tree.BeginWith():
                self._begin_with(statement, desk)
            case tree.Check() | tree.NotionLine() | tree.Work() | tree.Opening():
                desk.later.append(line)

    def _begin_with(self, step: tree.BeginWith, desk: Desk) -> None:
        """Plays the drawings of another recipe."""
        if step.recipe in self.opened or len(self.opened) >= MOST_BEGINNINGS:
            chain = ", ".join((*self.opened, step.recipe))
            raise Refusal(
                "recipes-in-a-ring",
                f"recipes begin with each other in a ring, or more than {MOST_BEGINNINGS} deep: {chain}.",
            )
        other = self.shelf(step.recipe)
        if other is None:
            known = shipped_names()
            raise Refusal(
                "recipe-not-known",
                f'there is no recipe "{step.recipe}" on the shelf.{did_you_mean(step.recipe, known)} '
                f"There are: {', '.join(known)}.",
            )
        if step.recipe in self.begun:
            raise Refusal("recipe-begun-with", f"{step.recipe} lies on the desk already. Begin with it once.")
        self.begun.add(step.recipe)
        self.opened.append(step.recipe)
        for setting in step.choosing or ():
            _known_choice(setting.name, other)
            self._set(setting, desk)
        self.play_all([line for line in other.written if type(line.statement) in TAKEN_OVER], desk)
        self.opened.pop()

    def _set(self, setting: tree.Setting, desk: Desk) -> None:
        """Sets a choice of the other recipe, unless the maker has chosen herself."""
        if setting.name.text in self.choices:
            return
        if isinstance(setting.value, tree.Named) and setting.value.name.text not in desk.values:
            self.choices[setting.name.text] = setting.value.name.text
        else:
            self.choices[setting.name.text] = value_of(setting.value, desk).value


def _known_choice(name: tree.Name, recipe: Recipe) -> None:
    """Refuses to set a choice that a recipe does not leave."""
    kinds = (tree.ChoiceLength, tree.ChoiceOption)
    known = [choice.name.text for kind in kinds for choice in recipe.all_of(kind)]
    if name.text not in known and not recipe.first(tree.BeginWith):
        raise Refusal(
            "choice-not-known",
            f'{recipe.name} leaves no choice "{name}".{did_you_mean(name.text, known)} '
            f"It leaves: {', '.join(known) or 'none'}.",
            name.spot,
        )


def _branch(statement: tree.WhenBegins | tree.Otherwise | tree.EndWhen, desk: Desk) -> None:
    match statement:
        case tree.WhenBegins(condition):
            desk.branches.append(
                Branch(desk.is_active, has_held=True)
            )  # as if it held, where that cannot be told
            if desk.is_active:
                held = holds(condition, desk)
                desk.branches[-1] = Branch(held, held)
        case tree.Otherwise(condition):
            branch = _open_branch(desk)
            outside = all(other.holds for other in desk.branches[:-1])
            branch.holds = outside and not branch.has_held and (condition is None or holds(condition, desk))
            branch.has_held = branch.has_held or branch.holds
        case tree.EndWhen():
            _open_branch(desk)
            desk.branches.pop()


def _open_branch(desk: Desk) -> Branch:
    if not desk.branches:
        raise Refusal("no-when-open", 'there is no "when" above to which this belongs.')
    return desk.branches[-1]


def _wanted(statement: object, desk: Desk) -> bool:
    """Whether the condition at the end of a statement holds, where it has one."""
    clauses = getattr(statement, "clauses", None)
    condition = clauses.when if clauses is not None else getattr(statement, "when", None)
    return condition is None or holds(condition, desk)


def _draft(recipe: Recipe, desk: Desk) -> Draft:
    garment = recipe.first(tree.Garment)
    return Draft(
        recipe=recipe.name,
        title=_title(recipe, desk),
        garment=garment.kind.text if garment else "",
        recipe_hash=recipe.fingerprint,
        stature_range=stature_range(recipe),
        measurements=desk.measurements,
        used=tuple(desk.used),
        choices=MappingProxyType(_chosen(desk)),
        tape=desk.tape.name if desk.tape else None,
        amounts=tuple(desk.amounts),
        sheets=tuple(desk.sheets.values()),
        points=MappingProxyType(desk.points),
        lines=MappingProxyType(desk.lines),
        steps=tuple(desk.steps),
        pieces=tuple(desk.pieces.values()),
        seams=tuple(desk.seams),
        notions=tuple(desk.notions),
        work=tuple(desk.work),
        cautions=tuple(desk.cautions),
        remarks=tuple(desk.words(remark.text) for remark in recipe.all_of(tree.Remark)),
        source=_source(recipe, desk.language),
        comparisons=tuple(desk.comparisons),
        openings=MappingProxyType(desk.openings),
        stretch=desk.stretch,
        problems=(*recipe.problems, *desk.problems),
    )


def _title(recipe: Recipe, desk: Desk) -> str:
    stated = recipe.first(tree.Title)
    return desk.words(stated.text) if stated else recipe.title


def _source(recipe: Recipe, language: str) -> str:
    stated = recipe.first(tree.Source)
    return values.source_words(stated.source if stated else tree.CommonPractice(), language)


def _chosen(desk: Desk) -> dict[str, float | str]:
    """The value of every choice, those of a recipe begun with among them."""
    return {amount.name: amount.value for amount in desk.amounts if amount.name in desk.choices}
