"""Examples in the help of commands, shown line by line as they would be typed."""

from __future__ import annotations

import inspect
import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import typer

# Where a paragraph of examples begins; the rest of it, up to an empty line, keeps its lines.
_BEGINNING = re.compile(r"^(?=Examples?:)", re.MULTILINE)
_AS_IT_STANDS = "\b\n"  # the mark of the command line's help for a paragraph that is not to be filled


def keep_examples(app: typer.Typer) -> None:
    """Takes each command's help from its docstring, the lines of its examples as they stand."""
    for command in app.registered_commands:
        command.help = _BEGINNING.sub(_AS_IT_STANDS, inspect.getdoc(command.callback) or "")
    for group in app.registered_groups:
        if group.typer_instance is not None:
            keep_examples(group.typer_instance)
