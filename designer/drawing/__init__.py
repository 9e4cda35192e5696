"""The neutral picture of a setting in metres, themes, text widths, and one renderer per medium."""
