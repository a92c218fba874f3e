from __future__ import annotations

import tomllib
from dataclasses import replace
from datetime import date
from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue import plan_text, read_plan
from drills.catalogue.plan_settings import SECTIONS
from drills.core.flag_settings import FlagSettings
from drills.core.items import Kind
from drills.core.plans import (
    LOCALES,
    PERSON_CODE,
    BlockPlan,
    CueDirection,
    CueSettings,
    Dose,
    Layout,
    Order,
    Plan,
    ProbeSettings,
    ProgressionSettings,
    SafetySettings,
    SealingSettings,
    SessionRules,
    ShowText,
    SittingSettings,
    SpacingSettings,
    SpeechSettings,
)
from drills.core.probe_sets import SET_ROLES, ProbeSet, SetExemplar
from drills.core.problems import BadInput
from drills.sealing import new_keys

_SIGNS = st.characters(exclude_categories=["Cs"])
_TEXTS = st.text(_SIGNS, max_size=60)
_NAMES = st.text(_SIGNS, min_size=1, max_size=20).filter(str.strip)
_LISTS = st.lists(_NAMES, min_size=1, max_size=3, unique=True).map(tuple)
_RUNS = st.integers(1, 20)


@st.composite
def speech(draw: st.DrawFn) -> SpeechSettings:
    slow, normal = sorted([draw(st.integers(90, 160)), draw(st.integers(90, 160))])
    return SpeechSettings(
        read_aloud=draw(st.booleans()),
        words_per_minute=normal,
        slow_words_per_minute=slow,
        pause_ms=draw(st.integers(0, 1500)),
        slow_pause_ms=draw(st.integers(0, 1500)),
    )


def flags() -> st.SearchStrategy[FlagSettings]:
    """Every threshold, from its least to its most."""
    (section,) = [each for each in SECTIONS if each.made is FlagSettings]
    standard = FlagSettings()
    return st.builds(
        FlagSettings,
        **{
            each.key: st.floats(each.low, each.high)
            if isinstance(getattr(standard, each.key), float)
            else st.integers(int(each.low), int(each.high))
            for each in section.settings
        },
    )


@st.composite
def sets(draw: st.DrawFn) -> tuple[ProbeSet, ...]:
    """Of twenty exemplars each, no pair of words in one act twice."""
    word = st.from_regex(r"[a-z][a-z '-]{0,10}[a-z]", fullmatch=True)
    names = draw(st.lists(word, max_size=3, unique=True))
    acts = draw(st.lists(word, min_size=len(names), max_size=len(names), unique=True))
    words = draw(st.lists(word, min_size=8, max_size=8, unique=True))
    return tuple(
        ProbeSet(
            item_set=draw(st.sampled_from(sorted(SET_ROLES.values()))),
            construction=name,
            exemplars=tuple(
                SetExemplar(act=act, first=one, second=other)
                for one, other in list(combinations(words, 2))[:20]
            ),
        )
        for name, act in zip(names, acts, strict=True)
    )


def with_sets(probes: ProbeSettings, made: tuple[ProbeSet, ...]) -> ProbeSettings:
    return replace(probes, items=20, sets=made)


PLANS = st.builds(
    Plan,
    name=_NAMES,
    version=st.integers(1, 99_999),
    locale=st.sampled_from(LOCALES),
    written_on=st.none() | st.dates(date(1900, 1, 1)),
    code=st.just("") | st.from_regex(PERSON_CODE, fullmatch=True),
    therapist=_TEXTS,
    note=_TEXTS,
    without_kin=st.just(()) | _LISTS,
    plan_format=st.just(1),
    blocks=st.lists(
        st.builds(
            BlockPlan,
            kind=st.sampled_from(Kind),
            names=_LISTS,
            trials=st.integers(1, 60),
            options=st.integers(2, 4),
            groups=st.just(()) | _LISTS,
            cues=st.sampled_from(CueDirection),
            order=st.sampled_from(Order),
        ),
        min_size=1,
        max_size=4,
    ).map(tuple),
    dose=st.builds(
        Dose, minutes_per_session=st.integers(5, 90), sessions_per_week=st.integers(1, 21)
    ),
    sitting=st.builds(
        SittingSettings,
        rest_seconds=st.integers(0, 900),
        response_gap_seconds=st.floats(0, 20),
        second_press_ms=st.integers(0, 2000),
        day_turns_at_hour=st.integers(0, 12),
        tired_rise=st.integers(1, 4),
        layout=st.sampled_from(Layout),
    ),
    cues=st.builds(
        CueSettings,
        drop_after=st.integers(1, 10),
        rise_after=st.integers(1, 10),
        wait_seconds=st.floats(0, 120),
        wait_gives_help=st.booleans(),
        suggest_percent=st.integers(0, 100),
    ),
    session_rules=st.builds(
        SessionRules,
        errors_to_full_help=st.integers(0, 20),
        errors_to_easier=st.integers(0, 20),
        perseveration_gap_seconds=st.floats(0, 20),
        fall_points=st.integers(0, 100),
        slower_times=st.floats(0, 10),
        fewest_trials=st.integers(6, 60),
    ),
    speech=speech(),
    spacing=st.builds(
        SpacingSettings,
        ladder_days=st.sets(st.integers(1, 365), min_size=1, max_size=8).map(sorted).map(tuple),
        steps_back=st.integers(1, 10),
        run_two_options=_RUNS,
        run_three_options=_RUNS,
        run_four_options=_RUNS,
    ),
    probes=st.builds(
        ProbeSettings,
        on=st.booleans(),
        treated=st.just(()) | st.just(("active", "full-passive")),
        finished=st.just(()) | st.just(("subject-cleft",)),
        related=st.just(()) | st.just(("object-cleft",)),
        control=st.just(()) | st.just(("locative",)),
        items=st.integers(10, 20).map(lambda half: 2 * half),
        baseline=st.integers(0, 10),
        weekly_days=st.integers(0, 60),
        maintenance_weeks=st.sets(st.integers(1, 104), min_size=1, max_size=5)
        .map(sorted)
        .map(tuple),
        seed=st.integers(1, 99_999),
    ).flatmap(lambda probes: st.just(probes) | sets().map(lambda made: with_sets(probes, made))),
    progression=st.builds(
        ProgressionSettings,
        right_percent=st.integers(50, 100),
        sure_percent=st.integers(0, 99),
        least_trials=st.integers(5, 200),
        most_help=st.floats(0, 7),
        flat_sessions=st.integers(4, 40),
    ),
    flags=flags(),
    safety=st.builds(
        SafetySettings,
        emergency_number=st.from_regex(r"\+?[0-9][0-9 ]{0,9}", fullmatch=True),
        therapist_contact=_TEXTS,
    ),
    sealing=st.builds(SealingSettings, recipient=st.sampled_from(("", new_keys().public))),
)

