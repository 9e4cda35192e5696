"""Checks of a drill: weight, the items concerned and, where there is one, the edit that mends it."""
