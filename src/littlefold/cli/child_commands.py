"""The commands below `littlefold child`: what can be said, and nothing else."""

from __future__ import annotations

from pathlib import Path  # noqa: TC003 - typer reads the annotations
from typing import Annotated, Literal

import typer

from littlefold.cli.asked import read_sex

child_app = typer.Typer(
    name="child",
    help="The card box: every child's measurements, growth and past patterns.",
    no_args_is_help=True,
    rich_markup_mode=None,
)

Name = Annotated[str, typer.Argument(help="The name on the card.")]
Number = Annotated[int, typer.Argument(help="The number of the draft on the card.")]
Born = Annotated[str | None, typer.Option(metavar="DAY", help="The birth date, such as 2022-08-14.")]
Girl = Annotated[bool, typer.Option("--girl", help="Growth curves of girls.")]
Boy = Annotated[bool, typer.Option("--boy", help="Growth curves of boys.")]
Data = Annotated[bool, typer.Option("--data", help="Print one JSON document instead of words.")]


@child_app.command("add")
def add(name: Name, *, born: Born = None, girl: Girl = False, boy: Boy = False) -> None:
    """Make a card. The birth date is for growth; the sex only chooses the growth curves.

    Example:  littlefold child add Mina --born 2022-08-14 --girl
    """
    from littlefold.cli.child import add_child

    raise typer.Exit(add_child(name, born, read_sex(girl, boy)))


@child_app.command("list")
def list_(*, data: Data = False) -> None:
    """List the cards."""
    from littlefold.cli.child import list_children

    raise typer.Exit(list_children(as_data=data))


@child_app.command("show")
def show(name: Name, *, data: Data = False) -> None:
    """Show a card: readings, notes, drafts and fittings."""
    from littlefold.cli.child import show_child

    raise typer.Exit(show_child(name, as_data=data))


@child_app.command("measure")
def measure(
    name: Name,
    readings: Annotated[list[str], typer.Argument(metavar="NAME=LENGTH...", help="Such as chest=56cm.")],
    *,
    day: Annotated[str | None, typer.Option(metavar="DAY", help="When; today when not said.")] = None,
    by: Annotated[str, typer.Option(metavar="WHO", help="Who held the tape.")] = "",
    over: Annotated[str, typer.Option(metavar="CLOTHES", help="What the child wore under it.")] = "",
    recipe: Annotated[
        str | None,
        typer.Option("--for", metavar="RECIPE", help="The recipe whose own measurements are among them."),
    ] = None,
    anyway: Annotated[bool, typer.Option("--anyway", help="Keep readings that look impossible.")] = False,
) -> None:
    """Put readings on a card, after looking at them for slips.

    Example:  littlefold child measure Mina stature=104cm chest=56cm "head=19 7/8in" --by Edda --over vest
    """
    from littlefold.cli.measuring import Taking, measure_child

    taking = Taking(day, by, over, recipe)
    raise typer.Exit(measure_child(name, tuple(readings), taking, anyway=anyway))


@child_app.command("check")
def check(name: Name) -> None:
    """Look at the newest readings of a card for slips."""
    from littlefold.cli.child import check_child

    raise typer.Exit(check_child(name))


@child_app.command("forecast")
def forecast(
    name: Name,
    *,
    on: Annotated[
        str | None, typer.Option(metavar="DAY", help="On this day; in a year when not said.")
    ] = None,
    out: Annotated[
        Path | None,
        typer.Option(metavar="FILE", help="A growth picture FILE.svg, or the card sheet FILE.pdf."),
    ] = None,
    of: Annotated[
        str, typer.Option(metavar="NAME", help="What the picture shows: stature, head, upper_arm, chest ...")
    ] = "stature",
    units: Annotated[Literal["cm", "in"], typer.Option(help="The units of what is told and drawn.")] = "cm",
    language: Annotated[str, typer.Option(metavar="en|de", help="The language of the sheets.")] = "en",
    data: Data = False,
) -> None:
    """Say how a child will grow, with the range that 90 of 100 children stay within, and the room a garment needs.

    Example:  littlefold child forecast Mina --on 2027-04-01 --out mina.pdf
    """
    from littlefold.cli.forecast import Shown, forecast_child
    from littlefold.draft.sentence import Speech

    shown = Shown(of, Speech(units, None, language))
    raise typer.Exit(forecast_child(name, on, out, shown, as_data=data))


@child_app.command("note")
def note(name: Name, text: Annotated[str, typer.Argument(help="A few words.")]) -> None:
    """Put a note on a card."""
    from littlefold.cli.child import note_child

    raise typer.Exit(note_child(name, text))


