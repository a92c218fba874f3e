from __future__ import annotations

import time
from pathlib import Path

import pytest
from tinydb import where

from drills.ledger.lines import lines_of
from drills.ledger.storage import SessionFile


def test_inserted_documents_can_be_queried_and_are_read_back(tmp_path: Path) -> None:
    file = SessionFile(tmp_path / "s.jsonl", header={"format": 1})
    assert [file.insert({"entry": name}) for name in ("a", "b", "a")] == [1, 2, 3]
    assert len(file.search(where("entry") == "a")) == 2
    file.insert({"entry": "a"})
    assert len(file.search(where("entry") == "a")) == 3
    file.close()
    again = SessionFile(tmp_path / "s.jsonl")
    assert [document["entry"] for document in again] == ["a", "b", "a", "a"]


@pytest.mark.parametrize(
    "change",
    [
        lambda file: file.update({"entry": "x"}),
        lambda file: file.remove(where("entry") == "a"),
        lambda file: file.truncate(),
        lambda file: file.drop_tables(),
        lambda file: file.upsert({"entry": "x"}, where("entry") == "a"),
    ],
    ids=["update", "remove", "truncate", "drop", "upsert"],
)
def test_nothing_but_insert_writes(tmp_path: Path, change) -> None:
    file = SessionFile(tmp_path / "s.jsonl", header={"format": 1})
    file.insert({"entry": "a"})
    before = (tmp_path / "s.jsonl").read_bytes()
    with pytest.raises(TypeError, match="only grow"):
        change(file)
    assert [dict(document) for document in file] == [{"entry": "a"}]
    assert (tmp_path / "s.jsonl").read_bytes() == before
    file.close()


def test_an_insert_costs_no_more_when_the_file_is_long(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # The flush would hide what is measured.
    monkeypatch.setattr("drills.ledger.disk.sync_file", lambda file: None)
    row = {"entry": "trial", "text": "x" * 500}
    (tmp_path / "s.jsonl").write_bytes(lines_of([{"format": 1}] + [row] * 20_000))
    (tmp_path / "t.jsonl").write_bytes(lines_of([{"format": 1}]))

    def cost(name: str) -> float:
        file = SessionFile(tmp_path / name)
        # The first insert reads how many lines there are.
        file.insert(row)
        times = []
        for _ in range(200):
            start = time.perf_counter()
            file.insert(row)
            times.append(time.perf_counter() - start)
        file.close()
        return sorted(times)[100]

    short, long = cost("t.jsonl"), cost("s.jsonl")
    # Rewriting 20,000 documents takes tens of milliseconds, an append some hundredths of one.
    assert long < max(10 * short, 0.001)
