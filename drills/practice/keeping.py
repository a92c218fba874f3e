"""What a session writes, and how long an answer is waited for."""

from __future__ import annotations

from drills.core.ports import Clock, Records
from drills.core.problems import Failure
from drills.core.records import Entry, Observation, SessionOpened, Topic


class Keeping:
    """The entries of one session.   trouble: why the last one is not on disk; None when it is."""

    def __init__(self, records: Records, clock: Clock, *, session: str) -> None:
        self._records = records
        self._clock = clock
        self._session = session
        self.trouble: str | None = None

    def keep(self, entry: Entry) -> None:
        """Write an entry; trouble is told and practice goes on, since the store holds the entry."""
        try:
            if isinstance(entry, SessionOpened):
                self._records.open_session(entry)
            else:
                self._records.append(entry)
            self.trouble = None
        except Failure as failure:
            self.trouble = str(failure)

    def observe(
        self,
        topic: Topic,
        *,
        tiredness: int | None,
        pain: bool | None = None,
        new_signs: bool | None = None,
        helped: bool | None = None,
        note: str = "",
    ) -> None:
        """Keep what the patient or the caregiver says, or what a rule changed, at once."""
        self.keep(
            Observation(
                session=self._session,
                at=self._clock.now(),
                topic=topic,
                tiredness=tiredness,
                pain=pain,
                new_signs=new_signs,
                helped=helped,
                note=note,
            )
        )


class Wait:
    """From the end of the prompt to the answer; not measured where something came between."""

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._since_ms: float | None = None
        self._is_interrupted = False

    @property
    def ms(self) -> float | None:
        return None if self._since_ms is None else self._clock.monotonic_ms() - self._since_ms

    def begin(self) -> None:
        if not self._is_interrupted:
            self._since_ms = self._clock.monotonic_ms()

    def hold(self) -> None:
        """Something more is being said: the wait begins at its end."""
        self._since_ms = None

    def interrupt(self) -> None:
        self._since_ms = None
        self._is_interrupted = True

    def anew(self) -> None:
        """The next answer has a wait of its own."""
        self._since_ms = None
        self._is_interrupted = False
