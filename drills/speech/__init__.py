"""Speech: words to voice, said by a process of its own so that nothing else ever waits for it.

Holds: `voice` (this side), and in the other process `worker`, `engine`, `players`. May import core;
only `engine` may import pyttsx3, only `players` miniaudio. Tested by tests/speech.
"""

from drills.speech.voice import start_voice, synthesise_to

__all__ = ["start_voice", "synthesise_to"]
