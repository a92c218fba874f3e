"""Speech: words to voice, said by a process of its own so that nothing else ever waits for it.

Holds: `voice`, `synthesis` and `child` on this side, `worker`, `engine` and `players` in the other
process. May import core; only `engine` may import pyttsx3, only `players` miniaudio. Tested by
tests/speech.
"""

from drills.speech.synthesis import synthesise_to, try_voice
from drills.speech.voice import start_voice

__all__ = ["start_voice", "synthesise_to", "try_voice"]
