"""The boxes of `boxes.py` for every test of this folder."""

from __future__ import annotations

from tests.store.boxes import box, environ, server

__all__ = ["box", "environ", "server"]
