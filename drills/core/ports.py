"""What practice asks of the edges: a clock, a voice, a place for records."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import TYPE_CHECKING, Protocol

if TYPE_CHECKING:
    from drills.core.folds import Fold
    from drills.core.plans import Plan
    from drills.core.records import Entry, SessionOpened, Trial
    from drills.core.sessions import SessionSpan
    from drills.core.settings import Section
    from drills.core.therapist import TherapistEntry
    from drills.core.utterances import Utterance


class Clock(Protocol):
    def now(self) -> datetime:
        """The moment, aware, with the local offset."""

    def monotonic_ms(self) -> float:
        """Milliseconds from any fixed point; never goes back."""


class Voice(Protocol):
    """Says things without ever blocking the caller."""

    @property
    def state(self) -> str:
        """`"ready"`, `"starting"`, `"off"`, or one clause that says why nothing can be heard."""

    def say(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        """Stop what is being said and say this."""

    def prepare(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        """Make the sound ready, so that `say` starts at once."""

    def is_speaking(self) -> bool: ...

    def stop(self) -> None: ...

    def close(self) -> None: ...


class Records(Protocol):
    """Append-only records. `append` returns only when the entry is on disk.

    Raises: core.problems.Failure, in one plain sentence, when it cannot be kept now; the entry
    is then held and written before the next one.
    """

    @property
    def reason(self) -> str:
        """Why nothing can be kept here now, a plain clause; empty when all is well."""

    @property
    def notices(self) -> tuple[str, ...]:
        """What was found and mended, or is odd, one plain sentence each."""

    def open_session(self, opened: SessionOpened) -> None: ...

    def append(self, entry: Entry) -> None: ...

    def entries(
        self, *, since: datetime | None = None, until: datetime | None = None
    ) -> Sequence[Entry]:
        """Entries of the sessions opened in `since <= opened.at < until`, oldest first."""

    def history(self, *, since: datetime | None = None) -> Sequence[Trial]:
        """Each trial as last kept, of the sessions opened from `since` on, oldest first.

        Enough for the schedule: sentence, words, options and answer may be left out.
        """

    def spans(self, *, since: datetime, until: datetime) -> Sequence[SessionSpan]:
        """The sessions opened in `since <= opened_at < until`, oldest first."""

    def fold(self, into: Fold, *, since: datetime, until: datetime) -> Sequence[Trial]:
        """Let `into` take trials of the sessions opened in `since <= opened.at < until`.

        It need not be all of them: those it has not taken are given back, as `history` gives them,
        with all from `until` on.
        """

    def close(self) -> None: ...


class TherapistLog(Protocol):
    """What the therapist decides, scores and notes; it only grows."""

    @property
    def reason(self) -> str:
        """Why nothing can be kept here now, a plain clause; empty when all is well."""

    @property
    def notices(self) -> tuple[str, ...]:
        """What is damaged, one plain sentence each."""

    def append(self, entry: TherapistEntry) -> None:
        """Put `entry` on disk before returning.

        Raises: core.problems.Failure, and then nothing of it is kept.
        """

    def entries(self) -> Sequence[TherapistEntry]:
        """All of them, in the order of writing."""


class PlanDesk(Protocol):
    """Where plans are checked and put in force."""

    @property
    def sections(self) -> Sequence[Section]:
        """All that can be set beside the blocks."""

    def faults(self, plan: Plan) -> Sequence[str]:
        """Everything that keeps `plan` from being used, one plain sentence each."""

    def put_in_force(self, plan: Plan) -> None:
        """Practice follows `plan` from now on; the plan before it is kept.

        Raises: core.problems.BadInput for a plan with faults, core.problems.Failure when it cannot
        be written; the plan before is then still in force.
        """
