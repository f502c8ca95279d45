from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fastapi.testclient import TestClient


def test_two_choices_lie_over_each_other_with_what_they_differ_by(client: TestClient) -> None:
    page = client.get("/compare/casing-top?chest=560&ease=120&or-ease=160").text
    # (56 + 12) / 4 = 17 cm against (56 + 16) / 4 = 18 cm: the point C goes 1 cm
    assert re.search(r"point C</th><td></td><td></td><td>1 cm apart", page)
    assert page.count('class="was"') >= 3
    assert "Ease round the chest: 16 cm" in page


def test_the_same_differs_in_nothing(client: TestClient) -> None:
    assert "Nothing on this sheet differs" in client.get("/compare/casing-top?ease=120&or-ease=120").text


def test_the_form_is_answered_by_a_link(client: TestClient) -> None:
    answer = client.get("/compare/casing-top?chest=560&what=for-size&value=92")
    assert answer.status_code == 303
    assert answer.headers["location"] == "/compare/casing-top?chest=56+cm&or-for-size=92"
    assert client.get(answer.headers["location"]).status_code == 200


def test_two_recipes_over_each_other(client: TestClient) -> None:
    assert client.get("/compare/bodice?or-recipe=sleeve").status_code == 200
    assert client.get("/compare/bodice?or-recipe=none").status_code == 404


def test_a_choice_of_two_words_is_laid_over(client: TestClient) -> None:
    answer = client.get("/compare/casing-top?what=below_waist&value=20+cm")
    assert answer.headers["location"].endswith("?or-below_waist=20+cm")
    assert "Length below the waist: 20 cm" in client.get(answer.headers["location"]).text


def test_the_armhole_by_two_published_rules(client: TestClient) -> None:
    page = client.get("/compare/bodice?chest=64+cm&scye_depth=12.5+cm&or-armhole_rule=from_chest").text
    # 64 / 8 + 6.35 = 14.35 cm against 12.5 cm as measured
    assert re.search(r"point B</th><td></td><td></td><td>1.85 cm apart", page)
