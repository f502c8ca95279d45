"""One file out and in again: exact, and refused in words where it cannot be read."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from littlefold.body.measurements import Measurements, Origin, Reading
from littlefold.problem import Problem
from littlefold.store import (
    Card,
    Fitting,
    Measured,
    Note,
    OwnMeasurement,
    PastDraft,
    RecipeText,
    cards_from_json,
    cards_to_json,
    readings_from_csv,
    readings_to_csv,
)
from littlefold.store.allowed import faults_of
from tests.store.children import JO, MINA

if TYPE_CHECKING:
    from littlefold.store import CardBox

words = st.text(st.characters(exclude_categories=("Cs",), exclude_characters="\0"), max_size=20)
names = st.text(st.characters(categories=("L", "N", "P")), min_size=1, max_size=12)
days = st.dates(date(1990, 1, 1), date(2040, 1, 1))
lengths = st.floats(0.001, 3000.0)
numbers = st.floats(-1e6, 1e6)
sexes = st.sampled_from([None, "girl", "boy"])


def _pairs(values: st.SearchStrategy[object]) -> st.SearchStrategy[tuple[tuple[str, object], ...]]:
    return st.dictionaries(names, values, max_size=4).map(lambda found: tuple(found.items()))


readings = st.builds(Reading, lengths, st.sampled_from(Origin), lengths)
bodies = st.builds(Measurements, _pairs(readings), st.none() | lengths, sexes, words)
meanings = st.dictionaries(names, st.tuples(names, words), max_size=2)


@st.composite
def _sets(draw: st.DrawFn) -> Measured:
    """A set some of whose readings are recipes' own."""
    meant = draw(meanings)
    plain = draw(st.builds(Measured, days, _pairs(lengths), words, words))
    given = dict(plain.readings) | {name: draw(lengths) for name in meant}
    own = tuple(OwnMeasurement(name, *meant[name]) for name in given if name in meant)
    return Measured(plain.day, tuple(given.items()), plain.by, plain.over, own)


measured = st.lists(_sets(), max_size=3).map(tuple)
drafts = st.builds(
    PastDraft,
    days,
    st.lists(st.builds(RecipeText, names, words), min_size=1, max_size=2).map(tuple),
    bodies,
    _pairs(numbers | words),
    words,
    words,
    words,
    lengths,
    st.none() | st.integers(1, 9),
    st.lists(st.builds(Fitting, days, words), max_size=2).map(tuple),
)
cards = st.builds(
    Card,
    names,
    st.none() | days,
    sexes,
    measured,
    st.lists(st.builds(Note, days, words), max_size=2).map(tuple),
    st.lists(drafts, max_size=2).map(tuple),
).filter(lambda card: not faults_of(card))


@given(st.lists(cards, max_size=3))
@settings(max_examples=60, deadline=None)
def test_json_comes_back_exactly(some: list[Card]) -> None:
    assert cards_from_json(cards_to_json(tuple(some))) == tuple(some)


@given(
    st.lists(
        st.builds(Card, names, st.none() | days, sexes, measured), max_size=3, unique_by=lambda card: card.key
    )
)
@settings(max_examples=60, deadline=None)
def test_csv_brings_all_readings_back_exactly(some: list[Card]) -> None:
    assert readings_from_csv(readings_to_csv(tuple(some))) == tuple(some)


@given(cards)
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow])
def test_the_box_brings_every_card_back_exactly(box: CardBox, card: Card) -> None:
    assert box.add(card) == ()
    assert box.card(card.name) == card
    assert box.erase(card.name) is None


def test_a_spreadsheet_finds_no_formula_in_the_table() -> None:
    card = Card("=cmd()", measured=(Measured(date(2026, 1, 1), (("chest", 560.0),), "+Edda", "@home"),))
    table = readings_to_csv((card,))
    cells = [cell for line in table.splitlines()[1:] for cell in line.split(",")]
    assert not any(cell.startswith(("=", "+", "@", "-")) for cell in cells)
    assert readings_from_csv(table) == (card,)


HOW = "From the neck over the „chest“, to the waist"


