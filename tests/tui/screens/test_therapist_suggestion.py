"""A suggestion that is accepted on the screen changes the plan as it does at the command."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

from drills import wiring
from drills.core.material import Material
from drills.core.plans import ProbeSettings
from drills.core.suggestions import Part, PlanChange, Suggestion
from drills.ledger import plan_path
from drills.practice.deciding import accepted_plan
from drills.tui.room import Room
from drills.tui.screens.therapist_suggestion import TherapistSuggestionScreen
from tests.tui.screens.test_therapist import PLAN, sign, therapist

CHECKED = replace(
    PLAN,
    blocks=(PLAN.blocks[0], PLAN.blocks[3]),
    probes=ProbeSettings(on=True, related=("object-question-which",)),
)
KNOWN = Suggestion(
    id="one:1",
    says='Take "Full passive" out: it is known.',
    rule="A rule.",
    evidence="E.",
    changes=(PlanChange(part=Part.NAME_OFF, value="full-passive", block=1),),
)


async def test_what_leaves_practice_stays_in_the_checks_as_finished(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path, plan=CHECKED) as player:
        desk = player.app._desk
        player.app.push_screen(TherapistSuggestionScreen(Room(desk), KNOWN))
        await player.until_text("What would change:")
        assert f"after:  {desk.home.labels['full-passive']}" in player.text
        assert "full-passive" not in player.text
        await player.press("1")
        await player.until_text("No fault is found in it.")
        await player.press("k")
        await sign(player, "")
        await player.until_screen("TherapistScreen")
    plan = wiring.read_plan(plan_path(tmp_path))
    wanted = accepted_plan(CHECKED, KNOWN, material, on=date(2026, 1, 1))
    assert plan.probes.finished == ("full-passive",)
    assert (plan.blocks, plan.probes) == (wanted.blocks, wanted.probes)
