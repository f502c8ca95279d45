"""Every rule of the register is documented and shown failing and passing."""

from __future__ import annotations

import pytest

from littlefold.check import Circumstances, check, registered, rule
from littlefold.check.register import Rule
from tests.check.examples import EXAMPLES, SAID_NOTHING
from tests.check.garments import sleeved_top, top, trousers
from tests.check.safety_examples import SAFETY_EXAMPLES

ALL = {**EXAMPLES, **SAFETY_EXAMPLES}
RULES = {found.code: found for found in registered()}


def test_there_are_at_least_thirty_rules_and_each_has_an_example():
    assert len(RULES) >= 30
    assert set(ALL) == set(RULES)


@pytest.mark.parametrize("code", sorted(RULES))
def test_a_rule_says_what_it_looks_for_why_and_on_whose_word(code: str):
    documented = RULES[code]
    assert min(map(len, (documented.title, documented.why, documented.source))) > 10
    assert documented.judge.__doc__


@pytest.mark.parametrize("code", sorted(RULES))
def test_the_failing_example_is_found(code: str):
    problems = _found(RULES[code], code, passing=False)
    assert problems
    for problem in problems:
        assert problem.code == code
        assert len(problem.message) > 40
        assert problem.cure
        assert problem.message.endswith(problem.cure)
        assert problem.numbers


@pytest.mark.parametrize("code", sorted(RULES))
def test_the_passing_example_is_silent(code: str):
    assert _found(RULES[code], code, passing=True) == []


@pytest.mark.parametrize("code", sorted(SAFETY_EXAMPLES))
def test_a_safety_problem_names_its_rule_and_defers_to_local_rules(code: str):
    assert RULES[code].safety
    for problem in _found(RULES[code], code, passing=False):
        assert problem.rule
        assert "no legal advice" in problem.message
        assert "rules of the place" in problem.message


@pytest.mark.parametrize("code", sorted(set(RULES) - set(SAFETY_EXAMPLES)))
def test_a_problem_of_a_piece_or_seam_says_where_it_is(code: str):
    nowhere = {
        "body-outside-suits",
        "measurements-estimated",
        "paper-needed",
        "recipe-check-fails",
    }
    for problem in _found(RULES[code], code, passing=False):
        assert (problem.place.piece is None) == (code in nowhere)


@pytest.mark.parametrize("build", [top, sleeved_top, trousers])
def test_sound_garments_pass_every_rule(build):
    assert check(build()) == ()


def test_a_second_rule_of_one_code_is_refused():
    with pytest.raises(ValueError, match="two rules are called 'outline-open'"):
        rule(code="outline-open", title="", why="", source="")(lambda _pattern, _circumstances: ())


def test_findings_come_errors_first():
    weights = ["error", "warning", "note"]
    spoilt = ALL["edges-bend-at-seam"].fails()
    severities = [problem.severity.value for problem in check(spoilt)]
    assert len(set(severities)) > 1
    assert severities == sorted(severities, key=weights.index)


def test_a_rule_that_reports_a_foreign_code_is_our_mistake(monkeypatch):
    foreign = Rule("mine", "", "", "", ALL["recipe-check-fails"].fails and RULES["recipe-check-fails"].judge)
    monkeypatch.setattr("littlefold.check.findings.registered", lambda: (foreign,))
    with pytest.raises(ValueError, match="'mine' reports 'recipe-check-fails'"):
        check(ALL["recipe-check-fails"].fails())


def _found(judged: Rule, code: str, *, passing: bool) -> list:
    example = ALL[code]
    pattern = example.passes() if passing else example.fails()
    asked = Circumstances() if passing and code in SAID_NOTHING else example.circumstances
    return list(judged.judge(pattern, asked))
