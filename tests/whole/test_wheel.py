"""The wheel, built and installed into a new environment, and a session played from it."""

from __future__ import annotations

import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

from tests.terminal import ROOT, Terminal
from tests.whole.player import (
    TRIALS,
    Player,
    assert_all_kept,
    kept_trials,
    put_plan_in_force,
    run,
)


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("wheel")
    subprocess.run(
        [
            *(sys.executable, "-m", "pip", "wheel", "--quiet", "--no-deps"),
            *("--no-build-isolation", "--wheel-dir", str(out), str(ROOT)),
        ],
        check=True,
        capture_output=True,
        text=True,
    )
    (found,) = out.glob("*.whl")
    return found


@pytest.fixture(scope="module")
def program(wheel: Path, tmp_path_factory: pytest.TempPathFactory) -> list[str]:
    """The program from the wheel alone; what it depends on is borrowed, the sources are not."""
    place = tmp_path_factory.mktemp("environment")
    venv.create(place, with_pip=True, symlinks=True)
    python = place / "bin" / "python"
    subprocess.run(
        [str(python), "-m", "pip", "install", "--quiet", "--no-deps", "--no-index", str(wheel)],
        check=True,
        capture_output=True,
        text=True,
    )
    site = sysconfig.get_path("purelib", vars={"base": str(place)})
    # A path file in a borrowed folder is not followed, so an editable install stays unseen.
    Path(site, "borrowed.pth").write_text(sysconfig.get_path("purelib") + "\n", encoding="utf-8")
    return [str(place / "bin" / "drills")]


def test_the_wheel_holds_content_and_guide(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    for folder in ("content", "caregiver_guide"):
        shipped = {
            f"drills/{path.relative_to(ROOT).as_posix()}"
            for path in (ROOT / folder).rglob("*")
            if path.is_file()
        }
        assert shipped
        assert shipped <= set(names)
    assert "drills/tui/screens/trial.tcss" in names
    assert not [name for name in names if name.startswith("tests/")]


def test_a_session_from_the_wheel(program: list[str], tmp_path: Path) -> None:
    where = subprocess.run(
        [str(Path(program[0]).parent / "python"), "-c", "import drills; print(drills.__file__)"],
        check=True,
        capture_output=True,
        text=True,
        cwd=tmp_path,
    ).stdout
    assert str(ROOT) not in where
    folder = tmp_path / "practice"
    put_plan_in_force(folder, program)
    with Terminal([*program, "--folder", str(folder)]) as terminal:
        player = Player(terminal, seed=1)
        player.begin()
        player.play()
        player.finish()
        terminal.press("4")
        assert terminal.end() == 0
    trials = kept_trials(folder, program)
    assert len(trials) == TRIALS
    assert_all_kept(player.given, trials)
    assert "works" in run(program, "check", "--folder", str(folder))
