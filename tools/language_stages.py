"""What lies on the paper before the examples of docs/language.md are drawn: points, lines, outlines of every name."""

from __future__ import annotations

from typing import Final

SHEET: Final = """\
amount width = 16 cm
drawing body
point A at the fold
point B at 0 cm across and -30 cm up
point C at 12 cm across and -10 cm up
point D at 16 cm across and -30 cm up
point E at 14 cm across and -14 cm up
point F at 8 cm across and 0 cm up
point G at 0 cm across and -6 cm up
point H at 15 cm across and -29 cm up
point J at 10 cm across and -20 cm up
point K at 8 cm across and -14 cm up
point M at 5 cm across and -18 cm up
point O at 0 cm across and 10 cm up
point P at 9 cm across and -27 cm up
point Q at 5 cm across and -9 cm up
point V at -10 cm across and 10 cm up
point W at 15 cm across and -22 cm up
curve armhole from F going down, to E going right
line side from E to D
curve neckline from G going right, to F going up
"""
BODY: Final = SHEET + "line hemline from B to D\n"
PIECE: Final = f"""{BODY}piece front from body cut 1 on fold
edges A-B fold, hemline hem, side seam, armhole bound, neckline faced
run neck_edge = front.neckline
"""


def _outline(name: str) -> str:
    """A rectangle, 20 cm wide and 30 cm high, as an outline."""
    return f"""drawing {name}
point U at the start
point V below U by 30 cm
point W right of V by 20 cm
point X right of U by 20 cm
line centre from U to V
line hemline from V to W
line side from W to X
line waist from X to U
"""


SKIRT: Final = f"""{_outline("skirt")}point C right of U by 8 cm
point D right of V by 8 cm
point P right of U by 5 cm
point Q right of U by 15 cm
outline skirt edges centre, hemline, side, waist
"""
WITH_DART: Final = f"""{_outline("front")}point N right of U by 5 cm
point K below U by 10 cm
point L right of K by 20 cm
line yoke_line from K to L
point A right of V by 8 cm
point B right of V by 11 cm
point T above A by 15 cm and right by 1.5 cm
point H above W by 22 cm
outline front edges centre, hemline, side, waist
"""
# A dart whose tip lies on an edge can be closed without opening another.
WITH_LONG_DART: Final = WITH_DART.replace("by 15 cm and", "by 30 cm and")
BACK: Final = f"{_outline('back')}outline back edges centre, hemline, side, waist\n"
SHOULDERS: Final = "".join(
    f"{_outline(name)}outline {name} edges centre, hemline, side, X-U as shoulder\n"
    for name in ("front", "back")
)
LAID: Final = "".join(
    f"drawing {name}\npoint N at the start\npoint S right of N by 9 cm\npoint R below N by 4 cm\n"
    "curve armhole from R going right, to S going up\nline neckline from N to R\n"
    for name in ("front", "back")
)
ON_A_SHEET: Final = f"{LAID}drawing plan\n"

# By the first word of a statement, what lies there; the first word that fits counts.
STAGES: Final[dict[str, str]] = {
    **dict.fromkeys(("point", "line", "curve", "arc", "circle", "copy"), SHEET),
    "trace": ON_A_SHEET,
    "lay front": ON_A_SHEET,
    "lay back": f"{ON_A_SHEET}lay front\n",
    "outline": BODY,
    **dict.fromkeys(("slash", "pleats", "tucks", "gathers"), SKIRT),
    "close dart A-T-B of front as closed": WITH_LONG_DART,
    **dict.fromkeys(("split", "close dart"), WITH_DART),
    "join": SHOULDERS,
    "button stand": BACK,
    **dict.fromkeys(("piece band", "piece binding", "piece neckband", "piece neck_facing"), PIECE),
}


def stage_of(form: str) -> str | None:
    """What lies on the paper before an example; None where it draws nothing."""
    if " at the fold" in form or " at the start" in form:
        return "drawing body\n"
    return next((stage for words, stage in STAGES.items() if f"{form} ".startswith(f"{words} ")), None)
