"""What a field of a form wants from the court: one of several things, any number of them, or a place."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any, Literal, Protocol

from designer.drill.base import Point

Kind = Literal["one", "many", "place"]


@dataclass(frozen=True, slots=True)
class Wish:
    """What is to be picked on the court, and who gets it.

    ``words`` say what is asked for. Of ``options``, values with their words, those that lie on the court can be picked;
    ``chosen`` returns the ones that are. A wish for a "place" has no options: ``take`` gets a ``Place``, tied to the
    thing that it was picked on where ``ties``, and ``start`` is where the keyboard's cross begins. Nothing can be tied to the
    record ``about``, the one that asks. ``ended`` is called once, when the court is let go.
    """

    words: str
    kind: Kind
    take: Callable[[Any], None]
    ended: Callable[[], None] = lambda: None
    options: Sequence[tuple[Any, str]] = ()
    chosen: Callable[[], tuple[Any, ...]] = tuple
    ties: bool = False
    start: Point | None = None
    about: str | None = None


class Court(Protocol):
    """The court as forms know it: they ask, the coach picks there, and their ``take`` is called."""

    def begin(self, wish: Wish) -> None:
        """Let ``wish`` be picked; one that was asked before is let go."""

    def end(self) -> None:
        """Let go of what is asked; nothing happens where nothing is."""
