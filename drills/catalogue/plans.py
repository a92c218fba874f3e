"""A plan file -> Plan, or every fault with its line and how to mend it."""

from __future__ import annotations

import re
from dataclasses import fields as fields_of
from dataclasses import replace
from enum import StrEnum
from pathlib import Path
from typing import Any

from drills.catalogue.fields import Fields
from drills.catalogue.plan_sets import SET_KEYS, line_of_exemplar, read_sets
from drills.catalogue.plan_settings import EMERGENCY_NUMBERS, SECTIONS
from drills.catalogue.sections import read_sections
from drills.catalogue.toml_lines import read_blocks, read_text
from drills.core.kinds import Kind
from drills.core.plans import (
    LOCALES,
    PERSON_CODE,
    PLAN_FORMAT,
    PROBE_ROLES,
    BlockPlan,
    CueDirection,
    Order,
    Plan,
    ProbeSettings,
    ShowText,
    SpeechSettings,
)
from drills.core.problems import BadInput, Problem
from drills.core.settings import LONGEST_NAME, LONGEST_NOTE, MOST_BLOCKS, Section

_LARGEST_VERSION = 99_999
_STANDARD_OPTIONS = 2
_TOP_KEYS = (
    *("format", "name", "version", "locale", "written_on", "code", "therapist", "note"),
    "without_kin",
)
_BLOCK_KEYS = ("kind", "names", "trials", "options", "groups", "cues", "text", "order")

# What is to be read or copied cannot be left to the ear alone.
_NEEDS_ITS_TEXT = (Kind.CLOZE, Kind.GESTURE)

# A line written below the wrong header is the likeliest slip in a file of tables.
_BELONGS = (
    dict.fromkeys(_TOP_KEYS, "at the top of the file, before any [section]")
    | dict.fromkeys(_BLOCK_KEYS, "under [[block]]")
    | dict.fromkeys(SET_KEYS, "under [[set]]")
    | {each.key: f"under [{section.name}]" for section in SECTIONS for each in section.settings}
)
_DIALLED = re.compile(r"\+?[0-9][0-9 ]*")


def read_plan(path: Path, *, sets: bool = True) -> Plan:
    """The plan in `path`.   Raises: BadInput with every fault.

    sets: False passes over them, for whoever makes them anew.
    Checks the plan's own form; whether a name is known to an exercise is not seen from here.
    """
    where = str(path)
    problems: list[Problem] = []
    found = read_sections(
        path,
        where,
        problems,
        many=("block", "set"),
        once=tuple(section.name for section in SECTIONS),
        top=True,
    )
    if not found:
        raise BadInput(problems)
    if not sets:
        found = [each for each in found if each.block.name != "set"]
    _refuse_newer(found[0])
    plan = _plan(found, problems)
    if problems:
        raise BadInput(sorted(problems, key=lambda problem: problem.line or 0))
    return plan


def line_in_plan(path: Path, key: str) -> int | None:
    """The line of "probes.control", or of "set 2, push: nurse, farmer", in a plan that was read."""
    text = read_text(path, str(path))
    blocks = read_blocks(text, str(path))
    if key.startswith("set "):
        return line_of_exemplar(text, blocks, key)
    table, _, name = key.rpartition(".")
    for block in blocks:
        if block.name == table and not block.repeated and name in block.values:
            return block.line_of(name)
    return None


def in_locale(plan: Plan, locale: str) -> Plan:
    """The plan moved to another locale.

    The old locale's usual emergency number becomes the new one's; any other number stays.
    """
    safety = plan.safety
    if safety.emergency_number == EMERGENCY_NUMBERS[plan.locale]:
        safety = replace(safety, emergency_number=EMERGENCY_NUMBERS[locale])
    return replace(plan, locale=locale, safety=safety)


def _refuse_newer(top: Fields) -> None:
    # Nothing else is worth saying of a file whose rules are not known here.
    written = top.block.values.get("format")
    if isinstance(written, int) and written > PLAN_FORMAT:
        problem = Problem(
            where=top.where,
            line=top.block.line_of("format"),
            message=f"This plan has format {written}; this program reads up to {PLAN_FORMAT}.",
            mend="Update the program.",
        )
        raise BadInput([problem])


