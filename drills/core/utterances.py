"""What is said aloud."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Utterance:
    """Words to be said: spoken phrase by phrase, with a pause at each boundary."""

    phrases: tuple[str, ...]

    @property
    def text(self) -> str:
        return " ".join(self.phrases)
