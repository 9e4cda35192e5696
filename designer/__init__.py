"""Draw a tennis drill to scale, say how it is played, and print its card."""

__version__ = "0.1.0"
