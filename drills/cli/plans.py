"""`drills plan`: make, read, check, put in force."""

from __future__ import annotations

import argparse
from pathlib import Path

from drills import wiring
from drills.catalogue import plan_text
from drills.cli import deciding
from drills.cli.new_files import told_of_failure, write_new_text
from drills.cli.types import any_number
from drills.core.plans import CueDirection, Plan, ShowText
from drills.core.problems import BadInput
from drills.core.visible import visible
from drills.ledger import disk, plan_path, plan_versions, put_plan_in_force
from drills.practice.labels import labels_of
from drills.sealing import key_file_text, new_keys


def add(plan: argparse.ArgumentParser, everywhere: argparse.ArgumentParser) -> None:
    parts = plan.add_subparsers(metavar="PART", required=True)
    new = parts.add_parser("new", parents=[everywhere], help="write a plan to start from")
    new.add_argument("--out", metavar="FILE", default="plan.toml", help="where (plan.toml)")
    new.set_defaults(action=write_new)
    key = parts.add_parser("key", parents=[everywhere], help="make the keys to seal digests")
    key.add_argument(
        "--out", metavar="FILE", default="therapist-key.txt", help="where (therapist-key.txt)"
    )
    key.set_defaults(action=write_key)
    show = parts.add_parser("show", parents=[everywhere], help="the plan in force")
    show.set_defaults(action=show_plan)
    sets = parts.add_parser(
        "sets", parents=[everywhere], help="choose the sentences of checks, to stand in the plan"
    )
    sets.add_argument("file", metavar="FILE")
    sets.add_argument("--seed", type=any_number, metavar="N", help="other sets (the plan's own)")
    sets.add_argument("--out", metavar="FILE", help="write the plan with its sets here")
    sets.set_defaults(action=make_sets)
    for name, action, text in (
        ("check", check_file, "say what is wrong with a plan file, or that it is fine"),
        ("use", use_file, "put a plan file in force; the older plan is kept"),
    ):
        part = parts.add_parser(name, parents=[everywhere], help=text)
        part.add_argument("file", metavar="FILE")
        part.set_defaults(action=action)
    deciding.add(parts, everywhere)


def write_new(options: argparse.Namespace) -> int:
    path = Path(options.out)
    text = plan_text(wiring.starter_plan(wiring.locale_of()))
    write_new_text(path, text)
    print(f"{path} is written. Change it, then: drills plan use {path}")
    return 0


def make_sets(options: argparse.Namespace) -> int:
    from drills.cli.plan_sets import make_sets as made  # noqa: PLC0415 - draws pictures

    return made(options)


def write_key(options: argparse.Namespace) -> int:
    """The private key to a private file, never to the terminal; the public one is printed."""
    path = Path(options.out)
    keys = new_keys()
    text = key_file_text(keys, wiring.SystemClock().now().date())
    with told_of_failure(path, because="an old key may still be needed"):
        disk.write_new(path, text.encode("ascii"))
    print(
        f"{path} is written. It opens digests that are sealed to you.\n"
        "Keep it, and a copy in a safe place: without it nobody can open them.\n"
        "Give it to nobody.\n\n"
        "Each plan takes the public key. Anybody may see it:\n\n"
        f'[sealing]\nrecipient = "{keys.public}"\n\n'
        'At the top of each plan, write a code for the person, not the name: code = "K-17"'
    )
    return 0


def show_plan(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    plan = wiring.plan_in_force(folder)
    if not plan_path(folder).exists():
        print("No plan has been put in force yet. This is the starter plan.\n")
    print(_described(plan))
    if plan_path(folder).exists():
        _print_records(folder)
    return 0


def _print_records(folder: Path) -> None:
    """The checks done, and what the answers speak for; only the therapist changes the plan."""
    home = wiring.home(folder, speak=False)
    try:
        probes = home.plan.probes
        if probes.on and probes.baseline:
            done = min(probes.baseline, len(home.checking.done))
            print(f"\nBaseline: {done} of {probes.baseline} checks done.")
        for number, direction in home.suggested_cues().items():
            print(f"\nSuggested by the answers so far: cues = {direction.value} in block {number}.")
    finally:
        home.close()


def check_file(options: argparse.Namespace) -> int:
    plan = wiring.checked_plan(Path(options.file))
    print(f"{options.file} is fine.\n\n{_described(plan)}")
    if plan.probes.on and not plan.probes.sets:
        print(
            "\nThe sentences of checks go by `seed`: other content may choose others.\n"
            f"To fix them in the plan: drills plan sets {options.file} --out NEW-FILE"
        )
    return 0


def use_file(options: argparse.Namespace) -> int:
    path = Path(options.file)
    plan = wiring.checked_plan(path)
    folder = wiring.practice_folder(options.folder)
    _refuse_used_version(plan, folder)
    put_plan_in_force(folder, path.read_text(encoding="utf-8"))
    print(
        f"In force: {visible(plan.name)}, version {plan.version}. Practice follows it from now on."
    )
    return 0


def _refuse_used_version(plan: Plan, folder: Path) -> None:
    """Records name a plan by its version, so two plans may not share one, however long ago."""
    found = plan_versions(folder)
    for each in found:
        if each.version != plan.version:
            continue
        try:
            before = wiring.read_plan(each.path)
        except BadInput:
            continue  # a plan that cannot be read has no version to keep
        if before.name == plan.name and before != plan:
            raise BadInput(
                f"Version {plan.version} of {plan.name} is used already and says something else. "
                f"Write version = {max(one.version for one in found) + 1} in the changed file."
            )


def _described(plan: Plan) -> str:
    labels = labels_of(wiring.material(plan.locale))
    lines = [
        f"{plan.name}, version {plan.version}, {plan.locale}",
        f"{plan.dose.sessions_per_week} sessions a week of {plan.dose.minutes_per_session} minutes",
        "",
    ]
    for number, block in enumerate(plan.blocks, start=1):
        names = "; ".join(labels.get(name, name) for name in block.names)
        choices = "" if block.kind == "gesture" else f", {block.options} to choose from"
        lines.append(f"Block {number}: {block.kind}, {block.trials} trials{choices}")
        lines.append(f"    {names}")
        if block.groups:
            lines.append(f"    only: {', '.join(block.groups)}")
        if block.cues is CueDirection.MOST_TO_LEAST:
            lines.append("    begins with full help, and takes it away step by step")
        if block.text is ShowText.AFTER_CUE:
            lines.append("    heard only, until a cue shows the sentence")
    ladder = ", ".join(str(days) for days in plan.spacing.ladder_days)
    speech = (
        f"Read aloud at {plan.speech.words_per_minute} words a minute"
        if plan.speech.read_aloud
        else "Not read aloud"
    )
    lines += [
        "",
        f"Options: {plan.sitting.layout.value}",
        f"Due again after {ladder} days",
        speech,
        f"Emergency number: {plan.safety.emergency_number}",
    ]
    if plan.code:
        lines.append(f"Code of the person: {plan.code}")
    if plan.sealing.recipient:
        lines.append(f"Digests can be sealed to: {plan.sealing.recipient}")
    if plan.therapist:
        lines.append(f"Therapist: {plan.therapist}")
    if plan.safety.therapist_contact:
        lines.append(f"To reach the therapist: {plan.safety.therapist_contact}")
    if plan.note:
        lines.append(f"Note: {plan.note}")
    return visible("\n".join(lines))
