"""The menu of a person on the court: a feed, a ball or a run that begins there."""

from desktop import hand

from designer.drill.movement import FEEDS


def test_a_feed_is_drawn_from_whoever_is_picked_with_one_more_press(blank_kept):
    window = blank_kept
    window.start_row.players.emit(2)
    feeder = next(spot for spot in window.view.setting.spots.values() if spot.job == "B")
    window.view.select((feeder.id,))
    entries = {action.text().split("\t")[0]: action for action in window.deeds.edit.menu().actions()}
    assert {"Feed from here", "Ball from here", "Run from here"} <= set(entries)
    entries["Feed from here"].trigger()
    hand.press(window.canvas, (1.0, -9.0))
    (shot,) = window.view.setting.shots.values()
    assert shot.by == "B"
    assert shot.stroke in FEEDS
    window.canvas.toolbox.end()
    window.view.select(())
    assert not [action for action in window.deeds.edit.menu().actions() if "from here" in action.text()]
