"""Every recipe for the real children of the 1977 survey: who is served, and what is refused, in words.

python -m bench.every_child            # all children
python -m bench.every_child --every 8  # every eighth
"""

from __future__ import annotations

import argparse
import time
from collections import Counter

from littlefold.draft.suits import stature_range
from littlefold.pipeline import on_the_shelf
from littlefold.problem import Severity
from littlefold.recipe.shelf import shipped_names
from tests.body.survey import SURVEY, read_survey
from tests.journeys.soundness import drafted, unsound


def row(name: str, children: list) -> tuple[str, Counter[str]]:
    """A line of the table, and the codes of what was found serious."""
    low, high = stature_range(on_the_shelf(name))
    suited = [child for child in children if low <= child.mm("stature") <= high]
    served = sound = 0
    codes: Counter[str] = Counter()
    for child in suited:
        outcome = drafted(name, child)
        sound += not unsound(outcome)
        errors = [problem for problem in outcome.problems if problem.severity is Severity.ERROR]
        served += not errors
        codes.update({problem.code for problem in errors})
        codes.update({p.code + " (warning)" for p in outcome.problems if p.severity is Severity.WARNING})
    words = ", ".join(f"{code} {count}" for code, count in codes.most_common(4)) or "nothing"
    reach = f"{low / 10:.0f} to {high / 10:.0f}"
    return f"| `{name}` | {reach} | {len(suited)} | {sound} | {served} | {words} |", codes


def survey_table(every: int) -> None:
    """Prints the table; an exception ends it, since none may come."""
    if not SURVEY.exists():
        print(f"The survey is not here: {SURVEY}")
        return
    children = list(read_survey())[::every]
    started = time.process_time()
    print(f"{len(children)} children of the survey, every {every}")
    print("| recipe | stature cm | children | sound | without an error | found (children) |")
    print("|---|---|---|---|---|---|")
    for name in shipped_names():
        print(row(name, children)[0], flush=True)
    print(f"{time.process_time() - started:.0f} s of processor time")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--every", type=int, default=1)
    survey_table(parser.parse_args().every)


if __name__ == "__main__":
    main()
