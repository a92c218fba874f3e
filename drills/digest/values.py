"""The digest: what a range of days came to, in numbers; the renderers have the words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

from drills.core.due import PlannedDay
from drills.core.items import Foil, ItemSet, Kind, Target
from drills.core.progress import Progress
from drills.core.question_words import Grammar
from drills.core.records import CloseReason
from drills.core.suggestions import Suggestion
from drills.core.therapist import Decision
from drills.core.words import Band
from drills.digest.answers import AnswerLine
from drills.digest.checks import Checks
from drills.digest.course import Course
from drills.digest.flag_values import Alert
from drills.digest.keeping import Kept, TrendLine
from drills.digest.patterns import Patterns
from drills.digest.raters import Agreement
from drills.digest.spans import CueWeeks, DoseWeek
from drills.measures.accuracy import Share
from drills.measures.chance import Verdict
from drills.measures.cues import CueUse
from drills.measures.detection import Detection
from drills.measures.errors import GestureScores
from drills.measures.intervals import Interval
from drills.measures.latency import Latency

FEWEST_FOR_PERCENT = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    """What was done against what the plan asks for over as many days, days to come left out.

    minutes: of sessions, from opening to closing, as the plan means them.
    active_minutes: of answering; nothing in the plan says how many there should be.
    sessions_share, minutes_share: of what was asked for, at most 1; None when nothing was.
    by_day: minutes of sessions on each day so far.
    """

    minutes: float
    minutes_planned: float
    minutes_share: float | None
    active_minutes: float
    sessions: int
    sessions_planned: float
    sessions_share: float | None
    trials: int
    days: int
    by_day: Mapping[date, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class SittingLine:
    """One session; minutes from opening to closing.

    tired_before, tired_after: 1 (fresh) to 5, None where it was not said.
    reason: None when it was broken off.
    """

    day: date
    minutes: float
    active_minutes: float
    trials: int
    tired_before: int | None
    tired_after: int | None
    reason: CloseReason | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """Against as many days before.

    points: the difference of the shares right alone, -1 to 1; None with the interval when
    either side has too few trials.
    """

    earlier: Share
    points: float | None
    interval: Interval | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One construction, level or gesture in one task.

    interval: 95 % interval of the share right alone.
    effective_k: options that the content words leave, the fewest of any trial; None for gestures.
    chance: mean chance of a right guess.   verdict: None where nothing can be guessed.
    change: None without earlier trials.   detection: of answers by yes and no, None without any.
    """

    kind: Kind
    name: str
    label: str
    item_set: ItemSet
    unaided: Share
    interval: Interval
    aided: Share
    effective_k: int | None
    chance: float | None
    verdict: Verdict | None
    cues: CueUse
    latency: Latency
    errors: Mapping[Foil, int]
    change: Change | None
    gesture: GestureScores | None
    detection: Detection | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class GridCell:
    """Statements in words of one band and grammar of one kind.   interval: as of a line."""

    band: Band
    grammar: Grammar
    unaided: Share
    interval: Interval


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """The four cells of one set of items."""

    item_set: ItemSet
    cells: tuple[GridCell, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Example:
    """A trial in which the first response was wrong.

    context: what was shown or said with the sentence; empty for nothing.
    why: the code of the chosen option.
    """

    trial: str
    item: str
    label: str
    sentence: str
    context: str
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ErrorLine:
    foil: Foil
    count: int
    examples: tuple[Example, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class DueLine:
    """open_since: the day on which it was due, when that has passed."""

    target: Target
    label: str
    day: date
    last: date | None
    rung: int
    run: int
    open_since: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class DueDay:
    day: date
    dues: tuple[DueLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Calendar:
    """The practice days of the week to come.   labels: key -> plain name of what is put off."""

    days: tuple[PlannedDay, ...]
    labels: Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    day: date
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Quality:
    """What a reader has to know before trusting the numbers.

    plans: name and version.   contents: hashes of the content that was practised.
    clock_back: sessions in which the computer's clock went backwards.
    notices: damage found in the records, in plain sentences.
    """

    programs: tuple[str, ...]
    plans: tuple[tuple[str, int], ...]
    contents: tuple[str, ...]
    unfinished: int
    skipped: int
    stopped_early: int
    broken_off: int
    clock_back: int
    too_soon: int
    slow: int
    notices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Digest:
    """The practice days `first` to `last`, both included.

    until: the last day that is counted: `last`, or today while days are still to come; the day
    before `first` when all of them are.
    simulated: any of it was practised by a simulated patient.
    lines: sentences and words first, gestures after them, each in the order of the plan.
    grids: words against grammar, where that was practised.
    checks: apart from practice, of which all else tells; None where none was done or is wanted.
    person: the plan's code of the person; empty where it has none.
    patterns: how answers were given in the range.
    dose_weeks, cue_weeks: the weeks up to `last`, the range's own the last of them.
    kept, trends: of practice up to `until`, each from its `since` on.
    progress: what is advised on each name, as of today.
    agreement: of caregiver and therapist up to `until`; None where nothing was scored twice.
    course: None for a digest of some days; else the digest is of the whole course, `dose` of the
    days from the first practice to the last, and `lines` of the last days against the first.
    as_of: the day of `upcoming` where that is after `last`; None else.
    suggestions: not answered yet, numbered from 1 for the therapist; none for days long past.
    decisions: of the therapist, in these days.
    upcoming: days to come on which something is due as it stands today, to a week after `last`, or
    after today for a range that is past.
    """

    first: date
    last: date
    until: date
    plan_name: str
    plan_version: int
    therapist: str
    locale: str
    simulated: bool
    alerts: tuple[Alert, ...]
    dose: Dose
    sittings: tuple[SittingLine, ...]
    lines: tuple[Line, ...]
    errors: tuple[ErrorLine, ...]
    upcoming: tuple[DueDay, ...]
    notes: tuple[Note, ...]
    quality: Quality
    answers: tuple[AnswerLine, ...]
    patterns: Patterns
    kept: Kept
    grids: tuple[Grid, ...] = ()
    checks: Checks | None = None
    calendar: Calendar | None = None
    person: str = ""
    dose_weeks: tuple[DoseWeek, ...] = ()
    cue_weeks: tuple[CueWeeks, ...] = ()
    trends: tuple[TrendLine, ...] = ()
    progress: tuple[Progress, ...] = ()
    agreement: Agreement | None = None
    course: Course | None = None
    as_of: date | None = None
    suggestions: tuple[Suggestion, ...] = ()
    decisions: tuple[Decision, ...] = ()

    @property
    def is_over(self) -> bool:
        """No day of the range is still to come."""
        return self.until >= self.last

    @property
    def word_lines(self) -> tuple[Line, ...]:
        return tuple(line for line in self.lines if line.gesture is None)

    @property
    def gesture_lines(self) -> tuple[Line, ...]:
        return tuple(line for line in self.lines if line.gesture is not None)
