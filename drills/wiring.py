"""The one place that builds things: finds the folders, reads the clock, seeds chance."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import datetime
from functools import cache
from pathlib import Path
from random import SystemRandom
from tempfile import TemporaryDirectory
from typing import TYPE_CHECKING

from platformdirs import user_data_path

from drills import __version__, catalogue
from drills.core.cells import Encoding
from drills.core.plans import LOCALES
from drills.core.problems import BadInput, Failure, Problem
from drills.ledger import TherapistFiles, open_ledger, plan_path, prepare, put_plan_in_force
from drills.practice.home import Home
from drills.speech import start_voice

if TYPE_CHECKING:
    from drills.core.material import Chapter, Material
    from drills.core.plans import Plan
    from drills.core.ports import Records, Voice
    from drills.core.profiles import Profile
    from drills.core.settings import Section

PACKAGE = Path(__file__).parent
YOUR_NUMBER = "your emergency number"
NO_NUMBER = "The plan has no emergency number yet. Write the local one."
VOICES = {"en-US": "en-us", "en-GB": "en-gb"}


class SystemClock:
    def now(self) -> datetime:
        return datetime.now().astimezone()

    def monotonic_ms(self) -> float:
        return time.monotonic() * 1000


def new_seed() -> int:
    """A seed that nobody can foretell, 31 bits."""
    return SystemRandom().getrandbits(31)


def shipped(name: str) -> Path:
    """The folder `content` or `caregiver_guide`: inside the installed package or beside it.

    Raises: Failure when the installation has lost it.
    """
    for place in (PACKAGE / name, PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise Failure(f"The folder {name} is missing from this installation. Install drills again.")


def practice_folder(chosen: str | None, environment: Mapping[str, str] = os.environ) -> Path:
    """Where plan and records live: `--folder`, else DRILLS_HOME, else the user's data folder."""
    named = chosen or environment.get("DRILLS_HOME")
    return Path(named).expanduser() if named else user_data_path("drills", appauthor=False)


def known_locale(environment: Mapping[str, str] = os.environ) -> str | None:
    """The content locale that is the system's own; None for any other region."""
    for name in ("LC_ALL", "LC_MESSAGES", "LANG"):
        tag = environment.get(name, "").partition(".")[0].replace("_", "-")
        if tag in LOCALES:
            return tag
    return None


def locale_of(environment: Mapping[str, str] = os.environ) -> str:
    """The content locale for this system; en-US where there is none of its own."""
    return known_locale(environment) or LOCALES[0]


def encoding_of(environment: Mapping[str, str] = os.environ) -> Encoding:
    """The picture characters that this terminal is sure to have; DRILLS_PICTURES overrides.

    Raises: BadInput for an unknown DRILLS_PICTURES.
    """
    chosen = environment.get("DRILLS_PICTURES")
    if chosen:
        try:
            return Encoding(chosen)
        except ValueError:
            raise BadInput(
                f"DRILLS_PICTURES is {chosen!r}. Set it to "
                f"{' or '.join(encoding.value for encoding in Encoding)}, or leave it out."
            ) from None
    old_windows = sys.platform == "win32" and "WT_SESSION" not in environment
    # The Linux console and Apple's terminal lack or misplace the finer block characters.
    plain = environment.get("TERM") == "linux" or (
        environment.get("TERM_PROGRAM") == "Apple_Terminal"
    )
    if plain and environment.get("TERM") == "linux" and not environment.get("COLORTERM"):
        return Encoding.SIXTEEN
    return Encoding.HALVES if old_windows or plain else Encoding.BLOCKS


def starter_plan(locale: str) -> Plan:
    """The plan that is in force until the therapist has written one."""
    return catalogue.in_locale(
        catalogue.read_plan(shipped("content") / "plans" / "starter.toml"), locale
    )


@cache
def material(locale: str) -> Material:
    """The content of a locale, read once.   Raises: BadInput with every fault."""
    return catalogue.load(shipped("content"), locale=locale)


def word_counts() -> Mapping[str, float]:
    """Small word -> its share of all that are said."""
    return catalogue.read_word_counts(shipped("content"))


def guide() -> tuple[Chapter, ...]:
    return catalogue.load_guide(shipped("caregiver_guide"))


