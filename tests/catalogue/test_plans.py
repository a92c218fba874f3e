from __future__ import annotations

from dataclasses import fields, replace
from pathlib import Path

import pytest

from drills.catalogue import in_locale, load, read_plan
from drills.catalogue.plan_settings import EMERGENCY_NUMBERS, SECTIONS
from drills.core.items import Kind
from drills.core.plans import CueSettings, Dose, Plan, SafetySettings, SessionRules, ShowText
from drills.core.problems import BadInput
from drills.language import CONSTRUCTIONS

PLAN = """\
format = 1
name = "A plan"
version = 3
locale = "en-GB"
written_on = 2026-11-25

[dose]
minutes_per_session = 20

[sitting]
response_gap_seconds = 6

[speech]
words_per_minute = 110

[spacing]
ladder_days = [1, 3, 9]

[safety]
therapist_contact = "ask at the desk"

[[block]]
kind = "match"
names = ["active", "full-passive"]
trials = 10
options = 4
groups = ["moving"]

[[block]]
kind = "gesture"
names = ["wave"]
trials = 4
"""


def kept(tmp_path: Path, text: str) -> Path:
    path = tmp_path / "plan.toml"
    path.write_text(text, encoding="utf-8")
    return path


def faults(tmp_path: Path, text: str) -> list[str]:
    path = kept(tmp_path, text)
    with pytest.raises(BadInput) as told:
        read_plan(path)
    return [str(problem).removeprefix(str(path)) for problem in told.value.problems]


def test_older_plans_that_hid_the_sentence_everywhere_are_read(tmp_path: Path) -> None:
    text = PLAN.replace("response_gap_seconds = 6", "show_text = false")
    match, gesture = read_plan(kept(tmp_path, text)).blocks
    assert match.text is ShowText.AFTER_CUE
    assert gesture.text is ShowText.SHOWN


def test_a_block_that_is_neither_read_nor_heard_is_refused(tmp_path: Path) -> None:
    text = PLAN.replace("words_per_minute = 110", "read_aloud = false")
    text = text.replace("trials = 10", 'trials = 10\ntext = "hidden until a cue"')
    (told,) = faults(tmp_path, text)
    assert told == (
        ":26: The text is hidden, and nothing is read aloud. "
        "Write read_aloud = true under [speech], or show the text."
    )


def test_the_defaults_of_rules_and_cues_are_the_customary_ones() -> None:
    """Common practice, no source."""
    cues, rules = CueSettings(), SessionRules()
    assert (cues.drop_after, cues.rise_after, cues.wait_seconds) == (2, 1, 10)
    assert (rules.errors_to_full_help, rules.full_help_trials, rules.errors_to_easier) == (3, 2, 5)
    assert (rules.perseverations_to_change, rules.perseveration_look_back) == (2, 3)
    assert (rules.perseveration_gap_seconds, rules.fall_points, rules.slower_times) == (10, 20, 1.5)


def test_a_plan_is_read_whole_and_the_rest_keeps_its_defaults(tmp_path: Path) -> None:
    plan = read_plan(kept(tmp_path, PLAN))
    assert (plan.name, plan.version, plan.locale) == ("A plan", 3, "en-GB")
    assert str(plan.written_on) == "2026-11-25"
    assert plan.dose == Dose(minutes_per_session=20)
    assert plan.sitting.response_gap_seconds == 6.0
    assert plan.speech.words_per_minute == 110
    assert plan.speech.slow_words_per_minute == 95
    assert plan.spacing.ladder_days == (1, 3, 9)
    assert plan.safety == SafetySettings(
        emergency_number="999", therapist_contact="ask at the desk"
    )
    match, gesture = plan.blocks
    assert (match.kind, match.options, match.groups) == (Kind.MATCH, 4, ("moving",))
    assert (gesture.names, gesture.trials, gesture.options) == (("wave",), 4, 2)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("trials = 10", 'cues = "most"\ntrials = 10', ':25: `cues` cannot be "most". '),
        (
            "[speech]",
            'layout = "beside"\n[speech]',
            ':13: `layout` cannot be "beside". It can be: side-by-side, stacked, left.',
        ),
        (
            "trials = 4",
            'trials = 4\ntext = "hidden until a cue"',
            ":33: A gesture block cannot hide its text. Write text = ",
        ),
        ("trials = 10", "trails = 10", ":22: `trials` is missing."),
        ("trials = 10", "trials = 61", ":25: `trials` is 61, which is out of range. Choose from"),
        ("trials = 10", 'trials = "10"', ':25: `trials` is "10". It needs a whole number.'),
        ("options = 4", "options = 5", ":26: `options` is 5, which is out of range. Choose from 2"),
        ('kind = "match"', 'kind = "mach"', ':23: `kind` cannot be "mach". Did you mean `match`?'),
        ('["wave"]', '"wave"', ':31: `names` is "wave". It needs a list such as'),
        ('["wave"]', '["wave", "wave"]', ':31: `names` has "wave" twice. Remove one.'),
        ("minutes_per_session", "minute_per_session", "Did you mean `minutes_per_session`?"),
        ("[dose]", "[dosage]", ":7: There is no section [dosage] here. Did you mean `dose`?"),
        ("[dose]", "[[dose]]", ":7: This section is written [[dose]]. Write [dose]."),
        ("[[block]]", "[[blocks]]", "There is no section [[blocks]] here. Did you mean `block`?"),
        ("words_per_minute = 110", "words_per_minute = 200", "Choose from 90 to 160."),
        ("words_per_minute = 110", "words_per_minute = 90", "The slow replay is faster than"),
        ("[1, 3, 9]", "[3, 1, 9]", ":17: `ladder_days` does not rise."),
        ('locale = "en-GB"', 'locale = "en-FR"', ":4: `locale` cannot be"),
        ("version = 3", "version = 0", ":3: `version` is 0, which is out of range."),
        ("2026-11-25", '"25 November"', ':5: `written_on` is "25 November". It needs a date'),
        ('name = "A plan"\n', "", ": `name` is missing. Add `name = ...` to the top of the file."),
        ("therapist_contact =", "emergency_number =", "`emergency_number` is not a number to dial"),
        ("version = 3", "version = 3 3", ":3: This is not valid TOML:"),
        ("format = 1", "format = 0", ":1: `format` is 0, which is out of range."),
        ("format = 1\n", "", ": `format` is missing."),
        (
            "[dose]",
            f'note = "{"x" * 2001}"\n[dose]',
            ":7: `note` has 2001 letters. Use at most 2000",
        ),
        (
            "trials = 4",
            "trials = 4\nnote = 'x'",
            ":33: There is no setting `note` here. It belongs at",
        ),
        ("trials = 4", "trials = 4\npause_ms = 1", "It belongs under [speech]."),
        (
            "[dose]",
            "trials = 4\n[dose]",
            ":7: There is no setting `trials` here. It belongs under [[",
        ),
    ],
)
def test_a_fault_is_told_with_its_line_and_how_to_mend_it(
    old: str, new: str, said: str, tmp_path: Path
) -> None:
    assert old in PLAN
    told = faults(tmp_path, PLAN.replace(old, new, 1))
    assert said in told[0]
    assert len(told) == (2 if "trails" in new else 1)


