"""Commands as a person types them: what they print, and one clear sentence for what is wrong."""

from __future__ import annotations

import json
import os
import stat
import subprocess
from pathlib import Path

import pytest

from tests.terminal import ROOT, Terminal, drills


def run(
    *arguments: str, folder: Path, environment: dict[str, str] | None = None
) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        drills(*arguments, "--folder", str(folder)),
        cwd=ROOT,
        capture_output=True,
        text=True,
        stdin=subprocess.DEVNULL,
        check=False,
        env={**os.environ, **(environment or {})},
    )


def one_sentence(done: subprocess.CompletedProcess[str], code: int) -> str:
    """The error, when it is one line on stderr, nothing on stdout, and this exit code."""
    assert done.returncode == code, done
    assert done.stdout == ""
    assert "Traceback" not in done.stderr
    (line,) = done.stderr.splitlines()
    assert line.startswith("drills: ")
    return line


def test_items_are_valid_and_the_same_for_a_seed(tmp_path: Path) -> None:
    arguments = (
        *("items", "--kind", "match", "--construction", "full-passive"),
        *("--count", "200", "--seed", "7", "--format", "jsonl"),
    )
    done = run(*arguments, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    items = [json.loads(line) for line in done.stdout.splitlines()]
    assert len(items) == 200
    assert len({item["id"] for item in items}) > 150
    for item in items:
        meaning = item["meaning"]
        assert item["format"] == 1
        assert item["construction"] == "full-passive"
        assert item["options"][item["answer"]]["meaning"] == meaning
        assert sum(option["meaning"] == meaning for option in item["options"]) == 1
        # A full passive names the done-to first and the doer last, after "by".
        words = item["sentence"].rstrip(".").split()
        assert words[-3:] == ["by", "the", meaning["doer"]]
        assert words[:2] == ["The", meaning["done_to"]]
        for index, option in enumerate(item["options"]):
            assert (option["foil"] is None) == (index == item["answer"])
            assert (option["why_wrong"] is None) == (index == item["answer"])
    for hash_seed in ("0", "1", "4242"):
        again = run(*arguments, folder=tmp_path, environment={"PYTHONHASHSEED": hash_seed})
        assert again.stdout == done.stdout


@pytest.mark.parametrize("kind", ["match", "act-out", "cloze", "question", "gesture"])
@pytest.mark.parametrize("style", ["text", "jsonl"])
def test_every_kind_of_item_can_be_seen(tmp_path: Path, kind: str, style: str) -> None:
    done = run(
        *("items", "--kind", kind, "--count", "5", "--seed", "1", "--format", style),
        folder=tmp_path,
    )
    assert done.returncode == 0, done.stderr
    assert len(done.stdout.strip().splitlines()) >= 5


def test_an_unknown_construction_is_named_with_the_nearest(tmp_path: Path) -> None:
    done = run("items", "--kind", "match", "--construction", "full-pasive", folder=tmp_path)
    line = one_sentence(done, 2)
    assert "full-pasive" in line
    assert "full-passive" in line


def test_an_unknown_option_is_one_sentence(tmp_path: Path) -> None:
    assert "--colour" in one_sentence(run("digest", "--colour", folder=tmp_path), 2)


@pytest.mark.parametrize(
    "arguments", [(), ("practice",), ("digest",), ("plan", "show")], ids=" ".join
)
def test_a_broken_plan_is_named_with_its_line_and_kept(
    tmp_path: Path, arguments: tuple[str, ...]
) -> None:
    plan = tmp_path / "plan.toml"
    plan.write_text('format = 1\nname = "Broken\n', encoding="utf-8")
    if arguments and arguments[0] in {"digest", "plan"}:
        line = one_sentence(run(*arguments, folder=tmp_path), 2)
    else:
        with Terminal(drills(*arguments, "--folder", str(tmp_path))) as terminal:
            assert terminal.end() == 2
            line = " ".join(terminal.text.split())
    assert "plan.toml:2" in line.replace(" ", "")
    assert plan.read_text(encoding="utf-8") == 'format = 1\nname = "Broken\n'


def test_a_plan_with_an_unknown_construction_is_refused(tmp_path: Path) -> None:
    plan = tmp_path / "mine.toml"
    assert run("plan", "new", "--out", str(plan), folder=tmp_path).returncode == 0
    text = plan.read_text(encoding="utf-8").replace("full-passive", "fuller-passive")
    plan.write_text(text, encoding="utf-8")
    for part in ("check", "use"):
        line = one_sentence(run("plan", part, str(plan), folder=tmp_path), 2)
        assert "fuller-passive" in line
        assert "mine.toml" in line
    assert not (tmp_path / "plan.toml").exists()


def test_a_plan_is_made_checked_and_put_in_force(tmp_path: Path) -> None:
    plan = tmp_path / "mine.toml"
    folder = tmp_path / "folder"
    assert run("plan", "new", "--out", str(plan), folder=folder).returncode == 0
    assert "is there already" in one_sentence(
        run("plan", "new", "--out", str(plan), folder=folder), 2
    )
    text = plan.read_text(encoding="utf-8").replace("Starter plan", "Spring plan")
    plan.write_text(text, encoding="utf-8")
    assert "is fine" in run("plan", "check", str(plan), folder=folder).stdout
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    shown = run("plan", "show", folder=folder).stdout
    assert "Spring plan" in shown
    assert "Baseline: 0 of 3 checks done." in shown
    plan.write_text(text.replace("version = 1", "version = 2"), encoding="utf-8")
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    older = list((folder / "plans").iterdir())
    assert len(older) == 1
    assert older[0].read_text(encoding="utf-8") == text


@pytest.mark.parametrize("arguments", [(), ("digest",)], ids=["screens", "digest"])
def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path, arguments: tuple[str, ...]) -> None:
    # Not even root makes a folder inside a file.
    blocker = tmp_path / "file"
    blocker.write_text("kept", encoding="utf-8")
    folder = blocker / "practice"
    if arguments:
        line = one_sentence(run(*arguments, folder=folder), 1)
    else:
        with Terminal(drills("--folder", str(folder))) as terminal:
            assert terminal.end() == 1
            line = terminal.text
    assert "cannot" in line
    assert blocker.read_text(encoding="utf-8") == "kept"


