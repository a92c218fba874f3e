"""Who does it, told or asked without whom it is done to."""

from __future__ import annotations

from drills.core.meanings import Act, Aspect, Tense, Transfer
from drills.core.words import Lexicon, Part, Sentence, Sort
from drills.language.abstract import Phrase, definite, finite, pronoun, small
from drills.language.plain import restate
from drills.language.predicates import predicate
from drills.language.roles import Role, check_roles
from drills.language.steps import finish

STAND_ALONE = frozenset({"film", "follow", "lead", "paint", "pay", "pull", "push", "splash"})
"""Verbs that say who does it by themselves: "Who pulled?".

All others want an object: "Who covered?" is no English, and whoever is woken woke as well.
Common practice, no source.
"""


def someone(event: Act | Transfer, lexicon: Lexicon) -> Phrase:
    """What stands for the one it is done to, or for what is given; nothing where nothing has to.

    "someone", "anyone" of what does not happen, "another animal", "it".
    """
    if isinstance(event, Transfer):
        is_person = lexicon.nouns[event.given].sort is Sort.PERSON
        return (pronoun("someone" if is_person else "it", Role.GIVEN),)
    if event.verb in STAND_ALONE:
        return ()
    if lexicon.nouns[event.done_to].sort is Sort.ANIMAL:
        return (small("another", Part.DETERMINER), pronoun("animal", Role.DONE_TO))
    return (pronoun("anyone" if event.negated else "someone", Role.DONE_TO),)


def tell_doer(event: Act | Transfer, lexicon: Lexicon) -> Sentence:
    """ "The sailor pushed.", "The nurse covered someone."; of the present, as under way."""
    check_roles(event, lexicon)
    if isinstance(event, Act):
        aspect = Aspect.PROGRESSIVE if event.tense is Tense.PRESENT else Aspect.SIMPLE
        verb = predicate(event.verb, event.tense, aspect, Role.DOER, negated=event.negated)
    else:
        verb = (finite(event.verb, event.tense, Role.DOER),)
    words = (definite(event.doer, Role.DOER), (*verb, *someone(event, lexicon)))
    return Sentence(tokens=finish(words, lexicon), plain=restate(event, lexicon))
