"""The acts of the pencil: one small family of constructions a file, each registered for its statement."""

from littlefold.draft.constructions import (
    arcs,
    copies,
    curves,
    lines,
    measured,
    meetings,
    on_lines,
    parallels,
    turned,
)

__all__ = ["arcs", "copies", "curves", "lines", "measured", "meetings", "on_lines", "parallels", "turned"]
