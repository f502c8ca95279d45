"""What the pages share: the folder of the maker, her settings, her own recipes, and the way wishes are fulfilled."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from typing import TYPE_CHECKING, Protocol

from littlefold.pipeline import Workroom, on_the_shelf
from littlefold.recipe.shelf import shipped_names
from littlefold.web.box_keeper import BoxKeeper
from littlefold.web.hands import Hands
from littlefold.web.kept_lays import FOLDERS, KeptLays
from littlefold.web.long_work import LongWorks
from littlefold.web.own_recipes import OwnRecipes
from littlefold.web.patience import PATIENCE, within
from littlefold.web.preferences import Preferences, read_preferences
from littlefold.web.visitor import Visitor

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from littlefold.lay.engine import Engine
    from littlefold.pipeline import Glimpse, Outcome, Wish
    from littlefold.recipe.recipe import Recipe

FEW = 4
"""So many classes' sheets are kept in memory at most."""


def _today() -> date:
    return datetime.now(tz=UTC).astimezone().date()


class Pipeline(Protocol):
    """How wishes are fulfilled."""

    def fulfil(self, wish: Wish) -> Outcome:
        """The outcome of a wish."""

    def glimpse(self, wish: Wish, sheet: str | None) -> Glimpse:
        """What is seen of a sheet of a wish, before anything is checked; None for the pieces of all sheets."""


class Patient:
    """A pipeline that is cut off when a recipe takes too long."""

    def __init__(self, pipeline: Pipeline) -> None:
        self._pipeline = pipeline

    def fulfil(self, wish: Wish) -> Outcome:
        """The outcome of a wish.

        Raises:
            TooLongError: It was cut off.
        """
        return within(PATIENCE, lambda: self._pipeline.fulfil(wish))

    def glimpse(self, wish: Wish, sheet: str | None) -> Glimpse:
        """What is seen of a sheet of a wish.

        Raises:
            TooLongError: It was cut off.
        """
        return within(PATIENCE, lambda: self._pipeline.glimpse(wish, sheet))


@dataclass(frozen=True, slots=True)
class Room:
    """The workroom of one maker.

    Attributes:
        folder: Where her own recipes, kept drafts and settings lie.
        pipeline: How a wish becomes an outcome; tests put a slow one here.
        today: The date for sheets.
        engine: What helps to lay pieces on cloth; None where nothing does.
        visitor: For whom the pages are.
        with_sample: Whether a new card box begins with the sample.
        keeper: Keeps the card box open.
        hands: Processes that draft beside this one.
        making: The sheets of whole classes, which take long to make.
        searches: For shorter lays; a class has its own.
    """

    folder: Path
    pipeline: Pipeline = field(default_factory=lambda: Patient(Workroom()))
    today: Callable[[], date] = _today
    engine: Engine | None = None
    visitor: Visitor = Visitor.MAKER
    with_sample: bool = False
    keeper: BoxKeeper = field(default_factory=BoxKeeper, compare=False)
    hands: Hands = field(default_factory=Hands, compare=False)
    making: LongWorks = field(default_factory=lambda: LongWorks(remembered=FEW), compare=False)
    searches: LongWorks = field(default_factory=LongWorks, compare=False)

    def fulfil(self, wish: Wish) -> Outcome:
        """The outcome of a wish."""
        return self.pipeline.fulfil(wish)

    def glimpse(self, wish: Wish, sheet: str | None) -> Glimpse:
        """What is seen of a sheet of a wish, before anything is checked."""
        return self.pipeline.glimpse(wish, sheet)

    @property
    def own(self) -> OwnRecipes:
        """The maker's own recipes."""
        return OwnRecipes(self.folder / "recipes")

    @property
    def lays(self) -> KeptLays:
        """The lays that searches have found."""
        return KeptLays(self.folder / FOLDERS[self.visitor is Visitor.PUPIL])

    @property
    def preferences(self) -> Preferences:
        """The settings as they are kept now."""
        return read_preferences(self.folder)

    def recipe(self, name: str) -> Recipe | None:
        """A shipped recipe, or one of the maker's own; None where there is none."""
        return on_the_shelf(name) if name in shipped_names() else self.own.recipe(name)

    def recipes(self) -> tuple[Recipe, ...]:
        """All recipes: the shipped ones, then her own."""
        names = (*shipped_names(), *self.own.names())
        return tuple(found for name in names if (found := self.recipe(name)) is not None)