def read_plan(path: Path) -> Plan:
    """The plan in `path`, its form checked and no more."""
    return catalogue.read_plan(path)


def checked_plan(path: Path, *, sets: bool = True) -> Plan:
    """The plan in `path`.   sets: False passes over those that it has.

    Raises: BadInput with every fault of the file and every name that the content lacks.
    """
    from drills.practice.dealing import check_plan  # noqa: PLC0415 - the first screen needs none

    plan = catalogue.read_plan(path, sets=sets)
    problems = [
        Problem(
            where=str(path),
            line=catalogue.line_in_plan(path, problem.where),
            message=f"{problem.where}: {problem.message}",
            mend=problem.mend,
        )
        for problem in check_plan(plan, material(plan.locale))
    ]
    if problems:
        raise BadInput(problems)
    return plan


class PlanFiles:
    """The plan of one practice folder; `core.ports.PlanDesk`.

    closed: why nothing may be written now, a plain clause; empty when it may.
    """

    def __init__(self, folder: Path, *, closed: Callable[[], str]) -> None:
        self._folder = folder
        self._closed = closed

    @property
    def sections(self) -> tuple[Section, ...]:
        from drills.catalogue.plan_settings import SECTIONS  # noqa: PLC0415 - only to change a plan

        return SECTIONS

    def faults(self, plan: Plan) -> tuple[str, ...]:
        if plan.safety.emergency_number == YOUR_NUMBER:
            # Nobody has written one yet; what else is wrong is told beside it.
            dialled = replace(plan.safety, emergency_number="000")
            return (NO_NUMBER, *self.faults(replace(plan, safety=dialled)))
        # Through a file, so that it is judged by the very rules that a plan from elsewhere is.
        with TemporaryDirectory() as place:
            path = Path(place) / "plan.toml"
            path.write_text(catalogue.plan_text(plan), encoding="utf-8")
            try:
                checked_plan(path)
            except BadInput as bad:
                return tuple(f"{each.message} {each.mend}".strip() for each in bad.problems)
        return ()

    def put_in_force(self, plan: Plan) -> None:
        if reason := self._closed():
            raise Failure(f"The plan cannot be changed now: {reason}.")
        if faults := self.faults(plan):
            raise BadInput("\n".join(faults))
        put_plan_in_force(self._folder, catalogue.plan_text(plan))


def plan_in_force(folder: Path) -> Plan:
    """The folder's plan, else the starter plan."""
    path = plan_path(folder)
    if path.exists():
        return checked_plan(path)
    plan = starter_plan(locale_of())
    if known_locale() is None:
        # A wrong number on the card of stroke signs is worse than none.
        unknown = replace(plan.safety, emergency_number=YOUR_NUMBER)
        plan = replace(plan, safety=unknown)
    return plan


def open_voice(plan: Plan, environment: Mapping[str, str] = os.environ) -> Voice:
    """The voice of the plan; DRILLS_VOICE=off keeps it silent."""
    silent = environment.get("DRILLS_VOICE") == "off" or not plan.speech.read_aloud
    return start_voice(voice=VOICES[plan.locale], on=not silent)


def home(
    folder: Path, *, records: Records | None = None, speak: bool = True, seed: int | None = None
) -> Home:
    """Everything about one practice folder.

    records: instead of the folder's own.   speak: False for commands that need no voice.
    seed: of every session dealt; None for a new one each.
    Raises: BadInput for a broken plan or content, Failure for a folder that cannot be used.
    """
    plan = plan_in_force(folder)
    if records is None:
        prepare(folder)
        records = open_ledger(folder)
    return Home(
        plan=plan,
        material=lambda: material(plan.locale),
        records=records,
        clock=SystemClock(),
        voice=open_voice(plan) if speak else start_voice(on=False),
        guide=guide,
        program=__version__,
        folder=folder,
        plan_desk=PlanFiles(folder, closed=lambda: records.reason),
        therapist_log=TherapistFiles(folder, closed=lambda: records.reason),
        new_seed=new_seed if seed is None else lambda: seed,
    )


def profiles() -> Mapping[str, Profile]:
    """The simulated patients that content describes, by name."""
    return catalogue.load_profiles(shipped("content") / "profiles.toml")
