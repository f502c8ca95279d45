"""A rectangle 20 cm by 30 cm as an outline: area 60 000 mm2; P and Q part it upright 8 cm from the fold."""

BLOCK = """
recipe test-shapes
drawing block
point A at the fold
point B below A by 30 cm
point C right of A by 20 cm
point D right of B by 20 cm
point P right of A by 8 cm
point Q right of B by 8 cm
line middle from A to B
line hem from B to D
line side from D to C
line waist from C to A
outline block edges middle, hem, side, waist
"""

AREA = 200.0 * 300.0
EDGES = ("middle", "hem", "side", "waist")
