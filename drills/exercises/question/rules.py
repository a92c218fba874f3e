"""What every question must hold, one function a rule, and what a batch of them must hold."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence

from drills.core.items import CueKind, Foil, Item, Option
from drills.core.material import Material
from drills.core.meanings import Kin, Role, Scene
from drills.core.problems import Problem
from drills.core.question_words import NO, YES, cell_of
from drills.exercises.choices import (
    Rule,
    fault,
    ladder_climbs,
    one_right_option,
    options_differ,
    reasons_given,
)
from drills.exercises.question.form import form_of
from drills.exercises.question.keys import KEYS, NEITHER
from drills.exercises.question.kin_pools import possessor, shows_trading, switched_off
from drills.language import answer_sex, ask_sex_of_this
from drills.language.kinship import names_of

LONGEST_OPTION = 40
"""Most letters of an option, which is one line."""
LONGEST_PROMPT = 40
LONGEST_SENTENCE = 80
"""Most letters of a sentence: two lines."""
MOST_TREE_LINES = 6

_STILL_OPEN = (None, Foil.REVERSAL, Foil.WORD)


def with_neither(form: str) -> str:
    """The form with "neither" among its answers."""
    return f"{form}+{NEITHER}"


def guesses(options: Sequence[Option], picture: Scene | None) -> int:
    """How many options the content words leave; all, where a picture alone tells."""
    if picture is not None:
        return len(options)
    return sum(option.foil in _STILL_OPEN for option in options)


def guesses_counted(item: Item, _material: Material) -> tuple[Problem, ...]:
    count = guesses(item.options, item.picture)
    if item.effective_k == count and len(item.options) >= 2:
        return ()
    return fault(item, f"it counts {item.effective_k} choices by chance where {count} are.")


def fits_the_screen(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Sentence, question and answers are short enough to stand whole."""
    texts = [option.text or "" for option in item.options]
    if not all(texts) or max(map(len, texts)) > LONGEST_OPTION:
        return fault(item, f"one of {texts} is no line of words.")
    if len(item.prompt) > LONGEST_PROMPT:
        return fault(item, f"its question {item.prompt!r} is too long.")
    if not 0 < len(item.sentence) <= LONGEST_SENTENCE:
        return fault(item, f"its sentence {item.sentence!r} is too long or missing.")
    for cue in item.cues:
        if cue.kind is CueKind.TREE:
            lines = cue.text.split("\n")
            if len(lines) > MOST_TREE_LINES or max(map(len, lines)) > LONGEST_OPTION:
                return fault(item, "its family tree is too large.")
    return ()


def answers_its_question(item: Item, material: Material) -> tuple[Problem, ...]:
    """The answer follows from what is told and what is asked, worked out anew."""
    if item.answer is None:
        return fault(item, "it has no answer.")
    form = form_of(item.target).removesuffix(f"+{NEITHER}")
    key = KEYS[form](item, material.lexicon)
    given = item.options[item.answer].text
    if key is None:
        return fault(item, f"{item.prompt!r} does not ask of what is told.")
    if key != given:
        return fault(item, f"the answer is {given!r} where {key!r} is right.")
    return ()


def relatives_show_trading(item: Item, material: Material) -> tuple[Problem, ...]:
    """Head and possessor differ in what is asked; no word is said or meant that is switched off."""
    kin = item.meaning
    if not isinstance(kin, Kin):
        return ()
    lexicon = material.lexicon
    off = set(switched_off(lexicon))
    said = {text for option in item.options for text in (option.text or "").split()}
    for end in range(1, len(kin.terms) + 1):
        if off & {*kin.terms[:end], *names_of(kin.terms[:end]), *said}:
            return fault(item, "a relative is said or meant who is switched off.")
    reversals = [option.text for option in item.options if option.foil is Foil.REVERSAL]
    owner = possessor(kin.terms)
    if item.prompt == ask_sex_of_this(kin, lexicon).text:
        if not shows_trading(kin.terms):
            return fault(item, f"head and possessor of {kin.terms} are of one sex.")
        wanted = answer_sex(Kin(terms=(owner,)))
    else:
        if owner in names_of(kin.terms):
            return fault(item, f"the possessor of {kin.terms} may be the one who is meant.")
        wanted = f"my {lexicon.kin[owner].singular}"
    if reversals != [wanted]:
        return fault(item, f"no wrong answer is the possessor, {wanted}.")
    return ()


def foils_are_false(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Of relatives, no wrong answer may be true of some family."""
    if not isinstance(item.meaning, Kin):
        return ()
    names = {f"my {name}" for name in names_of(item.meaning.terms)}
    for option in item.options:
        if option.foil is not None and option.text in names:
            return fault(item, f"{option.text!r} may be right as well.")
    return ()


QUESTION_RULES: tuple[Rule, ...] = (
    one_right_option,
    reasons_given,
    options_differ,
    ladder_climbs,
    guesses_counted,
    fits_the_screen,
    answers_its_question,
    relatives_show_trading,
    foils_are_false,
)


# Rules of a batch of questions.


def truth_comes_out_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """Of each form and part, and of each cell of the grid, half is true, within one."""
    return _even(
        items,
        lambda item: [option.text for option in item.options] == [YES, NO],
        lambda item: f"{item.target.name} {item.level}",
        lambda item: item.answer == 0,
        (True, False),
    )


def cells_come_out_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """Each cell of the grid comes equally often, within one."""
    return _even(
        items,
        lambda item: cell_of(item.level) is not None,
        lambda item: item.target.name,
        lambda item: item.level,
        tuple(dict.fromkeys(item.level for item in items if cell_of(item.level) is not None)),
    )


def places_come_out_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """The right answer stands in each place equally often, within one, where it may stand."""
    return _even(
        items,
        lambda item: not {option.text for option in item.options} & {YES, NEITHER},
        lambda item: f"{item.target.name} of {len(item.options)}",
        lambda item: item.answer,
        None,
    )


def parts_come_out_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """Doer and done-to are asked for equally often, within one."""
    return _even(
        items,
        lambda item: form_of(item.target) == "who-did-what",
        lambda item: item.target.name,
        lambda item: Role.DONE_TO if item.prompt.startswith("Who was ") else Role.DOER,
        tuple(Role),
    )


def _even(
    items: Sequence[Item],
    counts: Callable[[Item], bool],
    group: Callable[[Item], str],
    value: Callable[[Item], object],
    values: tuple[object, ...] | None,
) -> tuple[Problem, ...]:
    found: dict[str, list[Item]] = {}
    for item in filter(counts, items):
        found.setdefault(group(item), []).append(item)
    for name, of_group in found.items():
        tally = Counter(value(item) for item in of_group)
        every = values or tuple(range(len(of_group[0].options)))
        shares = [tally[each] for each in every]
        if shares and max(shares) - min(shares) > 1:
            return fault(of_group[0], f"{name}: {dict(tally)} is uneven.")
    return ()


BATCH_RULES = (
    truth_comes_out_even,
    cells_come_out_even,
    places_come_out_even,
    parts_come_out_even,
)
