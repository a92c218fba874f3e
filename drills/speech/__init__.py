"""Speech: words to voice, said by a process of its own so that nothing else ever waits for it.

Holds: `voice`, `synthesis` and `child` on this side, `worker`, `engine` and `players` in the other
process. May import core; only `engine` may import pyttsx3, only `players` miniaudio. Tested by
tests/speech.
"""

from typing import TYPE_CHECKING

from drills.core.late import late

if TYPE_CHECKING:
    from drills.speech.synthesis import synthesise_to, try_voice
    from drills.speech.voice import start_voice

__all__ = ["start_voice", "synthesise_to", "try_voice"]

# The first screen needs one or two of these and must come soon.
__getattr__ = late(
    __name__,
    {
        "start_voice": "voice",
        "synthesise_to": "synthesis",
        "try_voice": "synthesis",
    },
)
