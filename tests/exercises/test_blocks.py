from __future__ import annotations

import json
import os
import subprocess
import sys
from collections import Counter
from pathlib import Path
from random import Random

import pytest

from drills.catalogue import load
from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput
from drills.exercises import KINDS, check_block, make_items, names_of, targets_of
from drills.pictures import PEOPLE_KEYS
from tests.exercises.batches import make, with_few_words

ROOT = Path(__file__).parents[2]


def block(kind: Kind, *names: str, options: int = 2, groups: tuple[str, ...] = ()) -> BlockPlan:
    return BlockPlan(kind=kind, names=names, trials=8, options=options, groups=groups)


@pytest.mark.parametrize("kind", KINDS)
def test_everything_that_can_be_named_can_be_made(kind: Kind, material: Material) -> None:
    for name in names_of(kind, material):
        targets = targets_of(block(kind, name), material)
        assert targets
        items = make_items(targets, options=2, material=material, rng=Random(1))
        assert [item.target for item in items] == list(targets)


@pytest.mark.parametrize("kind", KINDS)
def test_the_other_english_makes_the_same_kinds(kind: Kind) -> None:
    british = load(ROOT / "content", locale="en-GB")
    assert len(make(british, kind, count=40, options=3)) == 40


def test_a_match_block_is_a_construction_by_a_verb_group(material: Material) -> None:
    targets = targets_of(block(Kind.MATCH, "full-passive", "locative"), material)
    groups = list(dict.fromkeys(verb.group for verb in material.lexicon.verbs.values()))
    assert [str(target) for target in targets] == [
        *(f"match/full-passive/{group}" for group in groups),
        "match/locative",
    ]


def test_groups_narrow_a_block(material: Material) -> None:
    plan = block(Kind.CLOZE, "C3", "C4", groups=("is-are", "behind-in_front_of"))
    assert [str(target) for target in targets_of(plan, material)] == [
        "cloze/C3/behind-in_front_of",
        "cloze/C4/is-are",
    ]


def test_who_did_what_spreads_over_the_constructions(material: Material) -> None:
    whole = targets_of(block(Kind.QUESTION, "who-did-what"), material)
    assert list(dict.fromkeys(target.name for target in whole)) == [
        "who-did-what:active",
        "who-did-what:subject-cleft",
        "who-did-what:subject-relative",
        "who-did-what:full-passive",
        "who-did-what:object-cleft",
        "who-did-what:object-relative-right",
        "who-did-what:object-relative-centre",
    ]
    named = targets_of(block(Kind.QUESTION, "who-did-what:full-passive"), material)
    assert named == targets_of(block(Kind.QUESTION, "full-passive"), material)
    assert set(named) < set(whole)


@pytest.mark.parametrize(
    ("plan", "said"),
    [
        (block(Kind.MATCH, "full-pasive"), "Did you mean 'full-passive'?"),
        (block(Kind.QUESTION, "who-did-wat"), "Did you mean 'who-did-what'?"),
        (block(Kind.CLOZE, "C33"), "Did you mean 'C3'?"),
        (block(Kind.GESTURE, "waves"), "Did you mean 'wave'?"),
        (block(Kind.MATCH, "active", groups=("movin",)), "Did you mean 'moving'?"),
        (block(Kind.CLOZE, "C4", groups=("is-ar",)), "Did you mean 'is-are'?"),
        (block(Kind.GESTURE, "wave", groups=("x",)), "there are no groups here"),
        (block(Kind.MATCH, "qqqqqq"), "Use one of: active"),
        (block(Kind.MATCH, "active", options=5), "Use 2 to 4."),
        (block(Kind.MATCH), "names nothing to practise"),
        (block(Kind.ACT_OUT, "locative"), "'locative' is not known"),
        (block(Kind.MATCH, "of-kinship"), "kinship cannot be seen"),
        (block(Kind.MATCH, "irreversible-active"), "no act on a thing is drawn"),
    ],
)
def test_what_cannot_be_practised_is_told_with_the_nearest_that_can(
    plan: BlockPlan, said: str, material: Material
) -> None:
    problems = check_block(plan, material)
    assert any(said in str(problem) for problem in problems), problems
    with pytest.raises(BadInput):
        targets_of(plan, material)


