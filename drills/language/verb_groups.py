"""The verb of a clause with its auxiliaries, each form chosen by the word before it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drills.core.clauses import Clause, Party
from drills.core.meanings import Aspect, Tense
from drills.core.words import Lexicon, Part
from drills.language.abstract import Form, Number, Word
from drills.language.morphology import inflect
from drills.language.small_words import be, takes_plain_form

_PARTICIPLES = {"be": "been", "have": "had"}
_ING = {"be": "being", "have": "having"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Verbal:
    """One word of a verb group."""

    text: str
    part: Part


def verb_group(clause: Clause, subject: Party, lexicon: Lexicon) -> list[Verbal]:
    """ "was", "does not wave", "has been washed": in order, "not" after the first auxiliary."""
    chain = _chain(clause)
    group: list[Verbal] = []
    for index, (lemma, form) in enumerate(chain):
        is_main = index == len(chain) - 1
        if index == 0 and clause.modal:
            text = lemma
        elif form is Form.FINITE:
            text = _finite(lemma, clause.tense, subject, lexicon)
        else:
            text = _form(lemma, form, lexicon)
        part = Part.VERB if is_main and lemma not in ("be", "have") else Part.AUXILIARY
        group.append(Verbal(text=text, part=part))
    if clause.negated:
        group.insert(1, Verbal(text="not", part=Part.NEGATION))
    return group


def _chain(clause: Clause) -> list[tuple[str, Form]]:
    """Lemmas with their forms: after a modal the base, after "have" a participle, and so on."""
    chain: list[tuple[str, Form]] = []
    form = Form.FINITE
    if clause.modal:
        chain.append((clause.modal, form))
        form = Form.BASE
    if clause.perfect:
        chain.append(("have", form))
        form = Form.PAST_PARTICIPLE
    if clause.aspect is Aspect.PROGRESSIVE:
        chain.append(("be", form))
        form = Form.ING
    if clause.passive:
        chain.append(("be", form))
        form = Form.PAST_PARTICIPLE
    if clause.negated and not chain and clause.verb != "be":
        chain.append(("do", form))
        form = Form.BASE
    return [*chain, (clause.verb, form)]


def first_auxiliary(clause: Clause) -> tuple[Clause, Clause]:
    """What goes before the subject in a question, and what stays behind it with one word more.

    Both are clauses; the first word of the first one, and all but the first of the second, make
    the question: "does" ... "(not) wave".
    """
    helped = clause.modal or clause.perfect or clause.passive or clause.verb == "be"
    if helped or clause.aspect is Aspect.PROGRESSIVE:
        return clause, clause
    # "Does" is what the negated clause has, and "will wave" leaves "wave".
    return replace(clause, negated=True), replace(clause, modal="will", negated=False)


def _finite(lemma: str, tense: Tense, subject: Party, lexicon: Lexicon) -> str:
    if lemma == "be":
        return be(subject, tense)
    number = Number.PLURAL if takes_plain_form(subject) else Number.SINGULAR
    part = Part.AUXILIARY if lemma in ("have", "do") else Part.VERB
    return inflect(
        Word(lemma=lemma, part=part, form=Form.FINITE, tense=tense, number=number), lexicon
    )


def _form(lemma: str, form: Form, lexicon: Lexicon) -> str:
    if form is Form.BASE and lemma in ("be", "have"):
        return lemma
    if form is Form.PAST_PARTICIPLE and lemma in _PARTICIPLES:
        return _PARTICIPLES[lemma]
    if form is Form.ING and lemma in _ING:
        return _ING[lemma]
    return inflect(Word(lemma=lemma, part=Part.VERB, form=form), lexicon)
