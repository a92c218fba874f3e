"""Flags on how answers are given: by side, by place, by yes and no, by what came before."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import Side
from drills.core.question_words import NO, YES
from drills.core.records import Trial
from drills.digest.flag_grounds import flag, is_alone, stands_out, strata_of, told
from drills.digest.flag_values import Alert, AlertKind
from drills.measures import chance, perseveration
from drills.measures.missing import Missing
from drills.measures.strata import compare


def side(sittings: Sequence[Sequence[Trial]], settings: FlagSettings, level: float) -> Alert | None:
    """Right answers, and answers given at all, with the doer on the left against the right."""
    shown = [trial for sitting in sittings for trial in sitting if trial.asked.side is not None]
    judged = [trial for trial in shown if is_alone(trial)]
    given = [trial for trial in shown if trial.counts or trial.ended]
    ways: tuple[tuple[list[Trial], Callable[[Trial], bool], str], ...] = (
        (judged, lambda trial: trial.unaided_right, "right alone"),
        (given, lambda trial: bool(trial.attempts), "answered"),
    )
    for of, holds, says in ways:
        left, right = ([t for t in of if t.asked.side is each] for each in (Side.LEFT, Side.RIGHT))
        found = compare(strata_of(left, right, holds).values())
        if stands_out(found, settings, level, looks=len(ways)):
            return flag(
                AlertKind.SIDE,
                found.one.of + found.other.of,
                rule=(
                    f"{says} with the doer on the left and on the right at least "
                    f"{settings.least_points} points apart, name by name"
                ),
                evidence=(
                    f"Doer on the left: {told(found.one, says)}; "
                    f"on the right: {told(found.other, says)}."
                ),
                settings=settings,
            )
    return None


def place(trials: Sequence[Trial], settings: FlagSettings, level: float) -> Alert | None:
    """Right answers with the right option in one place against all other places."""
    by_options: dict[int, list[Trial]] = {}
    for trial in trials:
        options = len(trial.asked.options)
        if options > 1 and trial.asked.answer is not None and yes_is_right(trial) is None:
            by_options.setdefault(options, []).append(trial)
    looks = [
        (options, wanted, own)
        for options, own in by_options.items()
        # With two, the one place is the other's opposite.
        for wanted in range(1 if options == 2 else options)
    ]
    for options, wanted, own in looks:
        here = [trial for trial in own if trial.asked.answer == wanted]
        there = [trial for trial in own if trial.asked.answer != wanted]
        found = compare(strata_of(here, there).values())
        if stands_out(found, settings, level, looks=len(looks)):
            return flag(
                AlertKind.PLACE,
                len(own),
                rule=(
                    f"right alone with the right option in one place at least "
                    f"{settings.least_points} points apart from the other places, name by name"
                ),
                evidence=(
                    f"Of {options} options, the right one in place {wanted + 1}: "
                    f"{told(found.one)}; elsewhere: {told(found.other)}."
                ),
                settings=settings,
            )
    return None


def yes(trials: Sequence[Trial], settings: FlagSettings, level: float) -> Alert | None:
    """Right answers to what is true against right answers to what is false."""
    # What is false by another word alone is seen through without any grammar: that looks like a
    # liking for no, and can only hide one for yes.
    doubtful = [trial for trial in trials if trial.asked.effective_k > 1]
    for liked, of, sign in (("yes", trials, 1), ("no", doubtful, -1)):
        found = compare(
            strata_of(
                (trial for trial in of if yes_is_right(trial) is True),
                (trial for trial in of if yes_is_right(trial) is False),
            ).values()
        )
        if stands_out(found, settings, level) and found.points * sign > 0:
            return flag(
                AlertKind.YES,
                found.one.of + found.other.of,
                rule=(
                    "what is true and what is false answered rightly at least "
                    f"{settings.least_points} points apart, name by name"
                ),
                evidence=(
                    f"What is true: {told(found.one)}; what is false: {told(found.other)}. "
                    f"A liking for {liked}."
                ),
                settings=settings,
            )
    return None


def repeats(
    sittings: Sequence[Sequence[Trial]], settings: FlagSettings, level: float
) -> list[Alert]:
    """Errors that repeat a word of just before, and gestures in which an earlier act came again."""
    found = []
    words = perseveration.perseveration(
        [perseveration.responses_of(sitting) for sitting in sittings],
        fewest=settings.fewest_compared,
    )
    if not isinstance(words, Missing) and words.p * 2 <= level:
        found.append(
            flag(
                AlertKind.PERSEVERATION,
                words.share.of,
                rule="errors repeat one of the last three answers oftener than chance",
                evidence=(
                    f"{words.share.right} of {words.share.of} errors, "
                    f"{words.expected * words.share.of:.0f} expected."
                ),
                settings=settings,
            )
        )
    acts = perseveration.old_acts(trial for sitting in sittings for trial in sitting)
    usual = settings.old_act_percent / 100
    if (
        acts.of >= settings.fewest_compared
        and chance.upper_tail(acts.right, [usual] * acts.of) * 2 <= level
    ):
        found.append(
            flag(
                AlertKind.PERSEVERATION,
                acts.of,
                rule=(
                    f"an earlier act in more than {settings.old_act_percent} of 100 gestures "
                    "that were not right"
                ),
                evidence=f"An earlier act in {acts.right} of {acts.of} gestures not right.",
                settings=settings,
            )
        )
    return found


def yes_is_right(trial: Trial) -> bool | None:
    texts = [option.get("text") for option in trial.asked.options]
    if trial.asked.answer is None or sorted(map(str, texts)) != [NO, YES]:
        return None
    return texts[trial.asked.answer] == YES
