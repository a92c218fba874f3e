"""Whom the therapist looks at first, and that nothing from outside is believed unchecked."""

from __future__ import annotations

import json
from copy import deepcopy
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.problems import BadInput
from drills.digest import render
from drills.digest.caseload import (
    DAYS_TO_COME,
    NO_DIGEST,
    Case,
    Caseload,
    NotRead,
    Reason,
    caseload,
    read_case,
)
from drills.digest.caseload_text import WIDTH, caseload_json, caseload_text
from tests.digest.invented import FIRST, LAST, digest

TODAY = LAST + timedelta(days=1)
REAL: dict[str, Any] = json.loads(render(digest(), "json"))


def case(code: str = "", *reasons: tuple[str, str], until: date = LAST, **more: Any) -> Case:
    values: dict[str, Any] = {
        "file": f"{code or 'file'}-{until}.json",
        "code": code,
        "plan": "Invented plan",
        "plan_version": 1,
        "simulated": False,
        "first": until - timedelta(days=6),
        "last": until,
        "until": until,
        "sessions": 4,
        "sessions_planned": 5.0,
        "reasons": tuple(Reason(kind=kind, text=text) for kind, text in reasons),
    }
    return Case(**{**values, **more})


def codes(load: Caseload) -> list[str]:
    return [each.code for each in load.cases]


def test_a_real_digest_is_read() -> None:
    read = read_case(render(digest(), "json").encode(), "F")
    assert (read.first, read.last, read.until) == (FIRST, LAST, LAST)
    assert (read.plan, read.plan_version, read.code) == ("Invented plan", 2, "")
    assert read.sessions == 2
    assert [(each.kind, each.text) for each in read.reasons] == [
        (alert["kind"], alert["text"]) for alert in REAL["alerts"]
    ]
    assert read.reasons[0].kind == "pain"


def test_the_most_urgent_kind_comes_first_then_more_reasons_then_the_older_digest() -> None:
    pain, signs, tired = ("pain", "Pain."), ("new signs", "Signs."), ("tired", "Tired.")
    load = caseload(
        [
            case("quiet"),
            case("tired", tired),
            case("pain", pain),
            case("pain-and-tired", tired, pain),
            case("pain-longer-ago", pain, until=LAST - timedelta(days=2)),
            case("signs", signs),
            case("unknown", ("something newer", "New.")),
        ],
        today=TODAY,
    )
    assert codes(load) == [
        *("signs", "pain-and-tired", "pain-longer-ago", "pain"),
        *("tired", "unknown", "quiet"),
    ]
    assert [each.kind for each in load.cases[1].reasons] == ["pain", "tired"]


def test_only_the_newest_of_a_person_counts() -> None:
    signs = ("new signs", "Signs.")
    load = caseload(
        [case("A"), case("A", signs, until=LAST - timedelta(days=7)), case("B", signs)],
        today=TODAY,
    )
    assert codes(load) == ["B", "A"]
    assert load.cases[1].until == LAST
    assert load.older == 1


def test_of_one_day_the_digest_with_more_sessions_is_the_newer() -> None:
    both = [case("A", sessions=3, file="a.json"), case("A", sessions=4, file="b.json")]
    for order in (both, both[::-1]):
        assert caseload(order, today=TODAY).cases[0].sessions == 4


def test_one_code_in_two_plans_of_the_same_week_hides_neither() -> None:
    week_before = LAST - timedelta(days=7)
    cases = [
        case("A", ("pain", "Pain."), plan="One", until=LAST - timedelta(days=1), file="1.json"),
        case("A", plan="Other", file="2.json"),
        case("A", ("new signs", "Signs."), plan="One", until=week_before, file="3.json"),
    ]
    for order in (cases, cases[::-1]):
        load = caseload(order, today=TODAY)
        assert [each.file for each in load.cases] == ["1.json", "2.json"]
        assert load.older == 1
    told = " ".join(caseload_text(load).split())
    assert "A is the code in two plans. If these are two people, give each their own code." in told


def test_a_plan_that_got_another_name_shows_its_person_once() -> None:
    cases = [case("A", plan="Old name", until=LAST - timedelta(days=7)), case("A", plan="New")]
    load = caseload(cases, today=TODAY)
    assert [each.plan for each in load.cases] == ["New"]
    assert "two plans" not in caseload_text(load)


