"""What a measured check mark says about the printer, and which setting to change."""

from __future__ import annotations

from math import isfinite

from littlefold.drawing.ruler import INCH
from littlefold.problem import Number, Problem, Severity

TRUE = 100.0
"""What the check mark measures when all is well [mm]."""

READABLE = 0.5
"""A ruler and an eye tell half a millimetre on a check mark [mm] (common practice, no source).

Larger: ten joined pages are 5 mm off and nobody is told.  Smaller: good printers are sent back.
"""

LEAST, MOST = 40.0, 250.0
"""Outside of these [mm] it is no scale of a printer, but a slip of the ruler or of the keys."""

SPOILS = 1.0
"""From here on [mm in 100 mm] it is an error: 1 % of a chest of 60 cm is 6 mm (our own choice)."""

# The scales that come out when a page of one paper is fitted to another, by the sizes in `paper`: the
# smaller of the two ratios.  With margins kept the scale is a little smaller still.
FITTED = {
    "an A4 page is fitted to US Letter paper": 11.0 * INCH / 297.0,
    "a US Letter page is fitted to A4 paper": 210.0 / (8.5 * INCH),
    "an A3 page is reduced to A4": 210.0 / 297.0,
    "an A4 page is enlarged to A3": 297.0 / 210.0,
    "a US Tabloid page is reduced to US Letter": 11.0 / 17.0,
}
# A measured scale is taken for one of these when it is this near.
SAME_SCALE = 0.006


def printer_advice(across: float, down: float) -> tuple[Problem, ...]:
    """What to change, given what the 100 mm check mark measures across and down the page [mm].

    One note when both are right; otherwise what is wrong, the most important first.
    """
    slips = tuple(slip for way, size in _ways(across, down) if (slip := _slip(way, size)) is not None)
    if slips:
        return slips
    if _is_right(across) and _is_right(down):
        return (_fine(across, down),)
    if abs(across - down) <= READABLE:
        return (_scaled(across, down),)
    return _uneven(across, down)


def _ways(across: float, down: float) -> tuple[tuple[str, float], tuple[str, float]]:
    return ("across", across), ("down", down)


def _is_right(size: float) -> bool:
    return abs(size - TRUE) <= READABLE


def _numbers(across: float, down: float) -> tuple[Number, ...]:
    return (Number("across", across), Number("down", down), Number("should be", TRUE))


def _severity(across: float, down: float) -> Severity:
    worst = max(abs(across - TRUE), abs(down - TRUE))
    return Severity.ERROR if worst > SPOILS else Severity.WARNING


def _fine(across: float, down: float) -> Problem:
    message = (
        f"The printer is true: {across:.1f} mm across, {down:.1f} mm down; both should be 100 mm. Print on."
    )
    return Problem("printer-true", message, Severity.NOTE, numbers=_numbers(across, down))


def _slip(way: str, size: float) -> Problem | None:
    """A number that no printer makes: a wrong unit, or no number at all."""
    if isfinite(size) and LEAST <= size <= MOST:
        return None
    cure = "Measure the square along one side and type millimetres: 10 cm is 100."
    shown = f"{size:g} mm" if isfinite(size) else "no number"
    hint = " It looks like centimetres." if LEAST <= size * 10 <= MOST else ""
    message = f"{shown} {way} cannot be the 100 mm check mark.{hint} {cure}"
    value = size if isfinite(size) else 0.0
    numbers = (Number(way, value), Number("should be", TRUE))
    return Problem("printer-mark-misread", message, numbers=numbers, cure=cure)


def _scaled(across: float, down: float) -> Problem:
    """Both ways alike: a setting, not the machine."""
    size = (across + down) / 2
    cure = 'Set the scale to "actual size" or 100 %, and switch off "fit to page", "shrink" and "borderless".'
    message = (
        f"You measured {across:.1f} mm across and {down:.1f} mm down instead of 100 mm: everything is "
        f"printed at {size:.1f} %, so 30 cm come out as {size * 0.3:.1f} cm.{_reason(size / TRUE)} {cure} "
        f"If there is no such setting, print at {100 * TRUE / size:.1f} %."
    )
    return Problem(
        "printer-scaled", message, _severity(across, down), numbers=_numbers(across, down), cure=cure
    )


def _reason(scale: float) -> str:
    """The paper mix-up that would give this scale, or that the wrong edge of the tape was measured."""
    if abs(scale * TRUE - 4 * INCH) <= READABLE / 2:
        return " 101.6 mm is also the length of the 4 in mark: make sure that you measured the 10 cm one."
    near = [why for why, fitted in FITTED.items() if abs(scale - fitted) <= SAME_SCALE]
    if near:
        return f" That is about what comes out when {near[0]}: choose the paper that is in the printer."
    return ""


def _uneven(across: float, down: float) -> tuple[Problem, ...]:
    """The two ways differ: no setting of the scale can cure it alone."""
    cure = (
        "Set the kind of paper (plain, not photo), straighten the paper guides, clean the rollers, and print "
        "again; if it stays, use another printer or a copy shop."
    )
    message = (
        f"You measured {across:.1f} mm across and {down:.1f} mm down: the page is stretched one way, which "
        f"no scale setting cures. {_culprit(across, down)} {cure}"
    )
    numbers = _numbers(across, down)
    feed = Problem("printer-uneven", message, _severity(across, down), numbers=numbers, cure=cure)
    both_off = not _is_right(across) and not _is_right(down) and (across < TRUE) == (down < TRUE)
    return (_scaled(across, down), feed) if both_off else (feed,)


def _culprit(across: float, down: float) -> str:
    """Where to look: paper moves down the page, the carriage or the laser moves across it."""
    if _is_right(across):
        return "Down the page is the way the paper moves: it slips or is pulled."
    if _is_right(down):
        return "Across the page the print head sets the width: look for an alignment in the printer's menu."
    return 'First switch off "fit to page" and "borderless", which may stretch; then measure again.'
