"""The command `littlefold`: what can be said on the command line, and nothing else.

Every command imports its own work when it is called, so that the first line appears at once.
"""

from __future__ import annotations

import sys
from dataclasses import replace
from pathlib import Path
from typing import Annotated, Literal

import typer
from typer.exceptions import TyperException

from littlefold.cli.asked import Asked  # noqa: TC001 - the options are read from the signature
from littlefold.cli.child_commands import child_app
from littlefold.cli.cloth_command import cloth
from littlefold.cli.examples import keep_examples
from littlefold.cli.options import Data, Reduced, asking

NOT_UNDERSTOOD = 2
INTERRUPTED = 130

app = typer.Typer(
    name="littlefold",
    help="From a child's measurements and a readable recipe to a checked, full-size pattern.",
    no_args_is_help=True,
    pretty_exceptions_enable=False,
    rich_markup_mode=None,
    add_completion=False,
)
app.add_typer(child_app)

RecipeFile = Annotated[Path, typer.Argument(help="A recipe file, or a shipped recipe by name.")]


@app.command()
def recipes(*, data: Data = False) -> None:
    """List the shipped recipes: what they make, for which sizes, from which measurements.

    Example:  littlefold recipes
    """
    from littlefold.cli.recipes import list_recipes

    raise typer.Exit(list_recipes(as_data=data))


@app.command()
def measurements(
    name: Annotated[str | None, typer.Argument(help="A short name, such as hip; all when not said.")] = None,
    *,
    language: Annotated[str, typer.Option(metavar="en|de", help="The language of the words.")] = "en",
    data: Data = False,
) -> None:
    """Say how each measurement is taken on a small child, and which shipped recipes ask for it.

    Example:  littlefold measurements body_rise
    """
    from littlefold.cli.measurements import list_measurements

    raise typer.Exit(list_measurements(name, language, as_data=data))


@app.command()
def check(file: RecipeFile) -> None:
    """Read a recipe, draft its smallest, middle and largest size and its own examples, and say what is wrong.

    Example:  littlefold check my-top.recipe
    """
    from littlefold.cli.check import check_recipe

    raise typer.Exit(check_recipe(str(file)))


@app.command(name="format")
def format_(
    file: RecipeFile,
    *,
    write: Annotated[bool, typer.Option("--write", help="Write it back to the file.")] = False,
) -> None:
    """Lay a recipe out in the one canonical way.

    Example:  littlefold format my-top.recipe --write
    """
    from littlefold.cli.format import format_file

    raise typer.Exit(format_file(str(file), write=write))


@app.command()
@asking
def draft(
    asked: Asked,
    *,
    sizes: Annotated[
        str | None,
        typer.Option(
            metavar="FROM..TO",
            help="A size run, 92..116, or your own chart, FILE.csv: each size, and all stacked.",
        ),
    ] = None,
    units: Annotated[str, typer.Option(metavar="cm|in", help="The units of the sheets.")] = "cm",
    paper: Annotated[
        str, typer.Option(metavar="PAPER", help="Paper to print on: a4, a3, letter, 210x297mm, roll 914mm.")
    ] = "a4",
    margin: Annotated[
        str | None,
        typer.Option(
            metavar="LENGTH", help="What the printer leaves bare on every side; 1 cm when not said."
        ),
    ] = None,
    overlap: Annotated[
        str | None, typer.Option(metavar="LENGTH", help="How far pages to join overlap; 1 cm when not said.")
    ] = None,
    us_size: Annotated[
        str, typer.Option(metavar="SIZE", help="The US size on the label, such as 2T or 10.")
    ] = "",
    cloth_width: Annotated[
        str | None, typer.Option(metavar="WIDTH", help="The width of the cloth, such as 110cm.")
    ] = None,
    draw_on: Annotated[
        str | None, typer.Option(metavar="PAPER", help="The paper for a draft by hand: a1, 60x90cm.")
    ] = None,
    language: Annotated[
        str, typer.Option(metavar="en|de", help="The language of the steps, and of translated recipe words.")
    ] = "en",
    reduced: Reduced = "page",
    out: Annotated[
        Path | None,
        typer.Option(metavar="DIR", help="Where the sheets go; the folder `sheets` when not said."),
    ] = None,
    data: Data = False,
) -> None:
    """Draft a garment for a child and write its pattern and instruction sheets.

    Measurements that are not given are estimated and marked so.

    Examples:
      littlefold draft casing-top --size 104
      littlefold draft bodice --measure chest=56cm --choose ease=8cm --out mina
      littlefold draft bib --tape 1/8in --units in --paper letter
    """
    from littlefold.cli.draft import draft_garment

    asked = replace(
        asked,
        units=units,
        paper=paper,
        language=language,
        us_size=us_size,
        cloth_width=cloth_width,
        draw_on=draw_on,
        margin=margin,
        overlap=overlap,
        reduced=reduced,
    )
    if sizes is not None:
        from littlefold.cli.size_run import draft_size_run

        raise typer.Exit(draft_size_run(asked, sizes, out, as_data=data))
    raise typer.Exit(draft_garment(asked, out, as_data=data))


