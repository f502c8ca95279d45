"""Stripes and checks in sentences: how to put the cloth, in which seams they meet, in which they cannot and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.lay.chalk import lower_edge
from littlefold.lay.one_way import runs_on
from littlefold.lay.spoken import tape, units_of

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from littlefold.lay.cloth import Repeat
    from littlefold.lay.lay import Lay
    from littlefold.lay.stripes import Met

# Stripes this far apart in a seam [mm] meet as well as anyone can sew; common practice, no source.
AS_SEWN = 1.0


def told(lay: Lay, met: Sequence[Met]) -> tuple[str, ...]:
    """How to put the cloth, what uneven stripes do, and what becomes of them in each seam; nothing for plain cloth."""
    repeat = lay.cloth.repeat
    if repeat is None:
        return ()
    crosswise = _kind(lay, "Crosswise", [(one, one.along) for one in met])
    lengthwise = _kind(lay, "Lengthwise", [(one, one.across) for one in met])
    left = [f"{_named(lay, one)} ({one.hindrance})" for one in met if one.hindrance]
    not_matched = (f"Not matched: {'; '.join(left)}.",) if left else ()
    return (_put(lay, repeat), *_uneven(lay, repeat), *crosswise, *lengthwise, *not_matched)


def _put(lay: Lay, repeat: Repeat) -> str:
    words, even = [], []
    if repeat.along > 0:
        words.append(f"the cut end along {_line(is_uneven=repeat.uneven_along)} of a crosswise stripe")
        even += [] if repeat.uneven_along else ["crosswise"]
    if repeat.across > 0:
        words.append(
            f"{lower_edge(lay)} along {_line(is_uneven=repeat.uneven_across)} of a lengthwise stripe"
        )
        even += [] if repeat.uneven_across else ["lengthwise"]
    put = f"Stripes: put {' and '.join(words)}."
    if not even:
        return put
    which = "The stripes" if len(even) == len(words) else f"The {even[0]} ones"
    return f"{put} {which} must be even, alike to both sides of their middle."


def _line(*, is_uneven: bool) -> str:
    return "any one line" if is_uneven else "the middle"


def _uneven(lay: Lay, repeat: Repeat) -> Iterator[str]:
    """What uneven stripes ask of the pieces, and what cannot be had with them."""
    if repeat.along > 0 and repeat.uneven_along:
        yield "Uneven crosswise stripes have an up and a down: all pieces lie the same way up, as with a one-way print."
    if repeat.across > 0 and repeat.uneven_across:
        yield (
            "Uneven lengthwise stripes run on round the body in one order, as they lie on the cloth, with all pieces "
            "that meet them the same way up: the right half of the garment is no mirror image of the left."
        )
        yield from _unlike(lay)


def _unlike(lay: Lay) -> Iterator[str]:
    """The pieces in which that is seen: those with two halves, and those that are worn left and right."""
    held = [piece for piece in lay.pieces if runs_on(piece, lay.cloth)]
    halves = [piece.title or piece.name for piece in held if piece.on_fold]
    pairs = [piece.title or piece.name for piece in held if piece.pair]
    if halves:
        yield f"Not striped alike to both sides of the middle, folded or unfolded: {', '.join(halves)}."
    if pairs:
        yield f"Striped the other way round on the left than on the right, seen from the middle: {', '.join(pairs)}."


def _kind(lay: Lay, kind: str, offs: Sequence[tuple[Met, float | None]]) -> Iterator[str]:
    """Of one kind of stripes: the seams in which they meet, and each in which they cannot."""
    well = [_named(lay, one) for one, off in offs if off is not None and off <= AS_SEWN]
    if well:
        yield f"{kind} stripes meet notch to notch: {'; '.join(well)}."
    for one, off in offs:
        if off is not None and off > AS_SEWN:
            apart = tape(off, units_of(lay.cloth))
            yield f"{kind} stripes cannot meet as well, {apart} apart at the notch: {_named(lay, one)}; {_why(lay, one, kind)}."


def _why(lay: Lay, met: Met, kind: str) -> str:
    both = [lay.piece(name) for name, _ in (met.first, met.second)]
    if kind == "Lengthwise" and all(piece.on_fold for piece in both):
        return "the middle of both pieces lies on the same line of a stripe"
    if both[0] == both[1]:
        return "the piece is held at another seam or notch"
    return "both pieces are held at other seams or notches"


def _named(lay: Lay, met: Met) -> str:
    return " with ".join(
        f"{lay.piece(piece).title or piece}, {edge.replace('_', ' ')}"
        for piece, edge in (met.first, met.second)
    )