def _plan(found: list[Fields], problems: list[Problem]) -> Plan:
    top = found[0]
    version = top.whole("version", 1, _LARGEST_VERSION)
    locale = top.one_of("locale", LOCALES)
    name = top.text("name", longest=LONGEST_NAME)
    written_on = top.day("written_on")
    code = top.text("code", default="")
    if code and not PERSON_CODE.fullmatch(code):
        top.note(
            "`code` is not a code.",
            "Write up to 20 letters, digits, dots or dashes; not the person's name.",
            key="code",
        )
    therapist = top.text("therapist", default="", longest=LONGEST_NAME)
    note = top.text("note", default="", longest=LONGEST_NOTE)
    without_kin = top.texts("without_kin", default=())
    plan_format = top.whole("format", 1, PLAN_FORMAT)
    top.close(_BELONGS)

    tables = {each.block.name: each for each in found}
    # Plans once said for all blocks what each block now says for itself.
    shows_text = "sitting" not in tables or tables["sitting"].flag("show_text", default=True)
    defaults = {"safety": {"emergency_number": EMERGENCY_NUMBERS[locale]}}
    made = {
        section.name: _section(section, tables.get(section.name), defaults.get(section.name, {}))
        for section in SECTIONS
    }
    if "speech" in tables:
        _check_speech(tables["speech"], made["speech"])
    if "probes" in tables:
        _check_probes(tables["probes"], made["probes"])
    sets = read_sets([each for each in found if each.block.name == "set"], made["probes"])
    made["probes"] = replace(made["probes"], sets=sets)
    if "safety" in tables and not _DIALLED.fullmatch(made["safety"].emergency_number):
        tables["safety"].note(
            "`emergency_number` is not a number to dial.",
            'Write it like "911".',
            key="emergency_number",
        )

    if made["sealing"].recipient:
        _check_recipient(tables["sealing"], made["sealing"].recipient)

    blocks = tuple(
        _block(each, made["speech"], shows_text=shows_text)
        for each in found
        if each.block.name == "block"
    )
    if not 1 <= len(blocks) <= MOST_BLOCKS:
        message = f"This plan has {len(blocks)} blocks."
        mend = f"Write 1 to {MOST_BLOCKS} sections that begin with [[block]]."
        problems.append(Problem(where=top.where, message=message, mend=mend))
    return Plan(
        name=name,
        version=version,
        locale=locale,
        blocks=blocks,
        written_on=written_on,
        code=code,
        therapist=therapist,
        note=note,
        without_kin=without_kin,
        plan_format=plan_format,
        **made,
    )


def _section(section: Section, found: Fields | None, defaults: dict[str, Any]) -> Any:
    """The values of one table; what is not written keeps its default."""
    if found is None:
        return section.made(**defaults)
    standard = {each.name: each.default for each in fields_of(section.made)} | defaults
    values: dict[str, Any] = {}
    for setting in section.settings:
        key, default = setting.key, standard[setting.key]
        low, high = setting.low, setting.high
        if isinstance(default, bool):
            values[key] = found.flag(key, default=default)
        elif isinstance(default, StrEnum):
            values[key] = found.choice(key, type(default), default=default)
        elif isinstance(default, int):
            values[key] = found.whole(key, int(low), int(high), default=default)
        elif isinstance(default, float):
            values[key] = found.number(key, low, high, default=default)
        elif isinstance(default, tuple) and not high:
            values[key] = found.texts(key, default=default)
        elif isinstance(default, tuple):
            values[key] = found.wholes(key, int(low), int(high), default=default)
        else:
            values[key] = found.text(key, default=str(default), longest=int(high))
    found.close(_BELONGS)
    return section.made(**values)


def _check_recipient(table: Fields, recipient: str) -> None:
    # Few plans name one, and the first screen, which reads the plan, must come soon.
    from drills.sealing import public_key_fault  # noqa: PLC0415

    if fault := public_key_fault(recipient):
        table.note(
            f"`recipient`: {fault}",
            "Write the public key that `drills plan key` printed, age1...",
            key="recipient",
        )


def _check_speech(found: Fields, speech: Any) -> None:
    if speech.slow_words_per_minute > speech.words_per_minute:
        found.note(
            "The slow replay is faster than the first reading.",
            "Make `slow_words_per_minute` the smaller one.",
            key="slow_words_per_minute",
        )


def _check_probes(found: Fields, probes: ProbeSettings) -> None:
    if probes.items % 2:
        found.note(
            f"`items` is {probes.items}, and halves of it are asked.",
            "Write an even number.",
            key="items",
        )
    seen: dict[str, str] = {}
    for role in PROBE_ROLES:
        for name in getattr(probes, role):
            if seen.setdefault(name, role) != role:
                found.note(
                    f'"{name}" is both {seen[name]} and {role}.', "Leave it in one list.", key=role
                )


def _block(fields: Fields, speech: SpeechSettings, *, shows_text: bool) -> BlockPlan:
    kind = fields.choice("kind", Kind)
    usual = ShowText.SHOWN if shows_text or kind is not Kind.MATCH else ShowText.AFTER_CUE
    block = BlockPlan(
        kind=kind,
        names=fields.texts("names"),
        trials=fields.whole("trials", 1, 60),
        options=fields.whole("options", 2, 4, default=_STANDARD_OPTIONS),
        groups=fields.texts("groups", default=()),
        cues=fields.choice("cues", CueDirection, default=CueDirection.LEAST_TO_MOST),
        text=fields.choice("text", ShowText, default=usual),
        order=fields.choice("order", Order, default=Order.TOGETHER),
    )
    if block.text is ShowText.AFTER_CUE and fields.has("text"):
        if kind in _NEEDS_ITS_TEXT:
            fields.note(
                f"A {kind.value} block cannot hide its text.",
                f'Write text = "{ShowText.SHOWN.value}", or leave the line out.',
                key="text",
            )
        elif not speech.read_aloud:
            fields.note(
                "The text is hidden, and nothing is read aloud.",
                "Write read_aloud = true under [speech], or show the text.",
                key="text",
            )
    fields.close(_BELONGS)
    return block
