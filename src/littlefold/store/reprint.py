"""From a fulfilled wish to a draft on a card, and from the card to the same wish again."""

from __future__ import annotations

from hashlib import sha256
from typing import TYPE_CHECKING

from littlefold.body.tape import read_mark
from littlefold.booklet.recipes import with_beginnings
from littlefold.check import Circumstances
from littlefold.draft.evaluate import evaluate
from littlefold.pattern.picture import draw_pattern
from littlefold.pattern.trace import trace
from littlefold.pipeline import Wish, on_the_shelf
from littlefold.problem import Problem, Severity
from littlefold.recipe.parse import parse
from littlefold.sheet.svg import write_svg
from littlefold.store.card import PastDraft, RecipeText

if TYPE_CHECKING:
    from datetime import date

    from littlefold.pattern.model import Pattern
    from littlefold.pipeline import Outcome
    from littlefold.recipe.recipe import Recipe


def pattern_hash(pattern: Pattern) -> str:
    """A hash of all pieces as drawn at full size, to a ten-thousandth of a millimetre, without the date."""
    pieces = "".join(write_svg(piece) for piece in draw_pattern(pattern))
    return sha256(pieces.encode()).hexdigest()


def past_draft(wish: Wish, outcome: Outcome, made: date, follows: int | None = None) -> PastDraft:
    """What a card keeps of an outcome."""
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
    )


def wish_again(draft: PastDraft) -> Wish:
    """The wish that a past draft came from, by the recipe as it was."""
    mark = read_mark(draft.tape)
    tape = None if isinstance(mark, Problem) or not mark.mm else mark
    return Wish(recipe_of(draft), draft.body, Circumstances(), draft.choices, tape, draft.language)


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
