from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
import wordfreq

from drills.catalogue import load_lexicon
from drills.core.meanings import Comparison
from drills.core.plans import LOCALES
from drills.core.problems import BadInput
from drills.core.words import Band, Lexicon, Noun, Sort, Verb


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
    words += [(verb.base, verb) for verb in (*lexicon.alone.values(), *lexicon.transfers.values())]
    words += [(each.base, each) for each in lexicon.adjectives.values()]
    words += [(each.singular, each) for each in lexicon.kin.values()]
    for text, word in words:
        assert abs(word.zipf - wordfreq.zipf_frequency(text, "en")) <= 0.3, text
        assert word.zipf_source
    for adjunct in lexicon.adjuncts.values():
        rarest = min(wordfreq.zipf_frequency(word, "en") for word in adjunct.text.split())
        assert abs(adjunct.zipf - rarest) <= 0.3, adjunct.text


def test_the_lexicon_is_large_enough(lexicon: Lexicon) -> None:
    everyday = [noun for noun in lexicon.nouns.values() if noun.band == Band.EVERYDAY]
    assert sum(noun.sort is not Sort.THING for noun in everyday) >= 24
    assert len(lexicon.things) >= 40
    assert sum(verb.band == Band.EVERYDAY for verb in lexicon.verbs.values()) >= 26
    assert len(lexicon.adjectives) >= 12


def test_every_rare_word_is_rarer_than_every_everyday_word_of_its_kind(lexicon: Lexicon) -> None:
    nouns = [noun for noun in lexicon.nouns.values() if noun.sort is not Sort.THING]
    for words in (nouns, list(lexicon.verbs.values())):
        rare = [word.zipf for word in words if word.band == Band.RARE]
        everyday = [word.zipf for word in words if word.band == Band.EVERYDAY]
        assert len(rare) >= 6
        assert max(rare) < min(everyday)


def test_a_rare_word_shares_the_figure_of_an_everyday_one(lexicon: Lexicon) -> None:
    entries: list[Mapping[str, Noun] | Mapping[str, Verb]] = [lexicon.nouns, lexicon.verbs]
    for words in entries:
        for word in words.values():
            if word.band == Band.RARE:
                assert word.drawn_as is not None
                figure = words[word.drawn_as]
                assert figure.band == Band.EVERYDAY
                if isinstance(word, Noun) and isinstance(figure, Noun):
                    assert (word.sex, word.size) == (figure.sex, figure.size)


def test_every_verb_has_pairs_who_can_do_it_to_each_other(lexicon: Lexicon) -> None:
    for verb in lexicon.verbs.values():
        pairs = lexicon.partners(verb)
        # Fewer people have a rare name.
        assert len(pairs) >= (90 if verb.band == Band.EVERYDAY else 50)
        assert {(b, a) for a, b in pairs} == set(pairs)
        assert all(a.band == b.band == verb.band for a, b in pairs)
        assert all(verb.leaning.count(noun.key) == 0 for pair in pairs for noun in pair)


def test_things_that_a_verb_is_done_to_are_things(lexicon: Lexicon) -> None:
    for verb in lexicon.verbs.values():
        assert all(lexicon.nouns[key].sort is Sort.THING for key in verb.things)
    assert sum(bool(verb.things) for verb in lexicon.verbs.values()) >= 10


def test_opposites_are_each_others(lexicon: Lexicon) -> None:
    """And the meanings of core see a taller one where the other is shorter."""
    pairs = {(each.key, each.opposite) for each in lexicon.adjectives.values() if each.opposite}
    assert pairs == {(b, a) for a, b in pairs}
    for quality, opposite in pairs:
        assert opposite is not None
        one = Comparison(quality=quality, more="nurse", less="judge")
        other = Comparison(quality=opposite, more="judge", less="nurse")
        assert one.drawn == other.drawn


def test_no_adjunct_takes_the_sign_of_the_passive(lexicon: Lexicon) -> None:
    for adjunct in lexicon.adjuncts.values():
        assert "by" not in adjunct.text.split()
        assert len(adjunct.text.split()) <= 3
    lengths = {len(each.text.split()) for each in lexicon.adjuncts.values()}
    assert lengths == {1, 2, 3}


def test_the_locales_share_every_key(content: Path) -> None:
    american, british = (load_lexicon(content, locale=locale) for locale in LOCALES)
    assert list(american.adjuncts) == list(british.adjuncts)
    assert list(american.nouns) == list(british.nouns)
    differing = [
        key for key in american.adjuncts if american.adjuncts[key] != british.adjuncts[key]
    ]
    assert differing == ["street", "weekend"]


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
        ("adjectives.toml", 'opposite = "short"', 'opposite = "shrot"', "There is no `shrot`"),
        ("verbs.toml", '"nurse", "waiter"', '"nurse", "waitress"', "There is no `waitress`"),
        ("verbs.toml", 'things = ["box", "basket"', 'things = ["bax", "basket"', "no `bax`"),
        ("words_rare.toml", 'drawn_as = "lift"', 'drawn_as = "life"', "There is no `life`"),
        ("adjuncts.toml", "in the garden", "by the garden", "begins with by"),
        ("adjuncts.toml", "in the garden", "in the Garden", "only a day has a capital"),
        ("adjuncts.toml", 'kind = "where"', 'kind = "were"', "Did you mean `where`?"),
        ("adjuncts.toml", 'tenses = ["past"]', 'tenses = ["passed"]', "`tenses` cannot be"),
        ("kin.toml", 'sex = "female"', 'sex = "f"', "`sex` cannot be"),
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
