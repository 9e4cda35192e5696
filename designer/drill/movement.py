"""What moves: the ball, shot by shot, and the players' runs."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from designer.drill.base import Id, Length, Letter, Metres, Noted, Place, Point, Text

Stroke = Literal[
    "serve",
    "second serve",
    "underarm serve",
    "drive",
    "slice",
    "lob",
    "drop shot",
    "volley",
    "half-volley",
    "smash",
    "racket feed",
    "drop feed",
    "hand feed",
    "machine feed",
    "shadow swing",
]
FEEDS: frozenset[str] = frozenset({"racket feed", "drop feed", "hand feed", "machine feed"})
SERVES: frozenset[str] = frozenset({"serve", "second serve", "underarm serve"})

Wing = Literal["forehand", "backhand"]
Spin = Literal["topspin", "slice", "flat", "sidespin"]
Pace = Literal["soft", "half", "medium", "full"]


class Shot(Noted):
    """One flight of the ball. It comes ``after`` another; its digit is its depth in that tree."""

    by: Letter
    after: Id | None = None
    called_by: Letter | None = None
    stroke: Stroke | None = None
    wing: Wing | None = None
    contact: Place | None = None
    height: Length | None = None
    over_net: Length | None = None
    to: Place | None = None
    bounces: Annotated[int, Field(ge=0, le=3)] | None = None
    spin: Spin | None = None
    pace: Pace | None = None
    bend: Metres | None = None
    label: Text = ""


class Run(Noted):
    """Where someone goes while the ball of ``during`` is in the air."""

    by: Letter
    during: Id | None = None
    to: Place
    via: tuple[Point, ...] = ()
    purpose: Literal["reach", "recover", "approach", "retreat"] | None = None
