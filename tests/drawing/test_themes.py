import itertools

import numpy as np
import pytest

from designer.drawing.themes import ROLES, THEMES, Colour, theme

SURFACES = ("hard", "clay", "grass")
MARKS = ("court line", "net", "ink", "soft", "ball", "feet", "target")
WORDS = ("ink", "soft", "ball", "target")


def linear(colour):
    """Red, green and blue as light: the transfer curve of sRGB, IEC 61966-2-1, as WCAG 2.x quotes it."""
    return [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in colour.rgb]


def luminance(colour):
    """Relative luminance as WCAG 2.2 defines it."""
    return sum(share * light for share, light in zip((0.2126, 0.7152, 0.0722), linear(colour), strict=True))


def contrast(one, other):
    """Contrast ratio as WCAG 2.2 defines it: 1.4.3 asks 4.5 of small text, 1.4.11 asks 3 of graphics."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def looks():
    return [theme(name, surface=surface) for name in THEMES for surface in SURFACES]


def test_the_ratio_itself_is_right():
    # WCAG 2.2: black on white is 21:1; #767676 on white is the usual example of just over 4.5:1.
    assert contrast(Colour("#000000"), Colour("#FFFFFF")) == pytest.approx(21)
    assert contrast(Colour("#767676"), Colour("#FFFFFF")) == pytest.approx(4.54, abs=0.01)


@pytest.mark.parametrize("look", looks(), ids=lambda look: look.name)
def test_marks_reach_three_to_one_and_words_four_and_a_half_on_the_court(look):
    ground = look.colour("court") or look.colour("paper")
    for role in MARKS:
        assert contrast(look.colour(role), ground) >= 3, role
    for role in WORDS:
        assert contrast(look.colour(role), ground) >= 4.5, role


@pytest.mark.parametrize("look", looks(), ids=lambda look: look.name)
def test_words_read_on_the_ground_round_the_court_and_the_fence_shows(look):
    for role in ("ink", "soft", "ball", "target"):
        assert contrast(look.colour(role), look.ground) >= 4.5, role
    assert contrast(look.colour("fence"), look.ground) >= 2.95


@pytest.mark.parametrize("look", looks(), ids=lambda look: look.name)
def test_words_read_on_the_tint_of_their_own_area(look):
    ground = look.colour("court") or look.colour("paper")
    for area, role in (("target", "target"), ("feed", "ball"), ("keep out", "ink"), ("rule", "ink")):
        tint = look.colour(f"{area} tint")
        floor = ground if tint is None else tint.over(ground)
        assert contrast(look.colour(role), floor) >= 4.5 or contrast(look.colour(role), ground) >= 4.5, area
        assert contrast(look.colour(role), floor) >= 4, area


@pytest.mark.parametrize("name", THEMES)
def test_the_digit_reads_on_its_tag_and_the_flag_on_its_ink(name):
    look = theme(name)
    assert contrast(look.colour("paper"), look.colour("ball")) >= 4.5
    assert contrast(look.colour("paper"), look.colour("ink")) >= 4.5


# Machado, Oliveira and Fernandes 2009, "A physiologically-based model for simulation of color vision deficiency", table
# for severity 1.0. Values from memory; each row adds up to 1, which the test below checks.
MACHADO = {
    "protanopia": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
    "deuteranopia": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]],
    "tritanopia": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]],
}


def lab(light):
    """CIE 1976 L*a*b* under D65 of linear sRGB; matrix and white of IEC 61966-2-1."""
    to_xyz = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
    ratio = to_xyz @ np.clip(light, 0, 1) / np.array([0.9505, 1.0, 1.089])
    f = np.where(ratio > 0.008856, np.cbrt(ratio), 7.787 * ratio + 16 / 116)
    return np.array([116 * f[1] - 16, 500 * (f[0] - f[1]), 200 * (f[1] - f[2])])


def test_a_simulation_leaves_grey_grey():
    for matrix in MACHADO.values():
        assert np.array(matrix).sum(axis=1) == pytest.approx([1, 1, 1], abs=1e-5)


@pytest.mark.parametrize("kind", [None, *MACHADO])
@pytest.mark.parametrize("name", [name for name in THEMES if name != "photocopy"])
def test_ball_feet_and_target_stay_apart_for_every_eye(name, kind):
    look = theme(name)
    matrix = np.eye(3) if kind is None else np.array(MACHADO[kind])
    seen = {role: lab(matrix @ np.array(linear(look.colour(role)))) for role in ("ball", "feet", "target", "ink")}
    for one, other in itertools.combinations(seen, 2):
        # Ten times the difference that is just seen, by the plain distance of CIE 1976: a designer's floor.
        assert np.linalg.norm(seen[one] - seen[other]) > 10, (one, other)


def test_a_photocopy_has_no_colour_and_nothing_but_fills_lighter_than_45_percent_black():
    look = theme("photocopy")
    for role in ("court line", "net", "fence", "ink", "soft", "ball", "feet", "target", "obstacle"):
        red, green, blue = look.colour(role).rgb
        assert red == green == blue
        assert red <= 0.55


def test_every_theme_answers_for_every_role():
    for look in looks():
        assert set(look.colours) == set(ROLES)


def test_the_court_takes_the_colour_of_its_surface_only_on_the_light_screen():
    light = {theme("light", surface=surface).colour("court") for surface in SURFACES}
    assert len(light) == 3
    assert theme("paper", surface="clay").colour("court") is None
    assert theme("light", surface="artificial grass").colour("court") == theme("light", surface="grass").colour("court")


def test_an_unknown_theme_is_refused_with_the_names_there_are():
    with pytest.raises(KeyError, match="high contrast"):
        theme("neon")


def test_a_colour_over_another_is_what_is_seen():
    assert Colour("#000000", 0.25).over(Colour("#FFFFFF")).hex == "#BFBFBF"
