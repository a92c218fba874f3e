"""Why a wrong option is wrong: the words that records and the digest use."""

from __future__ import annotations

from enum import StrEnum


class WhyWrong(StrEnum):
    """FALSE_ROLE: the parts are exchanged.   FALSE_ACT, FALSE_NOUN: another act, another noun.

    FALSE_PLACE: not where it is.   FALSE_STATE: not as it is.   FALSE_ORDER: not when it was.
    FALSE_REFERENT: "him" is another than "himself".   FALSE_GENDER: "she" is no man.
    NEGATION: what is said not to be so.   AGREEMENT: number, person, sex or form does not fit.
    TENSE: another time.   CASE: a form for another part.   LOGIC: it does not follow, or does not
    answer.   COLLOCATION: the words do not go together.
    """

    FALSE_ROLE = "false_role"
    FALSE_ACT = "false_act"
    FALSE_NOUN = "false_noun"
    FALSE_PLACE = "false_place"
    FALSE_STATE = "false_state"
    FALSE_ORDER = "false_order"
    FALSE_REFERENT = "false_referent"
    FALSE_GENDER = "false_gender"
    NEGATION = "negation"
    AGREEMENT = "agreement"
    TENSE = "tense"
    CASE = "case"
    LOGIC = "logic"
    COLLOCATION = "collocation"
