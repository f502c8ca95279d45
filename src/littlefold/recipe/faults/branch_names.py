"""A name made in one branch only, and used outside it."""

from __future__ import annotations

from dataclasses import dataclass, field, fields, is_dataclass
from typing import TYPE_CHECKING, Any, Final

from littlefold.recipe import tree
from littlefold.recipe.faults.fault import fault
from littlefold.recipe.guards import Guards, Weighing, guards_of

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.problem import Problem
    from littlefold.recipe.recipe import Recipe, Written

NOWHERE: Final[Guards] = frozenset()

# Statements whose names belong to the whole recipe; those of all others that are drawn belong to their sheet.
_OF_THE_RECIPE: Final = (
    *(tree.OwnMeasure, tree.Unit, tree.ChoiceLength, tree.ChoiceOption, tree.Amount, tree.Table, tree.Find),
    *(tree.Drawing, tree.Outline, tree.Slash, tree.CloseDart, tree.FoldIn, tree.GatherIn, tree.Join),
    *(tree.ButtonStand, tree.Piece, tree.PieceRectangle, tree.PieceBias, tree.PieceBand, tree.PieceFacing),
)
_NO_MAKERS: Final = (tree.NotionLine, tree.Opening, tree.Redraw, tree.LayPart, tree.RecipeName)

# Parts that are names of something else than what a recipe makes: kinds, options, units, edges of outlines and pieces.
_WORDS: Final = frozenset(
    (
        *((tree.Chosen, "option"), (tree.NotChosen, "option"), (tree.Quantity, "unit"), (tree.Edge, "kind")),
        *(
            (tree.Edge, "name"),
            (tree.InsideLine, "kind"),
            (tree.InsideLine, "name"),
            (tree.InsideLine, "edge"),
        ),
        *(
            (tree.CutOrder, "cloth"),
            (tree.AllowanceRule, "kind"),
            (tree.Garment, "kind"),
            (tree.Setting, "name"),
        ),
        *(
            (tree.NotionLine, "name"),
            (tree.NotionLine, "at"),
            (tree.Opening, "name"),
            (tree.LineNamed, "name"),
        ),
        *((tree.Slash, "at"), (tree.Slash, "second_at"), (tree.GatherIn, "edge"), (tree.Join, "edge")),
        *(
            (tree.ButtonStand, "edge"),
            (tree.NotchAt, "edge"),
            (tree.NotchShare, "edge"),
            (tree.NotchBy, "edge"),
        ),
        *((tree.Redraw, "name"), (tree.LayPart, "name")),
    )
)


@dataclass(slots=True)
class _Branch:
    """A `when` in force: the guards of its present part, those of the parts before, the sheet in hand before it."""

    guards: Guards
    passed: Guards
    sheet: str | None
    moved: bool = False


@dataclass(frozen=True, slots=True)
class _Spoken:
    """A statement with the guards under which it is done and the sheet on which its names are looked up."""

    written: Written
    guards: Guards
    sheet: str | None


@dataclass(slots=True)
class _Reading:
    """Goes through a recipe line by line and knows which guards are in force and which sheet is in hand."""

    branches: list[_Branch] = field(default_factory=list)
    sheet: str | None = ""
    piece_sheet: str | None = ""
    sheets: set[str] = field(default_factory=set)

    def read(self, written: Written) -> _Spoken:
        """Takes a statement in."""
        statement = written.statement
        outside = self._in_force()
        self._branch(statement)
        self._turn_to(statement)
        guards = outside if isinstance(statement, tree.WhenBegins | tree.Otherwise) else self._in_force()
        condition = _trailing(statement)
        own = guards_of(condition) if condition is not None else NOWHERE
        return _Spoken(written, guards | own, self.piece_sheet)

    def _in_force(self) -> Guards:
        return NOWHERE.union(*(branch.guards for branch in self.branches))

    def _branch(self, statement: Any) -> None:
        if isinstance(statement, tree.WhenBegins):
            guards, passed = guards_of(statement.condition), guards_of(statement.condition, answer=False)
            self.branches.append(_Branch(guards, passed, self.sheet))
        elif isinstance(statement, tree.Otherwise) and self.branches:
            self._next_part(self.branches[-1], statement.condition)
        elif isinstance(statement, tree.EndWhen) and self.branches:
            ended = self.branches.pop()
            if ended.moved or self.sheet != ended.sheet:
                self.sheet = self.piece_sheet = None  # which sheet is in hand depends on the branch taken

    def _next_part(self, branch: _Branch, condition: tree.Condition | None) -> None:
        branch.moved = branch.moved or self.sheet != branch.sheet
        branch.guards = branch.passed
        if condition is not None:
            branch.guards, branch.passed = (
                branch.passed | guards_of(condition),
                branch.passed | guards_of(condition, answer=False),
            )
        self.sheet = self.piece_sheet = branch.sheet

    def _turn_to(self, statement: Any) -> None:
        """Follows the sheet in hand; the lines of a piece are looked up on the sheet it is traced from."""
        if isinstance(statement, tree.Drawing | tree.ContinueDrawing | tree.Redraw):
            self.sheet = self.piece_sheet = statement.name.text
            self.sheets.add(statement.name.text)
        elif isinstance(statement, tree.Piece):
            own = statement.name.text if statement.name.text in self.sheets else self.sheet
            self.piece_sheet = statement.sheet.text if statement.sheet else own
        elif isinstance(statement, tree.Sew | tree.Check | tree.NotionLine):
            self.piece_sheet = self.sheet


