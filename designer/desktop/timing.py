"""When things happen that need not happen at once, in milliseconds."""

from typing import Final

AFTER_PAINT: Final = 30
"""A new window has been painted and takes keys: now there is time for the words of its card and for what edits need."""

GESTURE_REST: Final = 150
"""A gesture rests, and the words follow it; while it goes on the drawing must keep up with the hand."""
