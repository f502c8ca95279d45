"""`python -m bench`: every measured comparison, one after the other, with its goal.

python -m bench             # all; the survey and the fuzz take some minutes each
python -m bench --quick     # without the survey, and with fewer fuzzed texts
python -m bench --only a c  # some of a b c d fuzz survey
"""

from __future__ import annotations

import argparse

from bench import commands, every_child, fuzz, garments, kernel_environment, printing


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--quick", action="store_true")
    parser.add_argument("--only", nargs="*", default=["a", "b", "c", "d", "fuzz", "survey"])
    asked = parser.parse_args()
    parts = {
        "a": garments.report,
        "b": kernel_environment.report,
        "c": printing.report,
        "d": commands.report,
        "fuzz": lambda: fuzz.report(5_000 if asked.quick else 100_000),
        "survey": lambda: None if asked.quick else every_child.survey_table(1),
    }
    for name in asked.only:
        parts[name]()


if __name__ == "__main__":
    main()
