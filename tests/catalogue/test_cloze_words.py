from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import load_lexicon
from drills.catalogue.cloze_words import read_cloze_words
from drills.catalogue.word_counts import read_word_counts
from drills.core.material import ClozeWords
from drills.core.problems import BadInput, Problem
from drills.core.words import Lexicon

VERB = (
    '[[verb]]\nkey = "wait"\nbase = "wait"\nthird_person = "waits"\npast = "waited"\n'
    'past_participle = "waited"\ning = "waiting"\ngroup = "cloze"\nsorts = ["person"]\n'
    'zipf = 5.0\nzipf_source = "x"\n'
)
BOUND = '[[bound]]\nhead = "wait"\nword = "for"\nwrong = ["of", "to"]\ngoes_with = "person"\n'
CAUSE = '[[cause]]\nstate = "tired"\nact = "wait"\n'


@pytest.fixture(scope="module")
def lexicon(content: Path) -> Lexicon:
    return load_lexicon(content, locale="en-US")


def read(tmp_path: Path, lexicon: Lexicon, text: str) -> tuple[ClozeWords, list[str]]:
    (tmp_path / "cloze_words.toml").write_text(text, encoding="utf-8")
    problems: list[Problem] = []
    words = read_cloze_words(tmp_path, lexicon, problems)
    return words, [str(problem).partition("/")[2] for problem in problems]


def test_the_words_are_added_to_the_lexicon(tmp_path: Path, lexicon: Lexicon) -> None:
    words, problems = read(tmp_path, lexicon, VERB + BOUND + CAUSE)
    assert not problems
    assert words.lexicon.alone["wait"].past == "waited"
    assert words.lexicon.nouns == lexicon.nouns
    assert [(each.head, each.word, each.wrong) for each in words.bound] == [
        ("wait", "for", ("of", "to"))
    ]
    assert [(each.state, each.act) for each in words.causes] == [("tired", "wait")]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (VERB + BOUND.replace('"of", "to"', '"of", "for"'), "15: `for` can be right where `for`"),
        (
            VERB + BOUND.replace('"for"', '"in"').replace('"of"', '"into"'),
            "15: `into` can be right where `in` is.",
        ),
        (BOUND, "2: There is no `wait`."),
        (VERB + CAUSE.replace("tired", "tierd"), "13: There is no `tierd`. Did you mean `tired`?"),
        (VERB + VERB, "13: `wait` is already a word. Remove one."),
        (VERB.replace("wait", "wave", 2), "2: `wave` is already a word. Remove one."),
        (
            VERB.replace('key = "wait"', 'key = "cut"'),
            "2: `cut` has one form for now and then. Use another word.",
        ),
        (
            VERB.replace('key = "wait"', 'key = "team"'),
            "2: `team` is counted as one or as many. Use another word.",
        ),
        (VERB + BOUND.replace("goes_with", "goes"), "12: `goes_with` is missing."),
    ],
)
def test_a_wrong_word_is_noted_at_its_line(
    text: str, said: str, tmp_path: Path, lexicon: Lexicon
) -> None:
    _, problems = read(tmp_path, lexicon, text)
    assert problems
    assert problems[0].startswith(f"cloze_words.toml:{said}")


def test_the_counts_of_spoken_words_are_read_with_their_shares(content: Path) -> None:
    """Source: the table's own lines (Universal Dependencies English GUM, CC BY 4.0)."""
    shares = read_word_counts(content)
    assert list(shares)[:3] == ["i", "the", "and"]
    assert shares["i"] == 0.0866
    assert 0.99 < sum(shares.values()) < 1.0
    head = (content / "spoken-function-words.tsv").read_text(encoding="utf-8").split("\n")[:4]
    assert "Zeldes 2017" in " ".join(head)
    assert "CC BY 4.0" in " ".join(head)


def test_a_spoilt_table_is_told_with_its_line(tmp_path: Path) -> None:
    (tmp_path / "spoken-function-words.tsv").write_text("# x\n1\ti\t3\t0.5\nodd\n")
    with pytest.raises(BadInput, match=r"words\.tsv:3: This line has no word"):
        read_word_counts(tmp_path)
    (tmp_path / "spoken-function-words.tsv").unlink()
    with pytest.raises(BadInput, match="It cannot be read"):
        read_word_counts(tmp_path)
