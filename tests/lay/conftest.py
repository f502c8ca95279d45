"""What the tests of the lay share."""

from __future__ import annotations

import sys
from pathlib import Path

# The hand-made garments stand beside the tests; with import mode importlib they are no package.
sys.path.insert(0, str(Path(__file__).parent))
