"""The recipe text stands in the docstring of the test; a module's FRAME, where it has one, stands before it."""

from __future__ import annotations

from inspect import cleandoc
from typing import TYPE_CHECKING

import pytest

from littlefold.body.filling import complete
from littlefold.body.measurements import Measurements
from littlefold.draft.evaluate import evaluate
from littlefold.recipe.parse import parse

if TYPE_CHECKING:
    from littlefold.draft.model import Draft


@pytest.fixture
def drafted(request: pytest.FixtureRequest) -> Draft:
    """The draft of the recipe in the test's docstring, for a child of 104 cm."""
    frame = getattr(request.module, "FRAME", "")
    text = f"{frame}\n{cleandoc(request.function.__doc__)}\n"
    child, _ = complete(Measurements.of({"stature": 1040}))
    return evaluate(parse(text, "test"), child)
