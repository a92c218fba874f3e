"""Gestures and the agreement of raters as plain text."""

from __future__ import annotations

from collections.abc import Iterator

from drills.core.kinds import ItemSet
from drills.digest import pattern_wording, wording
from drills.digest.folding import fold
from drills.digest.values import Digest, Line


def gestures(digest: Digest) -> Iterator[str]:
    """The table of gestures, and how well two raters agreed where there were two."""
    if digest.gesture_lines:
        yield (
            f"  {'':<24}{'n':>4}{'alone':>13}{'help':>8}{'mean':>7}"
            f"{'0':>4}{'1':>3}{'2':>3}{'3':>3}{'with':>7}"
        )
        yield f"  {'':<24}{'':>4}{'':>13}{'before':>8}{'score':>7}{'':>13}{'help':>7}"
        for line in digest.gesture_lines:
            yield from _gesture(line)
        ticked = [
            f"{line.label}: {wording.ticks(line)}"
            for line in digest.gesture_lines
            if wording.ticks(line) != "-"
        ]
        if ticked:
            yield from fold(f"Ticked: {'; '.join(ticked)}.")
        yield from fold(wording.GESTURE_TRIES)
    else:
        yield "  None practised."
    if digest.agreement is not None:
        yield from fold(" ".join(pattern_wording.agreement(digest.agreement)))


def _gesture(line: Line) -> Iterator[str]:
    gesture = line.gesture
    if gesture is None:
        return
    label = line.label if line.item_set is ItemSet.TREATED else f"{line.label}, {line.item_set}"
    label = wording.inert(label)
    if len(label) > 23:
        yield from fold(label)
        label = ""
    zero, one, two, three = gesture.scores
    yield (
        f"  {label:<24}{gesture.of:>4}{wording.alone(line):>13}"
        f"{wording.mean(gesture.mean_help):>8}{wording.mean(gesture.mean):>7}"
        f"{zero:>4}{one:>3}{two:>3}{three:>3}{f'{line.aided.right}/{line.aided.of}':>7}"
    )
