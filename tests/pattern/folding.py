"""Folding a cutting line on paper, by shapely and plain mirroring only: an oracle for turned corners."""

from __future__ import annotations

from math import hypot

import numpy as np
from shapely import LineString, Point

from littlefold.pattern.allowance import fold_distances, width

# Points nearer than this to a fold or to the end of the allowance belong to either side [mm].
SKIN = 0.2


def ruler(path, beyond=150.0):
    """A stitch line, finely flattened and carried on straight beyond its ends, as an array of points."""
    points = np.array([(p.x, p.y) for p in path.flatten(0.0002)])
    before = points[0] + (points[0] - points[1]) / hypot(*(points[0] - points[1])) * beyond
    after = points[-1] + (points[-1] - points[-2]) / hypot(*(points[-1] - points[-2])) * beyond
    return np.vstack([before, points, after])


def beyond(point, fold):
    """The foot on a fold, how far right of it (outside, counter-clockwise) a point lies, and which way."""
    line = LineString(fold)
    along = line.project(Point(point))
    foot = np.array(line.interpolate(along).coords[0])
    a = np.array(line.interpolate(max(along - 1e-3, 0)).coords[0])
    b = np.array(line.interpolate(along + 1e-3).coords[0])
    out = np.array([(b - a)[1], -(b - a)[0]]) / hypot(*(b - a))
    side = float(np.dot(point - foot, out))
    return foot, side, (point - foot) / side if side else out


def turned(point, fold, distances):
    """Where a point of the cloth lies when every fold short of it is folded, outermost first."""
    foot, side, out = beyond(point, fold)
    for distance in sorted(distances, reverse=True):
        if side > distance:
            side = 2 * distance - side
    return foot + out * side


def misfit(piece, name):
    """How far the sides of turned cloth lie from the cut edge beneath, at most [mm]; and how many points."""
    edge = piece.edge(name)
    fold, wide = ruler(edge.path), width(edge)
    ring = np.array([(p.x, p.y) for p in piece.outline.cut.flatten(0.002)])
    beneath = LineString(ring).segmentize(0.5)
    sides = [(np.array(point), beyond(point, fold)[1]) for point in beneath.coords]
    flaps = [point for point, side in sides if SKIN < side < wide - SKIN]
    landed = [turned(point, fold, fold_distances(edge)) for point in flaps]
    return max((beneath.distance(Point(place)) for place in landed), default=0.0), len(landed)
