"""The data contract of issue 2, section 5, as a schema written from its words.

A schema is a type, a tuple of types or of allowed words, a list with the schema of its members, or a dictionary with
the schema of each field.  `ANY_NAME` stands for fields of any name.  What the contract does not name and the
documentation adds is listed apart, in `ADDED`.
"""

from __future__ import annotations

import json

ANY_NAME = "any name"
NOTHING = type(None)
NUMBER = (int, float)
PAIR = "a pair of numbers"
RING = "a list of pairs"
WORDS = (str,)

RECIPES = [
    {
        "name": str,
        "title": str,
        "suits_mm": PAIR,
        "measures": [str],
        "choices": [
            {
                "name": str,
                "default": (*NUMBER, str),
                "min": (*NUMBER, NOTHING),
                "max": (*NUMBER, NOTHING),
                "values": [str],
                "unit": (str, NOTHING),
            }
        ],
    }
]
OUTLINES = {"stitch_outline": RING, "cut_outline": RING, "areas": {"stitch": NUMBER, "cut": NUMBER}}
DRAFT = {
    "format": {"littlefold-draft/1"},
    "recipe": {"name": str, "title": str, "hash": str},
    "measurements": {ANY_NAME: {"mm": NUMBER, "origin": {"given", "chart", "estimated"}}},
    "choices": {ANY_NAME: (*NUMBER, str)},
    "tape": (str, NOTHING),
    "points": {ANY_NAME: PAIR},
    "lines": {
        ANY_NAME: {
            "kind": {"line", "arc", "curve"},
            "from": str,
            "to": str,
            "length_mm": NUMBER,
            "guides": [{"at": NUMBER, "depth_mm": NUMBER}],
        }
    },
    "steps": [
        {
            "number": int,
            "name": str,
            "line": int,
            "sentence": str,
            "formula": str,
            "value_mm": (*NUMBER, NOTHING),
            "source": str,
        }
    ],
    "pieces": [
        {
            "name": str,
            "title": str,
            "cut": int,
            "on_fold": bool,
            "cloth": str,
            "edges": [
                {
                    "name": str,
                    "kind": str,
                    "from": str,
                    "to": str,
                    "stitch_mm": NUMBER,
                    "allowance_mm": NUMBER,
                }
            ],
            **OUTLINES,
            "unfolded": OUTLINES,
            "grain": RING,
            "notches": [{"edge": str, "at_mm": NUMBER, "count": int}],
        }
    ],
    "seams": [
        {
            "edges": [[str]],
            "lengths_mm": PAIR,
            "ease_mm": NUMBER,
            "gather": bool,
            "tolerance_mm": NUMBER,
            "matched": bool,
        }
    ],
    "notions": [{"name": str, "length_mm": (*NUMBER, NOTHING), "count": int}],
    "work": [str],
    "problems": [
        {
            "code": str,
            "severity": {"error", "warning", "note"},
            "message": str,
            "rule": str,
            "place": {
                "file": (str, NOTHING),
                "line": (int, NOTHING),
                "column": (int, NOTHING),
                "piece": (str, NOTHING),
                "edge": (str, NOTHING),
                "point": (str, NOTHING),
            },
            "numbers": [{"name": str, "value": NUMBER, "unit": str}],
        }
    ],
}
# Fields beyond the contract, each described in docs/data.md.
ADDED = {"pair": bool, "side": str, "where": str, "remark": str}


def faults(value, schema, at=""):
    """Where a value is not as its schema says."""
    if isinstance(schema, str):
        rings = [value] if schema == PAIR else value
        good = isinstance(rings, list) and all(
            isinstance(pair, list) and len(pair) == 2 and all(type(part) in NUMBER for part in pair)
            for pair in rings
        )
        return [] if good else [f"{at}: {schema}"]
    if isinstance(schema, set):
        return [] if value in schema else [f"{at}: {value!r}"]
    if isinstance(schema, list):
        if not isinstance(value, list):
            return [f"{at}: no list"]
        return [fault for k, part in enumerate(value) for fault in faults(part, schema[0], f"{at}[{k}]")]
    if isinstance(schema, dict):
        if not isinstance(value, dict):
            return [f"{at}: no object"]
        if ANY_NAME in schema:
            return [f for name, part in value.items() for f in faults(part, schema[ANY_NAME], f"{at}.{name}")]
        missing = [f"{at}.{name}: missing" for name in schema.keys() - value.keys()]
        surprising = [
            f"{at}.{name}: not in the contract" for name in value.keys() - schema.keys() - ADDED.keys()
        ]
        known = {**ADDED, **schema}
        inner = [
            f
            for name in value.keys() & known.keys()
            for f in faults(value[name], known[name], f"{at}.{name}")
        ]
        return missing + surprising + inner
    kinds = schema if isinstance(schema, tuple) else (schema,)
    return [] if type(value) in kinds else [f"{at}: {value!r} is no {kinds}"]


def one_document(text):
    """The one JSON document in a text, read strictly: no NaN, no double key, nothing before or after it."""

    def once(pairs):
        names = [name for name, _ in pairs]
        assert len(names) == len(set(names)), names
        return dict(pairs)

    def number(word):
        raise AssertionError(word)

    assert text.endswith("\n")
    return json.loads(text, object_pairs_hook=once, parse_constant=number)
