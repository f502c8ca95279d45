"""The options that several commands share, each with its help said once."""

from __future__ import annotations

import inspect
from functools import wraps
from typing import TYPE_CHECKING, Annotated, Any, Concatenate, ParamSpec

import typer

from littlefold.cli.asked import Asked, read_sex

if TYPE_CHECKING:
    from collections.abc import Callable

P = ParamSpec("P")

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


def asking(command: Callable[Concatenate[Asked, P], None]) -> Callable[..., None]:
    """Puts before a command's own options those that say what is drafted, for whom and how.

    The command is called with them as one `Asked`.  The command line reads the options from the signature, so that
    is made of both.
    """
    shared = inspect.signature(_asked, eval_str=True).parameters
    _, *own = inspect.signature(command, eval_str=True).parameters.values()

    @wraps(command)
    def run(**said: Any) -> None:
        command(_asked(**{name: said.pop(name) for name in shared}), **said)  # type: ignore[call-arg]

    parameters = [*shared.values(), *own]
    run.__signature__ = inspect.Signature(parameters)  # type: ignore[attr-defined]
    run.__annotations__ = {each.name: each.annotation for each in parameters}
    return run


def _asked(
    recipe: RecipeName,
    *,
    measure: Measure = None,
    child: Child = None,
    size: Size = None,
    age: Age = None,
    girl: Girl = False,
    boy: Boy = False,
    choose: Choose = None,
    tape: Tape = "exact",
    region: Region = "eu",
) -> Asked:
    """What the shared options say."""
    return Asked(
        recipe,
        tuple(measure or ()),
        child,
        size,
        tuple(choose or ()),
        tape,
        region=region,
        age=age,
        sex=read_sex(girl, boy),
    )
