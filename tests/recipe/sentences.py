"""Strategies for the small parts of the language: names, numbers, expressions, conditions, lines."""

from functools import lru_cache
from importlib.resources import files

from hypothesis import strategies as st
from lark.lexer import PatternStr

from littlefold.recipe import tree
from littlefold.recipe.build import read_number
from littlefold.recipe.grammar import worked_out

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
    """Conditions within conditions in any order: brackets are a matter of writing."""
    return st.recursive(
        _tests(),
        lambda smaller: st.one_of(
            smaller.map(tree.Negation),
            st.builds(tree.BothHold, smaller, smaller),
            st.builds(tree.Either, smaller, smaller),
        ),
        max_leaves=8,
    )


# A few texts for every kind of word that the grammar knows by a pattern.
SAMPLES = {
    "NAME": ("A", "side", "front.N", "k2"),
    "NUMBER": ("3", "2.50", "1/2", "3 1/4"),
    "SPAN": ("A-B", "front.A-C"),
    "TRIPLE": ("A-K-B",),
    "SLUG": ("casing-top",),
    "STRING": ('"words"', '"a \\"b\\" # c"', '""'),
    "LANGUAGE": ("de:", "fr:"),
    "SCALE": ("stature", "age"),
    "TABLE_KEY": ("stature", "age", "size"),
    "TABLE_WAY": ("stepped", "between"),
    "TURNED_OVER": ("turned over", "turned   over"),
    "START": ("fold", "start"),
    "END": ("beginning", "end"),
    "LEVEL": ("level", "plumb"),
    "CLOCK": ("clockwise", "anticlockwise"),
    "WAY_OF": ("below", "above", "left of", "right  of"),
    "WAY": ("below", "above", "left", "right"),
    "HEADING": ("upward", "downward", "leftward", "rightward"),
    "GOING": ("down", "up", "left", "right"),
    "FOLD_KIND": ("pleats", "tucks"),
    "FOLD_WAY": ("boxed", "inverted"),
    "GATHER_WAY": ("by ratio", "to"),
    "CUT_WAY": ("on fold", "on the fold", "as a pair", "for the wearer's left"),
    "INCLUDED": ("included", "added"),
    "TURNS": ("turned twice", "turned once"),
    "DOUBLE": ("double",),
    "HOLES": ("buttonholes", "buttons"),
    "SIGN": (">=", "<=", ">", "<"),
    "WEIGHT": ("warning", "note"),
    "FIXED": ("fixed",),
    "_AT_LEAST": ("at least", "at  least"),
    "_AT_MOST": ("at most",),
}
DEEPEST = 9


@lru_cache(maxsize=1)
def _expansions():
    """What each rule of the grammar may be made of, the shortest first, with the depth that it needs at least."""
    text = files("littlefold.recipe").joinpath("grammar.lark").read_text("utf-8")
    lark = worked_out(text)
    words = {term.name: term.pattern.value for term in lark.terminals if isinstance(term.pattern, PatternStr)}
    rules = {}
    for rule in lark.rules:
        rules.setdefault(str(rule.origin.name), []).append([str(symbol.name) for symbol in rule.expansion])
    depth = dict.fromkeys(rules, 99)
    for _ in rules:
        for origin, expansions in rules.items():
            depth[origin] = min(1 + max((depth.get(s, 0) for s in e), default=0) for e in expansions)
    return rules, depth, words


@st.composite
def statements(draw, start="statement"):
    """A sentence of the grammar, any that there is, as a list of words."""
    rules, depth, words = _expansions()

    def derive(symbol, left):
        if symbol not in rules:
            return [words[symbol] if symbol in words else draw(st.sampled_from(SAMPLES[symbol]))]
        needed = {i: max((depth.get(s, 0) for s in e), default=0) for i, e in enumerate(rules[symbol])}
        fitting = [i for i in needed if needed[i] < left] or [min(needed, key=needed.get)]
        chosen = rules[symbol][draw(st.sampled_from(fitting))]
        return [word for part in chosen for word in derive(part, left - 1)]

    return derive(start, DEEPEST)


@st.composite
def untidy(draw, start="statement"):
    """A statement with loose spaces, broken after a comma now and then."""
    text = ""
    for word in draw(statements(start)):
        gap = draw(
            st.sampled_from((" ", "  ", " \t ", "\n   ") if text.endswith(",") else (" ", "   ", "\t"))
        )
        text += (gap if text else "") + word
    return text


@st.composite
def recipes(draw):
    """Whole texts: statements, blank lines, comments, and lines that nobody can read."""
    line = st.one_of(
        untidy(),
        untidy(),
        untidy(start="point"),
        untidy(start="part"),
        untidy(start="branch"),
        st.sampled_from(
            ("", "  ", "# a remark", "   #another", "## two", "not a line", "point A,", "\tpoint ? #x")
        ),
    )
    ends = st.sampled_from(("", "  # said", "  ", "\t#", " # said"))
    return "\n".join(draw(line) + draw(ends) for _ in range(draw(st.integers(0, 8))))
