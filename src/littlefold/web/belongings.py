"""All that a maker has made, in one file: cards and classes, her own recipes, her settings, what lay on her table last.

Whatever is read is taken for a stranger's: names are matched before they mean anything, and no more is unpacked than a
workroom can hold, whatever the file says of its own size.
"""

from __future__ import annotations

import zipfile
from contextlib import suppress
from dataclasses import dataclass
from io import BytesIO
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING, Final

from littlefold.problem import Problem
from littlefold.recipe.lines import MOST_CHARACTERS
from littlefold.recipe.shelf import shipped_names
from littlefold.store import back_up_now, backups_of, read_backup, restore
from littlefold.web.files import write_whole
from littlefold.web.own_recipes import ENDING, NAME, OwnRecipes
from littlefold.web.preferences import FILE as SETTINGS
from littlefold.web.preferences import (
    Preferences,
    keep_preferences,
    preferences_in,
    read_preferences,
    settings_text,
)
from littlefold.web.recent import FILE as RECENT
from littlefold.web.recent import put_recent, read_recent, recent_in, recent_text, without_child

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime

    from littlefold.store import Address, CardBox, Holding, Restored
    from littlefold.web.recent import Recent

CARDS: Final = ("cards.sqlite", "cards.json")
RECIPES: Final = "recipes/"
LARGEST_FILE: Final = 64_000_000
"""Bytes of a file that is put back."""
LARGEST_CARDS: Final = 256_000_000
"""Bytes of all that it unpacks to."""
LARGEST_RECIPE: Final = 4 * MOST_CHARACTERS
LARGEST_SETTINGS: Final = 20_000
LARGEST_RECENT: Final = 500_000
MOST_FILES: Final = 2_000
PIECE: Final = 1 << 16
ZIP: Final = b"PK\x03\x04"


@dataclass(frozen=True, slots=True)
class Kept:
    """A copy of all that a maker has made.

    Attributes:
        cards: Where the copy of the cards lies.
        holds: What they are.
        recipes: The names of her own recipes in it.
    """

    cards: Path
    holds: Holding
    recipes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Belongings:
    """What a packed file holds, read and checked.

    Attributes:
        cards: A backup of the card box, unpacked.
        holds: What it holds.
        recipes: Name and text of each recipe.
        preferences: The settings; None where it holds none.
        recent: The drafts that lay on the table last; None where it does not tell.
    """

    cards: Path
    holds: Holding
    recipes: tuple[tuple[str, str], ...] = ()
    preferences: Preferences | None = None
    recent: tuple[Recent, ...] | None = None


@dataclass(frozen=True, slots=True)
class PutBack:
    """What came of putting back: what is there now, and where that lies which was there before."""

    holds: Holding
    recipes: tuple[str, ...]
    replaced: Path | None


Faults = tuple[Problem, ...]


def keep_copy(box: CardBox, folder: Path, now: datetime) -> Kept | Problem:
    """Copies all belongings into the folder of backups, for their owner alone.

    The cards stay a file of their own there, so that a child who is erased is erased from it too; recipes, settings and
    what lay on the table last lie beside it.

    Args:
        box: The open card box.
        folder: Of the maker.
        now: Names the files.
    """
    cards = back_up_now(box, now)
    if isinstance(cards, Problem):
        return cards
    own = OwnRecipes(folder / "recipes")
    texts = tuple((name, text) for name in own.names() if (text := own.text(name)) is not None)
    made = BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as packed:
        for name, text in texts:
            packed.writestr(f"{RECIPES}{name}{ENDING}", text)
        packed.writestr(SETTINGS, settings_text(read_preferences(folder)))
        packed.writestr(RECENT, recent_text(read_recent(folder)))
    try:
        write_whole(_beside(cards.file), made.getvalue())
    except OSError as fault:
        return Problem("backup-not-made", f"The backup could not be written: {fault.strerror}.")
    return Kept(cards.file, cards.holds, tuple(name for name, _ in texts))


