from __future__ import annotations

import stat
from dataclasses import fields
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.problems import Failure
from drills.core.therapist import Answer, Decision, SecondScore, TherapistEntry, TherapistNote
from drills.ledger import TherapistFiles, back_up, disk, restore, set_aside_in, verify
from drills.ledger.lines import line_of, read_lines
from drills.ledger.therapist import entry_of, row_of

HERE = timezone(timedelta(hours=-5))
AT = datetime(2026, 11, 25, 9, 30, tzinfo=HERE)

OFFSETS = st.integers(-1439, 1439).map(lambda minutes: timezone(timedelta(minutes=minutes)))
MOMENTS = st.datetimes(
    min_value=datetime(1970, 1, 1),  # noqa: DTZ001 - hypothesis adds the zone
    max_value=datetime(9000, 12, 31),  # noqa: DTZ001
    timezones=OFFSETS,
)
TEXTS = st.text(st.characters(exclude_categories=["Cs"]))
COUNTS = st.integers(0, 2**40)


def whole(cls: type, **given: st.SearchStrategy) -> st.SearchStrategy:
    """Values of `cls` with every field drawn."""
    drawn = {"at": MOMENTS, "by": TEXTS, **given}
    assert drawn.keys() == {field.name for field in fields(cls)}
    return st.builds(cls, **drawn)


ENTRIES = (
    whole(
        Decision,
        suggestion=TEXTS,
        answer=st.sampled_from(Answer),
        rule=TEXTS,
        evidence=TEXTS,
        why=TEXTS,
        plan_name=TEXTS,
        plan_version_before=COUNTS,
        plan_version_after=COUNTS,
        says=TEXTS,
    )
    | whole(
        SecondScore,
        session=TEXTS,
        trial=TEXTS,
        score=st.integers(0, 3),
        ticks=st.lists(st.sampled_from(Tick), unique=True).map(tuple),
    )
    | whole(TherapistNote, about=st.dates(), text=TEXTS)
)


def made_decision(**changed: object) -> Decision:
    return Decision(
        **{
            "at": AT,
            "by": "the therapist",
            "suggestion": "ready match active 1a2b",
            "answer": Answer.ACCEPTED,
            "rule": "ready: 80 of 100 right alone",
            "evidence": "Right alone 20 of 20.",
            "why": "she is bored with it",
            "plan_name": "first",
            "plan_version_before": 1,
            "plan_version_after": 2,
        }
        | changed
    )


def made_entries() -> list[TherapistEntry]:
    return [
        made_decision(),
        SecondScore(at=AT, by="T", session="s", trial="s-001", score=2, ticks=(Tick.OLD_ACT,)),
        TherapistNote(at=AT + timedelta(days=40), by="T", about=date(2026, 11, 24), text="slept"),
    ]


def keep(folder: Path, entries: list[TherapistEntry]) -> list[Path]:
    log = TherapistFiles(folder)
    for entry in entries:
        log.append(entry)
    return sorted((folder / "therapist").glob("*.jsonl"))


def test_a_decision_kept_before_its_words_were_is_read() -> None:
    row = row_of(made_decision(says="Move on."))
    del row["says"]
    assert entry_of(row) == made_decision(says="")


@given(entry=ENTRIES)
def test_every_entry_comes_back_from_its_line_as_it_was(entry: TherapistEntry) -> None:
    ((_, row),) = read_lines(line_of(row_of(entry), 1)).rows
    assert entry_of(row) == entry