def test_without_a_code_nobody_stands_for_anybody_else() -> None:
    load = caseload([case(file="a.json"), case(file="b.json")], today=TODAY)
    assert len(load.cases) == 2
    assert "2 digests without a code" in caseload_text(load)


@pytest.mark.parametrize(("days", "missed"), [(9, False), (10, True), (30, True)])
def test_a_digest_that_does_not_come_is_a_reason(days: int, missed: bool) -> None:
    (found,) = caseload([case("A")], today=LAST + timedelta(days=days)).cases
    assert [each.kind for each in found.reasons] == [NO_DIGEST] * missed
    if missed:
        assert found.reasons[0].text == f"No digest for {days} days."


def test_a_missing_digest_is_as_urgent_as_no_practice() -> None:
    old = LAST - timedelta(days=20)
    load = caseload(
        [case("tired", ("tired", "T.")), case("silent", until=old), case("pain", ("pain", "P."))],
        today=TODAY,
    )
    assert codes(load) == ["pain", "silent", "tired"]


def test_a_digest_of_days_to_come_hides_no_other() -> None:
    ahead = TODAY + timedelta(days=2)
    load = caseload([case("A", ("pain", "Pain.")), case("A", until=ahead)], today=TODAY)
    assert [each.reasons[0].kind for each in load.cases] == ["pain", DAYS_TO_COME]
    (near,) = caseload([case("A", until=TODAY + timedelta(days=1))], today=TODAY).cases
    assert near.reasons == ()


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (("plan",), None),
        (("plan", "name"), 7),
        (("plan", "version"), True),
        (("plan", "version"), -1),
        (("first",), "2026-13-01"),
        (("first",), 20261123),
        (("until",), "1999-01-01"),
        (("last",), "9999-12-31"),
        (("dose",), []),
        (("dose", "sessions"), 1e9),
        (("dose", "sessions"), 10**12),
        (("dose", "sessions_planned"), "5"),
        (("dose", "sessions_planned"), 1e999),
        (("alerts",), 3),
        (("alerts",), {"kind": "pain"}),
        (("alerts",), [{"kind": ["pain"]}]),
        (("alerts",), ["pain"]),
        (("person",), "two words"),
        (("person",), 17),
        (("person",), []),
        (("alerts",), ""),
        (("person",), "x" * 21),
    ],
    ids=str,
)
def test_a_value_that_cannot_be_is_told_in_one_sentence(path: tuple[str, ...], value: Any) -> None:
    changed = deepcopy(REAL)
    *way, name = path
    inner = changed
    for step in way:
        inner = inner[step]
    inner[name] = value
    data = json.dumps(changed).replace("Infinity", "1e999").encode()
    with pytest.raises(BadInput) as raised:
        read_case(data, "F")
    assert str(raised.value) == (
        "F is no whole digest: something in it is missing or wrong. Ask for it again."
    )


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=10),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner),
    max_leaves=8,
)


@given(st.lists(st.tuples(st.sampled_from(sorted(REAL)), JSON), min_size=1, max_size=3))
def test_any_field_may_be_anything_and_is_shown_inert_or_told(
    fields: list[tuple[str, Any]],
) -> None:
    data = json.dumps({**REAL, **dict(fields)}, allow_nan=True).encode()
    cases, not_read = [], []
    try:
        cases.append(read_case(data, "F"))
    except BadInput as error:
        not_read.append(NotRead(file="F", message=str(error)))
    load = caseload(cases, not_read, today=TODAY)
    for shown in (caseload_text(load), caseload_json(load)):
        assert all(letter.isprintable() or letter == "\n" for letter in shown)
        shown.encode("utf-8")


def test_what_a_terminal_may_act_on_is_written_out() -> None:
    evil = "\x1b]0;title\x07\u202e\ud800\r\n! Pain"
    load = caseload(
        [case(plan=evil, file=evil, reasons=(Reason(kind=evil, text=evil, evidence=evil),))],
        [NotRead(file=evil, message=evil)],
        today=TODAY,
    )
    for shown in (caseload_text(load), caseload_json(load)):
        assert all(letter.isprintable() or letter == "\n" for letter in shown)
        shown.encode("utf-8")
        assert "\n! Pain" not in shown


