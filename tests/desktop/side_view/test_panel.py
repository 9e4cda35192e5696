"""What stands under the card: it comes with a picked ball, follows it, and keeps the level."""

from desktop import hand

from designer.desktop import settings
from designer.desktop.side_view.words import few_words
from designer.drill.base import place
from designer.drill.edits import put
from designer.drill.setting import At
from designer.numbers.shots import shot_numbers

AT = At("p-fed")


def settled(qtbot, window):
    qtbot.waitUntil(lambda: not window.numbers.worker.busy and not window.numbers.appearing.isActive(), timeout=20_000)


def words_of(drill, shot, level="club"):
    return few_words(shot_numbers(drill, AT, level).shot(shot))


def said(window):
    text = window.numbers.words.text().replace("\N{NO-BREAK SPACE}", " ")
    return text[:1].lower() + text[1:].removesuffix(".")


def test_it_comes_with_a_ball_and_goes_with_it(qtbot, wide):
    assert wide.numbers.isHidden()
    wide.view.select(["reply"])
    settled(qtbot, wide)
    assert wide.numbers.isVisible()
    assert said(wide) == words_of(wide.document.drill, "reply")
    assert wide.numbers.side.profile.net is not None
    wide.view.select(["feed-zone"])
    settled(qtbot, wide)
    assert wide.numbers.isHidden()


def test_it_follows_a_drag_before_the_hand_lets_go(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    before = said(wide)
    reply = wide.view.setting.shots["reply"]
    pulled = put(wide.document.drill, AT, reply.changed(to=place(-2.0, 7.5)))
    wide.document.preview(pulled)
    settled(qtbot, wide)
    assert said(wide) == words_of(pulled, "reply") != before


def test_the_level_is_chosen_beside_it_and_kept(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    hand.settle()
    index = wide.numbers.level.findData("tournament")
    wide.numbers.level.setCurrentIndex(index)
    wide.numbers.level.activated.emit(index)
    settled(qtbot, wide)
    assert said(wide) == words_of(wide.document.drill, "reply", "tournament")
    assert settings.level() == "tournament"


def test_ones_own_group_is_fitted_and_kept_with_the_level(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    hand.click(wide.numbers.theirs)
    wide.numbers.group.hits.setValue(2)
    hand.click(wide.numbers.group.keep)
    settled(qtbot, wide)
    assert "in the target 2 of 10" in wide.numbers.more.text().replace("\N{NO-BREAK SPACE}", " ")
    assert settings.group("club")[1] == "2 of 10"
    assert wide.numbers.level.currentText() == "Club players, 2 of 10"
    hand.click(wide.numbers.group.forget)
    settled(qtbot, wide)
    assert settings.group("club") is None
    assert wide.numbers.level.currentText() == "Club players"


def test_a_count_that_nothing_explains_is_a_sentence(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    wide.numbers.keep_group(12, 10)
    assert wide.numbers.words.text() == "12 of 10 cannot be; expected 0 to 10 of a number of tries."
    assert settings.group("club") is None


def test_who_wins_takes_the_place_of_the_group(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    hand.click(wide.numbers.theirs)
    hand.click(wide.deeds.play.who)
    assert wide.numbers.group.isHidden()
    hand.click(wide.numbers.fold)
    assert wide.numbers.odds.isHidden()
    assert wide.numbers.fold.isHidden()
    qtbot.waitUntil(lambda: not wide.numbers.odds.worker.busy, timeout=20_000)


def test_the_court_stays_where_it_is_when_it_comes_and_goes(qtbot, wide):
    hand.settle()
    before = wide.canvas.mapToGlobal(wide.canvas.to_pixel((4.0, 11.0))), wide.canvas.pixels_per_metre
    wide.view.select(["reply"])
    settled(qtbot, wide)
    hand.settle()
    assert wide.numbers.isVisible()
    assert (wide.canvas.mapToGlobal(wide.canvas.to_pixel((4.0, 11.0))), wide.canvas.pixels_per_metre) == before


def test_who_wins_unfolds_the_card_it_stands_under(qtbot, wide):
    wide.actions_by_name["card"].trigger()
    wide.numbers.show_odds()
    assert wide.numbers.isVisible()
    wide.numbers.show_odds()
    qtbot.waitUntil(lambda: not wide.numbers.odds.worker.busy, timeout=20_000)


def test_what_the_ball_looks_like_is_said_to_whoever_listens(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    assert wide.numbers.side.accessibleDescription() == words_of(wide.document.drill, "reply")


def test_it_paints_what_it_shows(qtbot, wide):
    wide.view.select(["reply"])
    settled(qtbot, wide)
    side = wide.numbers.side
    along, height = side.profile.net
    ratio = side.devicePixelRatioF()
    picture = side.grab().toImage()
    net = side.place(along, height / 2)
    empty = side.place(along, side.profile.top * 1.07)
    shades = [picture.pixelColor((spot * ratio).toPoint()).lightness() for spot in (net, empty)]
    assert shades[0] < shades[1] - 60


def test_who_wins_is_there_with_no_ball_picked_by_key_and_by_a_word_in_the_bottom_line(qtbot, wide):
    wide.view.select([])
    settled(qtbot, wide)
    assert wide.numbers.isHidden()
    action = wide.actions_by_name["who wins"]
    assert action.shortcut().toString() == "Ctrl+F5"
    action.trigger()
    odds = wide.numbers.odds
    qtbot.waitUntil(lambda: not odds.worker.busy and "a minute" in odds.hard.text(), timeout=20_000)
    assert wide.numbers.isVisible()
    assert wide.numbers.side.isHidden()
    assert "A wins" in odds.words.text()
    assert " of play and " in odds.hard.text()
    # A ball that is picked meanwhile comes beside it, and when it is let go who wins is still there.
    wide.view.select(["reply"])
    settled(qtbot, wide)
    assert wide.numbers.side.isVisible()
    wide.view.select([])
    settled(qtbot, wide)
    assert wide.numbers.isVisible()
    assert wide.numbers.side.isHidden()
    hand.click(wide.deeds.play.who)
    assert wide.numbers.isHidden()
    qtbot.waitUntil(lambda: not odds.worker.busy, timeout=20_000)
