"""The small values of the tree: how names are said, where they stand, what counts as the same."""

import math

from littlefold.recipe import tree
from littlefold.recipe.parse import parse, read_statement


def test_names_and_lines_are_said_as_they_are_written():
    line, corner = (
        tree.Span(tree.Name("A"), tree.Name("B")),
        read_statement("arc r rounding A-K-B by 3 cm").corner,
    )
    assert str(line) == "A-B"
    assert str(corner) == "A-K-B"


def test_every_name_knows_its_spot():
    step = read_statement("point P square from front.A-B at C,\n".replace(",\n", "\n") + "  by 3 cm")
    assert (step.name.spot, step.line.spot, step.line.end.spot) == ((1, 7), (1, 21), (1, 29))
    assert step.distance.numeral.spot == (2, 6)
    assert read_statement("arc r rounding A-K-B by 3 cm").corner.corner.spot == (1, 18)


def test_where_a_thing_is_written_makes_no_difference():
    assert read_statement("point A  below B by 3 cm") == read_statement("point A below   B by 3   cm")
    assert read_statement("point A below B by 3 cm") != read_statement("point A below B by 4 cm")


def test_a_number_has_its_value():
    values = {"3": 3.0, "2.50": 2.5, "1/2": 0.5, "3 1/4": 3.25, "0.125": 0.125}
    for text, value in values.items():
        assert read_statement(f"amount x = {text}").value.numeral.value == value
    assert math.isnan(read_statement("amount x = 1/0").value.numeral.value)


def test_words_are_said_in_a_language_or_as_they_stand():
    text = read_statement('title "Bib" de: "Lätzchen" fr: "Bavoir"').text
    assert [text.said_in(code) for code in ("de", "fr", "nl")] == ["Lätzchen", "Bavoir", "Bib"]


def test_a_statement_knows_its_line_and_file():
    (written,) = parse("\n\n  amount x = 3 cm\n", "top").written
    place = written.place(written.statement.name.spot)
    assert (place.file, place.line, place.column) == ("top", 3, 10)


def test_a_recipe_is_called_by_its_name_and_title():
    recipe = parse('recipe casing-top\ntitle "Loose top" de: "Hemd"', "file")
    assert (recipe.name, recipe.title) == ("casing-top", "Loose top")
    assert (parse("", "file").name, parse("recipe x", "file").title) == ("file", "x")
    assert parse("end").fingerprint != parse("end ").fingerprint
