"""The options that several commands share, each with its help said once."""

from __future__ import annotations

from typing import Annotated

import typer

RecipeName = Annotated[str, typer.Argument(help="A shipped recipe by name, or a recipe file.")]
Data = Annotated[bool, typer.Option("--data", help="Print one JSON document instead of words.")]
Measure = Annotated[
    list[str] | None,
    typer.Option(metavar="NAME=LENGTH", help="A measurement, such as chest=56cm. Repeat for more."),
]
Child = Annotated[
    str | None,
    typer.Option(
        metavar="NAME", help='The card of a child; or a file FILE.json, or "sample", the built-in child.'
    ),
]
Size = Annotated[
    str | None, typer.Option(metavar="SIZE", help="A chart size by stature: 56 to 152 in steps of 6.")
]
Age = Annotated[str | None, typer.Option(metavar="AGE", help="When only the age is known: 4y, 18m, 4y6m.")]
Girl = Annotated[bool, typer.Option("--girl", help="With --age: growth curves of girls.")]
Boy = Annotated[bool, typer.Option("--boy", help="With --age: growth curves of boys.")]
Choose = Annotated[
    list[str] | None,
    typer.Option(metavar="NAME=VALUE", help="A choice of the recipe, such as ease=12cm. Repeat for more."),
]
Tape = Annotated[
    str,
    typer.Option(
        metavar="MARK", help="Round what the pencil measures to the tape: 1/8in, 1/16in, 0.5cm, 1mm."
    ),
]
Reduced = Annotated[
    str,
    typer.Option(
        metavar="1:4|1:5|page", help="The scale of the reduced drawings; page: as large as one page holds."
    ),
]
Region = Annotated[str, typer.Option(metavar="eu|us", help="Whose safety rules are named first.")]
