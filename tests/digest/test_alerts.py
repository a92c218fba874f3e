"""What has to be seen first. Thresholds: customary in the trade, no source."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from drills.core.records import CloseReason, Topic
from drills.digest import flag_words
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.values import Digest
from tests.digest.invented import FIRST, LAST, closed, digest, opened, said, week
from tests.measures.made import MONDAY, trial


def kinds(of: Digest) -> list[AlertKind]:
    return [alert.kind for alert in of.alerts]


def alert(of: Digest, kind: AlertKind) -> Alert:
    (found,) = [each for each in of.alerts if each.kind is kind]
    return found


def practised(*days: int) -> list:
    return [
        entry
        for number in days
        for at in (MONDAY + timedelta(days=number),)
        for entry in (
            opened(f"d{number}", at),
            trial("right", at=at, session=f"d{number}"),
            closed(f"d{number}", at + timedelta(minutes=1)),
        )
    ]


def test_the_invented_week_shows_pain_tiredness_help_and_the_pause():
    found = digest()
    assert kinds(found) == [
        AlertKind.PAIN,
        AlertKind.HINDERED,
        # The week before ended on Wednesday; Tuesday to Sunday is no practice for five days.
        AlertKind.NO_PRACTICE,
        AlertKind.TIRED,
        AlertKind.HELPED,
        AlertKind.UNTRUSTED,
    ]
    tuesday = date(2026, 11, 24)
    assert alert(found, AlertKind.PAIN) == Alert(
        kind=AlertKind.PAIN,
        days=(tuesday,),
        count=1,
        rule="any word of pain",
        evidence="Times noted: 1.",
    )
    assert alert(found, AlertKind.HINDERED).days == (tuesday,)
    assert alert(found, AlertKind.TIRED).days == (FIRST,)
    assert alert(found, AlertKind.HELPED).days == (FIRST,)


def test_new_signs_and_an_unwell_end_stand_before_everything():
    at = MONDAY + timedelta(days=2)
    more = [
        opened("u", at),
        said("u", at, new_signs=True),
        trial("right", at=at, session="u"),
        closed("u", at + timedelta(minutes=1), CloseReason.UNWELL),
    ]
    assert kinds(digest([*week(), *more]))[:3] == [
        AlertKind.NEW_SIGNS,
        AlertKind.UNWELL,
        AlertKind.PAIN,
    ]


def test_new_signs_at_the_check_in_count_though_no_trial_followed():
    found = digest([opened("u", MONDAY), said("u", MONDAY, new_signs=True)])
    assert AlertKind.NEW_SIGNS in kinds(found)


def test_nothing_noted_gives_no_alert():
    assert digest(practised(0, 2, 4, 6), earlier=()).alerts == ()


def test_unanswered_questions_are_no_alert():
    quiet = [opened("q", MONDAY), said("q", MONDAY), trial("right", session="q")]
    assert kinds(digest(quiet, earlier=(), today=FIRST)) == []


def test_five_days_without_practice_are_told_and_four_are_not():
    assert kinds(digest(practised(0, 5), earlier=())) == []
    found = alert(digest(practised(0, 6), earlier=()), AlertKind.NO_PRACTICE)
    assert (found.days, found.count) == ((date(2026, 11, 24), date(2026, 11, 28)), 5)


def test_a_pause_that_began_before_the_week_is_told_in_full():
    # The week before was practised on its Wednesday, 18 November.
    found = alert(digest(practised(1, 4, 6)), AlertKind.NO_PRACTICE)
    assert found.days == (date(2026, 11, 19), date(2026, 11, 23))


def test_days_to_come_are_no_days_without_practice():
    assert kinds(digest(practised(0), earlier=(), today=date(2026, 11, 25))) == []
    assert kinds(digest(practised(0), earlier=())) == [AlertKind.NO_PRACTICE]


def test_before_the_first_session_there_was_nothing_to_miss():
    assert kinds(digest(practised(6), earlier=())) == []


def test_a_week_without_any_session_is_a_pause():
    found = alert(digest([], earlier=()), AlertKind.NO_PRACTICE)
    assert (found.days, found.count) == ((FIRST, LAST), 7)


def test_a_session_ended_for_tiredness_is_told_without_numbers():
    entries = [
        opened("t", MONDAY),
        trial("right", session="t"),
        closed("t", MONDAY + timedelta(minutes=1), CloseReason.TIRED),
        said("t", MONDAY + timedelta(minutes=1), Topic.FINISH),
    ]
    assert kinds(digest(entries, earlier=(), today=FIRST)) == [AlertKind.TIRED]


def ended_by_a_rule(*days: int) -> list:
    """Sessions that ended tired though nobody said that they were more tired than before."""
    entries = []
    for number in days:
        at, session = MONDAY + timedelta(days=number), f"r{number}"
        entries += [
            opened(session, at),
            said(session, at, Topic.CHECK_IN, tiredness=1),
            trial("right", at=at, session=session),
            closed(session, at + timedelta(minutes=1), CloseReason.TIRED),
            said(session, at + timedelta(minutes=1), Topic.FINISH, tiredness=1),
        ]
    return entries


def test_an_end_by_a_rule_without_more_tiredness_is_told_when_it_comes_twice():
    assert kinds(digest(ended_by_a_rule(0), earlier=(), today=FIRST)) == []
    found = alert(digest(ended_by_a_rule(0, 2), earlier=(), today=LAST), AlertKind.TIRED)
    assert found.count == 2


@pytest.mark.parametrize("kind", AlertKind)
def test_every_flag_has_words_and_shows_its_rule_where_it_needs_one(kind: AlertKind):
    made = Alert(
        kind=kind,
        days=(FIRST, LAST),
        count=2,
        subject="active",
        label="Active\x1b[31m sentences",
        rule="a rule",
        evidence="Right alone 1 of 9.",
    )
    sentence = flag_words.alert(made)
    assert sentence.endswith(".")
    assert "\x1b" not in sentence
    assert flag_words.rule(made) == ("" if kind in flag_words.NOTED else "Rule: a rule.")