@settings(max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(entries=st.lists(ENTRIES, max_size=6))
def test_every_entry_comes_back_from_disk(
    entries: list[TherapistEntry], tmp_path_factory: pytest.TempPathFactory, unsynced: None
) -> None:
    folder = tmp_path_factory.mktemp("practice")
    files = keep(folder, entries)
    assert all(stat.S_IMODE(file.stat().st_mode) == 0o600 for file in files)
    # Years in order, and within a year as they were written.
    expected = sorted(entries, key=lambda entry: entry.at.astimezone(UTC).year)
    assert list(TherapistFiles(folder).entries()) == expected
    assert verify(folder) == ()


def test_each_year_has_its_file_and_other_entries_are_never_touched(folder: Path) -> None:
    first = keep(folder, made_entries()[:2])
    before = first[0].read_bytes()
    both = keep(folder, made_entries()[2:])
    assert [file.name for file in both] == ["2026.jsonl", "2027.jsonl"]
    assert both[0].read_bytes() == before
    assert list(TherapistFiles(folder).entries()) == made_entries()


def test_at_every_cut_of_the_end_what_was_whole_is_read_and_the_cut_is_told(folder: Path) -> None:
    kept = made_entries()[:2]
    (file,) = keep(folder, kept)
    data = file.read_bytes()
    last = len(data.splitlines(keepends=True)[-1])
    for lost in range(2, last):
        file.write_bytes(data[:-lost])
        log = TherapistFiles(folder)
        assert list(log.entries()) == kept[:1]
        (notice,) = log.notices
        assert "cut off in the middle" in notice
        (problem,) = verify(folder)
        assert (problem.where, problem.line) == (str(file), 3)


def test_the_next_entry_after_a_torn_one_leaves_a_whole_file_and_the_torn_one_beside(
    folder: Path,
) -> None:
    kept = made_entries()[:2]
    (file,) = keep(folder, kept)
    torn = file.read_bytes()[:-9]
    file.write_bytes(torn)
    log = TherapistFiles(folder)
    log.append(kept[1])
    assert list(log.entries()) == kept
    assert log.notices == ()
    assert verify(folder) == ()
    (aside,) = set_aside_in(folder)
    assert aside.name == "2026.jsonl.damaged-1"
    assert aside.read_bytes() == torn


def test_a_changed_byte_costs_one_entry_and_is_told(folder: Path) -> None:
    (file,) = keep(folder, made_entries()[:2])
    file.write_bytes(file.read_bytes().replace(b"bored", b"tired", 1))
    log = TherapistFiles(folder)
    assert list(log.entries()) == made_entries()[1:2]
    (problem,) = verify(folder)
    assert problem.line == 2


def test_a_line_that_is_no_entry_is_told_and_outlives_a_mend(folder: Path) -> None:
    (file,) = keep(folder, made_entries()[:1])
    strange = line_of({"entry": "wish", "at": AT.isoformat(), "by": "T"}, 3)
    file.write_bytes(file.read_bytes() + strange + b'{"crc32":"00')
    log = TherapistFiles(folder)
    assert len(log.notices) == 2
    log.append(made_entries()[1])
    assert list(log.entries()) == made_entries()[:2]
    assert b'"wish"' in file.read_bytes()
    assert ["no entry that this program knows" in each for each in log.notices] == [True]


def test_a_file_of_a_newer_program_is_left_alone(folder: Path) -> None:
    (file,) = keep(folder, made_entries()[:1])
    newer = line_of({"format": 2, "therapist": 2026}, 1)
    file.write_bytes(newer)
    log = TherapistFiles(folder)
    assert log.entries() == ()
    with pytest.raises(Failure, match="newer program"):
        log.append(made_entries()[0])
    assert file.read_bytes() == newer


def test_nothing_is_written_while_another_program_has_the_folder(folder: Path) -> None:
    log = TherapistFiles(folder, closed=lambda: "another program is writing there")
    with pytest.raises(Failure, match="another program is writing there"):
        log.append(made_entries()[0])
    assert log.entries() == ()
    assert not (folder / "therapist").exists()


def test_what_the_disk_refuses_is_said_and_leaves_the_file_as_it_was(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (file,) = keep(folder, made_entries()[:1])
    before = file.read_bytes()

    def full(handle: int, data: bytes) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(disk, "write_all", full)
        with pytest.raises(Failure, match="the disk is full"):
            TherapistFiles(folder).append(made_entries()[1])
    assert file.read_bytes() == before
    TherapistFiles(folder).append(made_entries()[1])
    assert list(TherapistFiles(folder).entries()) == made_entries()[:2]


def test_a_backup_holds_them_and_puts_them_back(folder: Path, tmp_path: Path) -> None:
    keep(folder, made_entries())
    assert back_up(folder, tmp_path / "kept.zip") == 2
    assert restore(tmp_path / "other", tmp_path / "kept.zip").files == 2
    assert list(TherapistFiles(tmp_path / "other").entries()) == made_entries()
