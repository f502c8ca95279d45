"""The package gives what it lists, and the list is in order."""

from __future__ import annotations

import littlefold.geometry as geometry_package


def test_every_listed_name_is_there_and_documented() -> None:
    for name in geometry_package.__all__:
        value = getattr(geometry_package, name)
        assert name == "ORIGIN" or value.__doc__


def test_the_list_has_no_doubles() -> None:
    assert len(set(geometry_package.__all__)) == len(geometry_package.__all__)
