"""What a court is: its measurements with their sources, and the ground a drill is drawn on.

Each court is one file in ``resources/courts``. A measurement is given as its source gives it, in feet and inches where
those are exact, and is converted here. All lengths are metres.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from typing import Any, Final

from designer.bundle import resource
from designer.drill.base import Point
from designer.drill.drill import CLUB_RUN_BACK, CLUB_SIDE_RUN, Court

FALLBACK: Final = "tennis"
"""The court drawn where a drill names one that is not known; the review says so."""

_METRES_IN: Final = {"metres": Decimal(1), "feet": Decimal("0.3048"), "inches": Decimal("0.0254")}


@dataclass(frozen=True, slots=True)
class Measure:
    """A length in metres, where it comes from, and the least and most that the sources give where they differ."""

    metres: float
    source: str
    least: float | None = None
    most: float | None = None


@dataclass(frozen=True, slots=True)
class Supports:
    """What the net stands on and how high it is there: ``outside`` is from the outermost sideline it belongs to."""

    centre_height: Measure
    support_height: Measure
    posts_outside: Measure
    sticks_outside: Measure | None


@dataclass(frozen=True, slots=True)
class Hosting:
    """How a small court lies on a larger one: "along" it over the same net, or "across" it with a net of its own."""

    lies: str
    own_net: bool
    middle_from_host_net: float
    source: str


@dataclass(frozen=True, slots=True)
class CourtStandard:
    """A court by its measurements; widths are whole, lengths from the net. None where it has no such line."""

    name: str
    title: str
    net_to_baseline: Measure
    net_to_service_line: Measure | None
    singles_width: Measure
    doubles_width: Measure | None
    centre_line: bool
    centre_mark: Measure | None
    line_width: Measure
    centre_line_width: Measure | None
    baseline_width: Measure
    net: Supports
    run_back: Mapping[str, Measure]
    side_run: Mapping[str, Measure]
    hosted_on: Mapping[str, Hosting]


@dataclass(frozen=True, slots=True)
class PaintedLine:
    """A line on the ground; ``name`` is as seen from the near end ("right singles line", "far baseline").

    ``start`` and ``end`` lie where the court is measured: on the outer edge of a line, in the middle of the centre line.
    """

    name: str
    start: Point
    end: Point
    width: float

    def as_tuple(self) -> tuple[Point, Point]:
        """Return its two ends."""
        return self.start, self.end


@dataclass(frozen=True, slots=True)
class Net:
    """The net: lowest at its centre, highest at its supports; beyond sticks it runs on to the posts at ``ends_x``."""

    centre_height: float
    support_height: float
    support_x: float
    ends_x: float
    supports: str


@dataclass(frozen=True, slots=True)
class Ground:
    """A court as one drill uses it. ``assumed``: a run-off is not stated, so the club minimum is taken."""

    standard: CourtStandard
    run_back: float
    side_run: float
    assumed_run_back: bool
    assumed_side_run: bool
    lines: tuple[PaintedLine, ...]
    host_lines: tuple[PaintedLine, ...]
    baseline: float
    service_line: float | None
    singles: float
    doubles: float | None
    centre_line: bool
    net: Net

    @property
    def assumed(self) -> bool:
        """Whether the run-off behind or beside the court is not stated."""
        return self.assumed_run_back or self.assumed_side_run

    @property
    def outer(self) -> float:
        """Half the width to the outermost sideline."""
        return self.singles if self.doubles is None else self.doubles

    @property
    def back_fence(self) -> float:
        """How far the fence behind a baseline is from the net."""
        return self.baseline + self.run_back

    @property
    def side_fence(self) -> float:
        """How far the fence at a side is from the middle of the court."""
        return self.outer + self.side_run

    def net_height(self, x: float) -> float:
        """Return the height of the net ``x`` metres from its centre.

        A straight line from the strap to the support, level beyond it: a choice of model, no rule of the game.
        """
        net = self.net
        share = min(abs(x) / net.support_x, 1.0)
        return net.centre_height + (net.support_height - net.centre_height) * share


@cache
def court_names() -> tuple[str, ...]:
    """Return the name of every court there is, in alphabetical order."""
    return tuple(sorted(path.stem for path in resource("courts").glob("*.json")))


def known_court(name: str) -> bool:
    """Whether there is a court called ``name``."""
    return name in court_names()


@cache
def court_standard(name: str) -> CourtStandard:
    """Return the court called ``name``; raise ``KeyError`` with a sentence that lists the courts there are."""
    if not known_court(name):
        raise KeyError(f"there is no court called {name!r}; there are {', '.join(court_names())}")
    return _standard(_data(name))


def _data(name: str) -> dict[str, Any]:
    data: dict[str, Any] = json.loads(resource("courts", f"{name}.json").read_text("utf-8"))
    like = data.pop("like", None)
    return data if like is None else _data(like) | data


def to_metres(length: Mapping[str, Any]) -> float:
    """Return a length such as ``{"feet": 13, "inches": 6}`` in metres, exactly converted, to 0.1 mm."""
    total = sum(Decimal(str(length[unit])) * metres for unit, metres in _METRES_IN.items() if unit in length)
    return float(round(Decimal(total), 4))


def _measure(length: Mapping[str, Any]) -> Measure:
    least, most = (to_metres(bound) for bound in length["range"]) if "range" in length else (None, None)
    return Measure(to_metres(length), length["source"], least, most)


def _optional(data: Mapping[str, Any], key: str) -> Measure | None:
    return _measure(data[key]) if key in data else None


def _hosting(data: Mapping[str, Any]) -> Hosting:
    middle = to_metres(data.get("middle_from_host_net", {}))
    return Hosting(data["lies"], data["own_net"], middle, data["source"])


def _standard(data: Mapping[str, Any]) -> CourtStandard:
    net = data["net"]
    return CourtStandard(
        name=data["name"],
        title=data["title"],
        net_to_baseline=_measure(data["net_to_baseline"]),
        net_to_service_line=_optional(data, "net_to_service_line"),
        singles_width=_measure(data["singles_width"]),
        doubles_width=_optional(data, "doubles_width"),
        centre_line=data["centre_line"],
        centre_mark=_optional(data, "centre_mark"),
        line_width=_measure(data["line_width"]),
        centre_line_width=_optional(data, "centre_line_width"),
        baseline_width=_measure(data["baseline_width"]),
        net=Supports(
            centre_height=_measure(net["centre_height"]),
            support_height=_measure(net["support_height"]),
            posts_outside=_measure(net["posts_outside"]),
            sticks_outside=_optional(net, "sticks_outside"),
        ),
        run_back={use: _measure(length) for use, length in data["run_back"].items()},
        side_run={use: _measure(length) for use, length in data["side_run"].items()},
        hosted_on={host: _hosting(hosting) for host, hosting in data.get("hosted_on", {}).items()},
    )


def ground(court: Court) -> Ground:
    """Return the ground of a drill on ``court``; a court that is not known is drawn as the tennis court."""
    return _ground(court.standard, court.hosted_on, court.supports, court.run_back, court.side_run)


@cache
def _ground(name: str, host_name: str | None, supports: str, run_back: float | None, side_run: float | None) -> Ground:
    standard = court_standard(name if known_court(name) else FALLBACK)
    hosting = standard.hosted_on.get(host_name) if host_name is not None else None
    host = court_standard(host_name) if hosting is not None and host_name is not None else None
    return Ground(
        standard=standard,
        run_back=CLUB_RUN_BACK if run_back is None else run_back,
        side_run=CLUB_SIDE_RUN if side_run is None else side_run,
        assumed_run_back=run_back is None,
        assumed_side_run=side_run is None,
        lines=_lines(standard),
        host_lines=_host_lines(host, hosting) if host is not None and hosting is not None else (),
        baseline=standard.net_to_baseline.metres,
        service_line=None if standard.net_to_service_line is None else standard.net_to_service_line.metres,
        singles=_half(standard.singles_width),
        doubles=None if standard.doubles_width is None else _half(standard.doubles_width),
        centre_line=standard.centre_line,
        net=_net(standard if host is None or hosting is None or hosting.own_net else host, supports),
    )


def _half(width: Measure) -> float:
    return round(width.metres / 2, 4)


def _net(standard: CourtStandard, supports: str) -> Net:
    net = standard.net
    outer = standard.singles_width if standard.doubles_width is None else standard.doubles_width
    posts = round(_half(outer) + net.posts_outside.metres, 4)
    sticks = net.sticks_outside if supports == "sticks" else None
    return Net(
        centre_height=net.centre_height.metres,
        support_height=net.support_height.metres,
        support_x=posts if sticks is None else round(_half(standard.singles_width) + sticks.metres, 4),
        ends_x=posts,
        supports="posts" if sticks is None else "sticks",
    )


def _lines(standard: CourtStandard) -> tuple[PaintedLine, ...]:
    base = standard.net_to_baseline.metres
    singles = _half(standard.singles_width)
    doubles = None if standard.doubles_width is None else _half(standard.doubles_width)
    thin = standard.line_width.metres
    lines: list[PaintedLine] = []
    for side, sign in (("left", -1), ("right", 1)):
        lines.append(PaintedLine(f"{side} singles line", (sign * singles, -base), (sign * singles, base), thin))
        if doubles is not None:
            lines.append(PaintedLine(f"{side} doubles line", (sign * doubles, -base), (sign * doubles, base), thin))
    for end, sign in (("near", -1), ("far", 1)):
        lines.extend(_lines_of_end(standard, end, sign))
    return tuple(lines)


def _lines_of_end(standard: CourtStandard, end: str, sign: int) -> list[PaintedLine]:
    base = standard.net_to_baseline.metres * sign
    singles = _half(standard.singles_width)
    outer = singles if standard.doubles_width is None else _half(standard.doubles_width)
    lines = [PaintedLine(f"{end} baseline", (-outer, base), (outer, base), standard.baseline_width.metres)]
    middle = (standard.centre_line_width or standard.line_width).metres
    if standard.net_to_service_line is not None:
        service = standard.net_to_service_line.metres * sign
        lines.append(
            PaintedLine(f"{end} service line", (-singles, service), (singles, service), standard.line_width.metres)
        )
        if standard.centre_line:
            lines.append(PaintedLine(f"{end} centre line", (0.0, 0.0), (0.0, service), middle))
    if standard.centre_mark is not None:
        inner = round(base - sign * standard.centre_mark.metres, 4)
        lines.append(PaintedLine(f"{end} centre mark", (0.0, inner), (0.0, base), middle))
    return lines


def _host_lines(host: CourtStandard, hosting: Hosting) -> tuple[PaintedLine, ...]:
    """Return the host's lines as seen from the small court, and its net as a line where that stands in the way."""
    if hosting.lies == "along":
        return _lines(host)

    def turned(point: Point) -> Point:
        # A quarter turn: along the host is across the small court, whose middle lies away from the host's net.
        return (round(point[1] - hosting.middle_from_host_net, 4) + 0.0, round(-point[0], 4) + 0.0)

    half_net = _net(host, "posts").ends_x
    net = PaintedLine("net", (-half_net, 0.0), (half_net, 0.0), host.line_width.metres)
    return tuple(
        PaintedLine(line.name, turned(line.start), turned(line.end), line.width) for line in (*_lines(host), net)
    )
