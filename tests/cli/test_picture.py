"""`drills picture`: every kind of meaning, in words and as JSON, and what is said when wrong."""

from __future__ import annotations

import json
from contextlib import suppress
from dataclasses import replace
from pathlib import Path
from typing import Any, get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue import load
from drills.cli.drawing import read_meaning, scene_of
from drills.cli.meaning_forms import EXAMPLES, parse
from drills.cli.meaning_words import words_of
from drills.cli.run import run
from drills.core.kinds import Side
from drills.core.meaning_json import as_json
from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Aspect,
    Chain,
    Comparison,
    Described,
    Kin,
    Link,
    Meaning,
    Order,
    Place,
    Relation,
    Report,
    Role,
    State,
    Tense,
    Transfer,
    Undergone,
)
from drills.core.problems import BadInput
from drills.core.words import Band
from drills.language import CONSTRUCTIONS, as_drawn, meanings_of
from drills.pictures import can_draw
from tests.conftest import ROOT

LEXICON = load(ROOT / "content", locale="en-US").lexicon
PUSH = Act(verb="push", doer="nurse", done_to="baker")
TAP = Act(verb="tap", doer="sailor", done_to="baker")
BY_EXAMPLE = {
    "nurse push baker": PUSH,
    "nurse not push baker": replace(PUSH, negated=True),
    "someone push baker": Undergone(verb="push", done_to="baker"),
    "who push baker": Asked(verb="push", known="baker", asked=Role.DOER),
    "nurse who push baker is wet": Described(act=PUSH, who=Role.DOER, state="wet"),
    "baker whom nurse push is wet": Described(act=PUSH, who=Role.DONE_TO, state="wet"),
    "nurse push baker push nurse": Chain(verb="push", outer="nurse", middle="baker"),
    "2 nurse wave": Activity(verb="wave", doer="nurse", count=2),
    "2 nurse are wet": State(subject="nurse", count=2, link=Link.BE, complement="wet"),
    "nurse has cup": State(subject="nurse", count=1, link=Link.HAVE, complement="cup"),
    "baker say sailor tap him": Report(speaker="baker", act=TAP),
    "sailor show nurse to judge": Transfer(
        verb="show", doer="sailor", given="nurse", receiver="judge"
    ),
    "farmer wave before sit": Order(doer="farmer", earlier="wave", later="sit"),
    "nurse taller judge": Comparison(quality="tall", more="nurse", less="judge"),
    "cup in front of box": Place(relation=Relation.IN_FRONT_OF, thing="cup", landmark="box"),
    "brother of aunt": Kin(terms=("aunt", "brother")),
}
IN_OTHER_WORDS = {
    "push nurse baker": PUSH,
    "The nurse pushed the baker": PUSH,
    "the nurse is pushing the baker": PUSH,
    "the baker was pushed by the nurse": PUSH,
    "the nurse is not pushing the baker": replace(PUSH, negated=True),
    "the baker was pushed": BY_EXAMPLE["someone push baker"],
    "somebody pushed the baker": BY_EXAMPLE["someone push baker"],
    "baker push whom": Asked(verb="push", known="baker", asked=Role.DONE_TO),
    "nurse that pushed the baker": Described(act=PUSH, who=Role.DOER),
    "the baker that the nurse pushed": Described(act=PUSH, who=Role.DONE_TO),
    "two nurses are waving": BY_EXAMPLE["2 nurse wave"],
    "nurses wave": Activity(verb="wave", doer="nurse"),
    "two nurses were wet": BY_EXAMPLE["2 nurse are wet"],
    "three bakers have kites": State(
        subject="baker", count=3, link=Link.HAVE, complement="kite"
    ),
    "baker says sailor taps himself": Report(speaker="baker", act=replace(TAP, done_to="sailor")),
    "judge said sailor tapped baker": Report(speaker="judge", act=TAP),
    "baker say sailor not tap him": Report(speaker="baker", act=replace(TAP, negated=True)),
    "farmer sat after farmer waved": BY_EXAMPLE["farmer wave before sit"],
    "farmer sit after wave": BY_EXAMPLE["farmer wave before sit"],
    "farmer waved then sat": BY_EXAMPLE["farmer wave before sit"],
    "farmer wave before farmer sit": BY_EXAMPLE["farmer wave before sit"],
    "the nurse is taller than the judge": BY_EXAMPLE["nurse taller judge"],
    "nurse more tall than judge": BY_EXAMPLE["nurse taller judge"],
    "the cup is next to the box": Place(relation=Relation.NEXT_TO, thing="cup", landmark="box"),
    "sister of son of aunt": Kin(terms=("aunt", "son", "sister")),
}  # fmt: skip
MEANINGS = {
    (name, band): pool
    for name in CONSTRUCTIONS
    for band in Band
    if (pool := meanings_of(name, LEXICON, band, ((Tense.PAST, Aspect.SIMPLE),)))
}


