"""The words of every question card and of the pages around a session.

Patient's words: at most eight words a sentence, six lines a card, forty characters a line.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from drills.core.gestures import Tick
from drills.core.kinds import Kind
from drills.core.records import CloseReason
from drills.core.utterances import Utterance
from drills.tui.layout import LINE_WIDTH, lines_of

if TYPE_CHECKING:
    from drills.core.problems import DrillsError
    from drills.practice.steps import CheckIn, Finish, Rest


@dataclass(frozen=True, slots=True, kw_only=True)
class Card:
    """One question: `lines` above, `choices` numbered from 1 below.

    quiet: for the helper to read, so it is not said aloud.
    """

    lines: tuple[str, ...]
    choices: tuple[str, ...]
    quiet: bool = False

    @property
    def spoken(self) -> Utterance:
        numbered = (f"{number}. {choice}." for number, choice in enumerate(self.choices, 1))
        return Utterance(phrases=(*self.lines, *numbered))


NO, YES = 1, 2

PAIN = Card(lines=("Do you have pain now?",), choices=("No", "Yes"))
# The same key again and again, as after a stroke it may come, neither passes these two cards
# nor tells of new signs: it goes from the one to the other and back.
NEW_SIGNS = Card(
    lines=(
        "Is one of these new today?",
        "Face drooping?",
        "Arm or leg weak or numb?",
        "Speech much worse?",
        "Sight or balance suddenly bad?",
        "Worst headache ever?",
    ),
    choices=("Yes", "No, none of these"),
)
SIGNS_NEW, SIGNS_NONE = 1, 2
NEW_SIGNS_SURE = Card(
    lines=("You said: yes, new today.", "Is it true?"), choices=("Go back", "Yes, it is new")
)
GO_BACK, SIGNS_SURE = 1, 2
TIRED = Card(
    lines=("How tired are you?",),
    choices=("Not tired", "A little tired", "Tired", "Quite tired", "Very tired"),
)
HELPED = Card(lines=("Did someone help with an answer?",), choices=("No", "Yes"))
GESTURE_PAIN = Card(lines=("Did a gesture hurt?",), choices=("No", "Yes"))
NOTE = Card(
    lines=("Helper: a note for the therapist?",), choices=("No", "Write a note"), quiet=True
)

GO_ON, REST, STOP, LEAVE_OUT = 1, 2, 3, 4
PAUSED = Card(lines=("Pause.",), choices=("Go on", "Rest", "Stop for today"))
PAUSED_IN_TRIAL = Card(
    lines=("Pause.",), choices=("Go on", "Rest", "Stop for today", "Leave this one out")
)
# In a check there is no help, and each sentence is said again once.
NO_HELP = ("This is a check, without help.", "Helper: please do not help or nod.")
HEARD_TWICE = ("It was said twice.", "Choose one now.")
RESTING = Card(lines=("Rest now.", "Take your time."), choices=("Go on",))
RESTED = ("The rest is over.", "Go on when you are ready.")


def ready_card(step: CheckIn) -> Card:
    """The card before anything else: what should be at hand."""
    first = "We go on from before." if step.resumed else f"About {step.minutes} minutes."
    if step.is_check and not step.resumed:
        first = f"A check. {first}"
    return Card(
        lines=(first, "Glasses on?", "Hearing aid in?", "Water near?", "Toilet first?"),
        choices=("Ready",),
    )


def pain_card(*, emergency_number: str) -> Card:
    """What pain means for today."""
    return Card(
        lines=(
            "No gestures today.",
            *lines_of(f"Sudden chest or head pain? Call {emergency_number}.", width=LINE_WIDTH),
            "Bad pain? Stop. Tell your doctor.",
        ),
        choices=("Go on", "Stop for today"),
    )


_NEXT = {
    Kind.MATCH: "Next: find the picture.",
    Kind.ACT_OUT: "Next: act it out.",
    Kind.CLOZE: "Next: find the missing word.",
    Kind.QUESTION: "Next: answer a question.",
    Kind.GESTURE: "Next: gestures, with your helper.",
}


def rest_card(step: Rest) -> Card:
    if step.within:
        return Card(
            lines=("A short rest now.", "You do not have to hurry.", "This part goes on after it."),
            choices=("I am ready", "Stop for today"),
        )
    return Card(
        lines=(
            "Rest.",
            f"Part {step.done_blocks} of {step.blocks} is done.",
            _NEXT[step.next_kind],
        ),
        choices=("I am ready", "Stop for today"),
    )


def finish_card(step: Finish, *, emergency_number: str) -> Card:
    """What was done, in facts, and one kind sentence by how it ended."""
    if step.reason is CloseReason.UNWELL:
        return Card(
            lines=("Practice stops here.", f"Call {emergency_number} now.", "Do not wait."),
            choices=("Leave",),
        )
    first = {
        CloseReason.FINISHED: ("Today's practice is done.",),
        CloseReason.STOPPED: ("We stop here today.",),
        CloseReason.TIRED: ("You are more tired now.", "That is enough for today."),
    }[step.reason]
    if step.by_rule:
        first = ("That is enough for today.",)
    if step.is_check:
        # How much was right is for the therapist: told here, it would be feedback.
        done = ("The check is done.",) if step.reason is CloseReason.FINISHED else first
        return Card(lines=(*done, "Thank you."), choices=("Go on",))
    facts = [
        f"{step.done} done.",
        f"{step.right_alone} alone. {step.right_helped} with help.",
    ]
    not_yet = step.done - step.right_alone - step.right_helped
    if not_yet:
        facts.append(f"{not_yet} not yet.")
    return Card(lines=(*first, *facts) if step.done else first, choices=("Go on",))


MOST_PROBLEMS = 3


def told(error: DrillsError) -> tuple[str, ...]:
    """The sentences of an error, a line each: the first few, then how many more there are."""
    lines = str(error).split("\n")
    more = len(lines) - MOST_PROBLEMS
    return (*lines[:MOST_PROBLEMS], *((f"And {more} more.",) if more > 0 else ()))


def trouble_card(first: str, error: DrillsError) -> Card:
    """What cannot be shown or begun, and why."""
    return Card(lines=(first, *told(error)), choices=("Back",), quiet=True)


PAIN_KEY = "p"
PAIN_WORDS = "Pain or weakness: no score"
SCORES = {
    3: "Right at once",
    2: "Known, with one small slip",
    1: "Only part right, or right with help",
    0: "Not known, or no try",
}

TICKS = {
    Tick.NOTHING: "No movement came",
    Tick.OTHER_ACT: "Another gesture",
    Tick.OLD_ACT: "An earlier gesture again",
    Tick.PART_MISSING: "A part was missing",
    Tick.EXTRA: "Something was added",
    Tick.HAND_AS_TOOL: "The hand became the tool",
    Tick.GRIP: "Hand shape or grip",
    Tick.FACING: "Palm or thumb faced wrong",
    Tick.PLACE: "Wrong place",
    Tick.PATH: "Wrong way of moving",
    Tick.SIZE: "Too big or too small",
    Tick.TEMPO: "Too fast or too slow",
    Tick.SEARCH: "Searched, tried again",
    Tick.VOICE: "A sound or word instead",
    Tick.BODY: "Pain or weakness: not scored",
}

# Without e, g, h, p and s, which open something on every screen or on this one.
TICK_LETTERS = dict(zip("abcdfijklmnoqrt", TICKS, strict=True))
