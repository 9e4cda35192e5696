"""The computation: flight, bounce, movement, recovery, accuracy, scoring odds and load."""
