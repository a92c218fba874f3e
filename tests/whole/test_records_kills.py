"""kill -9 at moments of chance; three hundred of them in tests/bench/bench_ledger_kills.py."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pyte
import pytest

from drills.core.records import Trial
from drills.ledger import verify
from drills.ledger.sessions import SessionRead, understand
from tests.ledger.made import made_session, written
from tests.whole.player import installed, put_plan_in_force
from tests.whole.records_kills import Seen, Told, WholeFrames, hold_to, play_until_killed

STARTS = 6


def test_no_kill_loses_an_answer_that_had_feedback_and_the_next_start_works(
    tmp_path: Path,
) -> None:
    folder = tmp_path / "practice"
    put_plan_in_force(folder, installed())
    killed = [play_until_killed(installed(), folder, seed=seed) for seed in range(STARTS)]
    assert sum(each.told for each in killed) > 10
    assert sum(not each.finished for each in killed) > 2
    assert all("cut off" in str(problem) for problem in verify(folder))


# The check itself

ENTRIES = made_session("s", trials=3)


def read_of(entries: list) -> list[SessionRead]:
    return [understand(Path("2026-11-25T130420-s.jsonl"), written(entries))]


def seen_of(*keys: str) -> Seen:
    """What a person saw of the made session: its third trial took two responses."""
    told = [Told(key=key, over=key == "1", right=key == "1") for key in keys]
    places = {"a": told[:1], "b": told[1:2], "c": told[2:]}
    return Seen(told={place: each for place, each in places.items() if each})


def test_the_check_passes_what_is_as_it_was_seen() -> None:
    assert hold_to(seen_of("1", "1", "2", "1"), read_of(ENTRIES)) == 4
    # The kill came after the last response was kept and before it was told.
    before_its_feedback = seen_of("1", "1", "2")
    before_its_feedback.key = "1"
    assert hold_to(before_its_feedback, read_of(ENTRIES)) == 4


# The first entry of the third trial is written again, whole, with the second.
@pytest.mark.parametrize("lost", [2, 3, 5])
def test_the_check_finds_any_one_answer_that_is_lost(lost: int) -> None:
    kept = [entry for number, entry in enumerate(ENTRIES) if number != lost]
    with pytest.raises(AssertionError):
        hold_to(seen_of("1", "1", "2", "1"), read_of(kept))


def test_the_check_finds_an_answer_that_was_changed_or_made_up() -> None:
    seen = seen_of("1", "1", "2", "1")
    first = ENTRIES[2]
    assert isinstance(first, Trial)
    other = replace(first, attempts=(replace(first.attempts[0], choice=1),))
    with pytest.raises(AssertionError):
        hold_to(seen, read_of([*ENTRIES[:2], other, *ENTRIES[3:]]))
    with pytest.raises(AssertionError):
        hold_to(seen, read_of([*ENTRIES[:-1], replace(first, trial="s-9"), ENTRIES[-1]]))
    with pytest.raises(AssertionError):
        hold_to(seen_of("1", "1"), read_of(ENTRIES))


SCREEN = """\
 Which picture fits?                 Part 1 of 2   1 of 3
 The nurse pushed the man.
 {}
 {}
 Space hear again   H help   P pause
"""
WRONG, RIGHT = "Not this one. Look again.", "Yes. That was with help."


def test_each_feedback_is_counted_once_with_the_key_before_it() -> None:
    seen = Seen()
    for key, verdict, rest in (
        ("", "", ""),
        ("2", WRONG, "Listen again."),
        ("2", WRONG, "Listen again."),
        ("3", WRONG, "Listen again."),
        ("3", WRONG, "Who does it?"),
        ("1", RIGHT, "Space: go on."),
        ("1", RIGHT, "One moment."),
    ):
        seen.key = key
        seen.look(SCREEN.format(verdict, rest))
    (told,) = seen.told.values()
    assert [(each.key, each.over, each.right) for each in told] == [
        ("2", False, False),
        ("3", False, False),
        ("1", True, True),
    ]


def test_half_a_frame_is_not_seen() -> None:
    screen = pyte.Screen(20, 2)
    shown: list[str] = []
    frames = WholeFrames(pyte.ByteStream(screen), lambda: shown.append(screen.display[0].strip()))
    data = (
        b"old\x1b[?2026h\x1b[1;1HYes. \x1b[?2026l\x1b[?2026h\x1b[1;1HNo. \x1b[1;5HMore\x1b[?2026l"
    )
    for cut in range(len(data)):
        shown.clear()
        screen.reset()
        frames = WholeFrames(
            pyte.ByteStream(screen), lambda: shown.append(screen.display[0].strip())
        )
        frames.feed(data[:cut])
        assert "No." not in screen.display[0]
        frames.feed(data[cut:])
        assert shown == ["Yes.", "No. More"]
