from designer.court.standards import ground
from designer.drawing.picture import picture
from designer.drawing.primitives import Words
from designer.drawing.reach import MOST_PATHS, end_in_use, frames
from designer.drawing.themes import theme
from designer.drill.base import place
from designer.drill.conditions import Event
from designer.drill.drill import Changes, Drill, Progression
from designer.drill.items import Cone
from designer.drill.movement import Run, Shot
from designer.drill.people import Job, Spot
from designer.drill.rules import Part
from designer.drill.setting import At, Setting, setting_at
from designer.play.sequence import sequence

AT = At("p-one")


def drill_of(**changes):
    jobs = (Job(letter="A"), Job(letter="B"))
    return Drill(id="d-own", jobs=jobs, progressions=(Progression(id="p-one", changes=Changes(**changes)),))


def played(drill):
    setting = setting_at(drill, AT)
    return setting, sequence(setting, ground(drill.court), drill.jobs)


def footwork():
    return drill_of(
        spots=(Spot(id="spot-a", job="A", place=place(0.0, -9.0)), Spot(id="spot-b", job="B", place=place(2.0, -3.0))),
        items=(Cone(kind="cone", id="left", place=place(-3.0, -11.0)),),
        shots=(Shot(id="feed", by="B", stroke="hand feed", to=place(-2.0, -8.0)),),
        runs=(Run(id="out", by="A", to=place(-3.0, -10.5), during="feed"),),
    )


def rally(count):
    """Return a rally of ``count`` balls after the feed, open after the fourth."""
    ends = [place((-1) ** n * 2.0, 9.0 if n % 2 else -9.0) for n in range(count + 1)]
    shots = [Shot(id="s0", by="B", stroke="racket feed", to=ends[0])]
    shots += [Shot(id=f"s{n}", by="AB"[(n + 1) % 2], after=f"s{n - 1}", to=ends[n]) for n in range(1, count + 1)]
    return drill_of(
        spots=(Spot(id="spot-a", job="A", place=place(0.0, -12.8)), Spot(id="spot-b", job="B", place=place(0.0, 12.8))),
        shots=tuple(shots),
        runs=(Run(id="move", by="A", to=place(3.0, -12.0), during="s2"),),
        parts=(
            Part(id="held", kind="forced", shots=("s1", "s2", "s3", "s4"), until=(Event(what="landed", of=("s4",)),)),
            Part(id="free", after="held", kind="open"),
        ),
    )


def test_one_end_is_shown_where_nothing_happens_at_the_other():
    drill = footwork()
    assert end_in_use(*played(drill)) == "near"
    made = picture(drill, AT, unit=0.1, theme=theme("paper"), end="near", patient=True)
    assert made.cut
    left, low, right, high = made.extent
    assert high - low < (right - left) * 1.2, "half a court is about as long as it is wide"
    said = [each.text for mark in made.marks for each in mark.primitives if isinstance(each, Words)]
    assert sorted(text for text in said if text in ("deuce", "ad", "YOU", "NET")) == ["NET", "YOU", "ad", "deuce"]
    for mark in made.marks:
        for each in mark.primitives:
            if isinstance(each, Words):
                assert left < each.at[0] < right, each.text
                assert low < each.at[1] < high, each.text


def test_a_ball_over_the_net_or_into_the_blue_needs_both_ends():
    assert end_in_use(*played(rally(2))) is None
    loose = footwork()
    setting, _ = played(loose)
    aimless = Setting(spots=setting.spots, shots={"feed": Shot(id="feed", by="B", stroke="hand feed")})
    assert end_in_use(aimless, sequence(aimless, ground(loose.court), loose.jobs)) is None
    assert end_in_use(Setting(), None) is None


def test_six_numbered_paths_share_a_court_and_seven_do_not():
    assert frames(*played(rally(MOST_PATHS - 1))) == ()
    assert [frame.title for frame in frames(*played(rally(MOST_PATHS)))] == [
        "Start: ball 1",
        "Then: balls 2 to 5",
        "Open: balls 6 to 7",
    ]


def test_a_long_part_is_divided_and_every_ball_is_in_one_frame():
    setting, play = played(rally(16))
    made = frames(setting, play)
    shown = [shot for frame in made for shot in frame.shots]
    assert sorted(shown) == sorted(setting.shots)
    assert all(len(frame.shots) <= MOST_PATHS for frame in made)


def test_a_later_frame_shows_its_own_balls_and_everybody_where_they_are_by_then():
    drill = rally(MOST_PATHS)
    *_, last = frames(*played(drill))
    assert last.setting.spot_of("A").place.at == (3.0, -12.0)
    made = picture(drill, last.setting, unit=0.1, theme=theme("paper"), shots=last.shots)
    drawn = {mark.id for mark in made.marks if mark.kind in ("ball path", "feed")}
    assert drawn == set(last.shots)
    digits = {
        each.text
        for mark in made.marks
        if mark.kind == "step digit"
        for each in mark.primitives
        if isinstance(each, Words)
    }
    assert digits == {"6", "7"}, "the digits of the whole drill, not counted anew"