@child_app.command("fit")
def fit(
    name: Name,
    number: Number,
    showed: Annotated[str, typer.Argument(help="What trying it on showed.")],
    *,
    let_down: Annotated[str | None, typer.Option(metavar="LENGTH", help="What is left in the hem.")] = None,
    choose: Annotated[
        list[str] | None,
        typer.Option(
            metavar="NAME=VALUE", help="A choice that is changed; the changed draft is kept as a new one."
        ),
    ] = None,
    out: Annotated[Path | None, typer.Option(metavar="DIR", help="Where the changed sheets go.")] = None,
) -> None:
    """Keep what a fitting showed; with changed choices, draft again and keep that as a new draft.

    Example:  littlefold child fit Mina 1 "tight over the tummy" --choose ease=10cm
    """
    from littlefold.cli.child import fit_child
    from littlefold.cli.past import draft_changed

    status = fit_child(name, number, showed, let_down)
    if not status and choose:
        status = draft_changed(name, number, tuple(choose), out)
    raise typer.Exit(status)


@child_app.command("print")
def print_(
    name: Name,
    number: Number,
    *,
    paper: Annotated[str, typer.Option(metavar="PAPER", help="Paper to print on.")] = "a4",
    out: Annotated[Path | None, typer.Option(metavar="DIR", help="Where the sheets go.")] = None,
) -> None:
    """Print an old pattern again exactly: the recipe, choices and measurements of its day.

    Example:  littlefold child print Mina 1
    """
    from littlefold.cli.past import print_again

    raise typer.Exit(print_again(name, number, paper, out))


@child_app.command("correct")
def correct(
    name: Name,
    *,
    to: Annotated[str | None, typer.Option(metavar="NAME", help="The name as it should be.")] = None,
    born: Born = None,
    girl: Girl = False,
    boy: Boy = False,
) -> None:
    """Correct the name, the birth date or the sex on a card."""
    from littlefold.cli.child import correct_child

    raise typer.Exit(correct_child(name, to, born, read_sex(girl, boy)))


@child_app.command("export")
def export(
    out: Annotated[Path, typer.Argument(help="FILE.json for all, FILE.csv for readings alone.")],
    names: Annotated[list[str] | None, typer.Argument(help="Whose cards; all when not said.")] = None,
) -> None:
    """Write cards into one file.

    Example:  littlefold child export cards.json
    """
    from littlefold.cli.child import export_children

    raise typer.Exit(export_children(tuple(names or ()), out))


@child_app.command("import")
def import_(
    file: Annotated[Path, typer.Argument(help="FILE.json or FILE.csv, as `export` writes them.")],
) -> None:
    """Take the cards of a file in, all or none.

    Example:  littlefold child import cards.json
    """
    from littlefold.cli.child import import_children

    raise typer.Exit(import_children(file))


@child_app.command("backup")
def backup() -> None:
    """Copy the card box, cards and classes, into the folder of backups, and say what the copy holds.

    Own recipes, settings and what lies on the table are not in it. Those too: `littlefold serve`, Settings, Back up now.

    Example:  littlefold child backup
    """
    from littlefold.cli.backups import back_up_box

    raise typer.Exit(back_up_box())


@child_app.command("restore")
def restore(
    file: Annotated[
        Path | None, typer.Argument(help="A backup, of a file or of a server; all there are when not said.")
    ] = None,
    *,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
) -> None:
    """Put a backup in place of all that is in the card box; what was there is kept beside, as a backup.

    Everything is read and checked before anything is replaced.

    Example:  littlefold child restore ~/.local/share/littlefold/backups/cards-20261120-143000.sqlite
    """
    from littlefold.cli.backups import list_backups, restore_box

    if file is None:
        raise typer.Exit(list_backups())
    if not yes:
        typer.confirm(f"Put {file.name} in place of all cards?", abort=True)
    raise typer.Exit(restore_box(file))


@child_app.command("erase")
def erase(
    name: Name,
    *,
    yes: Annotated[bool, typer.Option("--yes", help="Do not ask again.")] = False,
    damaged_too: Annotated[
        bool,
        typer.Option(
            "--damaged-too", help="Delete damaged boxes put aside, which cannot be searched for the child."
        ),
    ] = False,
) -> None:
    """Erase all that is known of a child, in the box and in its backups. It cannot be undone.

    Example:  littlefold child erase Mina
    """
    from littlefold.cli.child import damaged_boxes, erase_child

    if not yes:
        typer.confirm(f"Erase everything about {name}?", abort=True)
        damaged = () if damaged_too else damaged_boxes()
        if damaged:
            typer.echo("Damaged, and may still hold cards, this child's among them; they cannot be searched:")
            typer.echo("\n".join(f"  {file}" for file in damaged))
            damaged_too = typer.confirm("Delete these files too?")
    raise typer.Exit(erase_child(name, damaged_too=damaged_too))
