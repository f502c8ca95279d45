"""The card box: every child's card, kept safe; the only folder that knows tables.

open_box(address) -> CardBox        add, card, names, change, erase
cards_to_json / cards_from_json     one file out, one file in
readings_to_csv / readings_from_csv the tape readings alone
"""

from littlefold.store.address import Address, address_of, data_folder
from littlefold.store.box import CardBox
from littlefold.store.card import Card, Fitting, Measured, Note, PastDraft, RecipeText, key_of
from littlefold.store.csv_file import readings_from_csv, readings_to_csv
from littlefold.store.engine import BoxUnavailable
from littlefold.store.json_file import cards_from_json, cards_to_json
from littlefold.store.opening import open_box

__all__ = [
    "Address",
    "BoxUnavailable",
    "Card",
    "CardBox",
    "Fitting",
    "Measured",
    "Note",
    "PastDraft",
    "RecipeText",
    "address_of",
    "cards_from_json",
    "cards_to_json",
    "data_folder",
    "key_of",
    "open_box",
    "readings_from_csv",
    "readings_to_csv",
]
