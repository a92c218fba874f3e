"""How well true is told from false, apart from a liking for yes or for no.

d' and the criterion c of yes/no answers, with the log-linear correction always, so that all right
and all wrong have a number too. Source of the correction: Hautus 1995, Behavior Research Methods,
Instruments, & Computers 27:46; of d' and c: Macmillan & Creelman, Detection Theory (from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import sqrt
from statistics import NormalDist

from drills.core.question_words import NO, YES
from drills.core.records import Trial
from drills.measures.chance import Verdict, verdict

_NORMAL = NormalDist()


@dataclass(frozen=True, slots=True, kw_only=True)
class Detection:
    """Answers to what is true (hits: yes of `true`) and to what is false (yes of `false`)."""

    hits: int
    true: int
    false_alarms: int
    false: int

    @property
    def of(self) -> int:
        return self.true + self.false

    @property
    def d_prime(self) -> float:
        """0 is telling nothing; below 0, yes comes oftener to what is false."""
        return d_prime(*self._rates)

    @property
    def criterion(self) -> float:
        """Below 0 a liking for yes, above 0 for no."""
        return criterion(*self._rates)

    @property
    def liking(self) -> Verdict | None:
        """ABOVE: yes oftener than no, by the exact binomial test; None without answers.

        Half of what is asked is true, so that whoever has no liking says yes half the time.
        """
        return verdict(self.hits + self.false_alarms, [0.5] * self.of) if self.of else None

    @property
    def _rates(self) -> tuple[float, float]:
        return (
            log_linear(self.hits, self.true),
            log_linear(self.false_alarms, self.false),
        )


def log_linear(yes: int, of: int) -> float:
    """The share of yes, drawn in by half an answer of each kind; never 0 or 1.

    Raises: ValueError unless 0 <= yes <= of.
    """
    if not 0 <= yes <= of:
        raise ValueError(f"{yes} yes of {of} cannot be")
    return (yes + 0.5) / (of + 1)


def d_prime(hit_rate: float, false_alarm_rate: float) -> float:
    """z(hits) - z(false alarms); rates strictly between 0 and 1."""
    return _NORMAL.inv_cdf(hit_rate) - _NORMAL.inv_cdf(false_alarm_rate)


def criterion(hit_rate: float, false_alarm_rate: float) -> float:
    """-(z(hits) + z(false alarms)) / 2; rates strictly between 0 and 1."""
    return -(_NORMAL.inv_cdf(hit_rate) + _NORMAL.inv_cdf(false_alarm_rate)) / 2


def d_prime_of_two(share_right: float) -> float:
    """d' of a choice between two, one of which is right; the share strictly between 0 and 1."""
    return sqrt(2) * _NORMAL.inv_cdf(share_right)


def count(trials: Iterable[Trial]) -> Detection | None:
    """First responses without help to questions of yes or no; None where there is none."""
    cells = {True: [0, 0], False: [0, 0]}
    for trial in trials:
        is_true = _answer_of(trial)
        first = trial.first
        if is_true is None or first is None or first.choice is None:
            continue
        if first.cue_level or not trial.counts:
            continue
        cells[is_true][0] += trial.asked.options[first.choice].get("text") == YES
        cells[is_true][1] += 1
    (hits, true), (false_alarms, false) = cells[True], cells[False]
    if not true + false:
        return None
    return Detection(hits=hits, true=true, false_alarms=false_alarms, false=false)


def _answer_of(trial: Trial) -> bool | None:
    """Whether yes is right; None where the options are not yes and no."""
    texts = [option.get("text") for option in trial.asked.options]
    if trial.asked.answer is None or sorted(map(str, texts)) != [NO, YES]:
        return None
    return texts[trial.asked.answer] == YES
