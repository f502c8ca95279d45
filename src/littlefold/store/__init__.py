"""The card box: every child's card, kept safe; the only folder that knows tables.

open_box(address) -> CardBox        add, card, names, change, erase
ClassBook(box.engine)               classes, one, add, change, remove
cards_to_json / cards_from_json     one file out, one file in
readings_to_csv / readings_from_csv the tape readings alone
back_up_now(box) -> Backup          a copy of all cards; backups_of(address) are those there are
restore(address, file) -> Restored  the box as a backup has it, after everything was checked
"""

from littlefold.store.address import Address, address_of, data_folder
from littlefold.store.backup import Backup, Holding, back_up_now, backups_of
from littlefold.store.backup_file import read_backup
from littlefold.store.box import CardBox
from littlefold.store.card import (
    Card,
    Fitting,
    Measured,
    Note,
    OwnMeasurement,
    PastDraft,
    RecipeText,
    key_of,
)
from littlefold.store.class_book import ClassBook
from littlefold.store.csv_file import readings_from_csv, readings_to_csv
from littlefold.store.days import birth_fault, measuring_fault
from littlefold.store.engine import BoxUnavailable
from littlefold.store.json_file import cards_from_json, cards_to_json
from littlefold.store.opening import open_box
from littlefold.store.own_readings import meant_for, own_of
from littlefold.store.restore import Restored, restore
from littlefold.store.sewing_class import SewingClass
from littlefold.store.traces import not_searchable, remove_not_searchable

__all__ = [
    "Address",
    "Backup",
    "BoxUnavailable",
    "Card",
    "CardBox",
    "ClassBook",
    "Fitting",
    "Holding",
    "Measured",
    "Note",
    "OwnMeasurement",
    "PastDraft",
    "RecipeText",
    "Restored",
    "SewingClass",
    "address_of",
    "back_up_now",
    "backups_of",
    "birth_fault",
    "cards_from_json",
    "cards_to_json",
    "data_folder",
    "key_of",
    "meant_for",
    "measuring_fault",
    "not_searchable",
    "open_box",
    "own_of",
    "read_backup",
    "readings_from_csv",
    "readings_to_csv",
    "remove_not_searchable",
    "restore",
]
