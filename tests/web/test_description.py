"""Whatever the workroom's own description (OpenAPI) allows is asked of it by schemathesis: it never fails."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

import pytest
import schemathesis
from hypothesis import HealthCheck, given, settings

from littlefold.web.app import make_app, make_shared
from littlefold.web.keys import keep_keys, make_keys
from littlefold.web.passphrase import Cost
from littlefold.web.room import Room

if TYPE_CHECKING:
    from schemathesis import Case
    from starlette.types import ASGIApp

HERE = {"host": "127.0.0.1:8765", "sec-fetch-site": "same-origin"}
PLAIN = settings(
    max_examples=8,
    deadline=None,
    database=None,
    derandomize=True,  # the same requests at every run
    suppress_health_check=list(HealthCheck),
)
KNOWN = {
    "recipe": "bib",
    "number": 1,
    "ending": "json",
    "measurement": "chest",
    "sheet": "lay",
    "file": "pattern.pdf",
}
"""What stands in a path, so that the page behind it is reached."""
NOT_LET_IN = {411, 421}


@pytest.fixture(scope="module")
def workroom(tmp_path_factory: pytest.TempPathFactory) -> ASGIApp:
    return make_app(Room(tmp_path_factory.mktemp("own"), with_sample=True))


@pytest.fixture(scope="module")
def door(tmp_path_factory: pytest.TempPathFactory) -> ASGIApp:
    room = Room(tmp_path_factory.mktemp("shared"))
    keep_keys(room.folder, make_keys("blue kettle on a ladder", "seven paper boats", Cost(2**4)))
    return make_shared(room)


def asked_of(app: ASGIApp, *, known: dict[str, Any]) -> Counter[int]:
    """How often each status was answered; fails at the first that is the workroom's own fault."""
    schema, answered = schemathesis.openapi.from_asgi("/openapi.json", app, headers=HERE), Counter[int]()
    for result in schema.get_all_operations():
        operation = result.ok()

        @PLAIN
        @given(case=operation.as_strategy())
        def ask(case: Case) -> None:
            for name in set(known) & set(case.path_parameters):
                case.path_parameters[name] = known[name]
            if "name" in known and "name" in case.query:
                case.query["name"] = known["name"]
            answer = case.call(headers=HERE)
            answered[answer.status_code] += 1
            assert answer.status_code < 500, (case.method, case.formatted_path, case.query, case.body)
            assert answer.status_code not in NOT_LET_IN, (case.method, case.formatted_path)

        ask()
    return answered


@pytest.mark.slow
def test_no_request_of_the_description_fails(workroom: ASGIApp) -> None:
    answered = asked_of(workroom, known={})
    assert answered[200] > 50  # most names that are made up are not there, but not every page has a name


@pytest.mark.slow
def test_no_page_that_is_there_fails(workroom: ASGIApp) -> None:
    names = schemathesis.openapi.from_asgi("/openapi.json", workroom, headers=HERE)
    assert len(list(names.get_all_operations())) > 50
    answered = asked_of(workroom, known=KNOWN | {"name": "Mina"})
    assert answered[200] > 200


def test_no_request_at_the_door_fails(door: ASGIApp) -> None:
    answered = asked_of(door, known={})
    assert answered[200] > 0
    assert answered[401] > 0
