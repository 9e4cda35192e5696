"""Picking on the court what a form asks for: a thing, an area, a line, a person, a ball or a place."""