def test_there_is_an_example_of_every_kind_of_meaning() -> None:
    assert set(BY_EXAMPLE) == set(EXAMPLES)
    assert {type(meaning) for meaning in BY_EXAMPLE.values()} == set(get_args(Meaning))


@pytest.mark.parametrize("words", [*BY_EXAMPLE, *IN_OTHER_WORDS])
def test_words_are_read_as_what_they_say(words: str) -> None:
    meant = {**BY_EXAMPLE, **IN_OTHER_WORDS}[words]
    assert parse(words.split(), LEXICON) == meant
    # Quoted as one argument it is the same.
    assert parse([words], LEXICON) == meant


@given(st.data())
def test_every_meaning_that_is_dealt_comes_back_from_its_words(data: st.DataObject) -> None:
    pool = MEANINGS[data.draw(st.sampled_from(sorted(MEANINGS)))]
    meaning: Any = data.draw(st.sampled_from(pool))
    read: Any = parse(words_of(meaning).split(), LEXICON)
    assert read.drawn == meaning.drawn
    assert type(read) is type(meaning)
    assert words_of(read) == words_of(meaning)


@given(st.data())
def test_every_meaning_that_is_dealt_comes_back_from_its_json(data: st.DataObject) -> None:
    pool = MEANINGS[data.draw(st.sampled_from(sorted(MEANINGS)))]
    meaning = data.draw(st.sampled_from(pool))
    row = as_json(meaning)
    assert read_meaning([json.dumps(row)], LEXICON) == meaning
    # Within the row of an item, and cut up by a shell.
    assert read_meaning(json.dumps({"meaning": row}).split(), LEXICON) == meaning


def test_all_kinds_are_among_what_is_dealt() -> None:
    dealt = {type(meaning) for pool in MEANINGS.values() for meaning in pool[:1]}
    assert dealt == set(get_args(Meaning))


@given(st.data())
def test_what_is_dealt_has_a_scene_or_a_reason(data: st.DataObject) -> None:
    pool = MEANINGS[data.draw(st.sampled_from(sorted(MEANINGS)))]
    meaning: Any = data.draw(st.sampled_from(pool))
    if isinstance(meaning, Undergone | Asked):
        act: Any = scene_of(meaning, Side.RIGHT, LEXICON).meaning
        same = as_drawn(meaning, LEXICON)
        assert can_draw(act)
        assert act.verb == same.verb
        known = same.done_to if isinstance(same, Undergone) else same.known
        is_doer = isinstance(same, Asked) and same.asked is Role.DONE_TO
        assert (act.doer if is_doer else act.done_to) == known
    elif can_draw(as_drawn(meaning, LEXICON)):
        scene = scene_of(meaning, Side.RIGHT, LEXICON)
        assert scene.meaning == as_drawn(meaning, LEXICON)
        assert scene.side is Side.RIGHT
    else:
        with pytest.raises(BadInput, match="is not drawn") as raised:
            scene_of(meaning, Side.RIGHT, LEXICON)
        assert words_of(meaning) in str(raised.value)


