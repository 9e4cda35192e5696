"""Reading a layout list back into metres, as whoever lays it out with an adult racket and long strides would.

Nothing of the program is used. Measurements: ITF Rules of Tennis, Rule 1, in feet: net to baseline 39, net to service line
21, singles 27 wide, doubles 36. A racket is 27 in, a stride a yard. Places are (metres right of the middle, metres from the
net) as the player at that end faces the net.
"""

import re

FOOT = 0.3048
RACKET, STRIDE = 27 / 12 * FOOT, 3 * FOOT
SINGLES, DOUBLES = 13.5 * FOOT, 18 * FOOT
SERVICE, BASELINE = 21 * FOOT, 39 * FOOT
JUST = 0.125
"""Nobody counts less than a quarter of a metre: "just behind" is half of that."""
AGAINST = RACKET / 4
"""What stands against a fence has its middle within half a racket of it."""

OWN = r"(?:the |[A-Z]’s )?"
COUNT = r"(?P<count>just|[\d.½]+ (?:rackets?|strides?|m\b|ft(?: \d+ in)?|in\b))"


class Unreadable(AssertionError):
    """Words that no one could lay out."""


def metres(count):
    """Return the length of "2½ rackets", "1 stride", "1.37 m", "4 ft 6 in", "just"."""
    if count == "just":
        return JUST
    number, unit, *rest = count.split(" ")
    value = float(number.replace("½", "") or 0) + (0.5 if "½" in number else 0)
    length = value * {"racket": RACKET, "stride": STRIDE, "m": 1.0, "ft": FOOT, "in": FOOT / 12}[unit.rstrip("s")]
    return length + (float(rest[0]) * FOOT / 12 if rest else 0)


def unfolded(words):
    """Return each place that one entry of a list means: "each singles line", "either side of", "at both ends"."""
    found = [words]
    if "at both ends" in words:
        found = [words.replace("at both ends", f"at the {end} end") for end in ("near", "far")]
    if "either side of" in words:
        return [one.replace("either side of", f"{side} of") for one in found for side in ("left", "right")]
    if each := re.search(r"\beach (singles line|doubles line|side fence|service box)(?: at ([A-Z]’s) end)?", words):
        owner = each[2] or "the"
        sides = [
            f"the side fence on {owner} {{}}" if each[1] == "side fence" and each[2] else f"{owner} {{}} {each[1]}"
        ]
        return [one.replace(each[0], sides[0].format(side)) for one in found for side in ("left", "right")]
    return found


