"""The rules of the house that no single room can hold."""

from __future__ import annotations

import re
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
ROOMS = sorted(path.name for path in (ROOT / "drills").iterdir() if (path / "__init__.py").exists())
MODULE_LINES = 300
TOP_LEVEL = {
    "README.md",
    "DEVELOPERS.md",
    "pyproject.toml",
    "drills",
    "content",
    "tests",
    "caregiver_guide",
}


def run_tool(*arguments: str) -> None:
    done = subprocess.run(
        [sys.executable, "-m", *arguments], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stdout + done.stderr


def tracked_files() -> list[str]:
    done = subprocess.run(
        ["git", "ls-files"],  # noqa: S607 - whichever git the developer has
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode != 0:
        pytest.skip("not a git checkout")
    return done.stdout.splitlines()


def test_ruff_finds_nothing() -> None:
    run_tool("ruff", "check", "--quiet", ".")


def test_every_file_is_formatted() -> None:
    run_tool("ruff", "format", "--check", "--quiet", ".")


def test_mypy_strict_finds_nothing() -> None:
    run_tool("mypy")


def test_imports_point_one_way() -> None:
    done = subprocess.run(
        [sys.executable, "-c", "from importlinter.cli import lint_imports_command as c; c()"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr


@pytest.mark.parametrize(
    "arguments",
    [
        ("digest",),
        ("digest", "--format", "json"),
        ("digest", "--format", "csv"),
        ("items", "--kind", "match", "--count", "1"),
        ("plan", "show"),
        ("guide",),
    ],
)
def test_commands_without_a_screen_never_load_textual_or_charts(
    arguments: tuple[str, ...], tmp_path: Path
) -> None:
    script = (
        "import sys; from drills.cli import run; "
        f"code = run([*{arguments!r}, '--folder', {str(tmp_path)!r}]); "
        "late = ('textual', 'rich', 'pyttsx3', 'matplotlib'); "
        "loaded = [name for name in late if name in sys.modules]; "
        "sys.exit(code if not loaded else f'loaded {loaded}')"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_modules_stay_small() -> None:
    long = [
        f"{path.relative_to(ROOT)}: {count}"
        for path in (ROOT / "drills").rglob("*.py")
        if (count := len(path.read_text(encoding="utf-8").splitlines())) > MODULE_LINES
    ]
    assert not long


def test_the_top_level_holds_the_frame_and_nothing_else() -> None:
    found = {name.split("/")[0] for name in tracked_files()}
    assert {name for name in found if not name.startswith(".")} == TOP_LEVEL


@pytest.mark.parametrize("room", ROOMS)
def test_every_room_says_where_it_is_and_who_tests_it(room: str) -> None:
    text = (ROOT / "drills" / room / "__init__.py").read_text(encoding="utf-8")
    assert text.startswith('"""')
    assert f"tests/{room}" in text


@pytest.mark.parametrize("room", ROOMS)
def test_the_guide_for_developers_names_every_room(room: str) -> None:
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert re.search(rf"`?{room}/", guide), room


def test_the_readme_names_every_command() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "drills", "--help"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    commands = re.findall(r"^    (\w+) +\S", done.stdout, re.MULTILINE)
    assert len(commands) >= 9
    assert [name for name in commands if f"drills {name}" not in readme] == []


def test_the_readme_and_the_checks_run_the_same_command() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    script = (ROOT / ".ci" / "run").read_text(encoding="utf-8")
    assert len(re.findall(r"^    python3 -m venv \.venv-test ", readme, re.MULTILINE)) == 1
    assert "README.md" in script


def test_every_ignored_lint_rule_has_its_reason() -> None:
    lines = (ROOT / "pyproject.toml").read_text(encoding="utf-8").splitlines()
    ignores = [line for line in lines if re.match(r'\s+"[A-Z]+\d+",', line)]
    assert ignores
    assert all("#" in line for line in ignores)
    assert tomllib.loads("\n".join(lines))["tool"]["mypy"]["strict"] is True


def test_no_machine_path_stands_in_the_repository() -> None:
    # Put together here, so that this file does not hold what it looks for.
    words = ["/" + "work/", "/" + "root/", "/" + "home/", "/" + "tmp/"]
    bad = []
    for name in tracked_files():
        path = ROOT / name
        if path.suffix in {".py", ".md", ".toml", ".tcss", ".j2", ".yaml", ""} and path.is_file():
            text = path.read_text(encoding="utf-8")
            bad += [f"{name}: {word}" for word in words if word in text]
    assert not bad
