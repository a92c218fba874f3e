"""Plan -> the file that reads back as the same plan, with a word on each setting."""

from __future__ import annotations

import json
from datetime import date

from drills.catalogue.plan_sets import SAYS
from drills.catalogue.plan_settings import SECTIONS
from drills.core.kinds import Kind
from drills.core.plans import BlockPlan, CueDirection, Order, Plan, ShowText
from drills.core.probe_sets import ProbeSet

_COMMENT_COLUMN = 34

_BLOCKS = (
    "# The blocks of a session, in order. A rest comes between them.",
    "# kind: " + ", ".join(kind.value for kind in Kind) + ".",
    "# names: constructions (match, act-out), levels (cloze), questions or gestures.",
    "# trials: 1 to 60.   options: 2 to 4, figures of act-out; a sentence without its doer has 2.",
    "# groups: verb groups or contrasts; none means all.",
    "# cues: least-to-most (begins with no help), or most-to-least (begins with all of it).",
    "# text: shown, or hidden until a cue (heard only; match, act-out and question).",
    "# order: together, or simple-to-complex, complex-to-simple: each name waits for the last.",
)


def plan_text(plan: Plan) -> str:
    """The plan as a commented TOML file; `read_plan` gives an equal plan back."""
    lines = [
        "# A plan of practice. Only the therapist changes it.",
        "# After a change, raise `version` by one.",
        "",
        _line("format", plan.plan_format, "of this file, not of the plan"),
        _line("name", plan.name),
        _line("version", plan.version, "counts up; kept with every trial"),
        _line("locale", plan.locale, "en-US or en-GB"),
    ]
    if plan.written_on is not None:
        lines.append(_line("written_on", plan.written_on))
    lines += [
        _line("code", plan.code, "of the person, not the name: tells digests apart"),
        _line("therapist", plan.therapist),
        _line("note", plan.note),
        _line("without_kin", plan.without_kin, 'relatives never to be said, as ["father"]'),
    ]
    for section in SECTIONS:
        values = getattr(plan, section.name)
        lines += ["", f"# {section.says}", f"[{section.name}]"]
        for setting in section.settings:
            value = getattr(values, setting.key)
            says = setting.says
            if setting.high and not isinstance(value, str):
                says += f" ({setting.low:g} to {setting.high:g})"
            lines.append(_line(setting.key, value, says))
    lines += ["", *_BLOCKS]
    for block in plan.blocks:
        lines += ["", *_block(block)]
    if plan.probes.sets:
        lines += ["", *SAYS]
    for each in plan.probes.sets:
        lines += ["", *_set(each)]
    return "\n".join(lines) + "\n"


def _block(block: BlockPlan) -> list[str]:
    lines = [
        "[[block]]",
        _line("kind", block.kind.value),
        _line("names", block.names),
        _line("trials", block.trials),
        _line("options", block.options),
    ]
    if block.groups:
        lines.append(_line("groups", block.groups))
    if block.cues is not CueDirection.LEAST_TO_MOST:
        lines.append(_line("cues", block.cues))
    if block.text is not ShowText.SHOWN:
        lines.append(_line("text", block.text))
    if block.order is not Order.TOGETHER:
        lines.append(_line("order", block.order))
    return lines


def _set(probe_set: ProbeSet) -> list[str]:
    return [
        "[[set]]",
        _line("role", probe_set.role),
        _line("construction", probe_set.construction),
        "exemplars = [",
        *(f"    {_toml(str(each))}," for each in probe_set.exemplars),
        "]",
    ]


def _line(key: str, value: object, says: str = "") -> str:
    line = f"{key} = {_toml(value)}"
    return f"{line.ljust(_COMMENT_COLUMN)}  # {says}" if says else line


def _toml(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        # JSON escapes as TOML does, but lets the delete character through.
        return json.dumps(value, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, tuple):
        return "[" + ", ".join(_toml(each) for each in value) + "]"
    return repr(value)
