"""The cue ladder of a cloze: what is read aloud, hinted, taken away, begun and shown."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drills.core.items import Cue, Option
from drills.core.meanings import Place, State
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Token
from drills.exercises.cues import cloze_ladder, say
from drills.exercises.frames.frame import Context, Dealt, Gapped
from drills.language import Role, ask_about

_LONGEST_PHRASE = 8


def ladder(
    dealt: Dealt,
    gapped: Gapped,
    context: Context,
    *,
    options: tuple[Option, ...],
    answer: int,
    hint: str,
    lexicon: Lexicon,
) -> tuple[Cue, ...]:
    """Levels 1 to 5.   hint: in general words, for this contrast's set."""
    word = options[answer].text or ""
    foils = [index for index in range(len(options)) if index != answer]
    start = first_letters(word, [options[index].text or "" for index in foils])
    *cues, shown = cloze_ladder(
        around=_around(gapped, context),
        hint=(hint, *_detail(dealt, gapped, lexicon)),
        removes=foils[0] if len(foils) > 1 else None,
        start=start,
        start_spoken=say("The word starts with", f"{word[0].upper()}."),
        answer_text=gapped.sentence.text,
        answer=answer,
    )
    # A longer sentence is said phrase by phrase.
    press = shown.spoken.phrases[-1:] if shown.spoken is not None else ()
    return (*cues, replace(shown, spoken=say(*gapped.sentence.spoken.phrases, *press)))


def _around(gapped: Gapped, context: Context) -> Utterance:
    """What was said before, and the words before and after the gap, the gap silent."""
    tokens = gapped.sentence.tokens
    before = _phrases(tokens[: gapped.gap], "")
    after = _phrases(tokens[gapped.gap + 1 :], gapped.sentence.end)
    said = (*before, *after)
    if gapped.sentence.end == "?":
        return say(*said, *context.said)
    return say(*context.said, *said)


def _phrases(tokens: Sequence[Token], end: str) -> tuple[str, ...]:
    """Printed tokens in phrases that are short enough to be held."""
    if not tokens:
        return ()
    phrases: list[list[str]] = [[]]
    for token in tokens:
        if len(phrases[-1]) >= _LONGEST_PHRASE:
            phrases.append([])
        phrases[-1].append(token.text + token.mark)
    return (*(" ".join(words) for words in phrases[:-1]), " ".join(phrases[-1]) + end)


def _detail(dealt: Dealt, gapped: Gapped, lexicon: Lexicon) -> tuple[str, ...]:
    """The hint in the words of this very item."""
    if isinstance(dealt.meaning, Place) and dealt.told is None:
        return (ask_about(dealt.meaning, Role.THING, lexicon).text,)
    if isinstance(dealt.meaning, State) and dealt.told is None:
        tokens = gapped.sentence.tokens
        return (f"{tokens[0].text} {tokens[1].text}.",)
    return ()


def first_letters(word: str, others: Sequence[str]) -> str:
    """The least beginning of `word`, with its length, that no other word has: "i_", "w___".

    Never the whole word, unless that is one letter: of "has" and "had" it tells "ha_".
    """
    shown = word[:1]
    for length in range(1, len(word)):
        shown = _masked(word, length)
        if all(_masked(other, length) != shown for other in others):
            break
    return shown


def _masked(word: str, length: int) -> str:
    return word[:length] + "".join(" " if letter == " " else "_" for letter in word[length:])
