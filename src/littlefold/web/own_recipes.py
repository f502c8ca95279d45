"""The maker's own recipes: text files in her folder, each under a plain name.

No name from a request is ever made into a path before it has been matched against `NAME`; what is listed is what
lies in the folder under such a name.  A save says which text the maker had before her, so that nothing that was
changed meanwhile is lost.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from hashlib import sha256
from threading import Lock
from typing import TYPE_CHECKING, Final

from littlefold.problem import Problem
from littlefold.recipe.lines import MOST_CHARACTERS
from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names
from littlefold.web.files import write_whole

if TYPE_CHECKING:
    from pathlib import Path

    from littlefold.recipe.recipe import Recipe

NAME: Final = re.compile(r"[a-z0-9][a-z0-9-]{0,59}")
NEW: Final = "new"
"""What a save says it saw when there was no such recipe yet."""
ENDING: Final = ".recipe"
_SAVING = Lock()


def fingerprint(text: str) -> str:
    """The hash by which a save tells which text it is based on."""
    return sha256(text.encode()).hexdigest()


@lru_cache(maxsize=64)
def parsed(text: str, name: str) -> Recipe:
    """A text as read; remembered, since it is asked for with every redraw."""
    return parse(text, name)


@dataclass(frozen=True, slots=True)
class OwnRecipes:
    """The recipes in a folder, which need not be there yet."""

    folder: Path

    def names(self) -> tuple[str, ...]:
        """The names, in alphabetical order."""
        if not self.folder.is_dir():
            return ()
        stems = (path.stem for path in self.folder.glob(f"*{ENDING}"))
        return tuple(sorted(stem for stem in stems if NAME.fullmatch(stem) and stem not in shipped_names()))

    def text(self, name: str) -> str | None:
        """The text of a recipe; None where there is none or it cannot be read."""
        if name not in self.names():
            return None
        try:
            return (self.folder / f"{name}{ENDING}").read_text(encoding="utf-8")[: MOST_CHARACTERS + 1]
        except (OSError, UnicodeDecodeError):
            return None

    def recipe(self, name: str) -> Recipe | None:
        """A recipe as read; None where there is none."""
        text = self.text(name)
        return None if text is None else parsed(text, name)

    def save(self, name: str, text: str, seen: str) -> Problem | None:
        """Saves a recipe, or says why not.

        Args:
            name: Its plain name.
            text: The new text.
            seen: The fingerprint of the text that the maker changed; `NEW` when she made a new one.
        """
        refused = _refusal(name, text)
        if refused is not None:
            return refused
        with _SAVING:
            now = self.text(name)
            if (NEW if now is None else fingerprint(now)) != seen:
                return _changed_meanwhile(name)
            try:
                self.folder.mkdir(parents=True, exist_ok=True)
                write_whole(self.folder / f"{name}{ENDING}", text.encode())
            except OSError as fault:
                return Problem("recipe-not-saved", f"The recipe cannot be saved: {fault.strerror}.")
        return None


def _refusal(name: str, text: str) -> Problem | None:
    if not NAME.fullmatch(name):
        return Problem(
            "recipe-name", "Name the recipe in small letters, digits and hyphens, for example my-first-top."
        )
    if name in shipped_names():
        return Problem(
            "recipe-shipped", f"{name} comes with the workroom and stays as it is. Save under another name."
        )
    if len(text) > MOST_CHARACTERS:
        return Problem("recipe-too-long", f"A recipe has at most {MOST_CHARACTERS} characters.")
    return None


def _changed_meanwhile(name: str) -> Problem:
    return Problem(
        "recipe-changed-meanwhile",
        f"{name} was changed elsewhere since you opened it, so it was not saved over. Your text is still here: "
        "save it under another name, or open the recipe again in a second window and bring the two together.",
    )
