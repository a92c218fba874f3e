"""One practice folder with its plan, records and content: what every screen starts from."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, datetime
from functools import cached_property
from random import Random
from typing import TYPE_CHECKING

from drills.core.records import Entry, SessionOpened
from drills.practice.chains import Chain, finished, last_chain, of_practice, told_of_new_signs
from drills.practice.reading import Reading, without_sessions
from drills.practice.unkept import Unkept

if TYPE_CHECKING:
    from pathlib import Path

    from drills.core.due import Due
    from drills.core.material import Chapter, Material
    from drills.core.plans import CueDirection, Plan
    from drills.core.ports import Clock, PlanDesk, Records, TherapistLog, Voice
    from drills.digest import Digest
    from drills.practice.checking import Checking
    from drills.practice.dealing import Block
    from drills.practice.past import Past
    from drills.practice.session import Session

# What deals, runs and counts is loaded when it is first asked for: the first screen needs none
# of it and must come soon.


@dataclass(frozen=True, slots=True, kw_only=True)
class Today:
    """What the first screen says of today.

    resumable: trials still to do of a session begun today; 0 for none.
    new_signs: someone told today of new signs of a stroke, so there is no practice.
    check_minutes: about how long the check takes that is due or begun today; None for none.
    """

    minutes: int
    sessions_done: int
    resumable: int
    new_signs: bool = False
    check_minutes: int | None = None


class Home(Reading):
    """Everything that a screen or a command may ask of one practice folder.

    folder: where it lies; None for a rehearsal in memory.
    therapist_log: None where nothing that the therapist says can be kept.
    plan_desk: None where the plan cannot be changed.
    new_seed: gives the seed of each new session.
    material, guide: called when first needed; they may raise BadInput for broken content.
    """

    def __init__(
        self,
        *,
        plan: Plan,
        material: Callable[[], Material],
        records: Records,
        clock: Clock,
        voice: Voice,
        guide: Callable[[], Sequence[Chapter]],
        program: str,
        new_seed: Callable[[], int],
        folder: Path | None = None,
        simulated: bool = False,
        therapist_log: TherapistLog | None = None,
        plan_desk: PlanDesk | None = None,
    ) -> None:
        super().__init__(plan=plan, records=records, clock=clock, program=program)
        self._load_material = material
        self.voice = voice
        self._load_guide = guide
        self._new_seed = new_seed
        self._simulated = simulated
        self.folder = folder
        self.therapist_log: TherapistLog = therapist_log or Unkept()
        self.plan_desk = plan_desk

    @cached_property
    def material(self) -> Material:
        return self._load_material().without_kin(self.plan.without_kin)

    @cached_property
    def guide(self) -> tuple[Chapter, ...]:
        return tuple(self._load_guide())

    def take_up(self, plan: Plan) -> None:
        """Go by `plan` from now on; it has been put in force."""
        self.plan = plan
        self.__dict__.pop("material", None)

    @property
    def labels(self) -> Mapping[str, str]:
        from drills.practice.labels import labels_of  # noqa: PLC0415 - see above

        return labels_of(self.material)

    def today(self) -> Today:
        everything = self.entries_of(self.day(), self.day())
        entries = of_practice(everything)
        chain = self._resumable(entries)
        return Today(
            minutes=self.plan.dose.minutes_per_session,
            sessions_done=finished(entries),
            resumable=0 if chain is None else self._left(chain),
            new_signs=told_of_new_signs(everything),
            check_minutes=self.checking.minutes_today() if self.plan.probes.on else None,
        )

    @property
    def checking(self) -> Checking:
        """The checks of this folder: what is due, and how one is begun."""
        return self.checking_of(None)

    def checking_of(self, past: Past | None) -> Checking:
        """The same over what was read already.   past: None to read it when it is needed."""
        from drills.practice.checking import Checking  # noqa: PLC0415 - see above

        return Checking(self, past)

    def start(self, *, resume: bool, minutes: int | None = None) -> Session:
        """Today's session, new or going on with the one begun today.

        minutes: shorter or longer than prescribed; None for as prescribed.
        """
        from drills.practice.dealing import open_targets  # noqa: PLC0415 - see above
        from drills.practice.easier import EasierItems  # noqa: PLC0415
        from drills.practice.past import Late  # noqa: PLC0415
        from drills.practice.session import Session  # noqa: PLC0415

        today = of_practice(self.entries_of(self.day(), self.day()))
        chain = self._resumable(today) if resume else None
        now = self.clock.now()
        seed = self._new_seed() if chain is None else chain.first.seed
        if chain is not None:
            minutes = chain.first.minutes
        opened = self.opening(now, seed=seed, chain=chain, minutes=minutes)
        given_before: frozenset[str] = frozenset() if chain is None else chain.sessions
        before = Late(lambda: without_sessions(self.history_of_practice(), given_before))
        may_give = open_targets(self.plan, self.material, before)
        return Session(
            opened=opened,
            blocks=self._dealt(chain, today=self.day(now), minutes=minutes, seed=seed),
            plan=self.plan,
            records=self.records,
            clock=self.clock,
            done=frozenset() if chain is None else chain.given,
            past=self.past(),
            easier=EasierItems(
                self.plan,
                self.material,
                seed=seed,
                opened={target for of_block in may_give for target in of_block},
            ),
            words_per_minute=self.words_per_minute,
        )

    def opening(
        self,
        now: datetime,
        *,
        seed: int,
        chain: Chain | None,
        minutes: int | None,
        check: str | None = None,
    ) -> SessionOpened:
        """The first entry of a session.   chain: what it goes on with.   check: its list."""
        # In one second a check may follow a session of the same seed, and ids are never shared.
        mark = "" if check is None else f"-{check.lower()}"
        return SessionOpened(
            session=f"{now:%Y%m%d-%H%M%S}-{seed & 0xFFFF:04x}{mark}",
            at=now,
            plan_name=self.plan.name,
            plan_version=self.plan.version,
            program=self._program,
            content_hash=self.material.content_hash,
            seed=seed,
            continues=None if chain is None else chain.last.session,
            minutes=minutes,
            simulated=self._simulated,
            check=check,
        )

    def words_per_minute(self) -> int | None:
        return self.plan.speech.words_per_minute if self.voice.state == "ready" else None

    def standings(self) -> tuple[Due, ...]:
        from drills.practice.dealing import plan_standings  # noqa: PLC0415 - see above

        return plan_standings(self.plan, self.material, self.past())

    def suggested_cues(self) -> Mapping[int, CueDirection]:
        """Another direction of help than the plan's, by the number of its block from 1.

        Only where what was right alone speaks for it; the plan is never changed by itself.
        """
        from drills.practice.cueing import other_directions  # noqa: PLC0415 - see above
        from drills.practice.dealing import plan_targets  # noqa: PLC0415

        targets = plan_targets(self.plan, self.material)
        return other_directions(self.plan, targets, self.history_of_practice())

    def digest(self, first: date, last: date) -> Digest:
        """The digest of the practice days `first` to `last`, both included."""
        from drills.practice.digesting import digest_of  # noqa: PLC0415 - see above

        return digest_of(self, first, last)

    def course(self) -> Digest:
        """The digest of the whole course, from the first record to today."""
        from drills.practice.digesting import course_of  # noqa: PLC0415 - see above

        return course_of(self)

    def close(self) -> None:
        self.voice.close()
        self.records.close()

    # Inside

    def _dealt(
        self, chain: Chain | None, *, today: date, minutes: int | None, seed: int
    ) -> tuple[Block, ...]:
        """The session of `seed`, as it stands before `chain`, or now."""
        from drills.practice.dealing import deal_session, plan_standings  # noqa: PLC0415
        from drills.practice.past import Late  # noqa: PLC0415 - see above

        without = frozenset() if chain is None else chain.sessions
        past = self.past(without=without, today=today)
        return deal_session(
            self.plan,
            self.material,
            Late(lambda: without_sessions(self.history_of_practice(), without)),
            today=today,
            minutes=minutes,
            rng=Random(seed),
            dues=plan_standings(self.plan, self.material, past),
        )

    def _resumable(self, entries: Sequence[Entry]) -> Chain | None:
        """The last chain of today, if it can go on: same plan and content, something left."""
        chain = last_chain(entries)
        if chain is None or chain.is_over or not self.is_as_opened(chain):
            return None
        return chain if self._left(chain) > 0 else None

    def is_as_opened(self, chain: Chain) -> bool:
        """Whether plan and content are still those under which it was begun."""
        first = chain.first
        return (
            first.plan_version == self.plan.version
            and first.plan_name == self.plan.name
            and first.content_hash == self.material.content_hash
        )

    def _left(self, chain: Chain) -> int:
        blocks = self._dealt(
            chain,
            today=self.day(chain.first.at),
            minutes=chain.first.minutes,
            seed=chain.first.seed,
        )
        return sum(len(block.items) for block in blocks) - len(chain.given)
