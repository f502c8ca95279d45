"""Writes docs/language.md anew: `.venv/bin/python tools/language_reference.py`; a test says when it was forgotten.

The sentence beside an example is what the instruction sheet really says: the example is drawn on a small sheet
with points and lines of every name that the examples use.
"""

from __future__ import annotations

from pathlib import Path

from littlefold.body import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech, sentence
from littlefold.problem import has_errors
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import parse
from littlefold.recipe.reference import reference

DOCS = Path(__file__).parents[1] / "docs"
DRAWN = ("point", "line", "curve", "arc", "circle", "copy")
SHEET = """\
amount width = 16 cm
drawing body
point A at the fold
point B at 0 cm across and -30 cm up
point C at 12 cm across and -10 cm up
point D at 16 cm across and -30 cm up
point E at 14 cm across and -14 cm up
point F at 8 cm across and 0 cm up
point G at 0 cm across and -6 cm up
point H at 15 cm across and -29 cm up
point J at 10 cm across and -20 cm up
point K at 8 cm across and -14 cm up
point M at 5 cm across and -18 cm up
point O at 0 cm across and 10 cm up
point P at 9 cm across and -27 cm up
point Q at 5 cm across and -9 cm up
point V at -10 cm across and 10 cm up
point W at 15 cm across and -22 cm up
curve armhole from F going down, to E going right
line side from E to D
curve neckline from G going right, to F going up
"""
# On paper the new point or line has a name that the small sheet has given away already.
STAND_IN = "Neu"


def said(form: str) -> str:
    """The sentence that a step is said with."""
    words = form.split(" ")
    name = words[3] if words[0] == "copy" else words[1]
    words[words.index(name, 1)] = STAND_IN
    sheet = "drawing body\n" if " at the fold" in form or " at the start" in form else SHEET
    draft = evaluate(parse(sheet + " ".join(words)), Measurements())
    if has_errors(draft.problems) or not draft.steps:
        raise ValueError(f"{form}: {[problem.message for problem in draft.problems]}")
    return sentence(draft.steps[-1], Speech()).replace(STAND_IN, name)


def page() -> str:
    """The whole page."""
    sentences = {form: said(form) for word in DRAWN for form in FORMS[word]}
    return reference(DOCS.joinpath("language_intro.md").read_text(encoding="utf-8"), sentences)


def main() -> None:
    """Writes the page."""
    DOCS.joinpath("language.md").write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
