"""The room that drawings keep for words, against what the typesetter measures."""

import json

import pytest
import typst

from littlefold.drawing import text_width

SENTENCES = (
    "Elastic trousers for Odalys, 122 cm",
    "Measure the check marks on every page, across and down: 10 cm, 4 in.",
    "cut 1 on the fold, main cloth",
    "WIDE WARM MUMMY",
    "A1 B2 C3 AA10",
    "illicit little lily",
    "mmmmwwww",
    "Zoë's Größe is 3 1/4 × 2 ½ in",  # noqa: RUF001 - as people write it
    "Привет, мир",
)

MEASURE = """
#set text(font: "Libertinus Serif", size: 1mm / 0.645)
#let width(weight) = s => measure(text(weight: weight, s)).width / 1mm
#context [#metadata((
  upright: json(bytes(sys.inputs.words)).map(width(400)),
  heavy: json(bytes(sys.inputs.words)).map(width(700)),
))<widths>]
"""


@pytest.fixture(scope="module")
def measured(tmp_path_factory):
    compiler = typst.Compiler(
        input=MEASURE.encode(),
        root=str(tmp_path_factory.mktemp("empty")),
        sys_inputs={"words": json.dumps(SENTENCES)},
        ignore_system_fonts=True,
    )
    return json.loads(compiler.query("<widths>", field="value", one=True))


@pytest.mark.parametrize("face", ["upright", "heavy"])
@pytest.mark.parametrize("number", range(len(SENTENCES)))
def test_words_get_the_room_they_need_and_little_more(measured, face, number):
    real = measured[face][number]
    assert 0.99 * real <= text_width(SENTENCES[number], 1.0, face) <= 1.2 * real


def test_words_grow_with_their_height():
    assert text_width("waist", 5.0) == pytest.approx(2 * text_width("waist", 2.5))
