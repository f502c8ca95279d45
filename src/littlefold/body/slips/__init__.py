"""The slips of tape and pen that are looked for, one kind a file; importing this fills the register."""

from littlefold.body.slips import half_girth, misread, swapped, units
from littlefold.body.slips.story import SLIPS, Slip, Story

__all__ = ["SLIPS", "Slip", "Story", "half_girth", "misread", "swapped", "units"]
