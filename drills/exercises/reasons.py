"""Why a wrong option is wrong: the words that records and the digest use."""

from __future__ import annotations

from enum import StrEnum


class WhyWrong(StrEnum):
    """FALSE_ROLE: the parts are exchanged.   FALSE_ACT, FALSE_NOUN: another act, another noun.

    FALSE_PLACE: not where it is.   FALSE_ORDER: not when it was.   AGREEMENT: the number does not
    fit.
    """

    FALSE_ROLE = "false_role"
    FALSE_ACT = "false_act"
    FALSE_NOUN = "false_noun"
    FALSE_PLACE = "false_place"
    FALSE_ORDER = "false_order"
    AGREEMENT = "agreement"
