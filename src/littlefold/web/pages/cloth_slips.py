"""What the slips of the cloth page say: the fields of each cloth, its lay with the search for a shorter one, prices."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

from littlefold.lay.shrink import BY_FIBRE, advice
from littlefold.lay.stripes import stripes_met
from littlefold.lay.stripes_told import told
from littlefold.web.pages.cloth_asked import AT_ONCE, SQUARE, WAYS
from littlefold.web.pages.cloth_compared import remarks_on
from littlefold.web.pages.cloth_laid import first_of, in_words
from littlefold.web.pages.cloth_prices import SEWN, WAYS_TO_SEW
from littlefold.web.pages.cloth_said import cloth_title, lay_words, ways_words

if TYPE_CHECKING:
    from collections.abc import Iterator

    from littlefold.lay.compare import Row
    from littlefold.lay.lay import Lay
    from littlefold.web.long_work import LongWork
    from littlefold.web.pages.cloth_laid import OnCloth
    from littlefold.web.pages.cloth_prices import Prices
    from littlefold.web.preferences import Units

Json = dict[str, Any]
Going = tuple["LongWork | None", "LongWork | None"]
"""The search for a shorter lay, and the comparison of ways."""

FOLDED_AWAY: Final = (
    *(
        "fibre",
        "nap",
        "both",
        "along",
        "across",
        "uneven-along",
        "uneven-across",
        "notches",
        "square",
        "washed-along",
        "washed-across",
    ),
    *("scraps", "spots", "kept", "tilt", "selvedge", "gap"),
)
"""Words about a cloth that most cloths need not; they are folded away until one is said."""


def slip(on: OnCloth, units: Units) -> Json:
    """The fields of one cloth."""
    asked = on.asked
    return {
        "name": on.name,
        "title": cloth_title(on.name).capitalize(),
        "ending": "" if on.is_first else f".{on.name}",
        "typed": asked.typed,
        "refused": asked.refused,
        "way": AT_ONCE if asked.at_once else str(asked.way),
        "ways": (*(str(way) for way in WAYS), AT_ONCE),
        "fibres": (*BY_FIBRE, SQUARE),
        "pieces": ", ".join(piece.name.replace("_", " ") for piece in on.pieces),
        "notches": tuple(_notches(on)),
        "more": asked.way == "scraps" or any(asked.typed.get(f"cloth-{word}") for word in FOLDED_AWAY),
        "examples": EXAMPLES[units],
    }


EXAMPLES: Final[dict[str, Json]] = {
    "cm": {
        "length": "1.5 m",
        "widths": ("90 cm", "112 cm", "140 cm", "150 cm"),
        "square": "20 cm",
        "washed": "19.4 cm",
        "repeat": "4 cm",
        "scraps": "60 x 40 cm; 30 x 35 cm",
        "spots": "30 x 20 cm + 5 x 4 cm",
        "kept": "front = 12 x 30 cm",
        "selvedge": "1 cm",
        "gap": "3 mm",
    },
    "in": {
        "length": "1 1/2 yd",
        "widths": ("36 in", "44 in", "54 in", "60 in"),
        "square": "8 in",
        "washed": "7 3/4 in",
        "repeat": "1 1/2 in",
        "scraps": "24 x 16 in; 12 x 14 in",
        "spots": "12 x 8 in + 2 x 2 in",
        "kept": "front = 5 x 12 in",
        "selvedge": "3/8 in",
        "gap": "1/8 in",
    },
}
"""What stands in fields until something is written there."""


def _notches(on: OnCloth) -> Iterator[str]:
    """The notches of each piece by their numbers, each with the edge that it is on."""
    numbered = {piece.name: piece.notches for piece in on.outcome.pattern.pieces}
    for piece in on.pieces:
        told = [
            f"{number} {notch.edge.replace('_', ' ')}" for number, notch in enumerate(numbered[piece.name], 1)
        ]
        if told:
            yield f"{piece.name.replace('_', ' ')}: {', '.join(told)}"


def price_slip(prices: Prices) -> Json:
    """The fields of the prices of notions and thread, and of the stitches."""
    return {
        "fields": [
            {
                "key": one.key,
                "title": f"{one.title}, {one.each}",
                "typed": prices.typed.get(one.key, ""),
                "refused": prices.refused.get(one.key, ""),
            }
            for one in prices.fields
        ],
        "sewn": {
            "key": SEWN,
            "typed": prices.typed.get(SEWN, ""),
            "refused": prices.refused.get(SEWN, ""),
            "ways": WAYS_TO_SEW,
        },
        "more": bool(prices.typed),
    }


def lay_told(on: OnCloth, lay: Lay | None, going: Going, units: Units) -> Json:
    """The lay of one cloth, or why there is none; and how far the search is."""
    first, (search, ways) = first_of(on), going
    shrinks = advice(on.asked.cloth.shrinkage, on.asked.cloth.treatment)
    at_work = next((one for one in going if one is not None and not one.is_over), None)
    return {
        "name": on.name,
        "title": cloth_title(on.name).capitalize(),
        "on_scraps": on.asked.way == "scraps",
        "lay": None if lay is None else lay_words(lay, units),
        "why": []
        if lay and first.lay is None
        else [in_words(problem.message, on.pieces) for problem in first.problems],
        "remarks": [
            *on.together,
            *(in_words(problem.message, on.pieces) for problem in (*on.problems, *shrinks)),
        ],
        "search": None if at_work is None else at_work.name,
        "share": 0.0 if at_work is None else at_work.share,
        "count": 0 if at_work is None else len(at_work.found),
        "is_kept": lay is not None and search is None and lay.maker != "first",
        "spent": lay is not None and search is not None and search.is_spent,
        "broken": any(one is not None and one.fault is not None for one in going),
        "stripes": () if lay is None else told(lay, stripes_met(lay, on.seams)),
        "compared": _compared(on, tuple(ways.found) if ways else (), units),
    }


def _compared(on: OnCloth, rows: tuple[Row, ...], units: Units) -> Json:
    """Ways and widths beside each other."""
    told = ways_words(rows, units)
    return told | {"why": [in_words(one, on.pieces) for one in told["why"]], "remarks": remarks_on(on)}
