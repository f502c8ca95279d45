"""What the label of a piece says, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from littlefold.body.tape import say_length
from littlefold.draft.model import EdgeKind
from littlefold.pattern.allowance import fold_distances, width
from littlefold.pattern.wording import ENGLISH, Wording

if TYPE_CHECKING:
    from littlefold.body import Measurements
    from littlefold.draft.model import Cutting, DraftEdge
    from littlefold.pattern.model import Pattern, Piece

Units = Literal["cm", "in"]


@dataclass(frozen=True, slots=True)
class Labelling:
    """What is the same on all pieces: date and scale as they are to be printed, units, language."""

    date: str = ""
    scale: str = "1:1"
    units: Units = "cm"
    wording: Wording = ENGLISH

    def length(self, mm: float) -> str:
        """A length as the maker reads it."""
        number, _, unit = say_length(mm, self.units).rpartition(" ")
        return f"{number.replace('.', self.wording.decimal)} {self.wording.inch if unit == 'in' else unit}"


def label_lines(piece: Piece, pattern: Pattern, how: Labelling) -> tuple[str, ...]:
    """The lines under the title of a piece: garment and child, how to cut it, allowances, date and scale."""
    words = how.wording
    whose = child_words(pattern.draft.measurements, how)
    drawn = words.drawn.format(date=how.date, scale=how.scale).strip(" ,")
    cut, allowances = cutting_words(piece, words), allowance_words(piece, how)
    garment = pattern.draft.title if pattern.draft.title != piece.title else ""
    return tuple(filter(None, (garment, whose, cut, allowances, drawn)))


def child_words(body: Measurements, how: Labelling) -> str:
    """The child's name and stature, as far as they are known."""
    stature = body.get("stature")
    tall = how.wording.stature.format(stature=how.length(stature.mm)) if stature else ""
    return ", ".join(filter(None, (body.nickname, tall)))


def cutting_words(piece: Piece, words: Wording) -> str:
    """How often, how, for which side, and from which cloth a piece is cut."""
    cutting = piece.cutting
    count = _count_words(cutting, words)
    fold = words.on_fold if cutting.on_fold else ""
    side = words.side.get(cutting.side, "")
    return ", ".join(filter(None, (count, fold, side, words.cloths.get(piece.cloth, piece.cloth))))


def _count_words(cutting: Cutting, words: Wording) -> str:
    if not cutting.pair:
        return words.cut.format(count=cutting.count)
    pairs = cutting.count // 2
    return (words.pair if pairs == 1 else words.pairs).format(count=cutting.count, pairs=pairs)


def allowance_words(piece: Piece, how: Labelling) -> str:
    """All allowances of a piece, equal ones named together; edges without any come last."""
    edges = [edge for edge in piece.edges if edge.kind is not EdgeKind.FOLD]
    if all(width(edge) == 0 for edge in edges):
        return how.wording.no_allowances
    together: dict[str, list[str]] = {}
    for edge in sorted(edges, key=lambda edge: width(edge) == 0):
        together.setdefault(_width_words(edge, how), []).append(edge.name.replace("_", " "))
    listed = "; ".join(f"{', '.join(names)} {wide}" for wide, names in together.items())
    return how.wording.allowances.format(list=listed)


def _width_words(edge: DraftEdge, how: Labelling) -> str:
    folds = fold_distances(edge)
    wide = how.length(width(edge))
    if len(folds) > 1:
        return how.wording.turned_twice.format(width=wide, depth=how.length(folds[1]))
    return wide if width(edge) > 0 else how.wording.none