def names_of_one_branch(recipe: Recipe) -> Iterator[Problem]:
    """A name that is made under a condition is used only where that condition holds; each is told once."""
    reading = _Reading()
    spoken = [reading.read(written) for written in recipe.written]
    made: dict[str, list[_Spoken]] = {}
    for one in spoken:
        for name in _made(one):
            made.setdefault(name, []).append(one)
    only_sometimes = {name: told for name, told in made.items() if all(one.guards for one in told)}
    if only_sometimes:
        yield from _misused(spoken, only_sometimes, Weighing(_options(recipe)))


def _misused(spoken: list[_Spoken], made: dict[str, list[_Spoken]], weighing: Weighing) -> Iterator[Problem]:
    told: set[str] = set()
    for one in spoken:
        for name in _used(one.written.statement):
            key = next((key for key in _keys(name.text, one.sheet) if key in made), None)
            if key is None or key in told or key in _made(one):
                continue
            if not weighing.is_there([other.guards for other in made[key]], one.guards):
                told.add(key)
                yield _fault(one, name, made[key][0].written.line)


def _fault(one: _Spoken, name: tree.Name, line: int) -> Problem:
    words = (
        f'"{name}" is made in one branch only (line {line}) and cannot be used outside it. '
        "Use it under the same condition, or make it in every branch."
    )
    return fault(one.written, name.spot, "name-of-one-branch", words)


def _trailing(statement: Any) -> tree.Condition | None:
    """The condition at the end of a statement."""
    clauses = getattr(statement, "clauses", None)
    found: tree.Condition | None = clauses.when if clauses is not None else getattr(statement, "when", None)
    return found


def _made(one: _Spoken) -> tuple[str, ...]:
    """The full names of what a statement makes."""
    statement = one.written.statement
    if isinstance(statement, tree.Measure):
        return tuple(wanted.name.text for wanted in statement.wanted)
    if isinstance(statement, tree.Split):
        return (statement.first.text, statement.second.text)
    name = getattr(statement, "name", None)
    if not isinstance(name, tree.Name) or isinstance(statement, _NO_MAKERS):
        return ()
    return (name.text,) if isinstance(statement, _OF_THE_RECIPE) else (f"{one.sheet}.{name.text}",)


def _keys(text: str, sheet: str | None) -> tuple[str, ...]:
    """The full names that a name may stand for, the likelier first."""
    front, dot, _ = text.rpartition(".")
    return (text, front) if dot else (f"{sheet}.{text}", text)


def _used(statement: Any) -> Iterator[tree.Name]:
    """The names in a statement, but for those that are words of another kind."""
    waiting = [statement]
    while waiting:
        part = waiting.pop()
        if isinstance(part, tree.Name):
            yield part
        elif isinstance(part, tuple):
            waiting.extend(reversed(part))
        elif is_dataclass(part):
            named = (one.name for one in reversed(fields(part)) if (type(part), one.name) not in _WORDS)
            waiting.extend(getattr(part, name) for name in named)


def _options(recipe: Recipe) -> dict[str, tuple[str, ...]]:
    return {
        choice.name.text: tuple(option.text for option in choice.options)
        for choice in recipe.all_of(tree.ChoiceOption)
    }
