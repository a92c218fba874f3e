"""Keys, sealed digests and the caseload as a person types the commands."""

from __future__ import annotations

import json
import os
import re
import stat
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills.cli.run import run
from drills.cli.unsealing import keys_in
from drills.sealing import new_keys, seal
from tests.sealing.test_sealed import VECTORS

DAYS = ("--from", "2026-11-16", "--to", "2026-11-22")


def told(capsys: pytest.CaptureFixture[str], *arguments: str, code: int = 2) -> str:
    """What a command says on the error side, in one line and with nothing else."""
    capsys.readouterr()
    assert run(arguments) == code
    out, err = capsys.readouterr()
    assert out == ""
    (line,) = err.splitlines()
    return line.removeprefix("drills: ")


@pytest.fixture
def key(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> tuple[Path, str]:
    """The therapist's key file, and the public key that was printed."""
    path = tmp_path / "key.txt"
    assert run(["plan", "key", "--out", str(path)]) == 0
    (public,) = re.findall(r'^recipient = "(age1\w+)"$', capsys.readouterr().out, re.MULTILINE)
    return path, public


@pytest.fixture
def practice(tmp_path: Path, key: tuple[Path, str]) -> Path:
    """A practice folder whose plan names the person by a code and holds the public key."""
    folder, plan = tmp_path / "practice", tmp_path / "plan.toml"
    assert run(["plan", "new", "--out", str(plan)]) == 0
    text = plan.read_text(encoding="utf-8")
    text = re.sub(r'^code = ""', 'code = "K-17"', text, flags=re.MULTILINE)
    text = re.sub(r'^recipient = ""', f'recipient = "{key[1]}"', text, flags=re.MULTILINE)
    plan.write_text(text, encoding="utf-8")
    assert run(["plan", "use", str(plan), "--folder", str(folder)]) == 0
    return folder


@pytest.fixture
def sealed(tmp_path: Path, practice: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    name = tmp_path / "week"
    assert run(["digest", "--seal", "--out", str(name), *DAYS, "--folder", str(practice)]) == 0
    capsys.readouterr()
    return name.with_suffix(".age")


# Keys


def test_the_private_key_is_written_for_its_owner_alone_and_never_shown(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "key.txt"
    assert run(["plan", "key", "--out", str(path)]) == 0
    out = capsys.readouterr().out
    assert "SECRET" not in out
    assert keys_in(str(path))[0] not in out
    assert "Give it to nobody." in out
    if os.name == "posix":
        assert stat.S_IMODE(path.stat().st_mode) == 0o600


def test_a_key_is_never_written_over(
    key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    before = key[0].read_bytes()
    assert "is there already" in told(capsys, "plan", "key", "--out", str(key[0]))
    assert key[0].read_bytes() == before


def test_a_key_that_cannot_be_written_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "nowhere" / "key.txt"
    assert "could not be written" in told(capsys, "plan", "key", "--out", str(out), code=1)


def test_a_plan_with_a_bad_key_or_code_is_refused_with_its_line(
    tmp_path: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    plan = tmp_path / "plan.toml"
    assert run(["plan", "new", "--out", str(plan)]) == 0
    good = plan.read_text(encoding="utf-8")
    lines = good.splitlines()
    at = next(number for number, line in enumerate(lines, 1) if line.startswith("recipient"))
    private = keys_in(str(key[0]))[0]
    for value, says in (
        (key[1][:-1], "This public key is damaged, or of another kind."),
        (private, "This is the private key, which nobody else may see."),
        ("somebody", "This is no public key."),
    ):
        text = good.replace('recipient = ""', f'recipient = "{value}"')
        plan.write_text(text, encoding="utf-8")
        line = told(capsys, "plan", "check", str(plan))
        assert line.startswith(f"{plan}:{at}: `recipient`: {says}")
        assert private not in line
    plan.write_text(good.replace('code = ""', 'code = "Two Words"'), encoding="utf-8")
    assert ": `code` is not a code. " in told(capsys, "plan", "check", str(plan))


# Sealing


def test_the_family_reads_the_page_and_the_therapist_opens_the_same(
    tmp_path: Path, practice: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    name = tmp_path / "week.age"
    assert run(["digest", "--seal", "--out", str(name), *DAYS, "--folder", str(practice)]) == 0
    out = capsys.readouterr().out
    page = name.with_suffix(".html")
    assert out.index(str(page)) < out.index(f"To send: {name}")
    assert "each answer behind it" in out
    read = page.read_text(encoding="utf-8")
    assert b"K-17" not in name.read_bytes()

    opened = tmp_path / "opened.html"
    key_file = str(key[0])
    assert run(["unseal", str(name), "--key", key_file, "--out", str(opened)]) == 0
    assert opened.read_text(encoding="utf-8").endswith(read)
    if os.name == "posix":
        assert stat.S_IMODE(opened.stat().st_mode) == 0o600
    capsys.readouterr()
    assert run(["unseal", str(name), "--key", key_file, "--format", "json"]) == 0
    value = json.loads(capsys.readouterr().out)
    assert value.pop("page") == read
    assert value["person"] == "K-17"
    assert run(["digest", "--format", "json", *DAYS, "--folder", str(practice)]) == 0
    plain = json.loads(capsys.readouterr().out)
    assert value.keys() == plain.keys()
    assert (value["plan"], value["dose"]) == (plain["plan"], plain["dose"])


def test_the_page_alone_can_be_sealed(
    tmp_path: Path, practice: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    name = tmp_path / "week"
    arguments = ["digest", "--seal", "--format", "html", "--out", str(name), *DAYS]
    assert run([*arguments, "--folder", str(practice)]) == 0
    assert "each answer" not in capsys.readouterr().out
    sealed, page, opened = (name.with_suffix(end) for end in (".age", ".html", ".opened"))
    assert run(["unseal", str(sealed), "--key", str(key[0]), "--out", str(opened)]) == 0
    assert opened.read_text(encoding="utf-8").endswith(page.read_text(encoding="utf-8"))
    line = told(capsys, "unseal", str(sealed), "--key", str(key[0]), "--format", "json")
    assert "holds a page to read" in line


def test_without_a_key_in_the_plan_it_says_how_to_get_one(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = str(tmp_path / "week")
    line = told(capsys, "digest", "--seal", "--out", out, "--folder", str(tmp_path / "practice"))
    assert line.startswith("The plan in force has no public key to seal to.")
    assert "drills plan key" in line
    assert list(tmp_path.glob("week*")) == []


def test_sealing_needs_a_name_and_seals_no_text(
    tmp_path: Path, practice: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    where = ("--folder", str(practice))
    assert "--out NAME" in told(capsys, "digest", "--seal", *where)
    line = told(capsys, "digest", "--seal", "--format", "csv", "--out", "x", *where)
    assert "Leave --format out" in line
    lost = str(tmp_path / "nowhere" / "week")
    line = told(capsys, "digest", "--seal", "--out", lost, *where, code=1)
    assert "could not be written" in line


def test_a_folder_is_no_name_for_the_two_files(
    tmp_path: Path, practice: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for out in ("", ".", "..", os.path.sep, str(tmp_path), f"{tmp_path}{os.path.sep}"):
        line = told(capsys, "digest", "--seal", "--out", out, "--folder", str(practice))
        assert line == f"--out {out}: This is a folder. Add a name: --out {Path(out) / 'week'}."
    assert not list(tmp_path.parent.glob("*.age"))


# Opening


@pytest.mark.parametrize(
    ("make", "says"),
    [
        (lambda data: b"", "is empty"),
        (lambda data: data[:-1], "is damaged"),
        (lambda data: data[:300] + bytes([data[300] ^ 1]) + data[301:], "damaged"),
        (lambda data: b"PK\x03\x04", "is not a sealed file"),
        (lambda data: b"x" * 16_000_001, "is larger than 16 MB"),
        (lambda data: seal(b"secret", new_keys().public), "does not open with this key"),
    ],
    ids=["empty", "cut", "changed", "foreign", "huge", "to another key"],
)
def test_what_cannot_be_opened_is_told_in_one_sentence(
    sealed: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str], make, says: str
) -> None:
    sealed.write_bytes(make(sealed.read_bytes()))
    line = told(capsys, "unseal", str(sealed), "--key", str(key[0]), "--out", "never.html")
    assert line.startswith(str(sealed))
    assert says in line


def test_something_else_sealed_to_the_same_key_is_told(
    sealed: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    for content in (b"a letter", b"\x00\xff", b'{"some": "json"}', b""):
        sealed.write_bytes(seal(content, key[1]))
        line = told(capsys, "unseal", str(sealed), "--key", str(key[0]), "--out", "never.html")
        assert re.search(r"digest\.|Ask for it again\.$", line), line


def test_what_is_no_private_key_is_told(
    sealed: Path, tmp_path: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    other = tmp_path / "other.txt"
    for text, says in (
        (key[1], "This is the public key"),
        ("hello", "This is no private key"),
        ("", "holds no key"),
        ("#" * 100_001, "is larger than 0.1 MB"),
    ):
        other.write_text(text, encoding="ascii")
        line = told(capsys, "unseal", str(sealed), "--key", str(other))
        assert line.startswith(str(other))
        assert says in line
    assert "is not there" in told(capsys, "unseal", str(sealed), "--key", str(tmp_path / "no"))
    assert "is a folder" in told(capsys, "unseal", str(sealed), "--key", str(tmp_path))
    assert "is not there" in told(capsys, "unseal", str(tmp_path / "no"), "--key", str(key[0]))


def test_nothing_is_written_over_when_one_is_opened(
    sealed: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    page = sealed.with_suffix(".html")
    before = page.read_bytes()
    assert "is there already" in told(capsys, "unseal", str(sealed), "--key", str(key[0]))
    assert page.read_bytes() == before
    page.unlink()
    assert run(["unseal", str(sealed), "--key", str(key[0])]) == 0
    assert page.read_bytes().endswith(before)


# Caseload


def listed(capsys: pytest.CaptureFixture[str], *arguments: str) -> dict:
    capsys.readouterr()
    assert run(["caseload", *arguments, "--format", "json"]) == 0
    out, err = capsys.readouterr()
    assert err == ""
    return json.loads(out)


def test_the_caseload_reads_plain_and_sealed_digests_and_lists_the_rest(
    tmp_path: Path,
    practice: Path,
    sealed: Path,
    key: tuple[Path, str],
    capsys: pytest.CaptureFixture[str],
) -> None:
    folder = tmp_path / "cases"
    folder.mkdir()
    sealed.rename(folder / "new.AGE")
    earlier = ("--from", "2026-11-09", "--to", "2026-11-15")
    arguments = ["digest", "--format", "json", "--out", str(folder / "old.json"), *earlier]
    assert run([*arguments, "--folder", str(practice)]) == 0
    (folder / "bad.json").write_bytes(b"{")
    (folder / "letter.age").write_bytes(seal(b"a letter", key[1]))
    (folder / "week.html").write_bytes(b"a page")
    (folder / "more.json").mkdir()
    (folder / "link.json").symlink_to(folder / "old.json")

    load = listed(capsys, str(folder), "--key", str(key[0]))
    assert [(each["code"], each["file"]) for each in load["people"]] == [("K-17", "new.AGE")]
    assert load["older"] == 1
    assert load["left_alone"] == 3
    assert [each["file"] for each in load["not_read"]] == ["bad.json", "letter.age"]

    without = listed(capsys, str(folder))
    assert [each["file"] for each in without["people"]] == ["old.json"]
    (needs,) = [each for each in without["not_read"] if each["file"] == "new.AGE"]
    assert needs["message"] == "new.AGE is sealed. Give the key file with --key."
    assert run(["caseload", str(folder), "--key", str(key[0])]) == 0
    assert "K-17, Starter plan" in capsys.readouterr().out


def test_a_folder_without_digests_and_no_folder_are_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["caseload", str(tmp_path)]) == 0
    assert "There is no digest in this folder" in capsys.readouterr().out
    assert "is no folder that can be read" in told(capsys, "caseload", str(tmp_path / "no"))
    (tmp_path / "file").write_bytes(b"")
    assert "is no folder that can be read" in told(capsys, "caseload", str(tmp_path / "file"))


def test_a_bad_key_file_stops_the_caseload_before_it_reads(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "key").write_bytes(b"hello")
    assert "no private key" in told(
        capsys, "caseload", str(tmp_path), "--key", str(tmp_path / "key")
    )


def test_the_published_vectors_in_a_folder_stop_nothing(
    tmp_path: Path, key: tuple[Path, str], capsys: pytest.CaptureFixture[str]
) -> None:
    for name, vector in VECTORS.items():
        (tmp_path / f"{name}.age").write_bytes(vector.partition(b"\n\n")[2])
    load = listed(capsys, str(tmp_path), "--key", str(key[0]))
    assert load["people"] == []
    assert len(load["not_read"]) == len(VECTORS)


@given(
    st.lists(st.tuples(st.sampled_from((".json", ".age")), st.booleans(), st.binary()), max_size=4)
)
@settings(
    suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None, max_examples=60
)
def test_any_bytes_in_the_folder_are_listed_and_never_trace_back(
    tmp_path: Path,
    key: tuple[Path, str],
    capsys: pytest.CaptureFixture[str],
    files: list[tuple[str, bool, bytes]],
) -> None:
    folder = tmp_path / "cases"
    folder.mkdir(exist_ok=True)
    for old in folder.iterdir():
        old.unlink()
    for number, (ending, is_sealed, data) in enumerate(files):
        content = seal(data, key[1]) if is_sealed else data
        (folder / f"{number}{ending}").write_bytes(content)
    load = listed(capsys, str(folder), "--key", str(key[0])) if files else {"not_read": []}
    assert len(load["not_read"]) == len(files)


@pytest.mark.skipif(os.name != "posix", reason="other systems refuse such names")
def test_a_file_name_that_a_terminal_may_act_on_is_shown_inert(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for name in (b"\x1b]0;x\x07.json", b"half-\xff.json", b"two\nlines.age"):
        (Path(os.fsdecode(os.fsencode(tmp_path) + b"/" + name))).write_bytes(b"hello")
    assert run(["caseload", str(tmp_path)]) == 0
    out = capsys.readouterr().out
    assert "\x1b" not in out
    assert "\\x1b]0;x\\x07.json is damaged" in out
    assert len(listed(capsys, str(tmp_path))["not_read"]) == 3
