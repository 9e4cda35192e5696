"""The neutral picture of a setting: marks in metres, themes, text widths, and one renderer for each medium."""
