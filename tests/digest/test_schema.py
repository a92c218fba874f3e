"""The documented form of the digest: real digests fit it, and it leaves no key without a word.

Validated by the library `jsonschema`, after JSON Schema draft 2020-12.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import date, timedelta
from importlib.resources import files
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from drills.core.items import ItemSet
from drills.digest import Digest, render
from tests.digest.invented import digest, week
from tests.digest.over_time import course, scored_twice, with_checks
from tests.measures.made import MONDAY, asked, trial

SCHEMA = json.loads(files("drills.digest").joinpath("digest.schema.json").read_text("utf-8"))


def digests() -> dict[str, Digest]:
    probe = trial("right", of=asked(item_set=ItemSet.PROBE, top_level=0), session="m")
    return {
        "week": digest(),
        "empty": digest([], upcoming=(), earlier=()),
        "one trial": digest([*week()[:1], trial("right", session="m", at=MONDAY)], earlier=()),
        "with probe": digest([*week(), probe]),
        "running": digest(today=date(2026, 11, 25)),
        "to come": digest([], today=date(2026, 11, 20)),
        "checks": with_checks(weeks=8),
        "short baseline": with_checks(weeks=2, baseline=2),
        "course": course(),
        "scored twice": scored_twice(25),
    }


@pytest.mark.parametrize("name", digests())
def test_a_digest_fits_its_documented_form(name: str) -> None:
    told = json.loads(render(digests()[name], "json"))
    problems = [
        f"{problem.json_path}: {problem.message[:200]}"
        for problem in Draft202012Validator(SCHEMA).iter_errors(told)
    ]
    assert problems == []


def test_the_form_is_itself_well_formed() -> None:
    Draft202012Validator.check_schema(SCHEMA)


def test_every_key_is_described_and_no_other_key_is_allowed() -> None:
    objects = list(_objects(SCHEMA))
    assert len(objects) > 50
    for schema in objects:
        assert schema.get("additionalProperties") is not None
        for key, told in schema.get("properties", {}).items():
            assert told.get("description", "").endswith("."), key


def test_a_key_too_many_or_too_few_does_not_fit() -> None:
    validator = Draft202012Validator(SCHEMA)
    told = json.loads(render(digest(), "json"))
    assert validator.is_valid(told)
    assert not validator.is_valid({**told, "more": 1})
    assert not validator.is_valid({key: value for key, value in told.items() if key != "dose"})
    assert not validator.is_valid({**told, "until": (MONDAY + timedelta(days=1)).year})


def _objects(schema: Any) -> Iterator[dict[str, Any]]:
    if isinstance(schema, dict):
        if schema.get("type") == "object":
            yield schema
        for value in schema.values():
            yield from _objects(value)
    elif isinstance(schema, list):
        for value in schema:
            yield from _objects(value)
