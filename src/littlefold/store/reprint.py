"""From a fulfilled wish to a draft on a card, and from the card to the same wish again."""

from __future__ import annotations

from dataclasses import replace
from hashlib import sha256
from typing import TYPE_CHECKING

from littlefold.body.tape import read_mark
from littlefold.booklet.recipes import with_beginnings
from littlefold.booklet.spoken import spoken
from littlefold.check import Circumstances, check
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech
from littlefold.pattern.picture import draw_pattern
from littlefold.pattern.trace import trace
from littlefold.pipeline import Wish, on_the_shelf
from littlefold.problem import Problem, Severity
from littlefold.recipe.parse import parse
from littlefold.sheet.svg import write_svg
from littlefold.store.card import PastDraft, RecipeText

if TYPE_CHECKING:
    from datetime import date

    from littlefold.body.tape import TapeMark
    from littlefold.pattern.model import Pattern
    from littlefold.pipeline import Outcome
    from littlefold.recipe.recipe import Recipe
    from littlefold.store.card import Units


def pattern_hash(pattern: Pattern) -> str:
    """A hash of all pieces as drawn at full size, to a ten-thousandth of a millimetre, without the date."""
    pieces = "".join(write_svg(piece) for piece in draw_pattern(pattern))
    return sha256(pieces.encode()).hexdigest()


def past_draft(
    wish: Wish, outcome: Outcome, made: date, follows: int | None = None, units: Units = "cm"
) -> PastDraft:
    """What a card keeps of an outcome, with all that was found, in the words of its sheets."""
    recipe = wish.recipe
    others = (one for one in with_beginnings(recipe, on_the_shelf) if one.text != recipe.text)
    return PastDraft(
        made,
        (RecipeText(recipe.file, recipe.text), *(RecipeText(one.file, one.text) for one in others)),
        outcome.draft.measurements,
        wish.choices,
        wish.tape.name if wish.tape else "exact",
        wish.language,
        pattern_hash(outcome.pattern),
        follows=follows,
        units=units,
        around=_asked_with(wish.circumstances),
        findings=_worded(outcome.problems, Speech(units, wish.tape, wish.language)),
    )


def _asked_with(found: Circumstances) -> Circumstances:
    """What a maker can say of the circumstances; the rest is the program's own."""
    return Circumstances(found.region, found.us_size, found.paper, found.cloth_width)


def _worded(problems: tuple[Problem, ...], speech: Speech) -> tuple[Problem, ...]:
    return tuple(replace(problem, said=()) for problem in spoken(problems, speech))


def wish_again(draft: PastDraft) -> Wish:
    """The wish that a past draft came from, by the recipe as it was."""
    around = draft.around or Circumstances()
    return Wish(recipe_of(draft), draft.body, around, draft.choices, _tape(draft), draft.language)


def speech_of(draft: PastDraft) -> Speech:
    """How the sheets of a past draft spoke."""
    return Speech(draft.units, _tape(draft), draft.language)


def _tape(draft: PastDraft) -> TapeMark | None:
    mark = read_mark(draft.tape)
    return None if isinstance(mark, Problem) or not mark.mm else mark


def recipe_of(draft: PastDraft) -> Recipe:
    """The recipe of a past draft as it was."""
    return parse(draft.recipes[0].text, draft.recipes[0].name)


def pattern_again(draft: PastDraft) -> tuple[Pattern, tuple[Problem, ...]]:
    """The pattern of a past draft, drawn again, and a warning where it does not come out as it did."""
    wish = wish_again(draft)
    kept = {recipe.name: parse(recipe.text, recipe.name) for recipe in draft.recipes[1:]}
    drawn = evaluate(
        wish.recipe,
        wish.measurements,
        dict(wish.choices),
        tape=wish.tape,
        shelf=kept.get,
        language=wish.language,
    )
    pattern = trace(drawn)
    if draft.pattern_hash in ("", pattern_hash(pattern)):
        return pattern, ()
    warning = Problem(
        "pattern-differs",
        f"The pattern of {draft.made} was drawn by another version of Littlefold and comes out a little otherwise now. "
        "Lay the old paper on the new one before you cut.",
        Severity.WARNING,
    )
    return pattern, (warning,)


def findings_again(draft: PastDraft, pattern: Pattern) -> tuple[Problem, ...]:
    """What stood on the sheets of a past draft; of one that was kept without it, what the rules find today.

    Args:
        draft: The past draft.
        pattern: From `pattern_again`.
    """
    if draft.around is not None:
        return draft.findings
    found = check(pattern, Circumstances(stretch=pattern.draft.stretch))
    note = Problem(
        "findings-of-today",
        f"The draft of {draft.made} was kept by an older Littlefold without its cautions and its region. These are what the "
        "rules of the European Union find today.",
        Severity.NOTE,
    )
    return (note, *_worded(found, speech_of(draft)))
