"""What was found, in the maker's language and units: the sentences of `findings/<language>.toml` with values put in.

English needs no table, since the checks speak it.  A sentence that a table lacks is said in English.
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import replace
from functools import lru_cache
from importlib.resources import files
from typing import TYPE_CHECKING, Final

from littlefold.body.register import register_in
from littlefold.body.tape import EIGHTH, MM_PER, SIXTEENTH, say_length
from littlefold.problem import Measured, Saying, shortest
from littlefold.recipe.faults.fault import with_short_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from littlefold.draft.sentence import Speech
    from littlefold.problem import Problem

# The marks of an inch tape to which a child's measurements are said: those that were taken, and those that were not.
_MARKS: Final = {"tape": SIXTEENTH, "estimate": EIGHTH}

# A number as a sentence writes it; no name begins with a digit.
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?: (?:cm|mm|degrees))?")


def spoken(problems: Iterable[Problem], speech: Speech) -> tuple[Problem, ...]:
    """Problems whose messages and cures are in the maker's language and units, as far as they can be."""
    return tuple(_spoken(problem, speech) for problem in problems)


def _spoken(problem: Problem, speech: Speech) -> Problem:
    if speech.language == "en" and speech.units == "cm":
        return problem
    if not problem.said:
        return _doubt(problem, speech)
    sentences = [with_short_words(told(saying, speech)) for saying in problem.said]
    return replace(problem, message=" ".join(sentences), cure=sentences[-1] if problem.cure else "")


def _doubt(problem: Problem, speech: Speech) -> Problem:
    """A doubt about readings, made from its numbers: what was read, and what would go with the others."""
    pattern = findings(speech.language).get(problem.code)
    if pattern is None:
        return problem
    title = register_in(speech.language)
    values = {number.name: _part(Measured(number.value), speech) for number in problem.numbers}
    readings = [f"{title[name].title} {value}" for name, value in values.items() if name in title]
    fitting = [value for name, value in values.items() if name.startswith("usual ")]
    usual = (
        word("; about {fitting} would fit", speech.language).format(fitting=", ".join(fitting))
        if fitting
        else ""
    )
    limits = {name: values.get(name, "") for name in ("least", "greatest")}
    return replace(problem, message=pattern.format(readings=", ".join(readings), usual=usual, **limits))


def told(saying: Saying, speech: Speech) -> str:
    """A saying in words."""
    pattern = findings(speech.language).get(saying.pattern, saying.pattern)
    return pattern.format_map({name: _part(part, speech) for name, part in saying.parts})


def word(english: str, language: str) -> str:
    """A word of the checks (a kind of edge, a notion, a place) in a language; as it is where it has no translation."""
    return findings(language).get(english, english)


def _part(part: str | Measured | Saying, speech: Speech) -> str:
    if isinstance(part, Saying):
        return told(part, speech)
    if isinstance(part, str):
        return _spelled(part, speech) if _NUMBER.fullmatch(part) else part
    if part.unit in _MARKS and speech.units == "in":
        return speech.spelled(say_length(part.value, "in", _MARKS[part.unit]))
    if part.unit == "mm" and speech.units == "in":
        return _inches(part.value, speech)
    return _spelled(str(part), speech)


def _spelled(number: str, speech: Speech) -> str:
    """A number as it stands in an English sentence, perhaps with its unit, in the maker's units and signs."""
    if number.endswith(" cm") and speech.units == "in":
        return _inches(float(number.removesuffix(" cm")) * MM_PER["cm"], speech)
    return speech.spelled(number.replace(" degrees", f" {word('degrees', speech.language)}"))


def _inches(mm: float, speech: Speech) -> str:
    return speech.spelled(f"{shortest(mm / MM_PER['in'])} in")


@lru_cache
def findings(language: str) -> Mapping[str, str]:
    """The sentences and words of a language by the English ones; none for English."""
    entry = files("littlefold.booklet").joinpath("findings", f"{language}.toml")
    if not entry.is_file():
        return {}
    table = tomllib.loads(entry.read_text("utf-8"))
    return {english: said for part in table.values() for english, said in part.items()}
