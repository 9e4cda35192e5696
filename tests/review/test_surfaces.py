"""What hangs on the court's surface and on age. ITF: Technical Booklet 2015, table 5 (run-off); Rules of Tennis, Appendix VI."""

from review.situations import COURT, RALLY, keys, run, spot, told

from designer.drill.base import place
from designer.drill.items import Disc, Obstacle
from designer.review.surfaces import age_cautions, surface_cautions

RUN = run("A", "reply", 0.0, -12.0, purpose="recover")


def surface(*records, **court):
    return keys(surface_cautions(told(*RALLY, *records, court=COURT.changed(**court))))


def test_nobody_runs_on_a_wet_court_but_on_damp_clay():
    assert surface(RUN, wet=True, surface="hard") == ["wet-court"]
    assert surface(RUN, wet=True) == ["wet-court"]
    assert surface(RUN, wet=True, surface="clay") == []
    assert surface(wet=True, surface="hard") == []


def test_a_bench_stands_where_the_run_off_ends_or_beside_the_net():
    # Clear of a sideline by 10 ft, or of a baseline by 18: ITF Technical Booklet 2015, table 5, notes d and e.
    def bench(x, y):
        return Obstacle(kind="obstacle", id="bench", name="bench", corners=((x, y), (x, y + 1.5)))

    assert surface(bench(5.4864 + 3.0, -9.0)) == ["obstacle-near"]
    assert surface(bench(5.4864 + 3.1, -9.0)) == []
    assert surface(bench(0.0, 11.8872 + 5.0)) == ["obstacle-near"]
    assert surface(bench(7.0, -0.7)) == []


def test_under_tens_have_a_court_or_a_ball_of_their_own_and_a_mark_to_wait_on():
    waits = spot("C", -7.5, -16.0, task="waits")
    disc = Disc(kind="disc", id="disc", place=place(-7.5, -16.0))
    young = {"age": (7, 9), "jobs": "ABC"}
    assert keys(age_cautions(told(*RALLY, waits, **young))) == ["young-court", "young-spots"]
    red = young | {"court": COURT.changed(standard="red")}
    assert keys(age_cautions(told(*RALLY, waits, disc, **red))) == []
    assert keys(age_cautions(told(*RALLY, waits, age=(10, 12), jobs="ABC"))) == []
