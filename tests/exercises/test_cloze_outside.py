"""Keys of cloze items held against references that nobody here wrote.

Endings and small verbs: lemminflect 0.2.3, whose forms come from the NIH SPECIALIST lexicon, by
Penn tags. A or an: the CMU Pronouncing Dictionary as bundled with pocketsphinx.
"""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import lemminflect
import pocketsphinx
import pytest

from drills.core.items import Item, Kind
from drills.core.material import Material
from drills.core.meanings import State
from drills.exercises.gaps import GAP, frame_of, right_text
from tests.exercises.batches import make


def forms(lemma: str, tag: str) -> tuple[str, ...]:
    return tuple(lemminflect.getInflection(lemma, tag=tag))


def verb_lemma(item: Item) -> str:
    """The verb of the gap: of the item's words, the one that its right text is a form of."""
    text = right_text(item)
    tags = ("VB", "VBZ", "VBD", "VBG", "VBN")
    (lemma,) = {word for word in item.words if any(text in forms(word, tag) for tag in tags)}
    return lemma


def split(item: Item) -> tuple[str, list[str]]:
    """The words before the gap, and the number of the subject read off the numeral."""
    before = item.sentence.split(GAP)[0].split()
    return " ".join(before).lower(), [word.lower() for word in before]


# Which Penn tag the words before the gap ask for; school grammar, written from memory.
def wanted_tag(item: Item) -> str:
    _, before = split(item)
    last = before[-1] if before else ""
    if last in ("is", "are"):
        return "VBG"
    if last in ("can", "will", "not"):
        return "VB"
    if before[0] == "yesterday" or before[:2] == ["last", "week"]:
        return "VBD"
    return "VBZ" if "one" in before else "VBP"


@pytest.mark.parametrize("level", ["C1", "C8", "C10"])
def test_the_right_verb_ending_alone_is_the_form_that_the_reference_gives(
    level: str, material: Material
) -> None:
    tags = set()
    for seed in range(6):
        for item in make(material, Kind.CLOZE, level, count=100, seed=seed):
            lemma, tag = verb_lemma(item), wanted_tag(item)
            tags.add(tag)
            for index, option in enumerate(item.options):
                is_form = option.text in forms(lemma, tag)
                assert is_form == (index == item.answer), (item.sentence, option.text, tag)
    assert len(tags) == 2


def test_the_right_plural_alone_is_the_form_that_the_reference_gives(material: Material) -> None:
    for seed in range(6):
        for item in make(material, Kind.CLOZE, "C2", count=100, seed=seed):
            _, before = split(item)
            tag = "NN" if before[-1] == "one" else "NNS"
            lemma = next(word for word in item.words if right_text(item) in forms(word, tag))
            for index, option in enumerate(item.options):
                assert (option.text == forms(lemma, tag)[0]) == (index == item.answer)


def test_possessive_and_plural_are_built_on_the_forms_of_the_reference(
    material: Material,
) -> None:
    """Of many, the bare one and the owner, each where school grammar wants it."""
    right = set()
    for item in make(material, Kind.CLOZE, "C9", count=200, options=3):
        _, before = split(item)
        (lemma,) = {
            word
            for word in item.words
            if right_text(item) in (*forms(word, "NN"), *forms(word, "NNS"), f"{word}'s")
        }
        wanted = forms(lemma, "NN")[0] if "one" in before else forms(lemma, "NNS")[0]
        if before == ["this", "is", "the"]:
            wanted = f"{lemma}'s"
        assert right_text(item) == wanted
        assert [option.text for option in item.options].count(wanted) == 1
        right.add(wanted.removeprefix(lemma))
    assert {"", "'s", "s"} <= right


_LEMMA = {
    **dict.fromkeys(("am", "is", "are", "was", "were"), "be"),
    **dict.fromkeys(("has", "have", "had"), "have"),
    **dict.fromkeys(("do", "does", "did"), "do"),
}


def fits(word: str, *, one: bool, past: bool) -> bool:
    """Whether the reference gives `word` for this number and time."""
    lemma = _LEMMA[word]
    if not past:
        return word in forms(lemma, "VBZ" if one else "VBP")
    known = forms(lemma, "VBD")
    # The past of `be` alone shows number: VBD lists "was" for one, "were" for many.
    return word in known if len(known) == 1 else word == known[0 if one else 1]


def test_small_verbs_agree_as_the_reference_says(material: Material) -> None:
    seen = set()
    for seed in range(4):
        for item in make(material, Kind.CLOZE, "C4", count=150, options=4, seed=seed):
            name = frame_of(item, material).name
            if name not in ("number", "be-time", "have-time", "do-time"):
                continue
            _, before = split(item)
            past = before[0] in ("yesterday", "last")
            if name == "number":
                assert isinstance(item.meaning, State)
                past = right_text(item) in ("was", "were")
            for index, option in enumerate(item.options):
                word = option.text or ""
                right = fits(word, one="one" in before, past=past)
                assert right == (index == item.answer), item.sentence
                seen.add(word)
    assert seen == set(_LEMMA) - {"am"}


@pytest.fixture(scope="module")
def articles() -> dict[str, set[str]]:
    """Word -> the articles that its pronunciations in the dictionary ask for."""
    path = Path(pocketsphinx.get_model_path()) / "en-us" / "cmudict-en-us.dict"
    found: dict[str, set[str]] = defaultdict(set)
    for line in path.read_text(encoding="utf-8").splitlines():
        word, first, *_ = line.split()
        found[word.partition("(")[0]].add("an" if first[0] in "AEIOU" else "a")
    return found


def test_a_and_an_follow_the_next_sound_in_the_dictionary(
    material: Material, articles: dict[str, set[str]]
) -> None:
    following = set()
    for seed in range(4):
        for item in make(
            material, Kind.CLOZE, "C5", count=120, seed=seed, groups=("a-an", "a-the", "an-the")
        ):
            word = item.sentence.split(f"{GAP} ")[1].split()[0].strip(".")
            following.add(word)
            offered = {option.text for option in item.options} & {"a", "an"}
            assert offered >= articles[word] if "the" not in offered else True
            if right_text(item) in ("a", "an"):
                assert articles[word] == {right_text(item)}
    # Letters that mislead are among them.
    assert {"honest", "hour", "useful", "uniform"} <= following


def test_a_verb_of_the_words_beside_the_lexicon_has_the_forms_of_the_reference(
    material: Material,
) -> None:
    own = set(material.cloze_words.lexicon.alone) - set(material.lexicon.alone)
    assert len(own) > 40
    for key in sorted(own):
        verb = material.cloze_words.lexicon.alone[key]
        for text, tag in (
            (verb.third_person, "VBZ"),
            (verb.past, "VBD"),
            (verb.past_participle, "VBN"),
            (verb.ing, "VBG"),
        ):
            # To lie down, of which the reference gives the forms of telling lies as well.
            assert text in forms(key, tag) or key == "lie", (key, tag)
    for key, noun in material.cloze_words.lexicon.nouns.items():
        if key not in material.lexicon.nouns:
            assert noun.plural == forms(key, "NNS")[0]


def test_a_superlative_is_the_form_that_the_reference_gives(material: Material) -> None:
    made = {
        words[words.index("the") + 1]
        for item in make(material, Kind.CLOZE, "C5", count=300, groups=("a-the",))
        if "of all" in item.restated.text
        for words in [item.restated.text.split()]
    }
    known = {
        forms(each.base, "JJS")[0]
        for each in material.lexicon.adjectives.values()
        if each.comparative
    }
    assert len(made) > 8
    assert made <= known