def test_a_block_without_words_for_it_is_told(material: Material) -> None:
    no_people = with_few_words(material, "cup", "box")
    assert "no words" in str(check_block(block(Kind.MATCH, "active"), no_people)[0])
    assert check_block(block(Kind.MATCH, "locative"), no_people) == ()


@pytest.mark.parametrize(
    "target",
    [
        Target(kind=Kind.MATCH, name="active"),
        Target(kind=Kind.MATCH, name="active", group="cooking"),
        Target(kind=Kind.QUESTION, name="who-did-what", group="moving"),
        Target(kind=Kind.GESTURE, name="juggle"),
        Target(kind=Kind.ACT_OUT, name="active"),
    ],
)
def test_a_target_that_is_none_is_refused(target: Target, material: Material) -> None:
    with pytest.raises(BadInput):
        make_items([target], options=2, material=material, rng=Random(1))


def test_kinds_may_be_mixed_and_keep_their_order(material: Material) -> None:
    targets = [
        Target(kind=Kind.GESTURE, name="wave"),
        Target(kind=Kind.MATCH, name="active", group="moving"),
        Target(kind=Kind.CLOZE, name="C4", group="is-are"),
        Target(kind=Kind.MATCH, name="full-passive", group="going"),
        Target(kind=Kind.QUESTION, name="who-did-what:active", group="tools"),
    ]
    items = make_items(targets, options=2, material=material, rng=Random(1))
    assert [item.target for item in items] == targets
    assert make_items([], options=2, material=material, rng=Random(1)) == ()


def test_two_hundred_passives_are_two_hundred_valid_items(material: Material) -> None:
    items = make(material, Kind.MATCH, "full-passive", count=200, seed=7)
    assert len(items) == 200
    for item in items:
        row = json.loads(json.dumps(item.as_json()))
        assert row["options"][row["answer"]]["meaning"] == row["meaning"]
        assert row["meaning"].keys() == {"verb", "doer", "done_to"}
        assert row["effective_k"] == 2
        assert row["construction"] == "full-passive"


def test_an_id_is_the_hash_of_what_the_item_says(material: Material) -> None:
    items = make(material, Kind.MATCH, count=150, seed=3)
    for item, again in zip(items, make(material, Kind.MATCH, count=150, seed=3), strict=True):
        assert item.id == again.id
        assert len(item.id) == 12
        assert int(item.id, 16) >= 0
    contents = {json.dumps({**item.as_json(), "id": ""}) for item in items}
    assert len({item.id for item in items}) == len(contents)


def test_the_same_items_are_made_whatever_the_order_of_hashes() -> None:
    script = (
        "import json; from pathlib import Path; from random import Random;"
        "from drills.catalogue import load; from drills.core.plans import BlockPlan;"
        "from drills.exercises import *;"
        "content = load(Path('content'), locale='en-US');"
        "blocks = [BlockPlan(kind=kind, names=names_of(kind, content), trials=1, options=4)"
        "          for kind in KINDS];"
        "print([json.dumps(item.as_json()) for block in blocks for item in make_items("
        "targets_of(block, content) * (1 if block.kind == 'match' else 3),"
        " options=4, material=content, rng=Random(7))])"
    )
    printed = [
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=ROOT,
            env={**os.environ, "PYTHONHASHSEED": seed},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed in ("0", "1", "4242")
    ]
    assert len(printed[0]) > 100_000
    assert printed[0] == printed[1] == printed[2]


def test_the_targets_of_a_session_share_the_noun_evenly(material: Material) -> None:
    """Over many sessions of a plan's block no one in the cast stays on the bench."""
    uses: Counter[str] = Counter()
    for seed in range(40):
        for item in make(material, Kind.MATCH, "active", "full-passive", count=10, seed=seed):
            uses.update(item.words[1:])
    # Those who can trade parts with all others: grown people with a figure of their own.
    people = [
        noun.singular
        for noun in material.lexicon.people
        if noun.size == 2 and noun.band == "everyday" and noun.key in PEOPLE_KEYS
    ]
    shares = [uses[name] for name in people]
    assert min(shares) > 0.6 * max(shares)
