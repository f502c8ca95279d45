"""One child's body: measurements and their register, size charts, growth, and what looks wrong."""

from littlefold.body.measurements import Measurements, Origin, Reading, Sex

__all__ = ["Measurements", "Origin", "Reading", "Sex"]
