"""Writes the reading tables of the recipe grammar anew: `.venv/bin/python tools/grammar_tables.py`.

Run it after every change of grammar.lark; a test says when it was forgotten.
"""

from pathlib import Path

from littlefold.recipe.grammar import written_down

FOLDER = Path(__file__).parents[1] / "src" / "littlefold" / "recipe"


def main() -> None:
    """Reads grammar.lark and writes grammar.json beside it."""
    text = FOLDER.joinpath("grammar.lark").read_text(encoding="utf-8")
    FOLDER.joinpath("grammar.json").write_text(written_down(text), encoding="utf-8")


if __name__ == "__main__":
    main()
