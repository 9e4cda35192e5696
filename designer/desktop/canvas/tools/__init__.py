"""The tools, one small state machine a file. They are fed with court-space events and know no window."""
