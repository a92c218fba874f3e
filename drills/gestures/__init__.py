"""Gestures: a drawing's key -> keyframes -> frames of terminal cells.

Holds the figure, its hands, the pretend tools and one movement for each gesture. The model
shows the left hand as in a mirror: the hand that moves is on the viewer's left. May import
pictures and core only; what is asked and scored is content.   tests/gestures.
"""

from drills.gestures.frames import FRAMES_A_LOOP, KEYS, drawn, frame_seconds, frames

__all__ = ["FRAMES_A_LOOP", "KEYS", "drawn", "frame_seconds", "frames"]
