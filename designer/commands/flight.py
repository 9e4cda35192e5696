"""`drill-designer flight`: one ball, from the racket over the net to the ground and off it."""

from __future__ import annotations

import argparse
import json
from typing import Any, Final

from designer.commands.arguments import Commands, add_command
from designer.commands.saying import complain, say
from designer.commands.status import ERROR_FOUND, FINE, WrongUsage
from designer.court.standards import Ground, ground
from designer.drill.drill import Court
from designer.numbers.balls import air_density, ball, ball_names
from designer.numbers.bounce import Bounce, second_flight
from designer.numbers.flight import Flight, flight, launch, topspin_of
from designer.numbers.problems import Impossible
from designer.numbers.surfaces import surface, surface_names
from designer.numbers.surroundings import Surroundings

FORMAT: Final = 1
_DIGITS: Final = 6


def add(commands: Commands) -> None:
    """Add this command to the parser."""
    parser = add_command(
        commands,
        "flight",
        "compute the flight of one ball, hit from the baseline straight ahead, and its bounce",
        "drill-designer flight --speed 30 --angle 12 --height 1 --spin 2000",
        "drill-designer flight --speed 42 --angle 0.5 --height 2.7 --spin 1500 --sidespin -2500 --surface clay --json",
    )
    needed = {"type": float, "required": True}
    parser.add_argument("--speed", metavar="MPS", help="metres a second off the racket", **needed)  # type: ignore[arg-type]
    parser.add_argument("--angle", metavar="DEG", help="degrees above the horizontal", **needed)  # type: ignore[arg-type]
    parser.add_argument("--height", metavar="M", help="metres from the ground to the middle of the ball", **needed)  # type: ignore[arg-type]
    parser.add_argument("--spin", metavar="RPM", help="turns a minute: topspin, below 0 slice", **needed)  # type: ignore[arg-type]
    parser.add_argument(
        "--sidespin", type=float, default=0.0, metavar="RPM", help="curves to the hitter's right; default: 0"
    )
    parser.add_argument(
        "--drag", type=float, metavar="CD", help="drag coefficient, 0.50 to 0.65; default: the ball's, 0.55"
    )
    parser.add_argument("--surface", choices=surface_names(), default="hard", help="default: hard")
    parser.add_argument("--ball", choices=ball_names(), default="yellow", help="default: yellow")
    parser.add_argument("--altitude", type=float, metavar="M", help="metres above the sea; default: 0")
    parser.add_argument("--temperature", type=float, metavar="C", help="degrees Celsius; default: 20")
    parser.add_argument("--json", action="store_true", help="print the numbers as JSON")
    parser.set_defaults(run=run)


def run(asked: argparse.Namespace) -> int:
    """Print the flight; return the exit status: 1 for a ball that lands at the hitter's own end."""
    try:
        around = _surroundings(asked)
        flown = _flown(asked, around)
        off, after = second_flight(flown, around.ball, around.surface, density=around.density)
    except Impossible as impossible:
        raise WrongUsage(str(impossible)) from impossible
    notices = _notices(flown, around)
    found = _numbers(flown, off, after, around)
    say(json.dumps(found | {"notices": notices}, indent=2) if asked.json else _in_words(found))
    for notice in notices:
        complain(notice)
    return ERROR_FOUND if flown.landing.y < 0 else FINE


def _surroundings(asked: argparse.Namespace) -> Surroundings:
    flown = ball(asked.ball)
    if asked.drag is not None:
        flown = flown.with_drag(asked.drag)
    options = {}
    if asked.altitude is not None or asked.temperature is not None:
        temperature = 20.0 if asked.temperature is None else asked.temperature
        options["density"] = air_density(asked.altitude or 0.0, temperature)
    return Surroundings(ground(Court()), flown, surface(asked.surface), **options)


def _flown(asked: argparse.Namespace, around: Surroundings) -> Flight:
    contact = (0.0, -around.ground.baseline)
    struck = launch(
        contact,
        (0.0, 0.0),
        height=asked.height,
        speed=asked.speed,
        angle=asked.angle,
        topspin=asked.spin,
        sidespin=asked.sidespin,
    )
    return flight(struck, around.ball, density=around.density)


def _notices(flown: Flight, around: Surroundings) -> list[str]:
    short = -flown.landing.y
    if short > 0:
        return [f"The ball lands on the hitter's own side, {short:.2f} m before the net."]
    over = around.clears(flown)
    notices = []
    if over is not None and over < 0:
        notices.append(
            f"The ball hits the net, {-over:.2f} m below its top; the numbers are as if the net were not there."
        )
    out = _out(flown, around.ground)
    if out > 0:
        notices.append(f"The ball is out, {out:.2f} m beyond the singles court.")
    return notices


def _out(flown: Flight, court: Ground) -> float:
    return max(flown.landing.y - court.baseline, abs(flown.landing.x) - court.singles)


def _numbers(flown: Flight, off: Bounce, after: Flight, around: Surroundings) -> dict[str, Any]:
    landing, net = flown.landing, flown.net
    over = around.clears(flown)
    vx, vy, vz = off.velocity
    numbers: dict[str, Any] = {
        "landing_m": landing.y + around.ground.baseline,
        "lateral_m": landing.x,
        "time_s": landing.time,
        "net_time_s": None if net is None else net.time,
        "net_height_m": None if net is None else net.z,
        "net_clearance_m": over,
        "highest_m": flown.apex.z,
        "landing_speed_mps": landing.speed,
        "landing_angle_deg": landing.descent,
        "bounce": off.mode,
        "bounce_vx_mps": vy,
        "bounce_vy_mps": vx,
        "bounce_vz_mps": vz,
        "bounce_spin_rpm": topspin_of(off.spin, 0.0, 1.0),
        "bounce_highest_m": after.apex.z,
        "second_bounce_m": after.landing.y + around.ground.baseline,
        "second_bounce_s": after.landing.time,
    }
    rounded = {
        name: round(value, _DIGITS) + 0.0 if isinstance(value, float) else value for name, value in numbers.items()
    }
    return {"format": FORMAT, **rounded}


def _in_words(found: dict[str, Any]) -> str:
    lines = [f"lands {found['landing_m']:.2f} m away after {found['time_s']:.2f} s"]
    if abs(found["lateral_m"]) >= 0.005:
        side = "right" if found["lateral_m"] > 0 else "left"
        lines.append(f"{abs(found['lateral_m']):.2f} m to the hitter's {side}")
    if found["net_height_m"] is not None:
        lines.append(
            f"at the net the middle of the ball is {found['net_height_m']:.2f} m high,"
            f" its bottom {abs(found['net_clearance_m']):.2f} m {'over' if found['net_clearance_m'] >= 0 else 'below'} the top"
        )
    lines += [
        f"comes down at {found['landing_speed_mps']:.1f} m/s, {found['landing_angle_deg']:.1f} degrees",
        f"bounces ({found['bounce']}) with {found['bounce_vx_mps']:.1f} m/s along and {found['bounce_vz_mps']:.1f} m/s up",
        f"turns with {found['bounce_spin_rpm']:.0f} rpm of topspin and comes up to {found['bounce_highest_m']:.2f} m",
        f"second bounce {found['second_bounce_m']:.2f} m away after {found['second_bounce_s']:.2f} s",
    ]
    return "\n".join(lines)