class Court:
    """The lines of a court, and where its fences are; None where nobody has said."""

    def __init__(self, back=None, side=None, singles=SINGLES, doubles=DOUBLES, service=SERVICE, baseline=BASELINE):
        self.sidelines = {"singles": singles, "doubles": doubles}
        self.rows_of = {"net": 0.0, "service line": service, "baseline": baseline}
        self.back = None if back is None else baseline + back
        self.side = None if side is None else (doubles or singles) + side

    def across(self, words):
        """Return metres to the right of the middle."""
        words = words.removeprefix("on ").removeprefix("from ")
        if re.fullmatch(rf"{OWN}(?:centre line(?: extended)?|centre mark|T)|(?:in )?the middle", words):
            return 0.0
        if found := re.fullmatch(rf"{OWN}(left|right) (singles|doubles) line", words):
            return sign(found[1]) * self.sidelines[found[2]]
        if found := re.fullmatch(rf"{COUNT} (in from|out from|inside) {OWN}(left|right) (singles|doubles) line", words):
            way = 1 if found[2] == "out from" else -1
            return sign(found[3]) * (self.sidelines[found[4]] + way * metres(found["count"]))
        if found := re.fullmatch(rf"{COUNT} (left|right) of {OWN}(?:centre line|centre mark|T|middle)", words):
            return sign(found[2]) * metres(found["count"])
        fence = r"(?:the side fence on [A-Z]’s (left|right)|the (left|right) side fence)"
        if found := re.fullmatch(rf"(?:against|{COUNT} (in from|out from|inside)) {fence}", words):
            away = AGAINST if found["count"] is None else metres(found["count"])
            side = found[3] or found[4]
            return sign(side) * (self.side + (away if found[2] == "out from" else -away))
        raise Unreadable(words)

    def along(self, words):
        """Return metres from the net."""
        if found := re.fullmatch(rf"(?:on |level with |from )?{OWN}(net|service line|baseline)", words):
            return self.rows_of[found[1]]
        if found := re.fullmatch(rf"{COUNT} (behind|inside|in front of|from) {OWN}(net|service line|baseline)", words):
            way = -1 if found[2] in ("inside", "in front of") else 1
            return self.rows_of[found[3]] + way * metres(found["count"])
        if found := re.fullmatch(rf"half-way between {OWN}(net|service line) and the (service line|baseline)", words):
            return (self.rows_of[found[1]] + self.rows_of[found[2]]) / 2
        if found := re.fullmatch(rf"(?:against|{COUNT} (in front of|behind|inside)) {OWN}back fence", words):
            away = AGAINST if found["count"] is None else metres(found["count"])
            return self.back + (away if found[2] == "behind" else -away)
        raise Unreadable(words)

    def crossing(self, words):
        """Return where lines meet, None for other words."""
        words = words.removeprefix("on ")
        service, baseline = self.rows_of["service line"], self.rows_of["baseline"]
        named = {"T": (0.0, service), "centre mark": (0.0, baseline), "middle of the net": (0.0, 0.0)}
        bare = re.sub(rf"^{OWN}", "", words)
        if bare in named:
            return named[bare]
        if found := re.fullmatch(r"(left|right) (singles|doubles) corner", bare):
            return sign(found[1]) * self.sidelines[found[2]], baseline
        if found := re.fullmatch(r"outer corner of the (left|right) service box", bare):
            return sign(found[1]) * self.sidelines["singles"], service
        if found := re.fullmatch(r"net at (?:the |[A-Z]’s )(left|right) (singles|doubles) line", bare):
            return sign(found[1]) * self.sidelines[found[2]], 0.0
        return None

    def place(self, words):
        """Return the place that a line of the list names."""
        if (crossing := self.crossing(words)) is not None:
            return crossing
        if found := re.fullmatch(r"half-way between (.+) and (.+)", words):
            ends = self.crossing(found[1]), self.crossing(found[2])
            if None not in ends:
                return tuple((a + b) / 2 for a, b in zip(*ends, strict=True))
        if found := re.fullmatch(rf"{COUNT} (behind|inside|in front of) {OWN}(T|centre mark)", words):
            row = self.rows_of["service line" if found[3] == "T" else "baseline"]
            return 0.0, row + (metres(found["count"]) if found[2] == "behind" else -metres(found["count"]))
        first, _, second = words.partition(", ")
        if not second:
            raise Unreadable(words)
        return self.across(first), self.along(second)

    def rectangle(self, words):
        """Return (left, right, front, back)."""
        if found := re.fullmatch(rf"{OWN}(.+); painted lines (?:only|and the centre line extended)", words):
            return REGIONS[found[1]]
        across, along = words.split("; ")
        return (*sorted(self.columns(across)), *sorted(self.rows(along)))

    def columns(self, words):
        """Return the two edges across."""
        if found := re.fullmatch(rf"{COUNT} either side of the middle", words):
            return -metres(found["count"]), metres(found["count"])
        if found := re.fullmatch(r"(?:from )?(singles|doubles) line to \1 line", words):
            return -self.sidelines[found[1]], self.sidelines[found[1]]
        words = words.removeprefix("from ")
        if found := re.fullmatch(rf"(.+?) {COUNT} (in|inwards|out|to the left|to the right)", words):
            start, width = self.across(found[1]), metres(found["count"])
            if found[3].startswith("to the"):
                return start, start + sign(found[3].split()[-1]) * width
            inwards = -1 if start > 0 else 1
            return start, start + (inwards if found[3].startswith("in") else -inwards) * width
        first, second = words.split(" to ")
        return self.across(first), self.across(second)

    def rows(self, words):
        """Return the two edges along."""
        words = words.removeprefix("from ")
        if found := re.fullmatch(rf"(.+?) {COUNT} back", words):
            start = self.along(found[1])
            return start, start + metres(found["count"])
        first, second = words.split(" to ")
        return self.along(first), self.along(second)


def sign(side):
    return 1 if side == "right" else -1


REGIONS = {
    "singles court": (-SINGLES, SINGLES, 0.0, BASELINE),
    "doubles court": (-DOUBLES, DOUBLES, 0.0, BASELINE),
    "right half": (0.0, SINGLES, 0.0, BASELINE),
    "left half": (-SINGLES, 0.0, 0.0, BASELINE),
    "right doubles half": (0.0, DOUBLES, 0.0, BASELINE),
    "left doubles half": (-DOUBLES, 0.0, 0.0, BASELINE),
    "back court": (-SINGLES, SINGLES, SERVICE, BASELINE),
    "doubles back court": (-DOUBLES, DOUBLES, SERVICE, BASELINE),
    "right half from the service line to the baseline": (0.0, SINGLES, SERVICE, BASELINE),
    "left half from the service line to the baseline": (-SINGLES, 0.0, SERVICE, BASELINE),
    "service boxes": (-SINGLES, SINGLES, 0.0, SERVICE),
    "right service box": (0.0, SINGLES, 0.0, SERVICE),
    "left service box": (-SINGLES, 0.0, 0.0, SERVICE),
    "right alley": (SINGLES, DOUBLES, 0.0, BASELINE),
    "left alley": (-DOUBLES, -SINGLES, 0.0, BASELINE),
}