@pytest.mark.parametrize("words", [words for words in BY_EXAMPLE if words != "brother of aunt"])
def test_every_form_is_drawn_on_the_command_line(
    words: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["picture", *words.split(), "--folder", str(tmp_path)]) == 0
    said, *drawn = capsys.readouterr().out.splitlines()
    assert len(drawn) == 15
    assert all("\x1b[" in line for line in drawn)
    if not words.startswith(("someone", "who")):
        assert parse(said.partition(",")[0].split(), LEXICON) == BY_EXAMPLE[words]
    file = tmp_path / "picture.png"
    options = ["--out", str(file), "--cells", "38x9", "--folder", str(tmp_path)]
    assert run(["picture", words, *options]) == 0
    assert file.stat().st_size > 500


def test_an_item_as_it_is_printed_can_be_drawn(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    items = ["items", "--kind", "match", "--count", "3", "--seed", "5", "--format", "jsonl"]
    assert run([*items, "--folder", str(tmp_path)]) == 0
    for line in capsys.readouterr().out.splitlines():
        for row in (line, json.dumps(json.loads(line)["options"][0]["meaning"])):
            assert run(["picture", row, "--cells", "24x8", "--folder", str(tmp_path)]) == 0
            assert "\x1b[" in capsys.readouterr().out


def test_a_size_that_does_not_show_a_meaning_is_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    words = ["nurse", "tap", "baker"]
    for size, hard in (("38x9", True), ("38x20", False)):
        assert run(["picture", *words, "--cells", size, "--folder", str(tmp_path)]) == 0
        assert ("readers saw a tug" in capsys.readouterr().out) is hard


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("push nurse bakr", "There is no word 'bakr'. Did you mean baker?"),
        ("nurse tallr judge", "Did you mean tall"),
        ("cup behnd box", "Did you mean behind?"),
        ("two nurses wavve", "Did you mean wave?"),
        ("nurse push", "Write as in one of: nurse push baker;"),
        ("nurse baker", "makes no meaning"),
        ("brother of aunt", "kinship cannot be seen"),
        ("nurse push cow", "a person and an animal"),
        ("nurse push nurse", "two of nurse"),
        ("farmer lift box", "no figure of box"),
        ("nurse wetter baker", "cannot be seen"),
        ("nurse has car", "too large"),
        ("cup in ball", "nothing can be in ball"),
        ("cup behind cup", "by itself"),
        ("someone push box", "no figure of box"),
        ("farmer wave before baker sit", "as in: farmer wave before sit."),
        ("nurse push baker push judge", "as in: nurse push baker push nurse."),
        ("nurse is waving baker", "wave is done to nobody"),
        ('{"verb": "push"', "no JSON"),
        ('{"verb": "push"}', "no meaning"),
        ('{"meaning": null}', "no meaning"),
        ('{"meaning": {"verb": ["a"], "doer": {}, "done_to": 3}}', "no meaning"),
        ('{"kind": "state", "subject": "nurse", "count": "x", "link": "be", "complement": "wet"}',
         "no meaning"),
        ("[1, 2]", "no meaning"),
        ('{"verb": "push", "doer": "nurse", "done_to": "clown"}', "no figure of clown"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said_in_one_sentence(
    words: str, said: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    arguments = [words] if words.startswith(("{", "[")) else words.split()
    assert run(["picture", *arguments, "--folder", str(tmp_path)]) == 2
    heard = capsys.readouterr()
    assert heard.out == ""
    (line,) = heard.err.splitlines()
    assert said in line


@given(st.text(max_size=40))
def test_no_words_end_in_anything_but_a_meaning_or_a_sentence(text: str) -> None:
    with suppress(BadInput):
        words_of(read_meaning([text], LEXICON))


def test_help_lists_every_form(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        run(["picture", "--help"])
    shown = capsys.readouterr().out
    assert all(f"  {words} " in shown for words in EXAMPLES)