SMALL = Plan(
    name="A plan",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=("active",), trials=5),),
)


@given(plan=PLANS)
def test_a_written_plan_reads_back_as_the_same_plan(
    plan: Plan, tmp_path_factory: pytest.TempPathFactory
) -> None:
    path = tmp_path_factory.getbasetemp() / "plan.toml"
    path.write_text(plan_text(plan), encoding="utf-8", newline="\n")
    assert read_plan(path) == plan


@given(data=st.data(), plan=PLANS)
def test_a_plan_with_any_letter_changed_is_read_or_refused(
    data: st.DataObject, plan: Plan, tmp_path_factory: pytest.TempPathFactory
) -> None:
    text = plan_text(plan)
    at = data.draw(st.integers(0, len(text) - 1))
    letter = data.draw(st.sampled_from('"[]=\n#\\x,0-.'))
    path = tmp_path_factory.getbasetemp() / "changed.toml"
    path.write_text(text[:at] + letter + text[at + 1 :], encoding="utf-8", newline="\n")
    try:
        read = read_plan(path)
    except BadInput as bad:
        assert bad.problems  # noqa: PT017 - either end is right, a crash is not
    else:
        assert isinstance(read, Plan)


def test_every_setting_is_written_with_a_word_on_it() -> None:
    text = plan_text(SMALL)
    for section in SECTIONS:
        assert f"[{section.name}]" in text
        for setting in section.settings:
            (line,) = [each for each in text.splitlines() if each.startswith(f"{setting.key} = ")]
            assert f"# {setting.says}" in line


def test_a_range_that_is_written_is_the_range_that_is_read(tmp_path: Path) -> None:
    path = tmp_path / "plan.toml"
    for section in SECTIONS:
        for setting in section.settings:
            value = getattr(getattr(SMALL, section.name), setting.key)
            if isinstance(value, bool | str | tuple):
                continue
            for outside in (setting.low - 1, setting.high + 1):
                changed = replace(
                    getattr(SMALL, section.name), **{setting.key: type(value)(outside)}
                )
                path.write_text(plan_text(replace(SMALL, **{section.name: changed})))
                with pytest.raises(BadInput, match=setting.key):
                    read_plan(path)


def test_the_file_is_plain_toml_for_any_other_reader() -> None:
    """Source: tomllib of the standard library as the other reader."""
    plan = replace(SMALL, note='"""two\nlines\x7f\t\\ # [[x]]', written_on=date(2026, 11, 25))
    values = tomllib.loads(plan_text(plan))
    assert values["note"] == plan.note
    assert values["written_on"] == plan.written_on
    assert values["block"] == [{"kind": "match", "names": ["active"], "trials": 5, "options": 2}]


@pytest.mark.parametrize("kind", [Kind.MATCH, Kind.QUESTION])
def test_a_block_that_is_only_heard_reads_back_so(kind: Kind, tmp_path: Path) -> None:
    heard = BlockPlan(kind=kind, names=("active",), trials=5, text=ShowText.AFTER_CUE)
    path = tmp_path / "plan.toml"
    path.write_text(plan_text(replace(SMALL, blocks=(heard,))))
    assert read_plan(path).blocks == (heard,)
