"""Plane geometry: points, segments, paths, and what is constructed from them.  It knows no clothes."""

from __future__ import annotations

from .affine import Affine
from .arc import Arc
from .arcs import arc_about, arc_of_radius, arc_through, rounded_corner
from .bezier import Cubic
from .bounds import Bounds
from .circles import circle_meets_circle, line_meets_circle
from .curves import curve_between, curve_past_corner, curve_past_point, curve_with_depth
from .fair import angle_between, bisector, turn_between
from .intersection import Meeting, meet, meet_circle, meet_line, self_crossings
from .line import Line
from .lines import foot, line_meets_line, side_of
from .offset import offset, offset_tapered
from .path import Nearest, Path
from .point import ORIGIN, Point, Vector
from .segment import Segment
from .spline import curve_through

__all__ = [
    "ORIGIN",
    "Affine",
    "Arc",
    "Bounds",
    "Cubic",
    "Line",
    "Meeting",
    "Nearest",
    "Path",
    "Point",
    "Segment",
    "Vector",
    "angle_between",
    "arc_about",
    "arc_of_radius",
    "arc_through",
    "bisector",
    "circle_meets_circle",
    "curve_between",
    "curve_past_corner",
    "curve_past_point",
    "curve_through",
    "curve_with_depth",
    "foot",
    "line_meets_circle",
    "line_meets_line",
    "meet",
    "meet_circle",
    "meet_line",
    "offset",
    "offset_tapered",
    "rounded_corner",
    "self_crossings",
    "side_of",
    "turn_between",
]