def test_many_and_long_reasons_are_cut() -> None:
    alerts = [{"kind": "pain", "text": "x" * 10_000}] * 1000
    read = read_case(json.dumps({**REAL, "alerts": alerts}).encode(), "F")
    assert len(read.reasons) == 100
    assert len(read.reasons[0].text) == 300


def test_the_text_reads_from_the_most_urgent_to_what_was_not_read() -> None:
    load = caseload(
        [
            case("B-2"),
            case("A-1", ("pain", "Pain was noted on Tue 24 Nov."), ("tired", "Tired.")),
            case("C-3", simulated=True, until=date(2025, 11, 23)),
        ],
        [NotRead(file="x.age", message="x.age is damaged. Ask for it again.")],
        today=TODAY,
        left_alone=2,
    )
    assert caseload_text(load) == (
        "CASELOAD on Mon 30 Nov 2026\n"
        "2 with something noted, 1 with nothing, 1 file not read.\n"
        "\n"
        "MOST URGENT FIRST\n"
        "-----------------\n"
        "1. A-1, Invented plan: Mon 23 to Sun 29 Nov. 4 of 5 sessions.\n"
        "   ! Pain was noted on Tue 24 Nov.\n"
        "   ! Tired.\n"
        "\n"
        "2. C-3, Invented plan, SIMULATED PATIENT: Mon 17 to Sun 23 Nov 2025. 4 of 5\n"
        "   sessions.\n"
        "   ! No digest for 372 days.\n"
        "\n"
        "NOTHING NOTED\n"
        "-------------\n"
        "B-2, Invented plan: Mon 23 to Sun 29 Nov. 4 of 5 sessions.\n"
        "\n"
        "NOT READ\n"
        "--------\n"
        "x.age is damaged. Ask for it again.\n"
        "\n"
        "Left alone in the folder: 2. A digest is a file that ends in .json or .age.\n"
    )


def test_what_can_wait_is_told_in_one_line_and_safety_never() -> None:
    kinds = ("new signs", "ended unwell", "pain", "tired", "no rise", "no rise", "ceiling")
    reasons = tuple(Reason(kind=kind, text=f"{kind.title()}.") for kind in kinds)
    load = caseload([case("A", reasons=reasons), case("B", reasons=reasons[3:])], today=TODAY)
    told = caseload_text(load)
    assert "   ! New Signs.\n   ! Ended Unwell.\n   ! Pain.\n   Also: tired, no rise (2" in told
    assert "   ! Tired.\n   ! No Rise. And 1 more.\n   Also: ceiling.\n" in told
    assert len(json.loads(caseload_json(load))["people"][0]["reasons"]) == len(kinds)


def test_a_wrong_clock_is_told_in_full_however_much_else_there_is() -> None:
    reasons = tuple(Reason(kind=kind, text="Noted.") for kind in ("tired", "no rise", "ceiling"))
    load = caseload([case("A", until=TODAY + timedelta(days=9), reasons=reasons)], today=TODAY)
    assert "! It ends after today, on Wed 9 Dec 2026: a clock was wrong." in caseload_text(load)


def test_a_reason_without_words_is_told_by_its_kind() -> None:
    alerts = [{"kind": "pain", "text": ""}]
    read = read_case(json.dumps({**REAL, "alerts": alerts}).encode(), "F")
    assert [each.text for each in read.reasons] == ["pain"]


@given(st.text(max_size=120), st.text(max_size=400))
def test_no_line_is_too_wide(plan: str, text: str) -> None:
    load = caseload([case(plan=plan, reasons=(Reason(kind="pain", text=text),))], today=TODAY)
    assert all(len(line) <= WIDTH for line in caseload_text(load).splitlines())


def test_the_json_holds_what_the_text_holds() -> None:
    load = caseload([case("A", ("pain", "Pain."))], [NotRead(file="f", message="m")], today=TODAY)
    told = json.loads(caseload_json(load))
    assert told["format"] == 1
    assert told["today"] == "2026-11-30"
    assert told["people"][0]["code"] == "A"
    assert told["people"][0]["until"] == "2026-11-29"
    assert told["people"][0]["reasons"] == [{"kind": "pain", "text": "Pain.", "evidence": ""}]
    assert told["not_read"] == [{"file": "f", "message": "m"}]
