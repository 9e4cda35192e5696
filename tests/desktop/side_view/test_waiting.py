"""Where to wait stands on the court with the two widest balls and what limits them."""

from desktop import hand

from designer.bundle import sample
from designer.desktop.document import Document
from designer.desktop.side_view.basis import Basis
from designer.drill.setting import At
from designer.numbers.shots import recoveries
from designer.storage.reading import open_drill


def test_it_is_shown_by_a_press_and_goes_with_the_ball(qtbot, make_window):
    path = sample("chalk-line.drill.json")
    window = make_window(Document(open_drill(path).drill, path=path))
    window.view.go_to(At("p-points"))
    window.numbers.appearing.setInterval(0)
    window.view.select(["reply"])
    qtbot.waitUntil(lambda: window.numbers.wait.isVisible() and not window.numbers.worker.busy, timeout=20_000)
    hand.click(window.numbers.wait)
    layer = window.numbers.waiting
    place = recoveries(Basis("club").situation(window.document.drill, At("p-points")))["reply"]
    assert layer.shown == place
    assert layer.labels() == ("A waits", "slice\nany wider: out at the side", "slice\nany wider: out at the side")
    assert "A waits 0.4" in window.numbers.more.text().replace("\N{NO-BREAK SPACE}", " ")
    hand.click(window.numbers.wait)
    assert layer.shown is None
    hand.click(window.numbers.wait)
    window.view.select(())
    assert layer.shown is None
