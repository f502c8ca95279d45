"""Plane geometry: points, segments, paths and what can be constructed from them.  Knows no clothes."""

from __future__ import annotations