@app.command()
def printer(
    across: Annotated[
        str, typer.Argument(help="What the 10 cm mark measures across the page, such as 97mm.")
    ],
    down: Annotated[str, typer.Argument(help="What it measures down the page.")],
) -> None:
    """Say which setting of the printer to change, from what the printer check measures.

    Example:  littlefold printer 97mm 97mm
    """
    from littlefold.cli.printer import advise

    raise typer.Exit(advise(across, down))


app.command()(cloth)


@app.command(name="sizes")
def print_chart(
    run: Annotated[
        str | None, typer.Argument(metavar="FROM..TO", help="Such as 92..116; all when not said.")
    ] = None,
    *,
    units: Annotated[Literal["cm", "in"], typer.Option(help="The units of the chart.")] = "cm",
    data: Data = False,
) -> None:
    """Print the size chart, by stature in steps of 6 cm; with --data also the origin of every number.

    Example:  littlefold sizes 92..116
    """
    from littlefold.cli.sizes import print_sizes

    raise typer.Exit(print_sizes(run, units, as_data=data))


@app.command()
def serve(
    *,
    port: Annotated[
        int | None,
        typer.Option(
            min=1, max=65535, help="The port on this machine; 8765, or the next that is free, when not said."
        ),
    ] = None,
    folder: Annotated[
        Path | None,
        typer.Option(
            metavar="DIR", help="Where your own recipes and settings lie; a usual place when not said."
        ),
    ] = None,
    share: Annotated[
        bool,
        typer.Option(
            "--share", help="Let others on the network of this room come in, with one of two passphrases."
        ),
    ] = False,
    new_passphrases: Annotated[
        bool, typer.Option("--new-passphrases", help="With --share: set other passphrases.")
    ] = False,
    passphrases: Annotated[
        Path | None,
        typer.Option(
            metavar="FILE",
            envvar="LITTLEFOLD_PASSPHRASES",
            help="With --share, for scripts: a file that only you can read, the teacher's passphrase on its first "
            "line and the class's on its second.",
        ),
    ] = None,
) -> None:
    """Open the workroom in the browser: draft live, step by step, and print.

    Only this machine can reach it, unless it is shared: then two passphrases are asked for, the teacher's, which
    opens everything, and the class's, which opens garments, drafting and steps, never the children's cards.

    Examples:
      littlefold serve --port 8765
      littlefold serve --share
    """
    from littlefold.cli.serve import Sharing
    from littlefold.cli.serve import serve as serve_workroom

    sharing = Sharing(passphrases, new_passphrases) if share else None
    raise typer.Exit(serve_workroom(port, folder, sharing))


keep_examples(app)


def run() -> None:
    """Runs the command of the command line.

    A command that is not understood ends with 2 and, where data was asked for, with a document all the same.
    """
    try:
        status = app(standalone_mode=False)
    except TyperException as fault:
        say = getattr(fault, "show", None)  # usage mistakes know how to say where they are
        say() if say else sys.stderr.write(f"{fault}\n")
        status = _misspoken(str(fault)) if "--data" in sys.argv else NOT_UNDERSTOOD
    except (typer.Abort, KeyboardInterrupt):
        status = INTERRUPTED
    sys.exit(status or 0)


def _misspoken(message: str) -> int:
    """Prints the document of a command that was not understood; returns the exit status."""
    from littlefold.booklet.record import empty_record
    from littlefold.cli.words import print_document
    from littlefold.problem import Problem

    problem = Problem("command-not-understood", f"{message} See littlefold --help.")
    if "cloth" in sys.argv[1:2]:
        from littlefold.cli.cloth_words import empty_cloth_record

        print_document(empty_cloth_record((problem,)))
    else:
        print_document([] if "recipes" in sys.argv[1:2] else empty_record((problem,)))
    return NOT_UNDERSTOOD
