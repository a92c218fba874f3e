"""Suggestions: which rule speaks for which change, and when one stays away."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from drills.core.items import Kind
from drills.core.plans import BlockPlan, CueDirection, Layout, Order, Plan, SittingSettings
from drills.core.progress import Advice, Progress
from drills.core.suggestions import CueAdvice, Part, PlanChange, Suggestion
from drills.core.therapist import Answer, Decision
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.suggesting import SuggestingGrounds, suggestions_of
from drills.digest.suggestion_wording import decision, suggestion_rows
from tests.digest.test_flag_states import dose_week

PLAN = Plan(
    name="P",
    version=3,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=8),
        BlockPlan(kind=Kind.MATCH, names=("full-passive",), trials=8),
    ),
)
LABELS = {"active": "Active", "full-passive": "Passive"}
KEY = (Kind.MATCH, "active")


def suggested(
    *alerts: Alert,
    advice: Advice = Advice.GO_ON,
    evidence: str = "Right alone 20 of 20.",
    plan: Plan = PLAN,
    harder: dict | None = None,
    directions: tuple[CueAdvice, ...] = (),
    answered: tuple[Decision, ...] = (),
) -> tuple[Suggestion, ...]:
    progress = Progress(kind=Kind.MATCH, name="active", advice=advice, evidence=evidence)
    grounds = SuggestingGrounds(
        alerts=alerts,
        progress=[progress],
        dose_weeks=[dose_week(0, 1), dose_week(1, 2)],
        harder=harder or {},
        directions=directions,
    )
    return suggestions_of(grounds, plan, LABELS, answered=answered)


def alert(kind: AlertKind, **more) -> Alert:
    return Alert(kind=kind, count=more.pop("count", 3), rule="the rule", evidence="E.", **more)


def test_nothing_to_say_is_no_suggestion():
    assert suggested() == ()


@pytest.mark.parametrize("advice", [Advice.READY, Advice.CEILING])
def test_a_name_that_is_known_makes_way_for_the_next_harder_one(advice: Advice):
    (found,) = suggested(advice=advice, harder={KEY: "negation"})
    assert found.changes == (
        PlanChange(part=Part.NAME_ON, block=1, value="negation"),
        PlanChange(part=Part.NAME_OFF, block=1, value="active"),
    )
    assert found.says == 'Move on from "Active" to "negation".'
    assert found.evidence == "Right alone 20 of 20."
    (out,) = suggested(advice=advice)
    assert out.changes == (PlanChange(part=Part.NAME_OFF, block=1, value="active"),)


def test_where_names_open_one_after_the_other_the_block_moves_on_by_itself():
    opening = replace(PLAN.blocks[0], order=Order.SIMPLE_FIRST)
    assert suggested(advice=Advice.READY, plan=replace(PLAN, blocks=(opening,))) == ()


def test_the_only_name_of_a_block_is_left_to_the_therapist():
    alone = replace(PLAN, blocks=(replace(PLAN.blocks[0], names=("active",)),))
    (found,) = suggested(advice=Advice.READY, plan=alone)
    assert found.changes == ()


def test_below_guessing_speaks_for_all_help_first_in_every_block_with_the_name():
    (found,) = suggested(alert(AlertKind.BELOW_CHANCE, subject="full-passive"))
    assert found.says == 'Begin "Passive" with all the help, and take it away step by step.'
    assert [(each.part, each.block, each.value) for each in found.changes] == [
        (Part.CUES, 1, "most-to-least"),
        (Part.CUES, 2, "most-to-least"),
    ]


def test_below_guessing_session_by_session_speaks_for_the_same_without_a_flag():
    (found,) = suggested(advice=Advice.BELOW_CHANCE)
    assert found.changes == (PlanChange(part=Part.CUES, block=1, value="most-to-least"),)
    assert len(suggested(alert(AlertKind.BELOW_CHANCE, subject="active"))) == 1


def test_tiredness_speaks_for_shorter_sessions_and_one_tired_session_does_not():
    (found,) = suggested(alert(AlertKind.TIRED, count=2))
    assert found.changes == (PlanChange(part=Part.MINUTES, value=20),)
    assert suggested(alert(AlertKind.TIRED, count=1)) == ()


def test_shorter_sessions_are_no_longer_than_what_was_reached_lately():
    grounds = SuggestingGrounds(
        alerts=[alert(AlertKind.TIRED, count=3)],
        progress=[],
        dose_weeks=[dose_week(0, 3), replace(dose_week(1, 3), minutes=31.6)],
        harder={},
        directions=(),
    )
    (found,) = suggestions_of(grounds, PLAN, LABELS)
    assert found.changes == (PlanChange(part=Part.MINUTES, value=10),)
    assert found.says == "Make sessions shorter: 10 minutes."


def test_what_may_be_right_by_the_order_of_words_stays_while_others_are_below_guessing():
    grounds = SuggestingGrounds(
        alerts=[],
        progress=[
            Progress(kind=Kind.MATCH, name="active", advice=Advice.READY, evidence="20 of 20."),
            Progress(
                kind=Kind.MATCH, name="full-passive", advice=Advice.BELOW_CHANCE, evidence="1 of 20"
            ),
            Progress(kind=Kind.CLOZE, name="C3", advice=Advice.READY, evidence="20 of 20."),
        ],
        dose_weeks=[],
        harder={KEY: "negation"},
        directions=(),
    )
    cloze = BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=8)
    plan = replace(PLAN, blocks=(*PLAN.blocks, cloze))
    says = [each.says for each in suggestions_of(grounds, plan, LABELS)]
    assert 'Keep for now what is known: "Active".' in says
    assert not any("Move on" in each for each in says)
    # Small words are not read off the order of nouns.
    assert 'Choose what comes after "C3": it is known.' in says


def test_few_sessions_speak_for_asking_for_one_more_than_was_done():
    (found,) = suggested(alert(AlertKind.ADHERENCE))
    assert found.changes == (PlanChange(part=Part.SESSIONS, value=3),)


def test_answers_by_place_speak_for_options_below_each_other():
    (found,) = suggested(alert(AlertKind.PLACE))
    assert found.changes == (PlanChange(part=Part.LAYOUT, value="stacked"),)
    stacked = replace(PLAN, sitting=SittingSettings(layout=Layout.STACKED))
    assert suggested(alert(AlertKind.PLACE), plan=stacked) == ()


@pytest.mark.parametrize(
    "kind", [AlertKind.SUDDEN_DROP, AlertKind.NO_RISE, AlertKind.CUES, AlertKind.UNTRUSTED]
)
def test_what_only_a_person_can_judge_has_no_change(kind: AlertKind):
    (found,) = suggested(alert(kind))
    assert found.changes == ()


def test_another_direction_of_help_is_suggested_once_for_its_block():
    advice = CueAdvice(block=2, direction=CueDirection.MOST_TO_LEAST, right=3, of=20)
    (found,) = suggested(directions=(advice,))
    assert found.evidence == "Right alone 3 of the newest 20 without help."
    only_second = replace(PLAN, blocks=(replace(PLAN.blocks[0], names=("active",)), PLAN.blocks[1]))
    below = alert(AlertKind.BELOW_CHANCE, subject="full-passive")
    assert len(suggested(below, directions=(advice,), plan=only_second)) == 1


def answer(to: Suggestion, as_what: Answer = Answer.IGNORED) -> Decision:
    return Decision(
        at=datetime(2026, 11, 25, 9, tzinfo=UTC),
        by="T",
        suggestion=to.id,
        answer=as_what,
        rule=to.rule,
        evidence=to.evidence,
        why="not yet",
        plan_name="P",
        plan_version_before=3,
        plan_version_after=3,
        says=to.says,
    )


def test_an_id_is_the_same_for_the_same_rule_subject_and_evidence_alone():
    (one,) = suggested(advice=Advice.READY)
    assert suggested(advice=Advice.READY)[0].id == one.id
    assert suggested(advice=Advice.READY, evidence="Right alone 22 of 22.")[0].id != one.id
    # Fixed, so that decisions kept by an older program are still known.
    assert one.id == "ready:match:active:9850dd14"


@pytest.mark.parametrize("as_what", Answer)
def test_an_answered_suggestion_comes_back_only_with_other_evidence(as_what: Answer):
    (one,) = suggested(advice=Advice.READY)
    told = (answer(one, as_what),)
    assert suggested(advice=Advice.READY, answered=told) == ()
    assert suggested(advice=Advice.READY, evidence="22 of 22.", answered=told) != ()


def test_a_name_is_told_in_plain_words_and_its_key_only_where_it_is_typed():
    change = PlanChange(part=Part.NAME_ON, block=2, value="C3", label="Place words")
    off = PlanChange(part=Part.NAME_OFF, block=2, value="C5")
    one = Suggestion(id="a", says="Do.", rule="R.", evidence="E.", changes=(change, off))
    assert suggestion_rows((one,))[0].change == (
        'add "Place words" to block 2; take "C5" out of block 2'
    )
    assert suggestion_rows((one,), with_keys=True)[0].change == (
        'add "Place words" (C3) to block 2; take "C5" out of block 2'
    )


def test_words_where_only_a_person_can_judge():
    said = {
        kind: suggested(alert(kind, subject=subject))[0].says
        for kind, subject in ((AlertKind.CUES, "active"), (AlertKind.UNTRUSTED, ""))
    }
    assert said == {
        AlertKind.CUES: 'Look at how help is given in "Active": as much is needed as before.',
        AlertKind.UNTRUSTED: "Score some gestures yourself, to check the scores given at home.",
    }


def test_words_for_a_suggestion_and_a_decision():
    (row,) = suggestion_rows(suggested(alert(AlertKind.TIRED)))
    assert row.number == 1
    assert row.says == "Make sessions shorter: 20 minutes."
    assert row.change == "minutes of a session: 20"
    assert row.rule == "The rule."
    (one,) = suggested(advice=Advice.READY)
    assert decision(answer(one)) == (
        f"Wed 25 Nov 2026: Ignored by T, version 3. {one.says} Right alone 20 of 20. Why: not yet"
    )
