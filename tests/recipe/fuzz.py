"""Recipe texts that nobody would write, made from good ones by accident and malice; the same ones for a seed.

from tests.recipe.fuzz import texts
for text in texts(100_000, seed=1): ...
"""

import random
import string

from littlefold.recipe.forms import FORMS
from littlefold.recipe.shelf import shipped_names, shipped_text

_FORMS = [form for forms in FORMS.values() for form in forms]
_WORDS = sorted({word for form in _FORMS for word in form.split()})
_ODD = (
    *(
        "\0",
        "\t",
        "\r",
        "\n",
        "\x0b",
        "\x1b",
        "\u2028",
        "\u200b",
        "\ufeff",
        "\u202e",
        "\U0001f9f5",
        "½",
        "é",
        "中",
    ),
    *('"', "\\", "#", ",", "(", ")", "-", "..", "=", "|", "/", "*", "^", "%", "$", "{", "}", "`", "~", "'"),
    *(
        "1e999",
        "9" * 400,
        "0/0",
        "1/0",
        "0.0.0",
        "-0",
        "nan",
        "inf",
        "../../etc/passwd",
        "http://x",
        "${HOME}",
    ),
)
MOST_CHANGES = 8


def texts(count, seed=0):
    """So many texts, most of them a few lines long."""
    chance = random.Random(seed)  # noqa: S311 (chance is all that is wanted)
    shelf = [shipped_text(name).splitlines() for name in shipped_names()]
    for _ in range(count):
        yield chance.choice(_MAKERS)(chance, shelf)


def _changed_form(chance, _shelf):
    """A few good lines with a few changes."""
    return _changed(chance, "\n".join(chance.choices(_FORMS, k=chance.randint(1, 4))))


def _changed_recipe(chance, shelf):
    """Some lines in a row of a shipped recipe, with a few changes."""
    lines = chance.choice(shelf) if shelf else _FORMS
    start = chance.randrange(len(lines))
    return _changed(chance, "\n".join(lines[start : start + chance.randint(1, 12)]))


def _words(chance, _shelf):
    """Words of the language in any order."""
    lines = (" ".join(chance.choices(_WORDS, k=chance.randint(0, 15))) for _ in range(chance.randint(1, 4)))
    return "\n".join(lines)


def _noise(chance, _shelf):
    """Bytes of any kind, read as text."""
    return chance.randbytes(chance.randint(0, 200)).decode("utf-8", errors="replace")


def _deep(chance, _shelf):
    """One thing inside another, very often."""
    times = chance.choice((1, 10, 119, 121, 900, 3_000))
    before, after = chance.choice(
        (
            ("(", ")"),
            ("-", ""),
            ("square root of ", ""),
            ("1/2 of ", ""),
            ("round up ", " to 1 cm"),
            ("not ", ""),
        )
    )
    statement = chance.choice(("amount x = ", "when ", "check ", "point B below A by "))
    return statement + before * times + "a" + after * chance.choice((times, 0))


def _long(chance, _shelf):
    """One very long name, number, list or text."""
    size = chance.choice((10, 1_000, 10_000, 60_000))
    part = chance.choice(
        ("a", "9", "A-B, ", '"x" ', "a.", "a-", '"', "\\", "1 + ", "#", ",\n", "a\n", "end\n")
    )
    return chance.choice(("", "amount x = ", "work ", "edges ", "measure ")) + part * (size // len(part))


_MAKERS = (_changed_form,) * 6 + (_changed_recipe,) * 6 + (_words,) * 3 + (_noise,) * 2 + (_deep, _long)


def _changed(chance, text):
    for _ in range(chance.randint(1, MOST_CHANGES)):
        text = chance.choice(_CHANGES)(chance, text)
    return text


def _cut_out(chance, text):
    at = chance.randrange(len(text) + 1)
    return text[:at] + text[at + chance.randint(1, 12) :]


def _put_in(chance, text):
    at = chance.randrange(len(text) + 1)
    return text[:at] + chance.choice((*_ODD, *_WORDS, chance.choice(string.printable))) + text[at:]


def _repeated(chance, text):
    at = chance.randrange(len(text) + 1)
    end = at + chance.randint(1, 30)
    return text[:end] + text[at:end] * chance.randint(1, 5) + text[end:]


def _swapped(chance, text):
    words = text.split(" ")
    first, second = chance.randrange(len(words)), chance.randrange(len(words))
    words[first], words[second] = words[second], words[first]
    return " ".join(words)


def _capitals(_chance, text):
    return text.swapcase()


_CHANGES = (_cut_out, _put_in, _put_in, _repeated, _swapped, _swapped, _cut_out, _capitals)
