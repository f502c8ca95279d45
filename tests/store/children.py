"""Invented children for the tests of the card box."""

from __future__ import annotations

from datetime import date

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.check import Circumstances
from littlefold.problem import Number, Place, Problem, Severity
from littlefold.store import Card, Fitting, Measured, Note, OwnMeasurement, PastDraft, RecipeText

MINA = Card(
    "Mina",
    date(2022, 8, 14),
    "girl",
    (
        Measured(date(2025, 9, 1), (("stature", 980.0), ("chest", 545.0)), "Edda", "vest"),
        Measured(
            date(2026, 2, 20),
            (("stature", 1012.5), ("front_length", 285.75), ("chest", 22.25 * 25.4)),
            "Edda",
            "T-shirt",
            (OwnMeasurement("front_length", "top", "From the neck over the „chest“, to the waist"),),
        ),
    ),
    (Note(date(2026, 2, 20), "Scratchy labels are not liked."),),
    (
        PastDraft(
            date(2026, 2, 21),
            (RecipeText("top", "recipe top\n"), RecipeText("bodice", "recipe bodice\n")),
            Measurements(
                (("chest", Reading(565.15)), ("neck", Reading(251.0, Origin.ESTIMATED, 7.25))),
                42.25,
                "girl",
                "Mina",
            ),
            (("closing", "cord"), ("ease", 80.0)),
            "1/8in",
            "de",
            "ab12",
            30.0,
            None,
            (Fitting(date(2026, 2, 25), "Too tight over the tummy."),),
            "in",
            Circumstances("us", "3T", (594.0, 841.0), 1120.0),
            (
                Problem(
                    "cord-at-neck",
                    "Eine Kordel am „Hals“.",
                    Severity.ERROR,
                    Place(piece="front", edge="neckline"),
                    (Number("cord", 881.5), Number("least", 0.0, "count")),
                    "EN 14682",
                    "Gummi statt Kordel.",
                ),
                Problem("paper-needed", "", Severity.NOTE, Place("top", 3, 7, None, None, "body.A")),
            ),
        ),
    ),
)
JO = Card("Jo")
