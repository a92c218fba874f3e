"""Files as nobody should write them, made from good ones by chance, and what must come of them."""

from __future__ import annotations

import copy
import json
import shutil
import time
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import timedelta
from itertools import count
from pathlib import Path
from random import Random
from typing import Any

from drills.catalogue import load, read_plan
from drills.core.material import Material
from drills.core.plans import Plan
from drills.core.problems import BadInput, DrillsError
from drills.core.records import Entry, latest_trials
from drills.digest import render
from drills.ledger import export, export_csv, open_ledger, verify
from drills.ledger.lines import lines_of, read_lines
from drills.ledger.sessions import understand
from drills.practice.dealing import check_plan
from drills.practice.home import Home
from tests.edges import MORNING, HandClock, QuietVoice
from tests.ledger.made import made_session, written
from tests.terminal import ROOT

NAME = "2026-11-25T130420-s.jsonl"
LONGEST_SECONDS = 5.0
FORMATS = ("text", "html", "json", "csv")

_PIECES = [
    *(b"\x00", b"\xff\xfe", b"\x1b[2J", b"\x1b]0;x\x07", b"\xc2\x9b2J", b"\r\n", b'"', b"'", b"\\"),
    *(b"{", b"}", b"[" * 300, b"]" * 300, b'{"a":' * 200, b"=1+1", b"@SUM(A1)", b"[b]", b"[/]"),
    *(b"<script>", b"]]>", b"&amp;", b"{{7*7}}", b"{% for %}", b"%s%n", b"-1", b"0", b"1e999"),
    *(b"9" * 60, b"9" * 5000, b"nan", b"true", b"null", b"\xef\xbb\xbf", b"\xed\xa0\x80"),
    *(b"9999-12-31", b"0001-01-01", b"2026-02-30", b"\\ud800", b"a" * 20_000, b"\xe2\x80\xae"),
    *(b'"""', b"'''", b"#", b"=", b"\n\n[[block]]\n", b'{"crc32":"', b'"format":', b"format = 9\n"),
]
_VALUES: list[Any] = [
    *(None, True, False, 0, -1, 1, 2, 3, 4, 7, 10**6, 10**30, 0.5, -1e308, "", "x", "0", "true"),
    *("\x1b[2J\x07", "\x9b31m", "\u202egnihton", "=1+1", "@SUM(A1)", "<script>alert(1)</script>"),
    *("[red]x[/red]", "{{7*7}}", "a\nb\tc\rd", "\x00", "\ud800", "a" * 5000, "9999-12-31"),
    *("1970-01-01T00:00:00+00:00", "9999-12-31T23:59:59+14:00", "0001-01-01T00:00:00-14:00"),
    *("2026-11-25T08:05:00", "match/active/push", "reversal", "gesture", "probe", "left", "body"),
    *([], {}, [None], [[]], {"foil": None}, {"foil": "reversal", "text": "\x1b[2J"}),
]


def changed_bytes(data: bytes, chance: Random) -> bytes:
    """A few changes such as a bad disk, a bad editor or a bad will makes."""
    out = bytearray(data)
    for _ in range(chance.choice((1, 1, 1, 2, 4))):
        at = chance.randrange(len(out) + 1)
        end = min(len(out), at + chance.choice((1, 2, 8, 60, 400)))
        match chance.randrange(7):
            case 0 if at < len(out):
                out[at] ^= 1 << chance.randrange(8)
            case 1:
                del out[at:end]
            case 2:
                out[at:at] = out[at:end]
            case 3:
                out[at:end] = chance.choice(_PIECES)
            case 4:
                out[at:at] = chance.choice(_PIECES)
            case 5:
                del out[at:]
            case _:
                out[at:end] = chance.randbytes(end - at)
    return bytes(out)


def changed_value(value: Any, chance: Random) -> Any:
    """`value`, a tree of JSON, with one place of it put wrong."""
    value = copy.deepcopy(value)
    places: list[tuple[Any, Any]] = []

    def walk(node: Any) -> None:
        keys = node if isinstance(node, dict) else range(len(node))
        for key in keys:
            places.append((node, key))
            if isinstance(node[key], dict | list):
                walk(node[key])

    walk(value)
    node, key = chance.choice(places)
    match chance.randrange(4):
        case 0:
            del node[key]
        case 1 if isinstance(node, dict):
            node[chance.choice(["x", "entry", "foil", "\x1b[2J", "at"])] = chance.choice(_VALUES)
        case _:
            node[key] = chance.choice(_VALUES)
    return value


@dataclass
class Outcome:
    """tried: of each sort.   refused: with a clear error.   bad: anything else, to be mended."""

    tried: Counter[str] = field(default_factory=Counter)
    refused: Counter[str] = field(default_factory=Counter)
    bad: list[str] = field(default_factory=list)
    slowest: float = 0.0


