"""The command `littlefold cloth`: its many options, handed on as they were typed."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path  # noqa: TC003 - typer reads it from the signature
from typing import Annotated

import typer

from littlefold.cli.asked import Asked  # noqa: TC001 - the options are read from the signature
from littlefold.cli.options import Data, asking

USUAL_WIDTH = "112cm"


@asking
def cloth(
    asked: Asked,
    *,
    width: Annotated[
        str | None,
        typer.Option(
            metavar="WIDTH",
            help="The whole width, 112cm when not said; of a tube, laid flat. 112cm,140cm compares several widths.",
        ),
    ] = None,
    lay: Annotated[
        str | None,
        typer.Option(
            metavar="WAY",
            help="open, folded, partly, two-folds, two-partly, crosswise, four-layers or tube; all that fit are "
            "compared when not said.",
        ),
    ] = None,
    nap: Annotated[
        bool, typer.Option("--nap", help="Pile or a one-way print: all pieces one way up.")
    ] = False,
    two_faced: Annotated[
        bool, typer.Option("--two-faced", help="Face and back are alike: pieces may be turned over.")
    ] = False,
    tube: Annotated[bool, typer.Option("--tube", help="A tube of knit, folded at both sides.")] = False,
    repeat: Annotated[
        str | None,
        typer.Option(metavar="ALONGxACROSS", help="Stripes or checks to match, such as 4x5cm or 0x3cm."),
    ] = None,
    uneven: Annotated[
        str | None,
        typer.Option(
            metavar="along|across|both",
            help="The repeat is not alike read backwards, along the cloth or across it: pieces lie one way up.",
        ),
    ] = None,
    selvedge: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="Not used at either selvedge; 1cm when not said.")
    ] = None,
    shrink: Annotated[
        str | None,
        typer.Option(
            metavar="ALONGxACROSS",
            help='What the wash takes: 3%x1%; a test square 20x20cm=19.4x19.8cm; or "woven cotton", flannel, denim, '
            '"cotton knit".',
        ),
    ] = None,
    enlarge: Annotated[
        bool, typer.Option("--enlarge", help="Cut the pieces larger instead of washing the cloth first.")
    ] = False,
    gap: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="Between two cuts at least; 3mm when not said.")
    ] = None,
    price: Annotated[
        list[str] | None,
        typer.Option(
            metavar="PRICE",
            help='For a metre: 8.50 or "8.50 EUR"; or 6.90/yd. Of notions by name, and thread by the reel: '
            "elastic=1.20, buttons=0.40, thread=2.50. Repeat for more.",
        ),
    ] = None,
    sewn: Annotated[
        str | None,
        typer.Option(
            metavar="SEAMS+EDGES",
            help="Stitches by ISO 4915, for the thread: 301+304 when not said, lockstitch and zigzag; 504 is a three-thread "
            "overedge; 301 alone leaves cut edges as they are.",
        ),
    ] = None,
    length: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="The length in hand, such as 1.5m.")
    ] = None,
    kind: Annotated[
        str, typer.Option("--cloth", metavar="NAME", help="The cloth of the recipe: main, lining ...")
    ] = "main",
    also: Annotated[
        list[str] | None,
        typer.Option(
            metavar="NAME=WIDTH",
            help="A further cloth of the recipe in the same run: lining=140cm@6.50. Repeat.",
        ),
    ] = None,
    pin: Annotated[
        list[str] | None,
        typer.Option(
            metavar="PIECE=ALONGxACROSS",
            help="Hold a piece: where the tail of its arrow comes, front=12x30cm.",
        ),
    ] = None,
    damaged: Annotated[
        list[str] | None,
        typer.Option(metavar="PLACE+SIZE", help="A spot to avoid on the spread cloth: 30x20cm+5x4cm."),
    ] = None,
    scrap: Annotated[
        list[str] | None,
        typer.Option(
            metavar="SHAPE", help='Cut from scraps instead: 60x40cm, or corners "0x0 60x0 40x50cm". Repeat.'
        ),
    ] = None,
    match: Annotated[
        list[str] | None,
        typer.Option(
            metavar="PIECE=NOTCH",
            help="Which notch meets the stripes: front=2; 0 for none; or the edge in whose seam they meet first: "
            "front=side. Repeat.",
        ),
    ] = None,
    tilt: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="How far a piece may end off its grain: 3mm at most.")
    ] = None,
    together: Annotated[
        bool,
        typer.Option(
            "--together",
            help="Cut a front and a back that differ only at the neck at once, by the larger outline.",
        ),
    ] = False,
    stored: Annotated[
        Path | None,
        typer.Option(
            metavar="FILE",
            help="Take a lay that --out wrote (...-lay.json), with its own cloth, instead of searching.",
        ),
    ] = None,
    units: Annotated[
        str, typer.Option(metavar="cm|in", help="in: cloth is sold by the eighth of a yard.")
    ] = "cm",
    paper: Annotated[
        str, typer.Option(metavar="PAPER", help="Paper of the page to follow: a4, letter, a3.")
    ] = "a4",
    seconds: Annotated[
        float, typer.Option(help="How long to look for better lays; 0: the first ones.")
    ] = 10.0,
    steps: Annotated[
        int | None,
        typer.Option(
            help="Moves for each way instead of seconds; the same lay every time.", show_default=False
        ),
    ] = None,
    seed: Annotated[int, typer.Option(help="Where the search begins; try another for another lay.")] = 1,
    out: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Write the page to follow and the full-size marker here."),
    ] = None,
    data: Data = False,
) -> None:
    """Lay a garment on cloth: how to fold it, how much to buy, where each piece comes.

    Ctrl-C ends the search and takes the best lay so far.  Every lay shown was verified.

    Examples:
      littlefold cloth yoke-frock --size 104 --width 140cm --price 8.50 --out frock
      littlefold cloth trousers --size 92 --lay folded --nap --shrink 3%x1%
    """
    from littlefold.cli.cloth import lay_on_cloth
    from littlefold.cli.cloth_wishes import WishWords
    from littlefold.cli.fabric import ClothWords

    asked = replace(asked, units=units, paper=paper)
    named, plain = _parted(price or [])
    words = ClothWords(
        width or USUAL_WIDTH,
        lay,
        nap,
        two_faced,
        tube,
        repeat,
        uneven,
        selvedge,
        shrink,
        enlarge,
        gap,
        plain[-1] if plain else None,
        length,
        kind,
        units == "in",
        seconds,
        steps,
        seed,
    )
    wished = WishWords(
        named,
        tuple(also or ()),
        tuple(pin or ()),
        tuple(damaged or ()),
        tuple(scrap or ()),
        tuple(match or ()),
        tilt,
        together,
        units == "in",
        sewn,
    )
    raise typer.Exit(
        lay_on_cloth(
            asked,
            words,
            out,
            as_data=data,
            wished=wished,
            stored_at=stored,
            is_wide=width is not None,
        )
    )


def _parted(prices: list[str]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The prices that name what they are of, and those of the cloth."""
    return tuple(one for one in prices if "=" in one), tuple(one for one in prices if "=" not in one)
