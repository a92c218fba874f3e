"""content/profiles.toml -> simulated patients by name."""

from __future__ import annotations

from pathlib import Path

from drills.catalogue.fields import Fields
from drills.catalogue.sections import read_sections
from drills.core.kinds import Side
from drills.core.problems import BadInput, Problem
from drills.core.profiles import Profile

_LONGEST_LATENCY_MS = 60_000
_MOST_TIRING = 4
_MOST_OPTIONS = 4
_MOST_DAYS = 3650


def load_profiles(path: Path) -> dict[str, Profile]:
    """Every simulated patient of the file, in its order.   Raises: BadInput with every fault."""
    problems: list[Problem] = []
    profiles: dict[str, Profile] = {}
    for fields in read_sections(path, path.name, problems, many=("profile",)):
        profile = _profile(fields)
        fields.close()
        if profile.name in profiles:
            fields.note(f"There are two profiles `{profile.name}`.", "Remove one.", key="name")
        profiles[profile.name] = profile
    if problems:
        raise BadInput(problems)
    return profiles


def _profile(fields: Fields) -> Profile:
    return Profile(
        name=fields.text("name"),
        label=fields.text("label"),
        knows=_shares(fields, "knows"),
        words=fields.number("words", 0, 1),
        first_noun=fields.number("first_noun", 0, 1),
        learning=fields.number("learning", 0, 1),
        cue_help=fields.number("cue_help", 0, 1),
        missed=fields.number("missed", 0, 1),
        tiring=fields.number("tiring", 0, _MOST_TIRING),
        latency_ms=fields.whole("latency_ms", 1, _LONGEST_LATENCY_MS),
        forgetting=fields.number("forgetting", 0, 1, default=0.0),
        fading=fields.number("fading", 0, 1, default=0.0),
        guessing=fields.number("guessing", 0, 1, default=0.0),
        yes_bias=fields.number("yes_bias", 0, 1, default=0.0),
        neglected=fields.choice("neglected", Side) if fields.has("neglected") else None,
        neglect=fields.number("neglect", 0, 1, default=0.0),
        rare_words=fields.number("rare_words", 0, 1, default=1.0),
        place=fields.whole("place", 1, _MOST_OPTIONS) if fields.has("place") else None,
        place_liking=fields.number("place_liking", 0, 1, default=0.0),
        perseveration=fields.number("perseveration", 0, 1, default=0.0),
        drop=fields.number("drop", 0, 1, default=0.0),
        drop_after_days=fields.whole("drop_after_days", 0, _MOST_DAYS, default=0),
        wearing=fields.number("wearing", 0, 1, default=0.0),
        pain=fields.number("pain", 0, 1, default=0.0),
        new_signs=fields.number("new_signs", 0, 1, default=0.0),
        lenience=fields.number("lenience", 0, 1, default=0.0),
        clock_back=fields.number("clock_back", 0, 1, default=0.0),
    )


def _shares(fields: Fields, key: str) -> dict[str, float]:
    value = fields.raw(key)
    if isinstance(value, dict) and all(
        isinstance(share, int | float) and not isinstance(share, bool) and 0 <= share <= 1
        for share in value.values()
    ):
        return {str(name): float(share) for name, share in value.items()}
    if value is not None:
        mend = "Write shares from 0 to 1, such as { active = 0.9 }."
        fields.note(f"`{key}` is not a table of shares.", mend, key=key)
    return {}