class Fuzz:
    """Tries changed files one by one; `place`: a folder to write them in."""

    def __init__(self, place: Path, material: Material) -> None:
        self._place = place
        self._material = material
        self._plan_text = (ROOT / "content" / "plans" / "starter.toml").read_bytes()
        self._plan = read_plan(ROOT / "content" / "plans" / "starter.toml")
        self._content = place / "content"
        shutil.copytree(ROOT / "content", self._content)
        self._content_files = sorted(
            path for path in self._content.rglob("*.toml") if path.parent.name != "plans"
        )
        self._session = written(made_session("s", trials=4))
        self._rows = [dict(row) for _, row in read_lines(self._session).rows]
        self.outcome = Outcome()

    def run(self, kind: str, *, seed: int) -> None:
        """Try one changed file; what is wrong with it is noted in `outcome`."""
        chance = Random(f"{kind} {seed}")
        attempt: Callable[[Random], None] = getattr(self, f"_{kind}")
        began = time.perf_counter()
        self.outcome.tried[kind] += 1
        try:
            attempt(chance)
        except DrillsError as error:
            self.outcome.refused[kind] += 1
            if fault := _unclear(error):
                self.outcome.bad.append(f"{kind} {seed}: {fault}: {str(error)[:300]!r}")
        except Exception as error:
            self.outcome.bad.append(f"{kind} {seed}: {type(error).__name__}: {str(error)[:200]}")
        took = time.perf_counter() - began
        self.outcome.slowest = max(self.outcome.slowest, took)
        if took > LONGEST_SECONDS:
            self.outcome.bad.append(f"{kind} {seed}: took {took:.1f} s")

    def _plan_file(self, chance: Random) -> None:
        path = self._place / "plan.toml"
        path.write_bytes(changed_bytes(self._plan_text, chance))
        plan = read_plan(path)
        problems = check_plan(plan, self._material)
        if problems:
            raise BadInput(problems)

    def _content_file(self, chance: Random) -> None:
        path = chance.choice(self._content_files)
        good = path.read_bytes()
        path.write_bytes(changed_bytes(good, chance))
        try:
            load(self._content, locale="en-US")
        finally:
            path.write_bytes(good)

    def _record_bytes(self, chance: Random) -> None:
        read = understand(Path(NAME), changed_bytes(self._session, chance))
        # What comes back is what was kept, or nothing.
        good = made_session("s", trials=4)
        assert all(entry in good for entry in read.entries)
        self._use(read.entries)

    def _record_values(self, chance: Random) -> None:
        rows = list(self._rows)
        for _ in range(chance.choice((1, 1, 3))):
            at = chance.randrange(len(rows))
            rows[at] = changed_value(rows[at], chance)
        self._use(understand(Path(NAME), lines_of(rows)).entries)

    def _digest_input(self, chance: Random) -> None:
        """A whole practice folder, opened, looked at, gone on with and counted."""
        folder = self._place / "practice"
        shutil.rmtree(folder, ignore_errors=True)
        (folder / "records").mkdir(parents=True)
        rows = [changed_value(row, chance) if chance.random() < 0.2 else row for row in self._rows]
        data = lines_of(rows)
        if chance.random() < 0.5:
            data = changed_bytes(data, chance)
        (folder / "records" / NAME).write_bytes(data)
        if chance.random() < 0.3:
            (folder / "summaries").mkdir()
            text = changed_bytes(self._session, chance)
            (folder / "summaries" / "2026-11.jsonl").write_bytes(text)
        verify(folder)
        home = self._home(folder)
        try:
            home.today()
            home.start(resume=chance.random() < 0.5)
            for style in FORMATS:
                _inert(render(home.digest(home.day(), home.day()), style), style)
            home.records.history()
        finally:
            home.close()

    def _use(self, entries: tuple[Entry, ...]) -> None:
        """What is done with records that could be read."""
        latest_trials(entries)
        for line in (*export(entries), *export_csv(entries)):
            _inert(line, "line")

    def _home(self, folder: Path) -> Home:
        seeds = count(1)
        return Home(
            plan=self._short_plan(),
            material=lambda: self._material,
            records=open_ledger(folder, elsewhere=()),
            clock=HandClock(MORNING + timedelta(hours=1)),
            voice=QuietVoice(),
            guide=tuple,
            program="0",
            new_seed=lambda: next(seeds),
        )

    def _short_plan(self) -> Plan:
        return replace(self._plan, blocks=self._plan.blocks[:1])


def _unclear(error: DrillsError) -> str:
    """What is wrong with an error, for a person; empty when nothing is.

    It may quote what it found: printing makes that inert (test_records_free_text).
    """
    text = str(error)
    if not text.strip():
        return "says nothing"
    if "Traceback" in text or "object at 0x" in text:
        return "speaks of the program's inside"
    return ""


def _inert(text: str, style: str) -> None:
    """No control character but the line end, no markup of the records' own, no formula."""
    allowed = {"\n", "\r"} if style in ("csv", "html") else {"\n"}
    for letter in text:
        code = ord(letter)
        if (code < 32 and letter not in allowed) or 127 <= code < 160 or code in (0x202E, 0x2028):
            raise AssertionError(f"{style} holds {letter!r}")
    if style == "html" and "<script>alert" in text:
        raise AssertionError("the page holds a script of the records")
    if style == "json":
        json.loads(text)
