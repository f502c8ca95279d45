"""Folding a cutting line on paper, by shapely and plain mirroring only: an oracle for turned corners."""

from __future__ import annotations

import numpy as np
import shapely
from shapely import LineString

from littlefold.pattern.allowance import fold_distances, width

# Points nearer than this to a fold or to the end of the allowance belong to either side [mm].
SKIN = 0.2


def ruler(path, beyond=150.0):
    """A stitch line, finely flattened and carried on straight beyond its ends."""
    points = np.array([(p.x, p.y) for p in path.flatten(1e-5)])
    along = [np.array([way.x, way.y]) for way in (path.start_tangent, path.end_tangent)]
    before, after = points[0] - along[0] * beyond, points[-1] + along[1] * beyond
    return LineString(np.vstack([before, points, after]))


def soundings(points, fold):
    """For each point the foot on a fold, how far to the right of it (outside) it lies, and which way that is."""
    along = shapely.line_locate_point(fold, shapely.points(points))

    def at(places):
        return shapely.get_coordinates(shapely.line_interpolate_point(fold, places))

    foot, way = at(along), at(along + 1e-3) - at(np.maximum(along - 1e-3, 0.0))
    out = np.column_stack([way[:, 1], -way[:, 0]]) / np.hypot(way[:, 0], way[:, 1])[:, None]
    side = ((points - foot) * out).sum(axis=1)
    far = (
        np.abs(side) > SKIN
    )  # near the fold the direction to the foot is lost, and that along the fold is used
    out[far] = (points[far] - foot[far]) / side[far][:, None]
    return foot, side, out


def turned(points, fold, distances):
    """Where points of the cloth lie when every fold short of them is folded, outermost first."""
    foot, side, out = soundings(points, fold)
    for distance in sorted(distances, reverse=True):
        side = np.where(side > distance, 2 * distance - side, side)
    return foot + out * side[:, None]


def misfit(piece, name):
    """How far the sides of turned cloth lie from the cut edge beneath, at most [mm]; and how many points."""
    edge = piece.edge(name)
    fold, wide = ruler(edge.path), width(edge)
    ring = LineString([(p.x, p.y) for p in piece.outline.cut.flatten(0.002)])
    points = shapely.get_coordinates(ring.segmentize(1.0))
    side = soundings(points, fold)[1]
    flaps = points[(side > SKIN) & (side < wide - SKIN)]
    if len(flaps) == 0:
        return 0.0, 0
    landed = turned(flaps, fold, fold_distances(edge))
    return float(shapely.distance(ring, shapely.points(landed)).max()), len(landed)
