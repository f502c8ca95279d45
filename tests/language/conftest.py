"""LANGUAGE.md, clause by clause: each test is named by its clause, its recipe stands in its docstring.

A recipe is drafted for a child of 104 cm, after the module's FRAME.
"""

from __future__ import annotations

from inspect import cleandoc
from typing import TYPE_CHECKING

import pytest

from tests.language.drafting import draft_of

if TYPE_CHECKING:
    from littlefold.draft.model import Draft


@pytest.fixture
def drafted(request: pytest.FixtureRequest) -> Draft:
    """The draft of the recipe in the test's docstring."""
    frame = getattr(request.module, "FRAME", "")
    return draft_of(f"{frame}{cleandoc(request.function.__doc__ or '')}\n")
