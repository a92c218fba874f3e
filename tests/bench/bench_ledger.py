"""What keeping an answer costs after years of practice, beside the same bytes written bare.

Run it: python -m pytest tests/bench/bench_ledger.py -s
It makes a practice folder of 1,000,000 invented trials, about 1.2 GB, in the folder for temporary
files, and removes it.
"""

from __future__ import annotations

import gc
import os
import shutil
import time
import zlib
from collections.abc import Callable, Iterator, Sequence
from datetime import date, timedelta
from itertools import count
from pathlib import Path
from random import Random
from statistics import median

import pytest
from tinydb import TinyDB

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import Entry, Trial
from drills.ledger import open_ledger
from drills.ledger.lines import line_of, lines_of
from drills.ledger.rows import row_of
from drills.ledger.sessions import understand
from drills.ledger.storage import SessionFile
from drills.ledger.summaries import summarise
from drills.practice.home import Home
from tests.edges import HandClock, QuietVoice
from tests.ledger.made import START, made_session, written

TRIALS = 1_000_000
OF_A_SESSION = 50
SESSIONS_A_DAY = 2
ROUNDS, PARTS = 2000, 8
SETTLING_SECONDS, QUICK_FLUSH_SECONDS = 120, 0.0005
OPEN_LIMIT_MS = 300
BARE_LIMIT, FLAT_LIMIT, TINYDB_LIMIT = 1.2, 1.1, 100
DOCUMENTS = 50_000
PLAN = Plan(
    name="Bench",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active",), trials=20),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "brush-teeth"), trials=5),
    ),
)


class _Template:
    """One invented session as bytes, to be moved in time."""

    def __init__(self, entries: Sequence[Entry]) -> None:
        self.data = written(entries)
        self.bodies = [line[20:-2] for line in self.data.splitlines(keepends=True)]
        summary = summarise(understand(Path("2026-11-25T130420-s0000000.jsonl"), self.data)).row
        self.summary_body = line_of({**summary, "crc32": 9_999_999_999}, 99_999)[20:-2]


