"""Rules that guard the child: cords, small parts, sleepwear, sleep bags, elastic.

Importing this folder enters all of them into the register.  None of them is legal advice, and each says so.
"""

from __future__ import annotations

from importlib import import_module
from pkgutil import iter_modules

for _module in iter_modules(__path__):
    import_module(f"{__name__}.{_module.name}")
