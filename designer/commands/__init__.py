"""The command line: the same job without a screen."""
