"""`littlefold recipes`: what is on the shelf."""

from __future__ import annotations

from littlefold.recipe.parse import parse
from littlefold.recipe.shelf import shipped_names, shipped_text


def list_recipes(*, as_data: bool) -> int:
    """Lists the shipped recipes; returns the exit status."""
    from littlefold.booklet.recipes import recipe_record
    from littlefold.cli.words import print_document, to_person

    def shelf(name: str) -> object:
        text = shipped_text(name)
        return None if text is None else parse(text, name)

    records = [
        recipe_record(recipe, shelf) for name in shipped_names() if (recipe := shelf(name)) is not None
    ]
    if as_data:
        print_document(records)
        return 0
    console = to_person()
    for record in records:
        low, high = (round(bound / 10) for bound in record["suits_mm"])
        console.print(f"{record['name']:<14} {record['title']}  (stature {low} to {high} cm)")
        console.print(f"{'':<14} needs {', '.join(record['measures']) or 'no measurements'}", style="dim")
    return 0