def test_every_fault_is_told_in_the_order_of_the_file(tmp_path: Path) -> None:
    text = PLAN.replace("options = 4", "options = 1").replace("version = 3", "version = -3")
    text = text.replace("trials = 4", "trials = 0")
    text += "\n[extra]\n"
    text = text.replace("[dose]", "[[block]]\ntrials = 0\n[dose]").replace(
        "session = 20", "session = 0"
    )
    lines = [int(told.split(":")[1]) for told in faults(tmp_path, text)]
    assert lines == sorted(lines)
    assert len(lines) == 8


def test_a_plan_of_a_newer_program_says_only_that(tmp_path: Path) -> None:
    text = PLAN.replace("format = 1", "format = 2").replace("[dose]", "[something_new]")
    assert faults(tmp_path, text) == [
        ":1: This plan has format 2; this program reads up to 1. Update the program."
    ]


def test_a_plan_needs_a_block(tmp_path: Path) -> None:
    text = PLAN[: PLAN.index("[[block]]")]
    assert "This plan has 0 blocks." in faults(tmp_path, text)[0]
    many = text + 13 * '[[block]]\nkind = "match"\nnames = ["active"]\ntrials = 1\n'
    assert "This plan has 13 blocks." in faults(tmp_path, many)[0]


def test_a_plan_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(BadInput, match="cannot be read"):
        read_plan(tmp_path / "no.toml")


def test_the_emergency_number_follows_the_locale_unless_it_is_written(tmp_path: Path) -> None:
    plan = read_plan(kept(tmp_path, PLAN))
    assert plan.safety.emergency_number == "999"
    assert in_locale(plan, "en-US").safety.emergency_number == "911"
    own = replace(plan, safety=SafetySettings(emergency_number="112"))
    assert in_locale(own, "en-US").safety.emergency_number == "112"
    assert in_locale(own, "en-US").locale == "en-US"
    written = PLAN.replace("[safety]", '[safety]\nemergency_number = "+44 999"')
    assert read_plan(kept(tmp_path, written)).safety.emergency_number == "+44 999"


def test_the_settings_are_exactly_those_of_the_plan() -> None:
    for section in SECTIONS:
        assert [setting.key for setting in section.settings] == [
            # Sets are tables of their own.
            each.name
            for each in fields(section.made)
            if each.name != "sets"
        ]
    tables = [section.name for section in SECTIONS]
    assert tables == [each.name for each in fields(Plan) if each.name in tables]
    assert EMERGENCY_NUMBERS["en-US"] == SafetySettings().emergency_number


@pytest.fixture(scope="module")
def starter(content: Path) -> Plan:
    return read_plan(content / "plans" / "starter.toml")


def test_the_starter_plan_names_only_what_there_is(starter: Plan, content: Path) -> None:
    material = load(content, locale=starter.locale)
    known = {
        Kind.MATCH: set(CONSTRUCTIONS),
        Kind.CLOZE: set(material.cloze),
        Kind.QUESTION: {"who-did-what"},
        Kind.GESTURE: set(material.gestures),
    }
    for block in starter.blocks:
        assert set(block.names) <= known[block.kind]


def test_the_starter_plan_has_the_prescribed_dose(starter: Plan) -> None:
    assert (starter.dose.minutes_per_session, starter.dose.sessions_per_week) == (25, 5)
    assert [block.kind.value for block in starter.blocks] == [
        "match",
        "cloze",
        "question",
        "match",
        "gesture",
    ]
    # 24 to 40 trials of comprehension a session; common practice, no source.
    comprehension = [block for block in starter.blocks if block.kind is not Kind.GESTURE]
    assert 24 <= sum(block.trials for block in comprehension) <= 40


def test_the_starter_plan_says_that_it_is_only_an_example(starter: Plan, content: Path) -> None:
    text = (content / "plans" / "starter.toml").read_text(encoding="utf-8")
    assert "ONLY AN EXAMPLE" in text.splitlines()[0]
    assert "example" in starter.note