def make_years(folder: Path, sessions: Sequence[Sequence[Entry]] = ()) -> int:
    """Fill `folder` with a million trials, from invented sessions moved in time; its bytes.

    sessions: called s0000000 and begun at START, which come by turns; one of them when empty.
    """
    open_ledger(folder).close()
    (folder / "summaries").mkdir()
    templates = list(map(_Template, sessions or [made_session("s0000000", trials=OF_A_SESSION)]))
    months: dict[str, list[bytes]] = {}
    size = 0
    for number in range(TRIALS // OF_A_SESSION):
        template = templates[number % len(templates)]
        new, name, file = place_of(number)

        def moved(body: bytes, new: bytes = new, name: bytes = name) -> bytes:
            body = body.replace(b"2026-11-25T08:", new).replace(b"s0000000", name)
            return b'{"crc32":"%08x",%b}\n' % (zlib.crc32(body), body)

        whole = b"".join(map(moved, template.bodies))
        (folder / "records" / file).write_bytes(whole)
        size += len(whole)
        of_month = months.setdefault(file[:7], [])
        body = template.summary_body.replace(b"2026-11-25T130420-s0000000.jsonl", file.encode())
        body = body.replace(b"9999999999", b"%d" % zlib.crc32(whole))
        of_month.append(body.replace(b"99999", b"%d" % (len(of_month) + 2), 1))
        of_month[-1] = moved(of_month[-1])
    for month, lines in months.items():
        header = lines_of([{"format": 1, "month": month}])
        (folder / "summaries" / f"{month}.jsonl").write_bytes(header + b"".join(lines))
    os.sync()
    return size


def place_of(number: int) -> tuple[bytes, bytes, str]:
    """The hour at which a session begins, its name, and that of its file; 0 is the newest."""
    day = date(2026, 11, 24) - timedelta(days=number // SESSIONS_A_DAY)
    hour = 8 + 6 * (number % SESSIONS_A_DAY)
    name = f"s{number:07}"
    return f"{day}T{hour:02}:".encode(), name.encode(), f"{day}T{hour + 5:02}0420-{name}.jsonl"


@pytest.fixture(scope="module")
def years(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    folder = tmp_path_factory.mktemp("years") / "practice"
    began = time.perf_counter()
    size = make_years(folder)
    print(
        f"\n{TRIALS:,} trials in {TRIALS // OF_A_SESSION:,} sessions, {size / 1e9:.2f} GB,"
        f" made in {time.perf_counter() - began:.0f} s"
    )
    yield folder
    shutil.rmtree(folder)


def timed(work: Callable[[], object]) -> float:
    began = time.perf_counter()
    work()
    return time.perf_counter() - began


def in_ms(times: list[float]) -> str:
    return f"{median(times) * 1000:.3f} ms"


def home_in(folder: Path, material: Material, plan: Plan = PLAN) -> Home:
    seeds = count(1)
    return Home(
        plan=plan,
        material=lambda: material,
        records=open_ledger(folder, elsewhere=()),
        clock=HandClock(),
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: next(seeds),
    )


def test_opening_years_of_practice(years: Path, material: Material) -> None:
    opening, first, start, digest = [], [], [], []
    for _ in range(15):
        opening.append(timed(lambda: open_ledger(years, elsewhere=()).close()))
        began = time.perf_counter()
        home = home_in(years, material)
        home.today()
        first.append(time.perf_counter() - began)
        start.append(timed(lambda home=home: home.start(resume=False)))
        day = home.day()
        digest.append(timed(lambda home=home, day=day: home.digest(day - timedelta(6), day)))
        trials = len(home.records.history(since=home.clock.now() - timedelta(days=200)))
        assert trials > 199 * SESSIONS_A_DAY * OF_A_SESSION
        assert home.records.notices == ()
        home.close()
    print(
        f"\nopening: {in_ms(opening)}; with all that the first screen asks: {in_ms(first)},"
        f" {min(first) * 1000:.0f} to {max(first) * 1000:.0f} ms of {len(first)}"
        f" (limit {OPEN_LIMIT_MS} ms)\n"
        f"dealing a session from {trials:,} trials of 200 days: {in_ms(start)};"
        f" the digest of a week: {in_ms(digest)}"
    )
    assert median(first) * 1000 <= OPEN_LIMIT_MS


def bare_file(place: Path) -> int:
    return os.open(place, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)


def write_bare(file: int, data: bytes) -> None:
    os.write(file, data)
    os.fsync(file)


def wait_for_a_quick_disk(place: Path) -> None:
    """A gigabyte just written slows each flush for a while, and would hide what is measured."""
    file, end = bare_file(place), time.monotonic() + SETTLING_SECONDS
    while time.monotonic() < end:
        took = [timed(lambda: write_bare(file, b"x" * 1000)) for _ in range(50)]
        if median(took) < QUICK_FLUSH_SECONDS:
            break
        time.sleep(1)
    os.close(file)


def test_an_append_after_years_against_bare_and_against_an_empty_folder(
    years: Path, tmp_path: Path
) -> None:
    wait_for_a_quick_disk(tmp_path / "quick")
    entries = made_session("now", trials=ROUNDS, start=START + timedelta(days=1))
    trials = [entry for entry in entries if isinstance(entry, Trial)][:ROUNDS]
    lines = [line_of(row_of(trial), number) for number, trial in enumerate(trials, start=3)]
    ledgers = {"years": open_ledger(years, elsewhere=()), "empty": open_ledger(tmp_path / "e")}
    for ledger in ledgers.values():
        ledger.open_session(entries[0])
    bare = bare_file(tmp_path / "bare")
    times: dict[str, list[float]] = {name: [] for name in ("bare", *ledgers)}
    order = list(times)
    chance = Random(6)
    gc.collect()
    for trial, line in zip(trials, lines, strict=True):
        # The disk is shared: each round gives all three the same weather.
        chance.shuffle(order)
        for name in order:
            if name == "bare":
                times[name].append(timed(lambda line=line: write_bare(bare, line)))
            else:
                ledger = ledgers[name]
                times[name].append(timed(lambda e=trial, ledger=ledger: ledger.append(e)))
    os.close(bare)
    for ledger in ledgers.values():
        ledger.close()
    parts = [slice(at, at + ROUNDS // PARTS) for at in range(0, ROUNDS, ROUNDS // PARTS)]
    to_bare = median(times["years"]) / median(times["bare"])
    to_empty = median(times["years"]) / median(times["empty"])
    own = median(times["years"]) - median(times["bare"])
    in_parts = [median(times["years"][part]) / median(times["bare"][part]) for part in parts]
    print(
        f"\n{ROUNDS} durable appends of {sum(map(len, lines)) // ROUNDS} bytes each way:"
        f" with {TRIALS:,} trials {in_ms(times['years'])}, with none {in_ms(times['empty'])},"
        f" bare write and fsync {in_ms(times['bare'])};"
        f" ratio to bare {to_bare:.3f} (limit {BARE_LIMIT}; in parts {min(in_parts):.3f} to"
        f" {max(in_parts):.3f}), to none {to_empty:.3f} (limit {FLAT_LIMIT}).\n"
        f"Of its own an append takes {own * 1e6:.0f} microseconds: the ratio holds where the bare"
        f" write takes {own / (BARE_LIMIT - 1) * 1e6:.0f} microseconds or more. Waiting for a"
        f" processor counts as well: the load was {os.getloadavg()[0]:.1f} on {os.cpu_count()}"
    )
    assert to_bare <= BARE_LIMIT
    assert to_empty <= FLAT_LIMIT


def test_an_append_against_tinydb_s_own_storage(tmp_path: Path) -> None:
    (trial,) = [e for e in made_session("s", trials=1) if isinstance(e, Trial)]
    row = row_of(trial)
    peer = TinyDB(tmp_path / "peer.json")
    peer.insert_multiple(dict(row) for _ in range(DOCUMENTS))
    (tmp_path / "ours.jsonl").write_bytes(lines_of([{"format": 1}, *[row] * DOCUMENTS]))
    ours = SessionFile(tmp_path / "ours.jsonl")
    ours.insert(row)
    theirs_took, ours_took = [], []
    for _ in range(5):
        theirs_took.append(timed(lambda: peer.insert(dict(row))))
        ours_took += [timed(lambda: ours.insert(row)) for _ in range(50)]
    peer.close()
    ours.close()
    ratio = median(theirs_took) / median(ours_took)
    print(
        f"\none insert at {DOCUMENTS:,} documents: TinyDB's JSONStorage {in_ms(theirs_took)}"
        f" (not flushed), ours {in_ms(ours_took)} (flushed); {ratio:.0f} times"
        f" (limit {TINYDB_LIMIT})"
    )
    assert ratio >= TINYDB_LIMIT
