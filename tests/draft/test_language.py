"""The recipe's own words come in the maker's language where they are translated."""

from __future__ import annotations

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.recipe.parse import parse

RECIPE = """
title "Bib" de: "Lätzchen"
source "own draft" de: "eigener Entwurf"
caution "Take it off before sleep." de: "Vor dem Schlafen abnehmen."
remark "Use a soft pencil." de: "Einen weichen Stift nehmen."
own measure drop "Neck to waist" de: "Hals bis Taille" or else 20 cm
choice ease = 2 cm, 1 cm .. 3 cm "Room" de: "Zugabe"
amount wide = 10 cm + ease "Width" de: "Breite" source "a book" de: "ein Buch"
drawing bib "The fold on your left" de: "Bruch links"
point A at the fold "Leave room above." de: "Oben Platz lassen."
point B right of A by wide
point C below B by drop
point D below A by drop
piece front "Front" de: "Vorderteil" from bib cut 1 on fold
edges A-D fold, D-C as hem hem, C-B as side bound, B-A as neck bound
mark "centre" de: "Mitte" at A
check wide > 1 cm "Wide enough" de: "Breit genug"
notion tape 1 m "for the edge" de: "für die Kante"
work "Bind the edge" de: "Kante einfassen", "Press"
"""


def texts(language: str) -> dict[str, object]:
    child, _ = complete(Measurements.of({"stature": 1040}))
    draft = evaluate(parse(RECIPE, "bib"), child, language=language)
    assert not draft.problems
    titles = {amount.name: amount.title for amount in draft.amounts}
    return {
        "title": draft.title,
        "source": draft.source,
        "cautions": draft.cautions,
        "remarks": draft.remarks,
        **titles,
        "why": next(amount.source for amount in draft.amounts if amount.name == "wide"),
        "sheet": draft.sheets[0].remark,
        "step": draft.steps[0].remark,
        "piece": draft.pieces[0].title,
        "mark": draft.pieces[0].marks[0][0],
        "check": draft.comparisons[0].reason,
        "notion": draft.notions[0].remark,
        "work": draft.work,
    }


def test_words_in_german() -> None:
    assert texts("de") == {
        "title": "Lätzchen",
        "source": "eigener Entwurf",
        "cautions": ("Vor dem Schlafen abnehmen.",),
        "remarks": ("Einen weichen Stift nehmen.",),
        "drop": "Hals bis Taille",
        "ease": "Zugabe",
        "wide": "Breite",
        "why": "ein Buch",
        "sheet": "Bruch links",
        "step": "Oben Platz lassen.",
        "piece": "Vorderteil",
        "mark": "Mitte",
        "check": "Breit genug",
        "notion": "für die Kante",
        "work": ("Kante einfassen", "Press"),  # the second is not translated
    }


@pytest.mark.parametrize("language", ["en", "fr"])
def test_words_as_first_written_where_there_is_no_translation(language: str) -> None:
    found = texts(language)
    assert found["title"] == "Bib"
    assert found["piece"] == "Front"
    assert found["work"] == ("Bind the edge", "Press")
