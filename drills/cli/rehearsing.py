"""`drills rehearse`: a simulated patient practises through the real program."""

from __future__ import annotations

import argparse
from datetime import date, timedelta
from pathlib import Path

from drills import __version__, wiring
from drills.cli.names import nearest
from drills.cli.types import any_number, day, positive_number
from drills.core.ports import Records
from drills.core.problems import BadInput
from drills.digest import render
from drills.ledger import open_ledger, prepare
from drills.rehearsal import MemoryRecords, Rehearsal
from drills.speech import start_voice

MOST_WEEKS = 104


def add(rehearse: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    rehearse.add_argument("--weeks", type=positive_number, default=4, metavar="N")
    rehearse.add_argument("--profile", default="slow-but-steady", metavar="NAME")
    rehearse.add_argument("--into", metavar="FOLDER", help="keep the records in an empty folder")
    rehearse.add_argument(
        "--start", type=day, metavar="DAY", help="first day (so that the last week is last week)"
    )
    rehearse.add_argument("--seed", type=any_number, metavar="N", help="the same patient again")
    rehearse.set_defaults(action=rehearse_weeks)


def rehearse_weeks(options: argparse.Namespace) -> int:
    if options.weeks > MOST_WEEKS:
        raise BadInput(f"--weeks {options.weeks} is too many. Give 1 to {MOST_WEEKS}.")
    profiles = wiring.profiles()
    if options.profile not in profiles:
        raise BadInput(
            f"There is no profile {options.profile!r}. {nearest(options.profile, profiles)}"
        )
    plan = wiring.plan_in_force(wiring.practice_folder(options.folder))
    first = options.start or _monday_before(wiring.SystemClock().now().date(), options.weeks)
    records: Records = MemoryRecords()
    if options.into:
        folder = Path(options.into).expanduser()
        if folder.exists() and (not folder.is_dir() or any(folder.iterdir())):
            raise BadInput(f"{folder} is not an empty folder. Name a new one with --into.")
        prepare(folder)
        records = open_ledger(folder)
    rehearsal = Rehearsal(
        plan=plan,
        material=wiring.material(plan.locale),
        records=records,
        voice=start_voice(on=False),
        guide=(),
        program=__version__,
        profile=profiles[options.profile],
        first=first,
        seed=wiring.new_seed() if options.seed is None else options.seed,
    )
    try:
        home = rehearsal.run(options.weeks)
        last_monday = first + timedelta(weeks=options.weeks - 1)
        print(render(home.digest(last_monday, last_monday + timedelta(days=6)), "text"))
    finally:
        records.close()
    if options.into:
        week = f"{last_monday:%G-W%V}"
        print(f"\nThe records are kept. See them: drills digest --folder {folder} --week {week}")
    return 0


def _monday_before(today: date, weeks: int) -> date:
    return today - timedelta(days=today.weekday(), weeks=weeks)