@pytest.mark.parametrize("arguments", [(), ("practice",)], ids=["home", "practice"])
def test_no_terminal_is_said(tmp_path: Path, arguments: tuple[str, ...]) -> None:
    assert "terminal" in one_sentence(run(*arguments, folder=tmp_path), 1)


def test_a_window_too_small_to_start_in_is_said(tmp_path: Path) -> None:
    with Terminal(drills("--folder", str(tmp_path)), columns=40, lines=10) as terminal:
        assert terminal.end() == 1
        words = " ".join(terminal.text.split())
    assert "40 x 10" in words
    assert "80 x 24" in words


def test_a_digest_needs_no_window(tmp_path: Path) -> None:
    with Terminal(drills("digest", "--folder", str(tmp_path)), columns=40, lines=10) as terminal:
        assert terminal.end() == 0


@pytest.mark.parametrize(
    ("arguments", "word"),
    [
        (("--week", "2026-48"), "2026-48"),
        (("--week", "2026-W54"), "2026-W54"),
        (("--from", "2026-02-30", "--to", "2026-03-01"), "2026-02-30"),
        (("--from", "2026-03-02"), "--to"),
        (("--from", "2026-03-02", "--to", "2026-03-01"), "after"),
        (("--week", "2026-W01", "--from", "2026-03-02", "--to", "2026-03-03"), "only one of them"),
    ],
)
def test_a_wrong_span_of_days_is_said(
    tmp_path: Path, arguments: tuple[str, ...], word: str
) -> None:
    assert word in one_sentence(run("digest", *arguments, folder=tmp_path), 2)