def kept_copies(address: Address) -> tuple[Path, ...]:
    """The copies of the cards among the backups, the newest first; no link in the place of one."""
    return tuple(one for one in backups_of(address) if one.is_file() and not one.is_symlink())


def packed_up(cards: Path) -> bytes:
    """A kept copy as one file to take along: the cards, and what lies beside them."""
    made = BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.write(cards, f"cards{cards.suffix}")
        if _beside(cards).is_file():
            with zipfile.ZipFile(_beside(cards)) as others:
                for name in others.namelist():
                    packed.writestr(name, others.read(name))
    return made.getvalue()


def is_cards_alone(cards: Path) -> bool:
    """Whether no recipes and settings lie beside a kept copy."""
    return not _beside(cards).is_file()


def _beside(cards: Path) -> Path:
    return cards.with_name(f"recipes-{cards.stem.removeprefix('cards-')}.zip")


def forget_in_copies(folder: Path, name: str) -> None:
    """Lets go of all drafts for a child that lie beside the kept copies; from the cards the box erases it itself.

    Args:
        folder: Of the maker.
        name: Of the child.
    """
    for beside in sorted((folder / "backups").glob("recipes-*.zip")):
        with suppress(OSError, zipfile.BadZipFile):
            _forget_beside(beside, name)


def _forget_beside(beside: Path, name: str) -> None:
    with zipfile.ZipFile(beside) as packed:
        files = {one: packed.read(one) for one in packed.namelist()}
    known = recent_in(files.get(RECENT, b"[]")) or ()
    left = without_child(known, name)
    if left == known:
        return
    made = BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as packed:
        for one, content in (files | {RECENT: recent_text(left)}).items():
            packed.writestr(one, content)
    write_whole(beside, made.getvalue())


def put_back(
    file: Path, box: CardBox | None, address: Address, folder: Path, now: datetime
) -> PutBack | Faults:
    """Puts what a file holds in the place of what is there, after all of it was read and found sound.

    Cards, settings and what lay on the table last are replaced; of recipes those that the file has are, and others
    stay.  What was there before is copied first.

    Args:
        file: A packed file, or a backup of the cards alone.
        box: The card box as it is; None where it cannot be opened, so that it cannot be packed either.
        address: Of the card box.
        folder: Of the maker.
        now: Names what is made on the way.
    """
    with TemporaryDirectory(prefix="littlefold-") as scratch:
        found = read_packed(file, Path(scratch), now)
        if not isinstance(found, Belongings):
            return found
        before = None if box is None else keep_copy(box, folder, now)
        if isinstance(before, Problem):
            return (before,)
        done = restore(address, found.cards, now)
        if isinstance(done, tuple):
            return done
        return _put_beside(found, folder) or _told(found, done, before)


def _put_beside(found: Belongings, folder: Path) -> Faults:
    """Puts recipes and settings in their places."""
    try:
        (folder / "recipes").mkdir(mode=0o700, parents=True, exist_ok=True)
        for name, text in found.recipes:
            write_whole(folder / "recipes" / f"{name}{ENDING}", text.encode())
        if found.preferences is not None:
            keep_preferences(folder, found.preferences)
        if found.recent is not None:
            put_recent(folder, found.recent)
    except OSError as fault:
        message = (
            f"The cards were put back, but not all recipes and settings: {fault.strerror}. Try once more."
        )
        return (Problem("not-all-restored", message),)
    return ()


def _told(found: Belongings, done: Restored, before: Kept | None) -> PutBack:
    replaced = before.cards if before is not None else done.damaged
    return PutBack(done.holds, tuple(name for name, _ in found.recipes), replaced)


