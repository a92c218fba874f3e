"""Words for relatives that a plan switches off."""

from __future__ import annotations

from dataclasses import replace

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.practice.dealing import check_plan
from drills.rehearsal import MemoryRecords
from tests.edges import HandClock
from tests.practice.test_home import PLAN, home_of

RELATIVES = replace(
    PLAN,
    blocks=(BlockPlan(kind=Kind.QUESTION, names=("kin", "kin:K6"), trials=40, options=4),),
)


def test_a_session_never_says_what_is_switched_off(material: Material) -> None:
    plan = replace(RELATIVES, without_kin=("father", "mother"))
    home = home_of(material, records=MemoryRecords(), clock=HandClock(), plan=plan)
    assert "father" not in home.material.lexicon.kin
    assert "father" in material.lexicon.kin
    for _ in range(3):
        session = home.start(resume=False)
        texts = [
            " ".join(
                (item.sentence, item.prompt, item.restated.text, *(cue.text for cue in item.cues))
            )
            for block in session._blocks
            for item in block.items
        ]
        assert len(texts) == 40
        for text in texts:
            words = text.replace("grandfather", "").replace("grandmother", "")
            assert "father" not in words
            assert "mother" not in words


def test_a_relative_that_is_none_is_told_with_those_that_are(material: Material) -> None:
    (problem,) = check_plan(replace(RELATIVES, without_kin=("fahter",)), material)
    assert "there is no relative 'fahter'" in str(problem)
    assert "father" in str(problem)
    assert check_plan(replace(RELATIVES, without_kin=("father",)), material) == ()


def test_what_is_left_of_a_level_without_its_words_is_told(material: Material) -> None:
    off = tuple(key for key in material.lexicon.kin if key not in ("wife", "husband"))
    problems = check_plan(
        replace(
            RELATIVES,
            without_kin=off,
            blocks=(BlockPlan(kind=Kind.QUESTION, names=("kin:K4",), trials=4),),
        ),
        material,
    )
    assert "no words" in str(problems[0])
