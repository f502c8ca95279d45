"""The tables beside the grammar are those of the grammar, and the grammar is never in two minds."""

import json
import logging
from importlib.resources import files

import pytest
from lark import Lark
from lark.exceptions import UnexpectedInput

from littlefold.recipe import grammar as grammar_module
from littlefold.recipe.grammar import _taken_up, fingerprint, grammar, worked_out, written_down

GRAMMAR = files("littlefold.recipe").joinpath("grammar.lark").read_text("utf-8")
BROKEN = [
    "point",
    "point A below",
    "amount x = 3 +",
    "piece front cut",
    "sew a to",
    "when",
    'title "a',
    "arc A ?",
]


def test_the_tables_are_those_of_this_grammar():
    made_from = json.loads(files("littlefold.recipe").joinpath("grammar.json").read_text("utf-8"))[
        "made_from"
    ]
    assert made_from == fingerprint(GRAMMAR), "run tools/grammar_tables.py"


def test_tables_taken_up_are_tables_worked_out():
    """States are numbered anew in every run, so both tables are walked together from their first state."""
    taken = grammar().parser.parser._parse_table
    fresh = worked_out(GRAMMAR).parser.parser._parse_table
    partner = {taken.start_states["statement"]: fresh.start_states["statement"]}
    waiting = list(partner)
    while waiting:
        state = waiting.pop()
        row, other = taken.states[state], fresh.states[partner[state]]
        assert row.keys() == other.keys()
        for word, (action, goal) in row.items():
            other_action, other_goal = other[word]
            assert str(action) == str(other_action)
            if isinstance(goal, int):
                if goal not in partner:
                    partner[goal] = other_goal
                    waiting.append(goal)
                assert partner[goal] == other_goal
            else:
                assert goal == other_goal
    assert len(partner) == len(taken.states) == len(fresh.states)


def test_tables_of_another_grammar_are_worked_out_anew(monkeypatch):
    stale = json.dumps({"made_from": "another", "data": {}, "memo": {}})
    texts = {"grammar.lark": GRAMMAR, "grammar.json": stale}
    monkeypatch.setattr(grammar_module, "_resource", texts.__getitem__)
    assert grammar.__wrapped__().parse("end") == grammar().parse("end")


def test_tables_written_down_can_be_taken_up():
    tables = json.loads(written_down(GRAMMAR))
    assert _taken_up(tables["data"], tables["memo"]).parse("end") == grammar().parse("end")


@pytest.mark.parametrize("text", BROKEN)
def test_tables_taken_up_expect_what_tables_worked_out_expect(text):
    with pytest.raises(UnexpectedInput) as known:
        worked_out(GRAMMAR).parse(text)
    with pytest.raises(UnexpectedInput) as taken:
        grammar().parse(text)
    assert type(taken.value) is type(known.value)
    assert getattr(taken.value, "accepts", 0) == getattr(known.value, "accepts", 0)


def test_no_sentence_can_be_read_in_two_ways(caplog):
    """The library settles such a conflict in silence; it only says so when it is asked to speak."""
    logger = logging.getLogger("lark")
    level = logger.level
    logger.addHandler(caplog.handler)
    try:
        logger.setLevel(logging.DEBUG)
        Lark(GRAMMAR, parser="lalr", start="statement", maybe_placeholders=True, debug=True)
    finally:
        logger.setLevel(level)
        logger.removeHandler(caplog.handler)
    assert "conflict" not in caplog.text.lower()


def test_the_check_for_conflicts_would_find_one(caplog):
    logger = logging.getLogger("lark")
    level = logger.level
    logger.addHandler(caplog.handler)
    try:
        logger.setLevel(logging.DEBUG)
        Lark('start: a ["x"] "x"\na: "a" ["x"]', parser="lalr", debug=True)
    finally:
        logger.setLevel(level)
        logger.removeHandler(caplog.handler)
    assert "conflict" in caplog.text.lower()
