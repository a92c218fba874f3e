"""The week to come in every form of the digest."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from datetime import date
from io import StringIO

from drills.core.due import PlannedDay, PutOff
from drills.digest import render
from drills.digest.values import Calendar, Digest
from tests.digest.invented import digest
from tests.measures.made import ACTIVE, PASSIVE, WAVE

DAY = PlannedDay(
    day=date(2026, 11, 30),
    sessions=2,
    minutes=24.6,
    own_pace=True,
    given=((ACTIVE, 3), (WAVE, 2)),
    put_off=(PutOff(target=PASSIVE, reason="Due for 4 days, and there is no place."),),
)


def planned() -> Digest:
    labels = {PASSIVE.name: "Passive <b>"}
    return replace(digest(), calendar=Calendar(days=(DAY,), labels=labels))


def test_the_text_tells_minutes_trials_and_what_is_put_off() -> None:
    text = " ".join(render(planned(), "text").split())
    assert "THE WEEK TO COME" in text
    assert "about 25 minutes in 2 sessions: pictures 3, gesture 2; 1 due wait." in text
    assert "Passive sentences 1 (1 wait)" in text
    assert "by how long this person takes" in text


def test_many_targets_of_one_name_are_one_line_and_each_has_its_reason_in_the_json() -> None:
    many = tuple(
        PutOff(target=replace(PASSIVE, group=f"group {days}"), reason=f"Due for {days} days.")
        for days in range(2, 9)
    )
    told = planned()
    day = replace(DAY, put_off=many)
    told = replace(told, calendar=Calendar(days=(day,), labels={PASSIVE.name: "Passive"}))
    text = " ".join(render(told, "text").split())
    assert text.count("wait)") == 1
    assert "Passive sentences 1 (7 wait)" in text
    assert "group 2" not in text
    (row,) = json.loads(render(told, "json"))["calendar"]
    assert [each["reason"] for each in row["put_off"]] == [each.reason for each in many]


def test_the_page_tells_the_same_and_escapes_it() -> None:
    page = render(planned(), "html")
    assert "about 25 minutes in 2 sessions: pictures 3, gesture 2; 1 due wait." in page
    labelled = digest(labels={PASSIVE.name: "Passive <b>"})
    page = render(replace(planned(), upcoming=labelled.upcoming), "html")
    assert "Passive &lt;b&gt;\xa01\xa0(1\xa0wait)" in page
    assert "Passive <b>" not in page


def test_json_and_csv_hold_the_numbers() -> None:
    (row,) = json.loads(render(planned(), "json"))["calendar"]
    assert (row["day"], row["sessions"], row["minutes"]) == ("2026-11-30", 2, 24.6)
    assert row["given"] == {str(ACTIVE): 3, str(WAVE): 2}
    assert row["put_off"][0]["target"] == str(PASSIVE)
    rows = list(csv.DictReader(StringIO(render(planned(), "csv"))))
    (told,) = [each for each in rows if each["planned_on"]]
    assert (told["planned_on"], told["minutes_expected"], told["put_off"]) == (
        "2026-11-30",
        "24.6000",
        "1",
    )


def test_without_a_plan_of_days_nothing_is_said() -> None:
    assert "minutes:" not in render(digest(), "text").split("THE WEEK TO COME")[1].lower()
    assert json.loads(render(digest(), "json"))["calendar"] == []
