"""The plan that a therapist is changing; nothing of it counts before it is put in force."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from drills.core.plans import Plan
from drills.core.problems import Failure
from drills.core.settings import Section
from drills.core.suggestions import Suggestion
from drills.practice.editing import TOP, Difference, differences
from drills.practice.home import Home


class Draft:
    """plan: as it stands now.   before: the plan in force.   began: as it was at first.

    suggestion: that it began with; None for none.
    """

    def __init__(
        self, home: Home, plan: Plan | None = None, *, suggestion: Suggestion | None = None
    ) -> None:
        """Raises: Failure where no plan can be put in force."""
        if home.plan_desk is None:
            raise Failure("There is no practice folder, so the plan cannot be changed.")
        self._desk = home.plan_desk
        self.home = home
        self.before = home.plan
        self.began = self.plan = plan or home.plan
        self.suggestion = suggestion
        self._judged: Plan | None = None
        self._faults: Sequence[str] = ()

    @property
    def sections(self) -> tuple[Section, ...]:
        return (TOP, *self._desk.sections)

    @property
    def labels(self) -> Mapping[str, str]:
        return self.home.labels

    @property
    def changes(self) -> tuple[Difference, ...]:
        return differences(self.before, self.plan, self.labels)

    @property
    def faults(self) -> Sequence[str]:
        """Everything that keeps it from being used, as `drills plan check` would say."""
        if self._judged != self.plan:
            self._judged, self._faults = self.plan, self._desk.faults(self.plan)
        return self._faults

    @property
    def is_as_suggested(self) -> bool:
        """The suggestion and nothing else; no suggestion speaks of whom to call."""
        alike = replace(self.plan, safety=self.began.safety)
        return self.suggestion is not None and alike == self.began != self.before

    @property
    def standing(self) -> str:
        """One sentence or two on how it stands."""
        changes, faults = len(self.changes), self.faults
        said = "No change yet." if not changes else f"{changes} change{'s'[: changes != 1]}."
        if not faults:
            return f"{said} No fault."
        more = f" And {len(faults) - 1} more." if len(faults) > 1 else ""
        return f"{said} Fault: {faults[0]}{more}"
