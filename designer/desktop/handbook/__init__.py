"""The window in which a handbook is put together and printed."""
