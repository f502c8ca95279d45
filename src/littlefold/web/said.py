"""What can be said of each element under the pointer, of the findings, and of the back of the sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.body.tape import say_length
from littlefold.booklet.formula import amount_formula, step_formula
from littlefold.booklet.formula import spoken as said_aloud
from littlefold.booklet.needs import cloth_rows, notion_rows, number_rows
from littlefold.booklet.spoken import spoken
from littlefold.booklet.wording import wording
from littlefold.draft.sentence import full_sentence
from littlefold.problem import Severity
from littlefold.web.cures import trouble_of
from littlefold.web.finished import finished
from littlefold.web.readings import said_choice

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import Draft, DraftEdge, Step
    from littlefold.pattern.model import Piece, Seam
    from littlefold.pipeline import Outcome
    from littlefold.web.asked import Asked
    from littlefold.web.cures import Cure, Trouble
    from littlefold.web.places import Standing

Json = dict[str, Any]
HEADINGS = {
    Severity.ERROR: "Mend this first",
    Severity.WARNING: "Look at this",
    Severity.NOTE: "Good to know",
}


def elements(outcome: Outcome, asked: Asked) -> Json:
    """Every named point, line and edge: its name, length, formula with the child's numbers, sentence and source."""
    draft = outcome.draft
    found = {step.name: _step(step, outcome, asked) for step in draft.steps}
    for piece in outcome.pattern.pieces:
        for name, edge in _edges(piece, asked):  # a piece may be called as its sheet, and an edge as its line
            found[name] = {**edge, **found.get(name, {}), "edge": edge["sentence"]}
    return found


def _step(step: Step, outcome: Outcome, asked: Asked) -> Json:
    draft = outcome.draft
    line = draft.lines.get(step.name)
    return {
        "name": step.name.removeprefix(f"{step.sheet}.").replace("_", " "),
        "step": step.number,
        "line": step.line,
        "sentence": full_sentence(step, draft, asked.speech),
        "length": asked.speech.length(line.path.length()) if line else "",
        "formula": step_formula(step, asked.speech, "{formula}, on the tape {length}"),
        "workings": list(_workings(step, outcome.draft, asked)),
        "source": step.source,
    }


def _workings(step: Step, draft: Draft, asked: Asked) -> Iterator[str]:
    """How each amount in the formula of a step came about, with this child's numbers."""
    used = {name for name, _ in step.terms}
    for amount in draft.amounts:
        formula = amount_formula(amount, draft, asked.speech) if amount.name in used else ""
        if formula:
            yield f"{said_aloud(amount.name)} = {formula}"


def _edges(piece: Piece, asked: Asked) -> Iterator[tuple[str, Json]]:
    for edge in piece.edges:
        yield (
            f"{piece.name}.{edge.name}",
            {
                "name": f"{piece.title}: {edge.name.replace('_', ' ')}",
                "length": asked.speech.length(edge.path.length()),
                "sentence": _edge_words(edge, asked),
                "formula": "",
                "source": "",
            },
        )


def _edge_words(edge: DraftEdge, asked: Asked) -> str:
    if edge.allowance == 0:
        return f"{edge.kind.value}, nothing added"
    return f"{edge.kind.value}, {asked.speech.length(edge.allowance)} of cloth beyond it"


def findings(
    placed: tuple[Standing, ...], cured: Mapping[Trouble, tuple[Cure, ...]], asked: Asked
) -> list[Json]:
    """The findings in words, the gravest first, each with the choices that cure it where they were sought."""
    weight = list(HEADINGS)
    ordered = sorted(placed, key=lambda one: weight.index(one.problem.severity))
    return [
        {
            "number": one.number,
            "severity": one.problem.severity.value,
            "heading": HEADINGS[one.problem.severity],
            "message": spoken((one.problem,), asked.speech)[0].message,
            "rule": one.problem.rule,
            "sheet": one.sheet if one.at is not None else "",
            "line": one.problem.place.line,
            "cures": [_cure(cure, asked) for cure in cured.get(trouble_of(one.problem), ())],
        }
        for one in ordered
    ]


def _cure(cure: Cure, asked: Asked) -> Json:
    """A cure as data and as a link: the choice, what is to be written in its field, and how that is said."""
    text = _typed(cure, asked)
    return {
        "choice": cure.slip.name,
        "value": text,
        "title": cure.slip.title,
        "said": said_choice(cure.value, cure.slip.unit, asked),
        "query": asked.query({cure.slip.name: text}),
    }


def _typed(cure: Cure, asked: Asked) -> str:
    """The value of a cure as a maker would write it into the field of its choice."""
    if isinstance(cure.value, str):
        return cure.value
    return say_length(cure.value, asked.speech.units) if cure.slip.unit == "mm" else f"{cure.value:g}"


def back_of_sheet(outcome: Outcome, asked: Asked) -> Json:
    """What is written on the back: finished measurements, seams, things to buy, pieces to cut, order of work."""
    words = wording(asked.speech.language)
    draft, pattern = outcome.draft, outcome.pattern
    return {
        "finished": finished(pattern, asked.speech),
        "numbers": list(number_rows(draft, asked.speech)),
        "seams": [_seam(seam, asked) for seam in pattern.seams],
        "notions": list(notion_rows(draft, words, asked.speech)),
        "pieces": list(cloth_rows(pattern, asked.speech)),
        "work": list(draft.work),
        "cautions": list(draft.cautions),
        "remarks": list(draft.remarks),
        "source": draft.source,
    }


def _seam(seam: Seam, asked: Asked) -> Json:
    first, second = (", ".join(f"{ref.piece} {ref.edge}" for ref in run) for run in (seam.first, seam.second))
    lengths = asked.speech.length(seam.first_length), asked.speech.length(seam.second_length)
    return {
        "first": first.replace("_", " "),
        "second": second.replace("_", " "),
        "lengths": lengths,
        "matched": seam.matched,
    }