def test_the_table_is_one_line_a_reading() -> None:
    assert readings_to_csv((MINA, JO)).splitlines() == [
        "name,born,sex,set,day,by,over,measurement,mm,recipe,how",
        "Mina,2022-08-14,girl,1,2025-09-01,Edda,vest,stature,980.0,,",
        "Mina,2022-08-14,girl,1,2025-09-01,Edda,vest,chest,545.0,,",
        "Mina,2022-08-14,girl,2,2026-02-20,Edda,T-shirt,stature,1012.5,,",
        f'Mina,2022-08-14,girl,2,2026-02-20,Edda,T-shirt,front_length,285.75,top,"{HOW}"',
        "Mina,2022-08-14,girl,2,2026-02-20,Edda,T-shirt,chest,565.15,,",
        "Jo,,,,,,,,,,",
    ]


def test_a_table_of_before_recipes_own_measurements_is_read() -> None:
    (card,) = readings_from_csv(HEADING + "Jo,,,1,2026-01-01,,,chest,560\n")
    assert card == Card("Jo", measured=(Measured(date(2026, 1, 1), (("chest", 560.0),)),))


def test_a_file_of_before_recipes_own_measurements_is_read() -> None:
    document = json.loads(cards_to_json((MINA,))) | {"format": "littlefold-cards/2"}
    for one in document["cards"][0]["measured"]:
        del one["own"]
    (card,) = cards_from_json(json.dumps(document))
    assert isinstance(card, Card)
    assert card.measured[0] == MINA.measured[0]
    assert card.measured[1] == replace(MINA.measured[1], own=())


@pytest.mark.parametrize(
    ("own", "said"),
    [
        ((OwnMeasurement("chest_again", "top", "Once more"),), "was not read"),
        ((OwnMeasurement("chest", "", "Once more"),), "of no recipe"),
        ((OwnMeasurement("chest", "top", "So"), OwnMeasurement("chest", "bib", "Otherwise")), "twice"),
    ],
)
def test_words_without_a_reading_are_refused(own: tuple[OwnMeasurement, ...], said: str) -> None:
    card = Card("Jo", measured=(Measured(date(2026, 1, 1), (("chest", 560.0),), own=own),))
    assert any(said in fault.message for fault in faults_of(card))


WRONG = {
    "no json": "{",
    "a list": "[]",
    "another format": '{"format": "littlefold-cards/9", "cards": []}',
    "an older version's surname": '{"format": "littlefold-cards/1", "cards": [{"name": "Jo", "surname": "X"}]}',
    "a surname": '{"format": "littlefold-cards/2", "cards": [{"name": "Jo", "surname": "X"}]}',
    "no number": '{"format":"littlefold-cards/1","cards":[{"name":"Jo",'
    '"measured":[{"day":"2026-01-01","readings":{"chest":NaN}}]}]}',
    "deep": "[" * 100_000,
}


@pytest.mark.parametrize("what", WRONG)
def test_a_file_that_cannot_be_read_is_refused(what: str) -> None:
    refused = cards_from_json(WRONG[what])
    assert refused
    assert all(isinstance(one, Problem) for one in refused)


def test_a_refusal_names_the_place() -> None:
    document = json.loads(cards_to_json((JO, MINA)))
    document["cards"][1]["measured"][0]["day"] = "yesterday"
    (refused,) = cards_from_json(json.dumps(document))
    assert isinstance(refused, Problem)
    assert refused.message.startswith("cards.1.measured.0.day: ")


HEADING = "name,born,sex,set,day,by,over,measurement,mm\n"


@pytest.mark.parametrize(
    ("table", "said"),
    [
        ("name,mm\nJo,5\n", "first line"),
        (HEADING + "Jo,,,1,2026-01-01,,,chest\n", "8 cells"),
        (HEADING + "Jo,,man,1,2026-01-01,,,chest,560\n", "girl, boy"),
        (HEADING + "Jo,,,1,1.1.2026,,,chest,560\n", "date"),
        (HEADING + "Jo,,,1,2026-01-01,,,chest,56 cm\n", "millimetres"),
        (HEADING + "Jo,,,1,2026-01-01,,,chest,560\nJo,2020-01-01,,1,2026-01-01,,,neck,250\n", "otherwise"),
        (HEADING + "Jo,,,1,2026-01-01,,,chest,560\nJo,,,1,2026-01-02,,,neck,250\n", "another day"),
        ("", "no table"),
    ],
)
def test_a_table_that_cannot_be_read_is_refused(table: str, said: str) -> None:
    (refused,) = readings_from_csv(table)
    assert isinstance(refused, Problem)
    assert said in refused.message