@pytest.mark.parametrize("kind", ["text", "html", "json", "csv"])
def test_a_digest_comes_in_every_form(tmp_path: Path, kind: str) -> None:
    done = run("digest", "--format", kind, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    out = tmp_path / "out"
    assert run("digest", "--format", kind, "--out", str(out), folder=tmp_path).returncode == 0
    assert out.read_text(encoding="utf-8").strip() == done.stdout.strip()


def test_a_digest_file_that_cannot_be_written_is_said(tmp_path: Path) -> None:
    out = tmp_path / "nowhere" / "week.html"
    line = one_sentence(run("digest", "--format", "html", "--out", str(out), folder=tmp_path), 1)
    assert "week.html" in line


def test_pictures_go_to_the_terminal_and_to_files(tmp_path: Path) -> None:
    done = run("picture", "push", "nurse", "baker", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "\x1b[" in done.stdout
    for name in ("one.png", "one.svg"):
        place = tmp_path / name
        made = run("picture", "cup", "behind", "box", "--out", str(place), folder=tmp_path)
        assert made.returncode == 0, made.stderr
        assert place.stat().st_size > 500
    line = one_sentence(run("picture", "push", "nurse", "bakr", folder=tmp_path), 2)
    assert "baker" in line
    assert "in ball" in one_sentence(run("picture", "cup", "in", "ball", folder=tmp_path), 2)
    assert ".png" in one_sentence(
        run("picture", "cup", "on", "box", "--out", str(tmp_path / "a.gif"), folder=tmp_path), 2
    )


def test_the_cast_and_the_verbs_are_drawn_without_an_argument(tmp_path: Path) -> None:
    done = run("picture", "--cells", "24x8", folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "nurse" in done.stdout


def test_a_rehearsal_shows_a_digest_marked_as_simulated(tmp_path: Path) -> None:
    arguments = ("rehearse", "--weeks", "2", "--seed", "4", "--start", "2026-01-05")
    done = run(*arguments, folder=tmp_path)
    assert done.returncode == 0, done.stderr
    assert "SIMULATED" in done.stdout
    assert run(*arguments, folder=tmp_path).stdout == done.stdout
    into = tmp_path / "demo"
    assert run(*arguments, "--into", str(into), folder=tmp_path).returncode == 0
    again = run("digest", "--week", "2026-W03", folder=into)
    assert again.returncode == 0
    assert "SIMULATED" in again.stdout
    assert "not an empty folder" in one_sentence(
        run(*arguments, "--into", str(into), folder=tmp_path), 2
    )
    assert "slow-but-steady" in one_sentence(
        run("rehearse", "--profile", "slow-but-stead", folder=tmp_path), 2
    )


def test_records_are_verified_and_exported(tmp_path: Path) -> None:
    into = tmp_path / "demo"
    run("rehearse", "--weeks", "1", "--seed", "4", "--into", str(into), folder=tmp_path)
    assert run("records", "verify", folder=into).returncode == 0
    lines = run("records", "export", folder=into).stdout.splitlines()
    assert len(lines) > 50
    assert all(json.loads(line) for line in lines)
    record = next((into / "records").glob("*.jsonl"))
    data = bytearray(record.read_bytes())
    data[len(data) // 2] ^= 0x20
    record.write_bytes(data)
    done = run("records", "verify", folder=into)
    assert done.returncode == 1
    assert record.name in done.stderr


def test_the_practice_folder_is_private(tmp_path: Path) -> None:
    into = tmp_path / "demo"
    run("rehearse", "--weeks", "1", "--seed", "4", "--into", str(into), folder=tmp_path)
    assert stat.S_IMODE((into / "records").stat().st_mode) == 0o700
    assert {stat.S_IMODE(path.stat().st_mode) for path in (into / "records").glob("*.jsonl")} == {
        0o600
    }


def test_check_says_what_works(tmp_path: Path) -> None:
    done = run("check", folder=tmp_path)
    assert done.returncode == 0, done.stdout
    for name in ("content", "plan", "folder", "voice", "terminal"):
        assert name in done.stdout
    plan = tmp_path / "plan.toml"
    plan.write_text("format = 1\n", encoding="utf-8")
    broken = run("check", folder=tmp_path)
    assert broken.returncode == 1
    assert "plan.toml" in broken.stdout


def test_the_guide_is_read_by_chapter(tmp_path: Path) -> None:
    contents = run("guide", folder=tmp_path)
    assert contents.returncode == 0
    keys = [line.split()[0] for line in contents.stdout.splitlines() if line.startswith("  ")]
    assert len(keys) >= 5
    for key in keys:
        assert run("guide", key, folder=tmp_path).stdout.startswith("# ")
    assert keys[0] in one_sentence(run("guide", keys[0] + "x", folder=tmp_path), 2)


def test_a_reader_that_stops_early_meets_no_error(tmp_path: Path) -> None:
    command = " ".join(drills("items", "--kind", "match", "--count", "400", "--seed", "1"))
    done = subprocess.run(
        ["bash", "-c", f"set -o pipefail; {command} | head -1"],  # noqa: S607
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert done.stderr == ""


def test_a_changed_plan_needs_a_new_version(tmp_path: Path) -> None:
    plan, folder = tmp_path / "mine.toml", tmp_path / "folder"
    run("plan", "new", "--out", str(plan), folder=folder)
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    text = plan.read_text(encoding="utf-8").replace("trials = 10", "trials = 4")
    plan.write_text(text, encoding="utf-8")
    assert "version = 2" in one_sentence(run("plan", "use", str(plan), folder=folder), 2)
    plan.write_text(text.replace("version = 1 ", "version = 2 "), encoding="utf-8")
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    plan.write_text(text, encoding="utf-8")  # the first version had other trials
    assert "version = 3" in one_sentence(run("plan", "use", str(plan), folder=folder), 2)


def test_a_good_plan_takes_the_place_of_one_that_cannot_be_read(tmp_path: Path) -> None:
    plan, folder = tmp_path / "mine.toml", tmp_path / "folder"
    run("plan", "new", "--out", str(plan), folder=folder)
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    (folder / "plan.toml").write_bytes(b"\xff\xfe")
    assert run("plan", "use", str(plan), folder=folder).returncode == 0
    assert (folder / "plan.toml").read_bytes() == plan.read_bytes()


@pytest.mark.parametrize(
    ("language", "number"),
    [
        ("en_US.UTF-8", "911"),
        ("en_GB.UTF-8", "999"),
        ("en_AU.UTF-8", "your emergency number"),
        ("C", "your emergency number"),
    ],
)
def test_an_emergency_number_is_never_guessed(tmp_path: Path, language: str, number: str) -> None:
    environment = {"LC_ALL": language, "LC_MESSAGES": language, "LANG": language}
    done = run("plan", "show", folder=tmp_path, environment=environment)
    assert f"Emergency number: {number}" in done.stdout


def test_more_than_prescribed_is_refused(tmp_path: Path) -> None:
    with Terminal(drills("practice", "--minutes", "60", "--folder", str(tmp_path))) as terminal:
        assert terminal.end() == 2
        assert "25 minutes" in terminal.text


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
@pytest.mark.parametrize("command", ["guide", "digest"])
def test_a_full_device_is_said(tmp_path: Path, command: str) -> None:
    with Path("/dev/full").open("w", encoding="utf-8") as full:
        done = subprocess.run(
            drills(command, "--folder", str(tmp_path)),
            stdout=full,
            stderr=subprocess.PIPE,
            text=True,
            check=False,
        )
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    assert "space" in done.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ("digest", "--from", "0001-01-01", "--to", "2026-01-01"),
        ("digest", "--week", "0001-W01"),
        ("rehearse", "--start", "9999-12-30"),
    ],
    ids=" ".join,
)
def test_a_day_outside_all_practice_is_said(tmp_path: Path, arguments: tuple[str, ...]) -> None:
    one_sentence(run(*arguments, folder=tmp_path), 2)
