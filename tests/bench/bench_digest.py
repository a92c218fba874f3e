"""The digest of a week out of a million trials, beside pandas and scipy over the exported file.

Run it: python -m pytest tests/bench/bench_digest.py -s
It makes a practice folder of 1,000,000 invented trials, about 1.2 GB, and their exports,
about 1.4 GB, in the folder for temporary files, and removes them.

Both sides start from files, and are timed in one run in processor time, so that what other
programs do is not counted; the time by the clock on the wall stands beside it. Here it is the
digest as text, in a program that is running and has opened the folder; there the measures from
what `drills records export` writes: JSON Lines, unless CSV is asked for, which is quicker to read.
That both find the same numbers is checked. The peer makes no more than these, while the digest also
tells dose, alerts, what is due and what is suggested.
"""

from __future__ import annotations

import gc
import json
import os
import shutil
import subprocess
import sys
import time
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from pathlib import Path
from random import Random
from statistics import median
from typing import Any

import numpy as np
import pytest
from scipy.stats import binom, median_abs_deviation
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from drills.catalogue import plan_text
from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import Entry, Trial
from drills.digest import Digest, render
from drills.digest.keeping import RETENTION_WEEKS
from drills.ledger import open_ledger
from drills.ledger.tables import export, export_csv
from drills.measures import latency, retention
from tests.bench.bench_ledger import OF_A_SESSION, TRIALS, home_in, make_years, place_of
from tests.ledger.made import START, made_session

pd = pytest.importorskip("pandas", reason="the peer of this benchmark is pandas: install it")

NAMES = ("active", "full-passive", "subject-cleft", "object-cleft", "locative")
GROUPS = ("push", "pull", "hit", "carry")
FOILS = ("reversal", "verb", "noun")
TOP_LEVEL = 4
TEMPLATES = 20
LIMIT_SECONDS, LIMIT_TIMES = 1.0, 20
ROUNDS, PEER_ROUNDS = 7, 3
LAST = date(2026, 11, 25)
FIRST = LAST - timedelta(days=6)
PLAN = Plan(
    name="Bench",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=NAMES, trials=OF_A_SESSION),),
)
COLUMNS = {
    **dict.fromkeys(("entry", "session", "target", "foil", "right_alone"), "category"),
    **dict.fromkeys(("effective_k", "cue_level_at_success", "latency_ms"), "float64"),
    "started_at": "str",
}

Numbers = dict[str, list[float]]


def varied(seed: int) -> list[Entry]:
    """An invented session of five constructions in four verb groups, two to four options each."""
    rng = Random(seed)
    entries = made_session("s0000000", trials=OF_A_SESSION)
    kept: dict[str, Trial] = {}
    for place, entry in enumerate(entries):
        if not isinstance(entry, Trial):
            continue
        if entry.trial in kept:
            # The second response, to what was asked at the first.
            before = kept[entry.trial]
            second = replace(entry.attempts[1], cue_level=rng.randint(1, TOP_LEVEL))
            changed = replace(before, at=entry.at, attempts=(*before.attempts, second), ended=True)
        else:
            number = rng.randrange(len(NAMES))
            options = 2 + number % 3
            wrong = [{**entry.asked.options[1], "foil": foil} for foil in FOILS[: options - 1]]
            # Every third is answered twice in the session that this is made from.
            choice = 0 if entry.attempts[0].right else rng.randint(1, options - 1)
            asked = replace(
                entry.asked,
                target=Target(kind=Kind.MATCH, name=NAMES[number], group=rng.choice(GROUPS)),
                construction=NAMES[number],
                options=(entry.asked.options[0], *wrong),
                effective_k=options,
                top_level=TOP_LEVEL,
            )
            took = round(rng.lognormvariate(8, 0.5))
            first = replace(entry.attempts[0], choice=choice, latency_ms=took)
            changed = replace(entry, asked=asked, attempts=(first,))
        kept[entry.trial] = entries[place] = changed
    return entries


