"""Classes are kept with the cards; the sample comes once, and goes without taking what is the maker's own."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

import pytest

from littlefold.problem import Problem
from littlefold.store import Card, ClassBook, Note, SewingClass
from littlefold.store.backup import back_up
from littlefold.store.sample import is_new, lay_out, sample_in, take_away
from tests.store.boxes import opened
from tests.store.children import JO, MINA

if TYPE_CHECKING:
    from littlefold.store import CardBox

MONDAY = SewingClass("Monday class", "casing-top", (("ease", "12 cm"),), (MINA.name, JO.name))
SAMPLE = (Card("Runa"), Card("Bo"))
SAMPLE_CLASS = SewingClass("Sample class", "bib", (), ("Runa", "Bo"))


def test_a_class_comes_back_as_it_was(box: CardBox) -> None:
    assert box.add(MINA, JO) == ()
    assert ClassBook(box.engine).add(MONDAY) == ()
    assert ClassBook(box.engine).one("monday  CLASS") == MONDAY
    assert ClassBook(box.engine).classes() == (MONDAY,)


def test_an_erased_child_is_gone_from_the_class(box: CardBox) -> None:
    box.add(MINA, JO)
    book = ClassBook(box.engine)
    book.add(MONDAY)
    assert box.erase(MINA.name) is None
    assert book.one(MONDAY.name) == replace(MONDAY, pupils=(JO.name,))


def test_a_renamed_child_stays_in_the_class(box: CardBox) -> None:
    box.add(MINA, JO)
    book = ClassBook(box.engine)
    book.add(MONDAY)
    box.change(JO.name, lambda card: replace(card, name="Johanna"))
    assert book.one(MONDAY.name) == replace(MONDAY, pupils=(MINA.name, "Johanna"))


@pytest.mark.parametrize(
    ("wrong", "code"),
    [
        (replace(MONDAY, name=" "), "class-name"),
        (replace(MONDAY, recipe=""), "class-recipe"),
        (replace(MONDAY, name="Other", pupils=("Nobody",)), "child-not-known"),
        (replace(MONDAY, name="MONDAY class"), "class-twice"),
        (replace(MONDAY, name="Other", choices=(("ease", "1\0"),)), "class-words"),
    ],
)
def test_what_cannot_be_kept_is_told(box: CardBox, wrong: SewingClass, code: str) -> None:
    box.add(MINA, JO)
    book = ClassBook(box.engine)
    book.add(MONDAY)
    assert [fault.code for fault in book.add(wrong)] == [code]
    assert book.classes() == (MONDAY,)


def test_a_class_is_changed_and_removed_and_the_cards_stay(box: CardBox) -> None:
    box.add(MINA, JO)
    book = ClassBook(box.engine)
    book.add(MONDAY)
    changed = book.change(MONDAY.name, lambda one: replace(one, name="Tuesday", pupils=(MINA.name,)))
    assert changed == book.one("Tuesday") == replace(MONDAY, name="Tuesday", pupils=(MINA.name,))
    assert book.remove("Tuesday") is None
    assert isinstance(book.remove("Tuesday"), Problem)
    assert box.names() == (JO.name, MINA.name)


def test_the_sample_is_laid_out_once_in_the_life_of_a_box(box: CardBox, environ: dict[str, str]) -> None:
    assert is_new(box)
    assert lay_out(box, SAMPLE, (SAMPLE_CLASS,))
    assert not is_new(box)
    assert sample_in(box).children == ("Bo", "Runa")
    take_away(box)
    assert box.names() == ()
    assert ClassBook(box.engine).classes() == ()
    assert not is_new(box)
    assert not lay_out(box, SAMPLE, ())
    again = opened(environ)
    assert not is_new(again)
    again.close()


def test_a_box_that_was_used_before_gets_no_sample(box: CardBox) -> None:
    box.add(MINA)
    assert not is_new(box)
    box.erase(MINA.name)
    assert not is_new(box)


def test_what_she_changed_of_the_sample_stays_hers_unless_she_says_so(box: CardBox) -> None:
    lay_out(box, SAMPLE, (SAMPLE_CLASS,))
    box.add(MINA)
    box.change("Bo", lambda card: card.with_note(Note(date(2026, 3, 1), "hers now")))
    book = ClassBook(box.engine)
    book.change(SAMPLE_CLASS.name, lambda one: replace(one, pupils=(*one.pupils, MINA.name)))
    assert sample_in(box).changed_children == ("Bo",)
    stayed = take_away(box)
    assert (stayed.changed_children, stayed.changed_classes) == (("Bo",), (SAMPLE_CLASS.name,))
    assert box.names() == ("Bo", MINA.name)
    assert book.one(SAMPLE_CLASS.name) == replace(SAMPLE_CLASS, pupils=("Bo", MINA.name))
    assert not sample_in(box).is_there


def test_what_she_changed_goes_too_where_she_says_so(box: CardBox) -> None:
    lay_out(box, SAMPLE, (SAMPLE_CLASS,))
    box.add(MINA)
    box.change("Bo", lambda card: card.with_note(Note(date(2026, 3, 1), "hers now")))
    take_away(box, also_changed=True)
    assert box.names() == (MINA.name,)


def test_looking_without_changing_leaves_the_sample_as_given(box: CardBox) -> None:
    lay_out(box, SAMPLE, ())
    box.change("Bo", lambda card: card)
    assert sample_in(box).children == ("Bo", "Runa")


def test_erasing_a_child_leaves_the_classes_in_the_backups(box: CardBox) -> None:
    box.add(MINA, JO)
    ClassBook(box.engine).add(MONDAY)
    made = back_up(box.engine, box.address, "0003")
    box.erase(MINA.name)
    if made.suffix == ".json":
        text = made.read_text("utf-8")
        assert "Monday class" in text
        assert MINA.name not in text
    else:
        assert b"Monday class" in made.read_bytes()
        assert MINA.name.encode() not in made.read_bytes()
