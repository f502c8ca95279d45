"""`littlefold printer`: what the printer check measures, and which setting to change."""

from __future__ import annotations

from littlefold.body.tape import read_length
from littlefold.cli.words import aside, print_findings, to_person
from littlefold.problem import Problem, Severity
from littlefold.sheet.printer_advice import printer_advice


def advise(across: str, down: str) -> int:
    """Says which setting of the printer to change; returns the exit status.  A bare number is millimetres."""
    lengths = [read_length(text, "mm") for text in (across, down)]
    refused = [one for one in lengths if isinstance(one, Problem)]
    if refused:
        print_findings(refused, aside())
        return 2
    advice = printer_advice(*(one for one in lengths if not isinstance(one, Problem)))
    print_findings(advice, to_person())
    return 1 if any(problem.severity is Severity.ERROR for problem in advice) else 0
