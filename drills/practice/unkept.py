"""Where the therapist's entries go when there is no practice folder: nowhere, and it says so."""

from __future__ import annotations

from typing import TYPE_CHECKING

from drills.core.problems import Failure

if TYPE_CHECKING:
    from drills.core.therapist import TherapistEntry


class Unkept:
    """`core.ports.TherapistLog` that holds nothing."""

    @property
    def reason(self) -> str:
        return "there is no practice folder"

    @property
    def notices(self) -> tuple[str, ...]:
        return ()

    def append(self, entry: TherapistEntry) -> None:
        raise Failure(f"Nothing can be saved: {self.reason}.")

    def entries(self) -> tuple[TherapistEntry, ...]:
        return ()
