"""What a rule can ask for, as menus say it. It stands apart from the forms, which load only when one opens."""

from typing import Final

KINDS_OF_RULE: Final = (
    ("keep", "the ball or feet in a place"),
    ("use stroke", "a stroke or a wing"),
    ("aim", "a direction"),
    ("height", "a height"),
    ("bounces", "a number of bounces"),
)
"""The name in the file and the words of a coach."""