def read_packed(file: Path, scratch: Path, now: datetime) -> Belongings | Faults:
    """What a file holds, or all that is wrong with it; nothing but `scratch` is written to."""
    try:
        with file.open("rb") as opened:
            is_packed = opened.read(len(ZIP)) == ZIP
        if not is_packed:
            return _cards(file, now)
        with zipfile.ZipFile(file) as packed:
            return _unpacked(packed, scratch, now)
    except (OSError, zipfile.BadZipFile, EOFError, NotImplementedError, RuntimeError):
        return (_not_ours(),)


def _cards(file: Path, now: datetime) -> Belongings | Faults:
    read = read_backup(file, now)
    return Belongings(file, read.holds) if not isinstance(read, tuple) else read


def _unpacked(packed: zipfile.ZipFile, scratch: Path, now: datetime) -> Belongings | Faults:
    faults = tuple(_strange(packed.infolist()))
    if faults:
        return faults
    names = packed.namelist()
    box = scratch / next(name for name in names if name in CARDS)
    if not _copied(packed, box.name, box):
        return (_too_much(),)
    cards = _cards(box, now)
    if not isinstance(cards, Belongings):
        return cards
    recipes = tuple(_recipe(packed, name) for name in names if name.startswith(RECIPES))
    kept = preferences_in(_bytes(packed, SETTINGS, LARGEST_SETTINGS) or b"") if SETTINGS in names else None
    recent = recent_in(_bytes(packed, RECENT, LARGEST_RECENT) or b"") if RECENT in names else None
    wrong = tuple(one for one in recipes if isinstance(one, Problem))
    is_spoilt = (SETTINGS in names and kept is None) or (RECENT in names and recent is None)
    read = tuple(one for one in recipes if isinstance(one, tuple))
    return (
        (wrong or (_not_ours(),)) if wrong or is_spoilt else Belongings(box, cards.holds, read, kept, recent)
    )


def _strange(files: list[zipfile.ZipInfo]) -> Iterator[Problem]:
    """Whatever speaks against a packed file before anything of it is unpacked."""
    names = [one.filename for one in files]
    if len(names) > MOST_FILES or sum(one.file_size for one in files) > LARGEST_CARDS:
        yield _too_much()
        return
    is_ours = len(set(names)) == len(names) and all(_is_ours(name) for name in names)
    if not is_ours or sum(name in CARDS for name in names) != 1:
        yield _not_ours()


def _is_ours(name: str) -> bool:
    if name in (*CARDS, SETTINGS, RECENT):
        return True
    stem = name.removeprefix(RECIPES).removesuffix(ENDING)
    return name == f"{RECIPES}{stem}{ENDING}" and bool(NAME.fullmatch(stem)) and stem not in shipped_names()


def _copied(packed: zipfile.ZipFile, name: str, to: Path) -> bool:
    """Unpacks one file; whether it was not larger than it may be."""
    taken = 0
    with packed.open(name) as source, to.open("wb") as copy:
        while piece := source.read(PIECE):
            taken += len(piece)
            if taken > LARGEST_CARDS:
                return False
            copy.write(piece)
    return True


def _bytes(packed: zipfile.ZipFile, name: str, most: int) -> bytes | None:
    """A small file of the packed one; None where it is not small."""
    with packed.open(name) as source:
        found = source.read(most + 1)
    return found if len(found) <= most else None


def _recipe(packed: zipfile.ZipFile, name: str) -> tuple[str, str] | Problem:
    found = _bytes(packed, name, LARGEST_RECIPE)
    try:
        text = None if found is None else found.decode("utf-8")
    except UnicodeDecodeError:
        text = None
    if text is None or len(text) > MOST_CHARACTERS:
        return _not_ours()
    return name.removeprefix(RECIPES).removesuffix(ENDING), text


def _not_ours() -> Problem:
    message = "This file is not a whole backup of Littlefold, so nothing was changed."
    return Problem("backup-not-ours", message)


def _too_much() -> Problem:
    return Problem("backup-too-large", "This file holds more than a workroom can, so nothing was changed.")
