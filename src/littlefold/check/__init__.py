"""Rules over a pattern: is it sound on paper, does it go on, does it fit, is it safe."""

from __future__ import annotations

from .circumstances import Circumstances
from .findings import check
from .register import Rule, registered, rule

__all__ = ["Circumstances", "Rule", "check", "registered", "rule"]
