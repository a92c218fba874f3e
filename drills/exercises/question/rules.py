"""What every question must hold, one function a rule, and what a batch of them must hold."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from drills.core.items import CueKind, Foil, Item, Option
from drills.core.material import Material
from drills.core.meanings import Act, Comparison, Described, Kin, Order, Role, Scene, State
from drills.core.problems import Problem
from drills.core.question_words import GRID, NO, YES, cell_of
from drills.core.words import Lexicon
from drills.exercises.choices import (
    Rule,
    fault,
    ladder_climbs,
    one_right_option,
    options_differ,
    reasons_given,
)
from drills.exercises.question.form import form_of
from drills.exercises.question.kin_pools import possessor, shows_trading, switched_off
from drills.language import (
    EASY,
    HARD,
    answer_name,
    answer_owner,
    answer_relation,
    answer_sex,
    ask_doer,
    ask_done_to,
    ask_first,
    ask_last,
    ask_less,
    ask_more,
    ask_owner,
    ask_relation,
    ask_sex_of_this,
    ask_what_happened,
    ask_whether,
    state_fact,
)
from drills.language.kinship import names_of

NEITHER = "neither"
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
    key = _KEYS[form](item, material.lexicon)
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


def _act(item: Item) -> Act | None:
    told = item.meaning.act if isinstance(item.meaning, Described) else item.meaning
    return told if isinstance(told, Act) else None


def _who(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None:
        return None
    nouns = lexicon.nouns
    if item.prompt == ask_doer(act, lexicon).text:
        return answer_name(nouns[act.doer])
    if item.prompt == ask_done_to(act, lexicon).text:
        return answer_name(nouns[act.done_to])
    words = item.prompt.rstrip("?").split()
    third = [noun for noun in nouns.values() if noun.singular in words]
    is_third = third and not {act.doer, act.done_to} & {noun.key for noun in third}
    return NEITHER if is_third else None


def _what(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None or item.prompt != ask_what_happened(act, lexicon).text:
        return None
    return f"{act_text(act, lexicon)}"


def act_text(act: Act, lexicon: Lexicon) -> str:
    """The act as one short clause: the plain words of a question about it."""
    return ask_doer(act, lexicon).plain


def _whether(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None:
        return None
    if item.prompt == ask_whether(act, act, lexicon).text:
        return YES
    others = (act.reversed(), *(replace(act, verb=verb) for verb in lexicon.verbs))
    asked = any(item.prompt == ask_whether(other, act, lexicon).text for other in others)
    return NO if asked else None


def _relative(item: Item, lexicon: Lexicon) -> str | None:
    told = item.meaning
    if isinstance(told, State):
        is_asked = item.sentence == ask_owner(told, lexicon).text
        return answer_owner(lexicon.nouns[told.subject]) if is_asked else None
    if not isinstance(told, Kin):
        return None
    if item.prompt == ask_sex_of_this(told, lexicon).text:
        return answer_sex(told)
    asks = [ask_relation(told, lexicon, of=of).text for of in (False, True)]
    return answer_relation(told, lexicon) if item.prompt in asks else None


def _when(item: Item, lexicon: Lexicon) -> str | None:
    order = item.meaning
    if not isinstance(order, Order):
        return None
    doer = lexicon.nouns[order.doer].singular
    for ask, verb in ((ask_first, order.earlier), (ask_last, order.later)):
        if item.prompt == ask(order, lexicon).text:
            return f"The {doer} {lexicon.alone[verb].past}."
    return None


def _more(item: Item, lexicon: Lexicon) -> str | None:
    comparison = item.meaning
    if not isinstance(comparison, Comparison):
        return None
    for ask, noun in ((ask_more, comparison.more), (ask_less, comparison.less)):
        if item.prompt == ask(comparison, lexicon).text:
            return answer_name(lexicon.nouns[noun])
    return None


def _truth(item: Item, lexicon: Lexicon) -> str | None:
    for fact in lexicon.facts.known:
        back = replace(fact, doer=fact.done_to, done_to=fact.doer)
        for stated, key in ((fact, YES), (back, NO)):
            if item.words == (stated.doer, stated.verb, stated.done_to):
                said = item.construction in (*EASY, *HARD) and (
                    item.sentence == state_fact(stated, item.construction, lexicon).text
                )
                return key if said else None
    return None


_KEYS: Mapping[str, Callable[[Item, Lexicon], str | None]] = MappingProxyType(
    {
        "who-did-what": _who,
        "what-happened": _what,
        "yes-no": _whether,
        "kin": _relative,
        "before-after": _when,
        "comparison": _more,
        GRID: _truth,
    }
)

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
