"""How options are typed: pairs of a name and a value, and one word of several."""

from __future__ import annotations

from littlefold.problem import Problem


def pairs(texts: tuple[str, ...]) -> dict[str, str]:
    """`ease=12cm` and its like, by name; what has no "=" is left out, for `unpaired` to tell."""
    parted = (text.split("=", 1) for text in texts if "=" in text)
    return {name.strip(): value.strip() for name, value in parted}


def unpaired(texts: tuple[str, ...], option: str) -> tuple[Problem, ...]:
    """The problems of what was typed without "="."""
    return tuple(
        Problem("option-not-understood", f'{option} {text[:_SHOWN]}: write a name, "=" and a value.')
        for text in texts
        if "=" not in text
    )


def not_one_of(option: str, said: str, known: tuple[str, ...]) -> tuple[Problem, ...]:
    """The problem of a word that is none of those an option knows; none where it is."""
    if said in known:
        return ()
    return (Problem("option-not-understood", f"{option} {said[:_SHOWN]}: it is one of {', '.join(known)}."),)


_SHOWN = 40  # characters of a text that was not understood
