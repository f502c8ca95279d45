from itertools import combinations

from littlefold.drawing import LOOKS, Meaning, look

LINES = (
    Meaning.CUT,
    Meaning.STITCH,
    Meaning.FOLD,
    Meaning.TURN,
    Meaning.GRAIN,
    Meaning.INSIDE,
    Meaning.CONSTRUCTION,
    Meaning.DRAFT,
    Meaning.CLOTH,
)


def test_every_meaning_has_a_look():
    assert set(LOOKS) == set(Meaning)


def test_line_kinds_are_told_apart_in_black_and_white():
    # Either the dashes differ, or one line is at least half as thick again as the other.
    for one, other in combinations(LINES, 2):
        a, b = look(one), look(other)
        thick, thin = max(a.width, b.width), min(a.width, b.width)
        assert a.dash != b.dash or thick >= 1.45 * thin, (one, other)


def test_no_line_is_too_thin_or_too_pale_to_print():
    # 0.1 mm is about the finest line of a 300 dpi printer that stays whole (from memory).
    assert all(0.1 <= one.width <= 1.0 and one.grey <= 0.6 for one in LOOKS.values())


def test_dashes_come_in_pairs():
    assert all(len(one.dash) % 2 == 0 for one in LOOKS.values())


def test_the_conventions_of_textbooks():
    assert look(Meaning.CUT).dash == ()
    assert look(Meaning.STITCH).dash != ()
    assert len(look(Meaning.FOLD).dash) == 4  # a long dash and a dot
    assert look(Meaning.CONSTRUCTION).dash[0] < 1.0  # dotted
    assert look(Meaning.NEW).width == max(one.width for one in LOOKS.values())
