"""The sequence played on the court in true time."""
