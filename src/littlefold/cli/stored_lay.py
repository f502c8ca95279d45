"""A stored lay taken up again: it brings its own cloth, so whatever is said otherwise beside it is refused."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from littlefold.cli.fabric import not_understood
from littlefold.cli.files import read_text
from littlefold.lay import spoken
from littlefold.lay.stored import read_stored
from littlefold.problem import Problem, Severity

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from littlefold.cli.cloth_wishes import WishWords
    from littlefold.cli.fabric import ClothWords, Fabric
    from littlefold.lay.cloth import Cloth, Repeat
    from littlefold.lay.lay import Lay

UNREADABLE = ("file-not-read", "file-not-text", "file-too-large", "lay-not-read")
"""The codes of a file that is no lay at all; a lay that can be read may still not hold."""


@dataclass(frozen=True, slots=True)
class _Own:
    """An option that a stored lay has an answer to: whether it was said, what was said, and what the lay has."""

    option: str
    is_said: Callable[[ClothWords], bool]
    said: Callable[[Fabric], object]
    kept: Callable[[Lay], object]


_OWN = (
    _Own("--lay", lambda w: w.lay is not None, lambda f: f.way, lambda one: one.spread.way),
    _Own("--nap", lambda w: w.nap, lambda f: f.cloth.nap, lambda one: one.cloth.nap),
    _Own("--two-faced", lambda w: w.two_faced, lambda f: f.cloth.two_faced, lambda one: one.cloth.two_faced),
    _Own("--tube", lambda w: w.tube, lambda f: f.cloth.tube, lambda one: one.cloth.tube),
    _Own("--repeat", lambda w: w.repeat is not None, lambda f: f.cloth.repeat, lambda one: one.cloth.repeat),
    _Own(
        "--selvedge",
        lambda w: w.selvedge is not None,
        lambda f: f.cloth.selvedge,
        lambda one: one.cloth.selvedge,
    ),
    _Own("--shrink", lambda w: w.shrink is not None, lambda f: _wash(f.cloth), lambda one: _wash(one.cloth)),
    _Own("--enlarge", lambda w: w.enlarge, lambda f: f.cloth.treatment, lambda one: one.cloth.treatment),
    _Own("--gap", lambda w: w.gap is not None, lambda f: f.gap, lambda one: one.gap),
    _Own("--cloth", lambda w: w.name != "main", lambda f: f.cloth.name, lambda one: one.cloth.name),
)

_WISHES = ("pins", "damaged", "scraps", "match", "tilt", "together")
_SAID_AS = {"pins": "--pin", "scraps": "--scrap"}


def read_kept(path: Path) -> Lay | tuple[Problem, ...]:
    """The lay in a file, or why there is none that holds."""
    text = read_text(path)
    return (text,) if isinstance(text, Problem) else read_stored(text)


def contrary(
    lay: Lay, words: ClothWords, fabric: Fabric, wished: WishWords, *, is_wide: bool
) -> Iterator[Problem]:
    """A problem for each thing that was said of the cloth and is otherwise in the stored lay.

    Args:
        lay: The stored lay.
        words: What was typed of the cloth.
        fabric: The same, understood.
        wished: What was typed of single pieces: a stored lay has them all in their places.
        is_wide: Whether a width was typed at all.
    """
    if is_wide and (fabric.other_widths or fabric.cloth.width != lay.cloth.width):
        yield _contrary("--width", lay)
    for own in _OWN:
        if own.is_said(words) and own.said(fabric) != own.kept(lay):
            yield _contrary(own.option, lay)
    for name in _WISHES:
        if getattr(wished, name):
            yield not_understood(
                f"{_SAID_AS.get(name, '--' + name)}: every piece of a stored lay has its place already. Leave it out, or "
                "leave --stored out to search anew."
            )


def own_cloth(lay: Lay, fabric: Fabric) -> Lay:
    """The stored lay with its own cloth; only how the cloth is sold, its price and what is in hand may be said anew."""
    new = fabric.cloth
    cloth = replace(
        lay.cloth,
        step=new.step,
        price=new.price or lay.cloth.price,
        in_hand=lay.cloth.in_hand if new.in_hand is None else new.in_hand,
    )
    return replace(lay, cloth=cloth)


def told(lay: Lay) -> Problem:
    """A note that what follows is of the stored lay's own cloth."""
    return Problem(
        "stored-lay-own-cloth", f"The stored lay brings its own cloth: {_words(lay)}.", Severity.NOTE
    )


def _contrary(option: str, lay: Lay) -> Problem:
    return not_understood(
        f"{option}: the stored lay brings its own cloth, {_words(lay)}. Leave {option} out, or leave --stored out to "
        "search anew."
    )


def _words(lay: Lay) -> str:
    units, cloth = spoken.units_of(lay.cloth), lay.cloth
    traits = [
        f"{cloth.name}, {spoken.width(cloth.width, units)} wide",
        f"laid {lay.spread.way}",
        f"{spoken.tape(lay.gap, units)} between cuts",
        *_traits(cloth),
    ]
    return ", ".join(traits)


def _traits(cloth: Cloth) -> Iterator[str]:
    if cloth.nap:
        yield "with nap"
    if cloth.two_faced:
        yield "both faces alike"
    if cloth.repeat is not None:
        repeat = spoken.figure(cloth.repeat.along, spoken.units_of(cloth))
        yield f"striped every {repeat} x {spoken.tape(cloth.repeat.across, spoken.units_of(cloth))}"
        yield from _uneven(cloth.repeat)
    along, across = _wash(cloth)
    if along or across:
        yield f"shrinking by {along:.1%} x {across:.1%} ({cloth.treatment})"


def _uneven(repeat: Repeat) -> Iterator[str]:
    said = (("along", repeat.uneven_along), ("across", repeat.uneven_across))
    ways = [way for way, is_uneven in said if is_uneven]
    if ways:
        yield f"uneven {' and '.join(ways)}"


def _wash(cloth: Cloth) -> tuple[float, float]:
    return cloth.shrinkage.along, cloth.shrinkage.across
