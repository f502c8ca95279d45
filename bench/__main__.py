"""`python -m bench`: every measured comparison, one after the other, with its goal.

python -m bench             # all; the survey and the fuzz take some minutes each
python -m bench --quick     # without the survey, and with fewer fuzzed texts
python -m bench --only a c  # some of a b c d redraw pupils memory fuzz survey
"""

from __future__ import annotations

import argparse

from bench import (
    classroom,
    commands,
    every_child,
    fuzz,
    garments,
    kernel_environment,
    many_redraws,
    printing,
    redraw,
)

USUAL = ("a", "b", "c", "d", "redraw", "pupils", "memory", "fuzz", "survey")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true")
    parser.add_argument("--only", nargs="*", default=list(USUAL))
    asked = parser.parse_args()
    parts = {
        "a": garments.report,
        "b": kernel_environment.report,
        "c": printing.report,
        "d": commands.report,
        "redraw": lambda: redraw.report(20 if asked.quick else redraw.MOVES),
        "pupils": lambda: classroom.report(10 if asked.quick else classroom.SECONDS),
        "memory": lambda: many_redraws.report(1_000 if asked.quick else many_redraws.REDRAWS),
        "fuzz": lambda: fuzz.report(5_000 if asked.quick else 100_000),
        "survey": lambda: None if asked.quick else every_child.survey_table(1),
    }
    for name in asked.only:
        parts[name]()


if __name__ == "__main__":
    main()
