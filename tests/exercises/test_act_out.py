"""What can be built of an item to be acted out, and what is right about it."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest

from drills.core.items import CueKind, Foil, Item, Kind, Option
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Described, Scene, Transfer, Undergone
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput
from drills.exercises import check_block, make_items, targets_of
from drills.exercises.act_rules import ACT_OUT_RULES
from drills.exercises.balance import runs
from drills.exercises.choices import broken
from drills.exercises.events import (
    CONSTRUCTIONS_ACTED,
    events_of,
    figure_of,
    figures_of,
    option_of,
    parts,
    places_of,
    questions,
)
from drills.language import CONSTRUCTIONS
from drills.pictures import can_draw, tells_apart
from tests.exercises.batches import (
    CANONICAL,
    NON_CANONICAL,
    heard,
    make,
    right_scene,
    scene_of,
    with_few_words,
)

ONE_ACT = tuple(name for name in CONSTRUCTIONS_ACTED if CONSTRUCTIONS[name].meaning_type is Act)


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    """246 items: every target twice with each number of figures."""
    return [
        item
        for options in (2, 3, 4)
        for item in make(material, Kind.ACT_OUT, count=82, options=options)
    ]


def named(item: Item) -> tuple[str, str]:
    assert item.answer is not None
    return parts(events_of(item)[item.answer])


def test_every_construction_of_one_act_on_another_can_be_acted_out() -> None:
    acted = {
        name
        for name, each in CONSTRUCTIONS.items()
        if each.meaning_type in (Act, Described, Undergone, Transfer)
    }
    # A thing cannot do it; of what is not done nothing happens; she and him are any two.
    assert acted - set(CONSTRUCTIONS_ACTED) == {
        "irreversible-active",
        "negation",
        "subject-pronoun",
    }


def test_the_options_are_all_events_of_the_figures_offered(items: list[Item]) -> None:
    for item in items:
        figures = figures_of(item)
        assert [parts(event) for event in events_of(item)] == list(permutations(figures, 2))
        assert len(item.options) in (2, 6, 12)


def test_a_doer_and_another_are_the_option_in_which_they_play(items: list[Item]) -> None:
    for item in items:
        figures = figures_of(item)
        for doer, other in permutations(range(len(figures)), 2):
            index = option_of(item, doer, other)
            assert parts(events_of(item)[index]) == (figures[doer], figures[other])
            assert places_of(item, index) == (doer, other)
        with pytest.raises(ValueError, match="not in"):
            option_of(item, 0, 0)


def test_one_event_is_right_and_each_wrong_one_says_why(items: list[Item]) -> None:
    for item in items:
        right = named(item)
        for index, (event, option) in enumerate(zip(events_of(item), item.options, strict=True)):
            if index == item.answer:
                assert (option.foil, option.why_wrong) == (None, None)
            elif parts(event) == right[::-1]:
                assert (option.foil, option.why_wrong) == (Foil.REVERSAL, "false_role")
            else:
                assert (option.foil, option.why_wrong) == (Foil.NOUN, "false_noun")
        assert [option.foil for option in item.options].count(Foil.REVERSAL) == 1


def test_the_right_event_is_what_the_sentence_tells(items: list[Item], material: Material) -> None:
    """A reader of plain school grammar, written apart from the realiser, finds the same event."""
    nouns = material.lexicon.nouns
    for item in items:
        doer, done_to = (nouns[key].singular for key in named(item))
        if item.construction in ONE_ACT:
            told = heard(item.sentence)
            assert (told.doer, told.done_to) == (doer, done_to)
        elif item.construction == "short-passive":
            assert item.sentence.startswith(f"The {done_to} was ")
            assert doer not in item.sentence
        elif item.construction == "subject-relative":
            assert item.sentence.startswith(f"The {doer} that ")
        elif item.construction == "object-relative-right":
            assert item.sentence.startswith(f"I see the {done_to} that the {doer} ")
        elif item.construction == "object-relative-centre":
            assert item.sentence.startswith(f"The {done_to} that the {doer} ")
        else:
            assert item.sentence.startswith(f"The {doer} ")
            assert item.sentence.endswith(f" to the {done_to}.")


def test_each_option_says_in_words_what_will_be_seen(items: list[Item], material: Material) -> None:
    nouns = material.lexicon.nouns
    for item in items:
        for event, option in zip(events_of(item), item.options, strict=True):
            words = (option.text or "").rstrip(".").split()
            doer, other = (nouns[key].singular for key in parts(event))
            assert words[:2] == ["The", doer]
            assert words[-1] == other


def test_every_event_can_be_seen_and_told_from_its_reversal(items: list[Item]) -> None:
    for item in items[::4]:
        for index in range(len(item.options)):
            assert can_draw(scene_of(item, index).meaning)
        right = right_scene(item)
        back = next(o.scene for o in item.options if o.foil is Foil.REVERSAL)
        assert back is not None
        assert tells_apart(right, back, columns=38, lines=15)


def test_figures_offered_look_different(items: list[Item], material: Material) -> None:
    for item in items:
        looks = [figure_of(key, material.lexicon) for key in figures_of(item)]
        assert len(set(looks)) == len(looks)


def test_who_knows_the_words_guesses_one_in_two(items: list[Item], material: Material) -> None:
    for item in items:
        assert item.effective_k == 2
        left = [parts(event) for event in events_of(item) if set(parts(event)) == set(named(item))]
        assert len(left) == 2
        words = {material.lexicon.nouns[key].singular for key in named(item)}
        assert words < set(item.words)


def test_a_doer_who_is_not_named_is_the_only_other_one(items: list[Item]) -> None:
    for item in items:
        if item.construction == "short-passive":
            assert len(figures_of(item)) == 2
            assert item.restated.text.startswith("The ")
            assert "omeone" not in item.restated.text


def test_what_is_asked_first_is_said_after_the_sentence(items: list[Item]) -> None:
    for item in items:
        first, second = questions(item)
        assert item.prompt == f"{first} {second}"
        assert item.spoken.text == f"{item.sentence} {first}"
        given = {f"Who is it {done} to?" for done in ("given", "shown", "brought")}
        assert second in (given if item.construction == "dative" else {"Who is it done to?"})


@pytest.mark.parametrize("options", [2, 3, 4])
@pytest.mark.parametrize("count", [12, 61])
def test_each_place_has_doer_and_done_to_equally_often(
    material: Material, options: int, count: int
) -> None:
    for seed in range(3):
        batch = make(material, Kind.ACT_OUT, *ONE_ACT, count=count, options=options, seed=seed)
        casts = [places_of(item, item.answer or 0) for item in batch]
        doers = Counter(doer for doer, _ in casts)
        assert max(doers.values()) - min(doers[place] for place in range(options)) <= 1
        others = Counter(other for _, other in casts)
        assert max(others.values()) - min(others[place] for place in range(options)) <= options
        assert runs([doer for doer, _ in casts], longest=3) == []


@pytest.mark.parametrize("options", [2, 4])
def test_the_doer_stands_on_each_side_equally_often(material: Material, options: int) -> None:
    for seed in range(3):
        batch = make(material, Kind.ACT_OUT, *ONE_ACT, count=48, options=options, seed=seed)
        sides = Counter(right_scene(item).side for item in batch)
        assert abs(sides[Side.LEFT] - sides[Side.RIGHT]) <= 1
        for item in batch:
            assert len({scene_of(item, index).side for index in range(len(item.options))}) == 1


@pytest.mark.parametrize("options", [2, 3, 4])
def test_each_noun_is_equally_often_doer_and_done_to(material: Material, options: int) -> None:
    for seed in range(3):
        batch = make(material, Kind.ACT_OUT, *ONE_ACT, count=60, options=options, seed=seed)
        lead: Counter[tuple[str, str]] = Counter()
        for item in batch:
            doer, done_to = named(item)
            lead[item.construction, doer] += 1
            lead[item.construction, done_to] -= 1
        assert max(map(abs, lead.values())) <= 1
        for before, after in pairwise(batch):
            assert not set(before.words) & set(after.words)


def test_those_who_only_stand_beside_take_turns(material: Material) -> None:
    batch = make(material, Kind.ACT_OUT, "active", count=60, options=4, groups=("caring",))
    beside = Counter(key for item in batch for key in figures_of(item) if key not in named(item))
    grown = [key for key in beside if material.lexicon.nouns[key].size == 2]
    assert max(beside[key] for key in grown) - min(beside[key] for key in grown) <= 2


def first_noun_doer(item: Item, material: Material) -> int:
    """What a listener builds who takes the first noun for the doer, the other for the done-to."""
    nouns = material.lexicon.nouns
    first, second = sorted(
        named(item), key=lambda key: item.sentence.split().index(nouns[key].singular)
    )
    figures = figures_of(item)
    return option_of(item, figures.index(first), figures.index(second))


@pytest.mark.parametrize("options", [2, 3, 4])
def test_a_listener_who_takes_the_first_noun_for_the_doer_is_found_out(
    material: Material, options: int
) -> None:
    """Berndt, Mitchum & Haendiges 1996, Cognition 58:289: both tails of chance are told apart."""
    for names, share in ((CANONICAL, 1.0), (NON_CANONICAL, 0.0)):
        batch = make(material, Kind.ACT_OUT, *names, count=24, options=options)
        built = [
            first_noun_doer(replace(item, sentence=item.sentence.replace(".", "")), material)
            == item.answer
            for item in batch
        ]
        assert sum(built) == share * len(batch)


@pytest.mark.parametrize("options", [2, 4])
def test_a_listener_who_knows_the_words_alone_is_at_chance(
    material: Material, options: int
) -> None:
    """Exact binomial test of scipy, at the chance that the items themselves claim."""
    rng = Random(4)
    batch = make(material, Kind.ACT_OUT, *ONE_ACT, count=120, options=options)
    right = 0
    for item in batch:
        doer, other = rng.sample(named(item), 2)
        figures = figures_of(item)
        right += option_of(item, figures.index(doer), figures.index(other)) == item.answer
    assert binomtest(right, len(batch), 1 / batch[0].effective_k).pvalue > 0.01


# Help


def test_help_takes_one_away_who_is_not_named(items: list[Item]) -> None:
    for item in items:
        figures = figures_of(item)
        gone = [cue.removes for cue in item.cues if cue.kind is CueKind.REMOVE]
        assert bool(gone) == (len(figures) > 2)
        for removed in gone:
            left = [parts(e) for i, e in enumerate(events_of(item)) if i not in removed]
            there = {key for cast in left for key in cast}
            assert len(set(figures) - there) == 1
            assert set(named(item)) <= there
            assert len(left) == len(there) * (len(there) - 1)


def test_help_names_the_doer_then_shows_the_event(items: list[Item], material: Material) -> None:
    for item in items:
        doer, other = (material.lexicon.nouns[key].singular for key in named(item))
        *_, names, shows = item.cues
        assert names.kind is CueKind.NAME_DOER
        assert names.text.startswith(f"The {doer} ")
        assert other not in names.text.split()
        assert shows.kind is CueKind.ANSWER
        event, press = shows.text.split("\n")
        assert event == item.options[item.answer or 0].text
        assert press == f"Now press {figures_of(item).index(named(item)[1]) + 1}."


# Rules


SEEDS = st.integers(min_value=0, max_value=2**31)


@settings(max_examples=15, deadline=None)
@given(seed=SEEDS, options=st.sampled_from([2, 3, 4]), name=st.sampled_from(CONSTRUCTIONS_ACTED))
def test_any_batch_keeps_every_rule(material: Material, seed: int, options: int, name: str) -> None:
    for item in make(material, Kind.ACT_OUT, name, count=8, options=options, seed=seed):
        assert broken(item, material, ACT_OUT_RULES) == ()
        again = make(material, Kind.ACT_OUT, name, count=8, options=options, seed=seed)
    assert item == again[-1]


@pytest.fixture(scope="module")
def item(material: Material) -> Item:
    return make(material, Kind.ACT_OUT, "full-passive", count=1, options=3)[0]


def with_option(item: Item, index: int, **changes: object) -> Item:
    changed = replace(item.options[index], **changes)  # type: ignore[arg-type]
    return replace(item, options=(*item.options[:index], changed, *item.options[index + 1 :]))


def wrong(item: Item, foil: Foil) -> int:
    return [option.foil for option in item.options].index(foil)


def planted(item: Item) -> dict[str, Item]:
    """The item with one violation each."""
    answer = item.answer or 0
    reversal, noun = wrong(item, Foil.REVERSAL), wrong(item, Foil.NOUN)
    right = scene_of(item, answer)
    assert isinstance(right.meaning, Act)
    top = item.cues[-1]
    removal = next(cue for cue in item.cues if cue.kind is CueKind.REMOVE)
    return {
        "another answer": replace(item, answer=reversal),
        "two right ones": with_option(item, noun, foil=None, why_wrong=None),
        "no reason": with_option(item, noun, why_wrong=None),
        "another foil": with_option(item, noun, foil=Foil.REVERSAL),
        "an option twice": replace(item, options=(*item.options[:-1], item.options[0])),
        "an option less": replace(item, options=item.options[:-1]),
        "another order": replace(item, options=item.options[::-1]),
        "no scene": with_option(item, noun, scene=None),
        "another verb": with_option(
            item, noun, scene=Scene(meaning=replace(right.meaning, verb="kiss"), side=right.side)
        ),
        "the other side": with_option(
            item, reversal, scene=replace(scene_of(item, reversal), side=right.side.other)
        ),
        "other words": with_option(item, noun, text="The goat sang."),
        "chance of one in six": replace(item, effective_k=6),
        "another sentence": replace(item, meaning=right.meaning.reversed()),
        "no help": replace(item, cues=()),
        "no top": replace(item, cues=item.cues[:-1]),
        "a named one goes": replace(item, cues=(replace(removal, removes=(answer,)), top)),
        "half of one goes": replace(
            item, cues=(replace(removal, removes=removal.removes[:2]), top)
        ),
    }


def test_planted_violations_are_caught(item: Item, material: Material) -> None:
    assert broken(item, material, ACT_OUT_RULES) == ()
    missed = [
        what for what, bad in planted(item).items() if not broken(bad, material, ACT_OUT_RULES)
    ]
    assert missed == []


def test_every_rule_catches_something(item: Item, material: Material) -> None:
    catches: Counter[str] = Counter()
    lexicon = material.lexicon
    twins = {**lexicon.nouns, **{
        key: replace(lexicon.nouns[key], drawn_as="baker") for key in figures_of(item)
    }}  # fmt: skip
    alike = replace(material, lexicon=replace(lexicon, nouns=twins))
    for rule in ACT_OUT_RULES:
        catches[rule.__name__] = sum(bool(rule(bad, material)) for bad in planted(item).values())
        catches[rule.__name__] += bool(rule(item, alike))
    assert [name for name, count in catches.items() if count == 0] == []


def test_more_figures_than_the_words_give_are_told(material: Material) -> None:
    few = with_few_words(material, "goat", "pig", "dog")
    plan = BlockPlan(kind=Kind.ACT_OUT, names=("active",), trials=4, options=4)
    problems = check_block(plan, few)
    assert any("too few words for 4 figures" in str(problem) for problem in problems)
    with pytest.raises(BadInput):
        targets_of(plan, few)


def test_three_animals_are_enough_for_three_figures(material: Material) -> None:
    few = with_few_words(material, "goat", "pig", "dog")
    plan = BlockPlan(
        kind=Kind.ACT_OUT, names=("active",), trials=4, options=3, groups=("going", "moving")
    )
    made = make_items(targets_of(plan, few), options=3, material=few, rng=Random(1))
    assert all(set(figures_of(each)) == {"goat", "pig", "dog"} for each in made)


def test_a_gesture_cannot_be_acted_out(material: Material) -> None:
    (wave,) = make(material, Kind.GESTURE, "wave", count=1)
    assert events_of(wave) == ()
    words = replace(wave, options=(Option(text="on"),))
    with pytest.raises(TypeError, match="not to be acted out"):
        events_of(words)
