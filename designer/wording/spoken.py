"""The words that pictures are labelled in while they are made: ours, unless an academy has its own."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar

_said: ContextVar[Callable[[str], str] | None] = ContextVar("said", default=None)


@contextmanager
def spoken(said: Callable[[str], str]) -> Iterator[None]:
    """Label the pictures that are made meanwhile with what ``said`` makes of our words: deuce and ad, the legend."""
    token = _said.set(said)
    try:
        yield
    finally:
        _said.reset(token)


def label(word: str) -> str:
    """Return a word of ours as pictures are labelled now."""
    said = _said.get()
    return word if said is None else said(word)
