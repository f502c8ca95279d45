"""`littlefold format`: one canonical layout."""

from __future__ import annotations

import sys
from pathlib import Path

from littlefold.cli.files import read_text, write_whole
from littlefold.cli.words import aside, print_findings
from littlefold.problem import Problem, has_errors
from littlefold.recipe.format import format_recipe
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_text


def format_file(name: str, *, write: bool) -> int:
    """Prints a recipe in its canonical layout, or writes it back; returns the exit status.

    Lines that cannot be read stay as they are, and are told beside the layout: exit status 1.
    """
    shipped = shipped_text(name)
    text = read_text(Path(name)) if shipped is None else shipped
    if isinstance(text, Problem):
        print_findings((text,), aside())
        return 2
    laid_out = format_recipe(text)
    if not isinstance(laid_out, str):
        print_findings(laid_out, aside())
        return 1
    if not write:
        sys.stdout.write(laid_out)
        return _mistakes(laid_out, name)
    if shipped is not None:
        aside().print(f"{name} is a shipped recipe and is not overwritten. Save it under another name first.")
        return 2
    fault = write_whole(Path(name), laid_out.encode()) if laid_out != text else None
    if fault is not None:
        print_findings((fault,), aside())
        return 2
    return _mistakes(laid_out, name)


def _mistakes(text: str, name: str) -> int:
    """Tells what is wrong with the text of a recipe beside it; returns the exit status."""
    problems = parse(text, Path(name).stem).problems
    if problems:
        print_findings(problems, aside())
    return 1 if has_errors(problems) else 0