def export_years(place: Path, sessions: list[list[Entry]]) -> None:
    """What `drills records export` writes of the folder, as JSON Lines and as CSV."""
    lines = ["\n".join(export(entries)) for entries in sessions]
    tables = ["\n".join(export_csv(entries)).partition("\n") for entries in sessions]
    numbers = sorted(range(TRIALS // OF_A_SESSION), key=lambda number: place_of(number)[2])
    for name, heading, texts in (
        ("export.jsonl", "", lines),
        ("export.csv", f"{tables[0][0]}\n", [rest for _, _, rest in tables]),
    ):
        with (place / name).open("w", encoding="utf-8") as out:
            out.write(heading)
            for number in numbers:
                new, session, _ = place_of(number)
                moved = texts[number % len(texts)].replace("2026-11-25T08:", new.decode())
                out.write(moved.replace("s0000000", session.decode()) + "\n")


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[Path, Path]]:
    place = tmp_path_factory.mktemp("digest")
    sessions = [varied(seed) for seed in range(TEMPLATES)]
    size = make_years(place / "practice", sessions)
    export_years(place, sessions)
    (place / "practice" / "plan.toml").write_text(plan_text(PLAN))
    of = {name: (place / name).stat().st_size / 1e9 for name in ("export.jsonl", "export.csv")}
    print(f"\n{TRIALS:,} trials, {size / 1e9:.2f} GB of records, exported in GB: {of}")
    yield place / "practice", place
    shutil.rmtree(place)


def test_the_export_is_the_folder_s(world: tuple[Path, Path]) -> None:
    folder, exported = world
    ledger = open_ledger(folder, elsewhere=())
    newest = ledger.entries(since=START - timedelta(days=3))
    ledger.close()
    for name, expected in (
        ("export.jsonl", list(export(newest))),
        ("export.csv", list(export_csv(newest))[1:]),
    ):
        with (exported / name).open("rb") as file:
            file.seek(-4_000_000, os.SEEK_END)
            tail = file.read().decode().splitlines()
        assert len(expected) > 4 * OF_A_SESSION
        assert tail[-len(expected) :] == expected


def here(digest: Digest) -> Numbers:
    found: Numbers = {}
    for line in digest.lines:
        assert line.change is not None
        assert line.change.interval is not None
        assert line.latency.median_ms is not None
        assert line.cues.mean_level is not None
        found[line.name] = [
            *(line.unaided.right, line.unaided.of, line.interval.low, line.interval.high),
            *(line.change.interval.low, line.change.interval.high),
            *(line.cues.mean_level, line.latency.median_ms, line.latency.slow),
            *(count for _, count in sorted(line.errors.items()) if count),
        ]
    assert digest.kept is not None
    found["kept right"] = [each.share.right for each in digest.kept.words]
    found["kept of"] = [each.share.of for each in digest.kept.words]
    return found


def frame_of_csv(exported: Path) -> Any:
    frame = pd.read_csv(
        exported / "export.csv", usecols=list(COLUMNS), dtype=COLUMNS, low_memory=False
    )
    frame = frame[frame["entry"] == "trial"]
    frame["right"] = frame["right_alone"] == "yes"
    return frame


def frame_of_lines(exported: Path) -> Any:
    """Line by line, which needs less memory and time than `pandas.read_json`."""
    rows: dict[str, tuple[Any, ...]] = {}
    with (exported / "export.jsonl").open(encoding="utf-8") as lines:
        for line in lines:
            entry = json.loads(line)
            if entry["entry"] != "trial":
                continue
            asked, attempts = entry["asked"], entry["attempts"]
            first = attempts[0]
            target = asked["target"]
            levels = [
                each["cue_level"]
                for each in attempts
                if each["right"] and each["cue_level"] < asked["top_level"]
            ]
            rows[entry["trial"]] = (
                f"{target['kind']}/{target['name']}/{target['group']}",
                asked["options"][first["choice"]]["foil"],
                first["right"] and first["cue_level"] == 0,
                asked["effective_k"],
                levels[0] if levels else None,
                first["latency_ms"],
                entry["started_at"],
            )
    columns = ("target", "foil", "right", "effective_k", "cue_level_at_success", "latency_ms")
    return pd.DataFrame(list(rows.values()), columns=[*columns, "started_at"])


def peer(frame: Any) -> Numbers:
    """The same measures by pandas, scipy and statsmodels, and the tails against guessing."""
    # The offset is one and the same, and the day turns at four.
    started = pd.to_datetime(frame["started_at"].str.slice(0, 19), format="ISO8601")
    frame["day"] = (started - pd.Timedelta(hours=4)).dt.normalize()
    frame["name"] = frame["target"].str.split("/").str[1]
    first, last = pd.Timestamp(FIRST), pd.Timestamp(LAST)
    week = frame[(frame["day"] >= first) & (frame["day"] <= last)]
    days = pd.Timedelta(days=7)
    before = frame[(frame["day"] >= first - days) & (frame["day"] < first)]
    earlier = before.groupby("name")["right"].agg(["sum", "count"])
    found: Numbers = {}
    for name, rows in week.groupby("name"):
        right, of = int(rows["right"].sum()), len(rows)
        was_right, was_of = (int(each) for each in earlier.loc[name])
        guess = 1 / rows["effective_k"].iloc[0]
        assert 0 <= binom.sf(right - 1, of, guess) <= 1 >= binom.cdf(right, of, guess) >= 0
        took = rows.loc[rows["right"], "latency_ms"]
        kept = took[took >= latency.TOO_SOON_MS]
        slow = kept.median() + 3 * 1.4826 * median_abs_deviation(kept)
        levels = rows["cue_level_at_success"].fillna(TOP_LEVEL)
        wrong = rows["foil"].value_counts()
        found[str(name)] = [
            *(right, of, *proportion_confint(right, of, method="wilson")),
            *confint_proportions_2indep(
                right, of, was_right, was_of, method="newcomb", compare="diff"
            ),
            *(levels.mean(), kept.median(), int((kept > slow).sum())),
            *(int(wrong[foil]) for foil in sorted(FOILS) if wrong.get(foil)),
        ]
    recent = frame[frame["day"] >= last - pd.Timedelta(weeks=RETENTION_WEEKS)]
    gap = recent.groupby("target", observed=True)["day"].diff().dt.days
    edges = [0, *retention.INTERVALS_DAYS, np.inf]
    step = pd.cut(gap, edges, right=False, labels=False)
    kept_by = recent["right"].groupby(step).agg(["sum", "count"])
    kept_by = kept_by.reindex(range(len(edges) - 1), fill_value=0).iloc[1:]
    found["kept right"], found["kept of"] = kept_by["sum"].tolist(), kept_by["count"].tolist()
    return found


@dataclass(frozen=True)
class Took:
    """Seconds of processor time, and by the clock on the wall."""

    own: float
    wall: float

    def __str__(self) -> str:
        return f"{self.own:.3f} s (wall {self.wall:.3f})"


def timed(work: Callable[[], Any]) -> tuple[Took, Any]:
    gc.collect()
    began = time.process_time(), time.perf_counter()
    found = work()
    return Took(time.process_time() - began[0], time.perf_counter() - began[1]), found


def middle(took: Sequence[Took]) -> Took:
    return Took(median(each.own for each in took), median(each.wall for each in took))


def test_a_week_s_digest_beside_pandas_over_the_export(
    world: tuple[Path, Path], material: Material
) -> None:
    folder, exported = world
    opening, home = timed(lambda: home_in(folder, material, PLAN))
    first, digest = timed(lambda: home.digest(FIRST, LAST))
    pairs = [timed(lambda: render(home.digest(FIRST, LAST), "text")) for _ in range(ROUNDS)]
    took = middle([one for one, _ in pairs])
    assert home.records.notices == ()
    starting, _ = timed(lambda: home.start(resume=False))
    home.close()
    command = [sys.executable, "-m", "drills", "--folder", str(folder)]
    command += ["digest", "--from", str(FIRST), "--to", str(LAST)]
    # Another version of the program makes its own checkpoint the first time.
    subprocess.run(command, capture_output=True, check=False)
    of_command, done = timed(
        lambda: subprocess.run(command, capture_output=True, text=True, check=False)
    )
    assert done.returncode == 0, done.stderr
    peers = {}
    for name, frame_of, rounds in (
        ("JSON Lines", frame_of_lines, 1),
        ("CSV", frame_of_csv, PEER_ROUNDS),
    ):
        theirs = [timed(lambda frame_of=frame_of: peer(frame_of(exported))) for _ in range(rounds)]
        peers[name] = middle([one for one, _ in theirs])
        for of, numbers in here(digest).items():
            assert numbers == pytest.approx(theirs[0][1][of], rel=1e-6, abs=1e-9), of
    told = "; ".join(
        f"over the {name} {each}, {each.own / took.own:.1f} times as long"
        for name, each in peers.items()
    )
    print(
        f"\nthe digest of a week out of {TRIALS:,} trials, {len(pairs[0][1])} letters: {took} in"
        f" the middle of {ROUNDS} (limit {LIMIT_SECONDS} s);\n"
        f"pandas and scipy {told} (limit {LIMIT_TIMES}, held for the export as it is by default,"
        f" JSON Lines).\n"
        f"Apart from that: opening the folder {opening}; the first digest ever, which folds all"
        f" trials and makes the checkpoint, {first}; dealing a session {starting}; the command"
        f" `drills digest` from start to end {of_command.wall:.2f} s by the wall.\n"
        f"The load was {os.getloadavg()[0]:.1f} on {os.cpu_count()}"
    )
    assert took.own <= LIMIT_SECONDS
    assert peers["JSON Lines"].own >= LIMIT_TIMES * took.own
