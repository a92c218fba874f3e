"""What must never stand in one cloze: pairs that both fit, words that hide number or tense.

Common practice, no source, where a line does not say more.
"""

from __future__ import annotations

from collections.abc import Sequence

TOO_NEAR: tuple[tuple[str, str], ...] = (
    ("in", "inside"),
    ("on", "onto"),
    ("in", "into"),
    ("under", "below"),
    ("near", "next to"),
    ("between", "among"),
    ("who", "that"),
    ("which", "that"),
    ("which", "what"),
    ("may", "can"),
    ("may", "might"),
    ("will", "is going to"),
    ("since", "because"),
    # Two facts that could be joined by both.
    ("and", "but"),
    ("and", "because"),
    ("and", "so"),
    ("if", "because"),
    # "Looks like a queen", "looks at a queen".
    ("like", "as"),
    # A thing that stands before or behind another also stands next to it.
    ("next to", "behind"),
    ("next to", "in front of"),
    # "Some boat", "any boat": one that is not named, or whichever.
    ("some", "every"),
    ("some", "each"),
    ("some", "another"),
    ("any", "every"),
    ("any", "each"),
    ("any", "another"),
    ("some", "any"),
    # One whose sex is not told has "their own pillow".
    ("their", "its"),
    ("their", "his"),
    ("their", "her"),
    ("them", "him"),
    ("them", "her"),
    # "I see that the queen has": the one over there.
    ("that", "what"),
)
"""Pairs that may both be right."""

AFTER_A_NOUN = frozenset(
    {
        "about", "around", "at", "for", "from", "in", "like", "of", "on", "over", "through", "to",
        "with",
    }
)  # fmt: skip
"""Prepositions that may go with a noun just before them: "shares the brush of the dancer"."""

UNCLEAR_NUMBER = frozenset(
    {
        "army", "audience", "band", "choir", "class", "club", "committee", "couple", "crew",
        "crowd", "family", "glasses", "group", "pair", "people", "police", "scissors", "staff",
        "team", "trousers",
    }
)  # fmt: skip
"""Groups that speakers count as one or as many, and nouns that are always plural."""

UNCOUNTED = frozenset(
    {
        "advice", "bread", "furniture", "hair", "homework", "information", "luggage", "milk",
        "money", "mud", "music", "news", "paint", "rain", "rice", "salt", "sand", "snow", "sugar",
        "water", "weather", "work",
    }
)  # fmt: skip
"""Nouns that are not counted."""

ONE_FORM_FOR_THEN = frozenset(
    {
        "bet", "burst", "cast", "cost", "cut", "hit", "hurt", "knit", "let", "put", "quit", "read",
        "rid", "set", "shed", "shut", "slit", "split", "spread", "thrust",
    }
)  # fmt: skip
"""Verbs that are written alike for now and then."""

ONE_FORM_FOR_MANY = frozenset({"deer", "fish", "series", "sheep", "species", "trout"})
"""Nouns that are written alike for one and many."""

LOCALE_WORDS: dict[str, frozenset[str]] = {
    "en-US": frozenset(
        {"color", "gray", "favorite", "gotten", "mom", "sidewalk", "eraser", "apologize"}
    ),
    "en-GB": frozenset(
        {"colour", "grey", "favourite", "whilst", "mum", "pavement", "rubber", "apologise"}
    ),
}
"""Words of one region's spelling or usage; an item of another region has none of them."""

REGIONAL = frozenset({"weekend", "hospital", "street", "team", "holiday", "university"})
"""Nouns whose preposition or article is another one from region to region ("at the weekend")."""


def near_pairs(words: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """The pairs among `words` of which both may be right."""
    return tuple(pair for pair in TOO_NEAR if pair[0] in words and pair[1] in words)
