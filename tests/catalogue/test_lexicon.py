from __future__ import annotations

from pathlib import Path

import pytest
import wordfreq

from drills.catalogue import load_lexicon
from drills.core.plans import LOCALES
from drills.core.problems import BadInput
from drills.core.words import Lexicon, Sort


@pytest.fixture(scope="module", params=LOCALES)
def lexicon(request: pytest.FixtureRequest, content: Path) -> Lexicon:
    return load_lexicon(content, locale=request.param)


def spoil(folder: Path, name: str, old: str, new: str) -> None:
    """Replace the first `old` in a file; `old` must be there."""
    path = folder / "lexicon" / name
    text = path.read_text(encoding="utf-8")
    assert old in text
    path.write_text(text.replace(old, new, 1), encoding="utf-8")


def faults(folder: Path, locale: str = "en-US") -> list[str]:
    with pytest.raises(BadInput) as refused:
        load_lexicon(folder, locale=locale)
    return [str(problem) for problem in refused.value.problems]


def test_frequencies_are_those_of_wordfreq(lexicon: Lexicon) -> None:
    """Source: wordfreq 3.1 (Speer), English, Zipf scale."""
    words = [(noun.singular, noun) for noun in lexicon.nouns.values()]
    words += [(verb.base, verb) for verb in lexicon.verbs.values()]
    words += [(each.base, each) for each in lexicon.adjectives.values()]
    for text, word in words:
        assert abs(word.zipf - wordfreq.zipf_frequency(text, "en")) <= 0.3, text
        assert word.zipf_source


def test_an_everyday_noun_is_common(lexicon: Lexicon) -> None:
    # 3.5 is one use in about 300,000 words; common practice, no source.
    assert all(noun.zipf > 3.5 for noun in lexicon.nouns.values() if noun.band == "everyday")


def test_every_verb_has_pairs_who_can_do_it_to_each_other(lexicon: Lexicon) -> None:
    for verb in lexicon.verbs.values():
        pairs = lexicon.partners(verb)
        assert len(pairs) >= 90
        assert {(b, a) for a, b in pairs} == set(pairs)


def test_men_and_women_are_as_many(lexicon: Lexicon) -> None:
    people = [noun for noun in lexicon.nouns.values() if noun.sort is Sort.PERSON]
    assert sum(noun.sex == "female" for noun in people) * 2 == len(people)


def test_every_verb_group_has_several_verbs(lexicon: Lexicon) -> None:
    groups = [verb.group for verb in lexicon.verbs.values()]
    assert min(groups.count(group) for group in groups) >= 2


def test_something_can_be_in_some_things_and_not_in_others(lexicon: Lexicon) -> None:
    assert {thing.container for thing in lexicon.things} == {True, False}


def test_the_order_of_words_is_that_of_the_files(lexicon: Lexicon) -> None:
    assert list(lexicon.nouns)[:3] == ["horse", "cow", "dog"]
    assert list(lexicon.verbs)[:2] == ["push", "pull"]


def test_a_locale_takes_the_place_of_a_shared_word_and_adds_its_own(copied: Path) -> None:
    entry = (
        '[[noun]]\nkey = "{key}"\nsingular = "{word}"\nplural = "{word}s"\nsort = "thing"\n'
        'size = 1\nband = "everyday"\nzipf = 4.0\nzipf_source = "invented"\n'
    )
    folder = copied / "lexicon" / "en-GB"
    folder.mkdir(exist_ok=True)
    text = entry.format(key="bucket", word="pail") + entry.format(key="torch", word="torch")
    (folder / "words.toml").write_text(text, encoding="utf-8")
    british = load_lexicon(copied, locale="en-GB")
    american = load_lexicon(copied, locale="en-US")
    assert british.nouns["bucket"].singular == "pail"
    assert american.nouns["bucket"].singular == "bucket"
    assert list(british.nouns) == [*american.nouns, "torch"]


@pytest.mark.parametrize(
    ("name", "old", "new", "said"),
    [
        ("people.toml", 'sort = "person"', 'sort = "persona"', "Did you mean `person`?"),
        ("people.toml", 'sex = "female"\n', "", "`sex` is missing."),
        ("people.toml", 'plural = "nurses"\n', "", "`plural` is missing."),
        ("people.toml", '"nurses"', '"nurse"', "one form for one and many"),
        ("people.toml", '"nurses"', '"Nurses"', "Use one word in small letters."),
        ("people.toml", "size = 2", "size = 4", "Choose from 1 to 3."),
        ("people.toml", 'band = "everyday"', 'band = "daily"', "It can be: everyday, rare."),
        ("people.toml", "zipf = 4.40", 'zipf = "4.40"', "It needs a number."),
        ("people.toml", 'key = "queen"', 'key = "nurse"', "`nurse` is already at"),
        ("people.toml", 'key = "queen"', 'key = "horse"', "`horse` is already at"),
        ("things.toml", 'sort = "thing"', 'sort = "thing"\nsex = "male"', "has no sex"),
        ("things.toml", "\ncontainer = true\n", "\ncontainer = 1\n", "It needs true or false."),
        ("verbs.toml", 'past = "pushed"', 'past = "push"', "one form for now and then"),
        ("verbs.toml", 'ing = "pushing"\n', "", "`ing` is missing."),
        ("verbs.toml", '["person", "animal"]', '["person", "plant"]', "`sorts` cannot be"),
        ("adjectives.toml", "[[adjective]]", "[[adjektive]]", "Did you mean `adjective`?"),
    ],
)
def test_a_fault_is_told_with_its_file_and_line(
    name: str, old: str, new: str, said: str, copied: Path
) -> None:
    spoil(copied, name, old, new)
    (fault,) = faults(copied)
    assert said in fault
    where, line, _ = fault.split(":", 2)
    assert where == f"content/lexicon/{name}"
    lines = (copied / "lexicon" / name).read_text(encoding="utf-8").splitlines()
    shown = lines[int(line) - 1]
    assert shown.startswith("[[") or shown in new.splitlines() or new in shown


def test_all_faults_are_told_at_once(copied: Path) -> None:
    spoil(copied, "people.toml", "size = 2", "size = 9")
    spoil(copied, "verbs.toml", 'base = "pull"\n', "")
    spoil(copied, "things.toml", 'key = "cup"', "key = ")
    assert len(faults(copied)) == 3


def test_an_unknown_locale_is_refused(content: Path) -> None:
    assert faults(content, locale="en-UK") == ["locale: There is no 'en-UK'. Did you mean `en-US`?"]


def test_a_folder_without_words_is_refused(tmp_path: Path) -> None:
    assert "There are no words." in faults(tmp_path)[0]
