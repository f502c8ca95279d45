"""What to say about a line that cannot be read: what is wrong, where, and how such a line is written."""

from __future__ import annotations

from dataclasses import dataclass
from difflib import get_close_matches
from typing import TYPE_CHECKING, Final

from lark.exceptions import UnexpectedToken

from littlefold.problem import Place, Problem
from littlefold.recipe.expected import END, all_words, fitting_words, missing_word, spoken
from littlefold.recipe.forms import FORMS
from littlefold.recipe.slips import decimal_comma, odd_characters, open_quote, stray_comma

if TYPE_CHECKING:
    from lark.exceptions import UnexpectedInput

    from littlefold.recipe.lines import Stretch

_LONGEST_SHOWN: Final = 40


@dataclass(frozen=True, slots=True)
class _Snag:
    """Where reading stopped: `at` counts the characters of the statement, `kinds` might have stood there."""

    text: str
    at: int
    kinds: frozenset[str]

    @property
    def found(self) -> str:
        """The word that stands there; empty at the end of the statement."""
        words = self.text[self.at :].split(None, 1)
        return words[0].rstrip(",") or "," if words else ""

    @property
    def before(self) -> str:
        """The word that stands before it."""
        words = self.text[: self.at].split()
        return words[-1] if words else ""


def explain(fault: UnexpectedInput, stretch: Stretch, file: str) -> Problem:
    """The problem with a line, in words."""
    snag = _snag(fault, stretch.text)
    keyword = snag.text.split()[0]
    if keyword not in FORMS:
        indent = len(snag.text) - len(snag.text.lstrip())
        return _problem("unknown-statement", _unknown(keyword), stretch, indent, file)
    quote = open_quote(snag.text)
    if quote is not None:
        words = 'the quotes that begin here are not closed on this line. End the words with ".'
        words += " For inches write in, such as 1/2 in." if snag.text[:quote].rstrip()[-1:].isdigit() else ""
        return _problem("quotes-not-closed", words, stretch, quote, file)
    return _problem("cannot-read-line", f"{_said(snag)} {_form(snag.text)}", stretch, snag.at, file)


def _snag(fault: UnexpectedInput, text: str) -> _Snag:
    if isinstance(fault, UnexpectedToken):
        ended = fault.token.type == END
        at = len(text) if ended or fault.token.start_pos is None else fault.token.start_pos
        return _Snag(text, at, frozenset(fault.accepts or fault.expected))
    return _Snag(text, fault.pos_in_stream or 0, frozenset(getattr(fault, "allowed", None) or ()))


def _problem(code: str, words: str, stretch: Stretch, at: int, file: str) -> Problem:
    above = stretch.text[:at].split("\n")
    line, column = stretch.line + len(above) - 1, len(above[-1]) + 1
    place = Place(file=file, line=line, column=column)
    return Problem(code, f"{file}, line {line}, column {column}: {words}", place=place)


def _said(snag: _Snag) -> str:
    """The likeliest account of the mistake."""
    return (
        stray_comma(snag.text, snag.at)
        or decimal_comma(snag.text, snag.at)
        or odd_characters(snag.text[snag.at : snag.at + 1] + snag.before + snag.found)
        or _word_of_the_language(snag)
        or _line_for_a_name(snag)
        or _ended(snag)
        or _unreadable(snag)
    )


def _word_of_the_language(snag: _Snag) -> str | None:
    """A word such as `length` that stands where a name was meant."""
    missing = missing_word(snag.kinds)
    if snag.before in {"length", "round", "square", "larger", "smaller"} and missing in {"of", "up", "root"}:
        return (
            f'"{snag.before}" is a word of the language ("{snag.before} {missing} ..."), so it cannot be the '
            "name of a value. Choose another name."
        )
    return None


def _line_for_a_name(snag: _Snag) -> str | None:
    """A line such as `A-B` where only one name can stand."""
    if snag.found.startswith("-") and len(snag.found) > 1 and not snag.text[snag.at - 1].isspace():
        return f'"{snag.before}{snag.found}" is a line from point to point, but here one name must stand.'
    return None


def _ended(snag: _Snag) -> str | None:
    if snag.found:
        return None
    return f"the line ends too early. After {_shown(snag.before)} there must stand {_expected(snag)}."


def _unreadable(snag: _Snag) -> str:
    found = _shown(snag.found)
    close = get_close_matches(snag.found[:_LONGEST_SHOWN].lower(), fitting_words(snag.kinds), n=1, cutoff=0.7)
    if close:
        return f'I cannot read {found} here. Did you mean "{close[0]}"?'
    missing = missing_word(snag.kinds)
    if missing:
        return f'"{missing}" is missing before {found}.'
    if END in snag.kinds:
        return f"the statement is complete before {found}, which I cannot read. {_might_follow(snag)}"
    reserved = " (it is a word of the language)" if snag.found in all_words() and "NAME" in snag.kinds else ""
    return f"I cannot read {found} here{reserved}. After {_shown(snag.before)} there must stand {_expected(snag)}."


def _might_follow(snag: _Snag) -> str:
    others = spoken(snag.kinds - {END})
    return f"There may follow {others}, or nothing." if others else "Nothing may follow."


def _expected(snag: _Snag) -> str:
    return spoken(snag.kinds, snag.before) or "something else"


def _shown(word: str) -> str:
    return f'"{word[:_LONGEST_SHOWN]}"'


def _unknown(keyword: str) -> str:
    small = keyword.lower()
    close = get_close_matches(small[:_LONGEST_SHOWN], FORMS, n=1)
    if small in FORMS:
        hint = f' Write "{small}", in small letters.'
    elif close:
        hint = f' Did you mean "{close[0]}"?'
    else:
        hint = ""
    return f"no statement begins with {_shown(keyword)}.{hint} A line begins with one of: {', '.join(FORMS)}."


def _form(text: str) -> str:
    """The form that has most of its fixed words in common with what was written."""
    written = set(text.split())

    def likeness(form: str) -> int:
        words = all_words() & set(form.split())
        return 2 * len(words & written) - len(words - written)

    return f"Such a line is written: {max(FORMS[text.split(maxsplit=1)[0]], key=likeness)}"
