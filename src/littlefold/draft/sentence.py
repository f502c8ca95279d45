"""Says a step in words: one sentence, made from its kind and its values, in the maker's units and language.

Nothing is typed by hand per recipe.  A language is a table (`sentences/en.toml`); a new one is a new file.
"""

from __future__ import annotations

import tomllib
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from math import degrees
from string import Formatter
from typing import TYPE_CHECKING, Any, Literal

from littlefold.body.tape import say_length

if TYPE_CHECKING:
    from collections.abc import Mapping

    from littlefold.body.tape import TapeMark
    from littlefold.draft.model import Draft, DraftLine, Said, Step

# Shares that a drafter says as a fraction; any other is said as a percentage.
_FRACTIONS = {
    1 / 2: "1/2",
    1 / 3: "1/3",
    2 / 3: "2/3",
    1 / 4: "1/4",
    3 / 4: "3/4",
    1 / 5: "1/5",
    1 / 6: "1/6",
    1 / 8: "1/8",
}
_DEEPEST = 4  # words within words within words; a table that goes deeper goes round


@dataclass(frozen=True, slots=True)
class Speech:
    """How steps are said: units of length, the tape's mark, the language."""

    units: Literal["cm", "in"] = "cm"
    mark: TapeMark | None = None
    language: str = "en"

    def length(self, mm: float) -> str:
        """A length in words."""
        return self.spelled(say_length(mm, self.units, self.mark))

    def depth(self, mm: float) -> str:
        """How far a curve lies from a straight line, as a hand can plot it: to the tape's mark, or to a millimetre."""
        return self.length(round(abs(mm)) if self.mark is None and self.units == "cm" else abs(mm))

    def spelled(self, said: str) -> str:
        """A length or number as the language writes it: its decimal sign, its word for the inch."""
        words = table(self.language)
        said = said.removesuffix(" in") + f" {words['inch']}" if said.endswith(" in") else said
        return said.replace(".", words["decimal"])


@lru_cache(maxsize=1)
def languages() -> tuple[str, ...]:
    """The languages that have a table of sentences."""
    found = files("littlefold.draft").joinpath("sentences").iterdir()
    return tuple(sorted(entry.name.removesuffix(".toml") for entry in found if entry.name.endswith(".toml")))


@lru_cache
def table(language: str) -> Mapping[str, Any]:
    """The table of sentences of a language.

    Raises:
        KeyError: There is none.
    """
    if language not in languages():
        raise KeyError(language)
    text = files("littlefold.draft").joinpath("sentences", f"{language}.toml").read_text(encoding="utf-8")
    return tomllib.loads(text)


def sentence(step: Step, speech: Speech) -> str:
    """The sentence of a step, without the guide points of a curve."""
    words = table(speech.language)
    return _filled(words["steps"][step.kind], {**step.words, "new": _short(step)}, words, speech)


def full_sentence(step: Step, draft: Draft, speech: Speech) -> str:
    """The sentence of a step, with the guide points where it draws a curve."""
    said = sentence(step, speech)
    line = draft.lines.get(step.name)
    if line is None or not line.guides:
        return said
    return f"{said} {guide_sentence(line, speech)}"


def guide_sentence(line: DraftLine, speech: Speech) -> str:
    """Where a curve lies beside the straight line from its start to its end, for a hand to plot."""
    words = table(speech.language)["guides"]
    named = bool(line.start and line.end)
    base = words["named" if named else "unnamed"].format(start=line.start, end=line.end)
    on_left = {guide.depth > 0 for guide in line.guides}
    if len(on_left) > 1:
        return str(words["two_sides"].format(base=base, points=_points(line, speech)))
    return str(
        words["one_side"].format(
            base=base,
            depths=_together([speech.depth(guide.depth) for guide in line.guides], words),
            side=words["left" if on_left.pop() else "right"],
            shares=_listed([_share(guide.at) for guide in line.guides], words),
        )
    )


def _points(line: DraftLine, speech: Speech) -> str:
    """Guide points one by one, as they are on both sides of the straight line."""
    words = table(speech.language)["guides"]
    points = [
        words["point"].format(
            depth=speech.depth(guide.depth),
            side=words["left" if guide.depth > 0 else "right"],
            share=_share(guide.at),
        )
        for guide in line.guides
    ]
    return _listed(points, words)


def _together(lengths: list[str], words: Mapping[str, str]) -> str:
    """Lengths in a row; the unit is said once, at the end."""
    return _listed([*(length.rpartition(" ")[0] for length in lengths[:-1]), lengths[-1]], words)


def _listed(parts: list[str], words: Mapping[str, str]) -> str:
    if len(parts) == 1:
        return parts[0]
    return words["join"].join(parts[:-1]) + words["last"] + parts[-1]


def _short(step: Step) -> str:
    return step.name.removeprefix(f"{step.sheet}.").replace("_", " ")


def _filled(
    pattern: str, values: Mapping[str, Said | str], words: Mapping[str, Any], speech: Speech, depth: int = 0
) -> str:
    """A sentence with its places filled."""
    assert depth < _DEEPEST, f"the table of sentences goes round at {pattern!r}"  # noqa: S101
    parts = []
    for text, place, _, _ in Formatter().parse(pattern):
        parts.append(text)
        if place:
            parts.append(_said(place, values, words, speech, depth))
    return "".join(parts)


def _said(
    place: str, values: Mapping[str, Said | str], words: Mapping[str, Any], speech: Speech, depth: int
) -> str:
    value = values.get(place, "")
    if isinstance(value, str):
        return value
    match value.sort:
        case "word":
            return _filled(words["words"][place][value.value], values, words, speech, depth + 1)
        case "length":
            length = speech.length(float(value.value))
            return f"{speech.spelled(value.own)} ({length})" if value.own else length
        case "angle":
            return speech.spelled(f"{degrees(float(value.value)):.4g}°")
        case "number":
            return speech.spelled(_share(float(value.value)))
        case "name":
            return str(value.value).replace("_", " ")


def _share(value: float) -> str:
    """A part of a whole as a fraction or percentage; what is more than a whole (a count, a ratio) as a number."""
    if value >= 1:
        return f"{value:.4g}"
    for known, said in _FRACTIONS.items():
        if abs(value - known) < 1e-9:  # noqa: PLR2004 - the same fraction, whatever the machine makes of it
            return said
    return f"{value * 100:.4g} %"
