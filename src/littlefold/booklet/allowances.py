"""How to add allowances by hand: each edge of each piece, its kind, its width."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from littlefold.draft.model import EdgeKind
from littlefold.pattern.allowance import fold_distances, width

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from littlefold.draft.model import DraftEdge
    from littlefold.draft.sentence import Speech
    from littlefold.pattern.model import Pattern

# Edges that are turned at a line: their ends are cut with the paper folded.
TURNED = frozenset({EdgeKind.HEM, EdgeKind.CASING})


def allowance_rows(
    pattern: Pattern, words: Mapping[str, Mapping[str, str]], speech: Speech
) -> Iterator[dict[str, Any]]:
    """One entry for each piece: its title and its edges in words."""
    for piece in pattern.pieces:
        edges = [
            {"name": edge.name.replace("_", " "), "said": _said(edge, words["kind"], speech)}
            for edge in piece.edges
        ]
        bare = all(width(edge) == 0 for edge in piece.edges)
        yield {"title": piece.title, "edges": edges, "turned": _is_turned(piece.edges), "bare": bare}


def _is_turned(edges: tuple[DraftEdge, ...]) -> bool:
    return any(edge.kind in TURNED and width(edge) > 0 for edge in edges)


def _said(edge: DraftEdge, words: Mapping[str, str], speech: Speech) -> str:
    if edge.kind is EdgeKind.FOLD:
        return words["fold"]
    if width(edge) == 0:
        return words["none"].format(kind=words[edge.kind.value].partition(",")[0])
    said = words[edge.kind.value].format(width=speech.length(width(edge)))
    folds = fold_distances(edge)
    if len(folds) > 1:
        said = words["twice"].format(said=said, depth=speech.length(folds[1]))
    return words["included"].format(said=said) if edge.included else said
