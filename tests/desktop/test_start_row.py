"""The row over a blank court: players and court in one press, last time's drills at hand."""

from desktop import hand

from designer.bundle import sample
from designer.court.standards import court_names
from designer.desktop import settings
from designer.desktop.controls import DropDown
from designer.desktop.start_row import said


def test_one_press_puts_the_players_where_they_usually_stand(window):
    hand.click(window.start_row.counts.segments()[3])
    assert sorted(spot.job for spot in window.view.setting.spots.values()) == list("ABCD")
    assert window.document.drill.players == (4, 4)
    assert window.document.stack.count() == 1
    assert window.start_row.isHidden()
    window.actions_by_name["undo"].trigger()
    hand.settle()
    assert window.start_row.isVisible()


def test_two_are_offered(window):
    usual = [segment.text() for segment in window.start_row.counts.segments() if segment.usual]
    assert usual == ["2"]
    assert not window.view.setting.spots


def test_any_court_can_be_taken(window):
    box = window.start_row.courts
    assert isinstance(box, DropDown)
    assert {box.itemData(n) for n in range(box.count())} == set(court_names())
    place = box.findData("red")
    box.setCurrentIndex(place)
    box.activated.emit(place)
    assert window.document.drill.court.standard == "red"
    assert window.document.stack.undoText() == "Change the court"


def test_recent_drills_are_listed_and_opened(make_window, document, qtbot):
    settings.add_recent(sample("wide-start.drill.json"))
    window = make_window(document)
    assert not window.start_row.recent.isHidden()
    (action,) = window.start_row.menu().actions()
    assert action.text() == "wide-start – samples"
    with qtbot.waitSignal(window.wanted) as wanted:
        action.trigger()
    assert wanted.args == [(sample("wide-start.drill.json"),)]


def test_without_any_nothing_is_offered(window):
    assert window.start_row.recent.isHidden()


def test_a_name_with_an_ampersand_is_no_shortcut(tmp_path):
    assert said(tmp_path / "deep & wide.drill.json").startswith("deep && wide – ")


def test_the_court_stays_under_the_hand_when_the_row_goes(window):
    hand.settle()
    canvas = window.canvas
    before = canvas.mapToGlobal(canvas.to_pixel((3.0, 9.0))), canvas.pixels_per_metre
    assert hand.drop(canvas, "cone", (3.0, 9.0))
    hand.settle()
    assert window.start_row.isHidden()
    after = canvas.mapToGlobal(canvas.to_pixel((3.0, 9.0)))
    assert (after - before[0]).manhattanLength() <= 1
    assert canvas.pixels_per_metre == before[1]
