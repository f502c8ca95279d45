"""A garment of two cloths, for tests: no shipped recipe has one."""

from __future__ import annotations

LINED = """\
recipe lined-bag
title "Flat bag with a lining"
suits age 3 y to 6 y
garment bag

drawing bag "A rectangle of 30 by 40 cm"
  point O at the start "The left end"
  point A right of O by 30 cm
  point B above A by 40 cm
  point C above O by 40 cm
  line bottom from O to A
  line side from A to B
  line top from B to C
  line back from C to O

piece outside "Outside" cut 2
  edges bottom seam 1 cm, side seam 1 cm, top hem 3 cm, back seam 1 cm
  grain along side

piece inside "Inside" cut 2 cloth lining
  edges bottom seam 1 cm, side seam 1 cm, top seam 1 cm, back seam 1 cm
  grain along side
"""
"""Cut out, the outside is 44 cm along the grain and 32 cm across, the inside 42 cm and 32 cm."""
