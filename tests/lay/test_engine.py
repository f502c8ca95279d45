"""The outside engine: what is put to it, what is read from it, and that it cannot do harm."""

from __future__ import annotations

import time
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

import pytest
import shapely
from garments import dress, rectangle

from littlefold.cli.engine_process import ProcessEngine
from littlefold.lay.cloth import Cloth, Repeat
from littlefold.lay.conversation import COMB, put
from littlefold.lay.engine import Answer, Item, Placed, Task
from littlefold.lay.place import Effort, Prepared, lays, prepare
from littlefold.lay.planner import Planner
from littlefold.lay.together import seconds_for_engine
from littlefold.lay.verify import verify
from littlefold.lay.ways import Way

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator


def prepared(way: Way, cloth: Cloth | None = None) -> Prepared:
    found = prepare(dress(), cloth or Cloth(1120), way)
    assert isinstance(found, Prepared)
    return found


@dataclass
class Liar:
    """An engine whose every answer puts everything on one heap."""

    def answers(self, task: Task, wait: float, keep_going: Callable[[], bool]) -> Iterator[Answer | None]:  # noqa: ARG002
        yield None
        heap = tuple(Placed(i.name, i.degrees[0], 0.0, 0.0) for i in task.items for _ in range(i.demand))
        for _ in range(3):
            yield Answer(1.0, heap)


def test_a_lying_engine_never_gets_a_lay_shown() -> None:
    for way in (Way.OPEN, Way.FOLDED):
        shown = list(lays(prepared(way), Effort(steps=60, engine=Liar())))
        assert shown
        assert all(verify(lay) == () for lay in shown)
        assert all(lay.length >= prepared(way).bounds.most for lay in shown)


@dataclass
class Listener:
    """An engine that only keeps what it was asked."""

    asked: list[Task] = field(default_factory=list)

    def answers(self, task: Task, wait: float, keep_going: Callable[[], bool]) -> Iterator[Answer | None]:  # noqa: ARG002
        self.asked.append(task)
        yield None


def test_the_engine_is_asked_once_and_some_time_is_kept_to_settle() -> None:
    engine = Listener()
    assert list(lays(prepared(Way.OPEN), Effort(steps=0, seed=5, engine=engine, seconds=60.0)))
    assert [task.seed for task in engine.asked] == [5]
    assert 59.0 <= engine.asked[0].seconds < 60.0


@pytest.mark.parametrize("seconds", [0.5, 1.0, 2.0, 10.0, 600.0])
def test_some_of_the_time_is_kept_for_settling_the_more_the_more_members_there_are(seconds: float) -> None:
    few, crowd = (seconds - seconds_for_engine(seconds, members) for members in (4, 99))
    assert min(seconds / 2, 0.299) <= few <= crowd <= seconds / 2
    assert seconds < 2 or few < crowd


def test_fold_pieces_go_as_one_comb_that_fits_at_one_height_only() -> None:
    found = prepared(Way.FOLDED)
    layout = Planner(found.question.strip, 1).first()
    assert layout is not None
    asked = put(found.question.strip, layout, found.gap / 2, 2, 1)
    assert asked is not None
    comb = next(item for item in asked.task.items if item.name == COMB)
    polygon = shapely.Polygon(comb.ring)
    assert polygon.is_valid
    assert comb.degrees == (0.0,)
    assert 0 < asked.task.height - (polygon.bounds[3] - polygon.bounds[1]) < 0.2


@pytest.mark.parametrize("cloth", [Cloth(1120, repeat=Repeat(along=40.0))])
def test_what_the_engine_cannot_say_is_not_put_to_it(cloth: Cloth) -> None:
    pieces = tuple(p for p in dress())
    found = prepare(pieces, cloth, Way.PARTLY)
    assert isinstance(found, Prepared)
    layout = Planner(found.question.strip, 1).first()
    assert layout is not None
    assert put(found.question.strip, layout, 1.5, 2, 1) is None


def test_a_piece_as_high_as_the_strip_does_not_reach_the_engine() -> None:
    found = prepare((rectangle("sheet", 100, 1000),), Cloth(1000, selvedge=0), Way.OPEN, gap=0.0)
    assert isinstance(found, Prepared)
    layout = Planner(found.question.strip, 1).first()
    assert layout is not None
    asked = put(found.question.strip, layout, 0.0, 2, 1)
    assert asked is None or asked.task.height > 1000


@pytest.mark.parametrize("way", [Way.OPEN, Way.FOLDED])
def test_the_real_engine_gives_layouts_that_settle_to_sound_lays(way: Way) -> None:
    found = prepared(way)
    planner = Planner(found.question.strip, 1)
    layout = planner.first()
    assert layout is not None
    first = planner.begin(layout)
    assert first is not None
    asked = put(found.question.strip, layout, found.gap / 2, 2, 1)
    assert asked is not None
    answers = [a for a in ProcessEngine(1).answers(asked.task, 0.1, _always) if a is not None]
    assert answers
    adopted = planner.adopt(asked.layout(answers[-1]))
    assert adopted is not None, "the engine is better than the first lay"
    assert adopted.length < first.length


def _always() -> bool:
    return True


def test_the_engine_stops_when_it_is_no_longer_listened_to() -> None:
    square = Item("0", ((0, 0), (100, 0), (100, 100), (0, 100)), 20, (0.0,))
    started = time.monotonic()
    answers = ProcessEngine(1).answers(Task(450.0, (square,), 60, 1), 0.1, _always)
    assert next(a for a in answers if a is not None).length > 0
    answers.close()
    assert time.monotonic() - started < 120  # to come to an end by itself would take it for ever


def test_a_panic_of_the_engine_is_an_end_without_answers() -> None:
    bow = Item("0", ((0, 0), (100, 100), (100, 0), (0, 100)), 1, (0.0,))
    assert [
        a for a in ProcessEngine(1).answers(Task(450.0, (bow,), 2, 1), 0.1, _always) if a is not None
    ] == []
