"""Lines copied: moved, mirrored, turned."""

from __future__ import annotations

from typing import TYPE_CHECKING

from littlefold.draft.arithmetic import evaluate_angle
from littlefold.draft.constructions.measured import WAYS, way_word
from littlefold.draft.constructions.turned import angle_words
from littlefold.draft.drawn import NewLine, named, pencil, word
from littlefold.draft.register import construction
from littlefold.draft.sides import turn_meant
from littlefold.geometry import Affine
from littlefold.recipe import tree

if TYPE_CHECKING:
    from littlefold.draft.desk import Desk
    from littlefold.draft.drawn import Distance
    from littlefold.draft.model import Said


@construction(tree.CopyMoved, "copy.moved")
def moved(step: tree.CopyMoved, desk: Desk) -> NewLine:
    """A line moved in one or two of the four directions."""
    first = pencil(step.first, desk)
    way = WAYS[step.first_way] * first.value
    words = {"distance": first.size, "way": way_word(step.first_way, first), "leg": word("none")}
    if step.second is not None and step.second_way is not None:
        second = pencil(step.second, desk)
        way += WAYS[step.second_way] * second.value
        words |= {"leg": word("leg"), "leg_distance": second.size}
        words["leg_way"] = way_word(step.second_way, second)
    return _copied(step.line, Affine.translation(way), words, desk, first)


@construction(tree.CopyMirrored, "copy.mirrored")
def mirrored(step: tree.CopyMirrored, desk: Desk) -> NewLine:
    """A line mirrored in a straight line."""
    across = desk.straight(step.across)
    affine = Affine.mirror(across.start, across.end - across.start)
    return _copied(step.line, affine, {"across": named(step.across)}, desk)


@construction(tree.CopyTurned, "copy.turned")
def turned(step: tree.CopyTurned, desk: Desk) -> NewLine:
    """A line turned about a point."""
    path, about = desk.named_line(step.line).path, desk.point(step.about)
    middle = path.at_length(path.length() / 2)
    by = turn_meant(
        step.clock,
        evaluate_angle(step.angle, desk),
        lambda by: Affine.rotation(by, about).apply(middle),
        step.name.spot,
    )
    return _copied(
        step.line, Affine.rotation(by, about), {"about": named(step.about)} | angle_words(by), desk
    )


def _copied(
    line: tree.Name, affine: Affine, words: dict[str, Said], desk: Desk, distance: Distance | None = None
) -> NewLine:
    original = desk.named_line(line)
    path = original.path.transformed(affine)
    return NewLine(path, original.kind, "", "", {"line": named(line)} | words, distance)
