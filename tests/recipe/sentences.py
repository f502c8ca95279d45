"""Strategies for the small parts of the language: names, numbers, expressions, conditions, lines."""

from hypothesis import strategies as st

from littlefold.recipe import tree
from littlefold.recipe.build import read_number

POINTS = ("A", "B", "K", "front.N", "Q2", "é")
LINES = ("side", "armhole", "front.neckline", "hem_2", "A-B", "front.A-back.B", "A-K-B")
VALUES = ("chest", "ease", "half_neck", "front_length", "x1")
UNITS = ("cm", "mm", "in", "degrees", "months", "y", "nail")
NUMERALS = ("0", "3", "2.5", "1/2", "3 1/4", "120", "0.125")


def name(*texts):
    return st.sampled_from(texts).map(tree.Name)


def numerals():
    return st.sampled_from(NUMERALS).map(lambda text: tree.Numeral(text, read_number(text)))


def line_of(text):
    names = [tree.Name(part) for part in text.split("-")]
    return {1: lambda: names[0], 2: lambda: tree.Span(*names), 3: lambda: tree.Corner(*names)}[len(names)]()


def lines():
    return st.sampled_from(LINES).map(line_of)


def chains():
    return st.lists(name("side", "front.neckline", "cap"), min_size=1, max_size=3).map(tuple)


def _leaves():
    return st.one_of(
        numerals().map(tree.Plain),
        st.builds(tree.Quantity, numerals(), name(*UNITS)),
        name(*VALUES).map(tree.Named),
        st.just(tree.Pi()),
        lines().map(tree.LengthOf),
        chains().map(tree.RoundOf),
    )


def _grown(smaller):
    """Larger expressions from smaller ones; where a part must bind tighter, it stands in brackets."""
    atom = st.one_of(_leaves(), smaller.map(tree.Bracketed))
    signed = st.one_of(atom, atom.map(tree.Negative))
    product = st.one_of(
        signed,
        st.builds(tree.Times, signed, signed),
        st.builds(tree.Over, st.builds(tree.Times, signed, signed), signed),
    )
    total = st.one_of(
        product,
        st.builds(tree.Plus, product, product),
        st.builds(tree.Minus, st.builds(tree.Plus, product, product), product),
    )
    return st.one_of(
        total,
        st.builds(tree.Share, numerals(), atom),
        st.builds(tree.AtLeast, total, total),
        st.builds(tree.AtMost, total, total),
        st.builds(tree.Larger, total, atom),
        st.builds(tree.Smaller, total, atom),
        st.builds(tree.RoundUp, atom, atom),
        atom.map(tree.SquareRoot),
    )


def expressions():
    return st.recursive(_leaves(), _grown, max_leaves=8)


def _tests():
    simple = st.one_of(_leaves(), _leaves().map(tree.Bracketed))
    return st.one_of(
        st.builds(tree.Chosen, name("closing"), name("elastic", "cord")),
        st.builds(tree.NotChosen, name("closing"), name("elastic", "cord")),
        st.builds(tree.Compared, simple, st.sampled_from((">=", "<=", ">", "<", "=")), simple),
    )


def conditions():
    test = st.one_of(_tests(), _tests().map(tree.Negation))
    both = st.one_of(test, st.builds(tree.BothHold, st.builds(tree.BothHold, test, test), test))
    return st.one_of(both, st.builds(tree.Either, st.builds(tree.Either, both, both), both))
