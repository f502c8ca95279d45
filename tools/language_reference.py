"""Writes docs/language.md anew: `.venv/bin/python tools/language_reference.py`; a test says when it was forgotten.

The sentence beside an example is what the instruction sheet really says: the example is drawn where points, lines
and outlines of every name lie that the examples use (`language_stages.py`).
"""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from littlefold.body import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.draft.sentence import Speech, sentence
from littlefold.problem import has_errors
from littlefold.recipe.forms import FORMS
from littlefold.recipe.parse import parse
from littlefold.recipe.reference import reference
from tools.language_stages import stage_of

DOCS = Path(__file__).parents[1] / "docs"
# On paper the new point or line has a name that the small sheet has given away already.
STAND_IN = "Neu"
# Statements whose new name may be taken; of the others it is free on their stage.
RENAMED = ("point", "line", "curve", "arc", "circle", "copy")


def said(form: str) -> str | None:
    """The sentence that an example is said with; None where it draws nothing."""
    stage = stage_of(form)
    if stage is None:
        return None
    name, line = _renamed(form)
    draft = evaluate(parse(stage + line), Measurements())
    steps = [step for step in draft.steps if step.line == stage.count("\n") + 1]
    if has_errors(draft.problems) or not steps:
        raise ValueError(f"{form}: {[problem.message for problem in draft.problems]}")
    return " ".join(sentence(step, Speech()) for step in steps).replace(STAND_IN, name)


def _renamed(form: str) -> tuple[str, str]:
    """The new name of an example, and the example with another in its place."""
    words = form.split(" ")
    if words[0] not in RENAMED:
        return STAND_IN, form
    name = words[3] if words[0] == "copy" else words[1]
    words[words.index(name, 1)] = STAND_IN
    return name, " ".join(words)


def page() -> str:
    """The whole page."""
    forms = [form for known in FORMS.values() for form in known]
    sentences = {form: words for form in forms if (words := said(form)) is not None}
    return reference(DOCS.joinpath("language_intro.md").read_text(encoding="utf-8"), sentences)


def main() -> None:
    """Writes the page."""
    DOCS.joinpath("language.md").write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
