import json

import pytest
from PySide6.QtCore import QMimeData, QUrl

from designer.desktop.canvas.drop import MIME, drop_item, item_mime, kind_in
from designer.desktop.canvas.placing import PLACED, STRETCHED


def carrying(data):
    mime = QMimeData()
    mime.setData(MIME, data)
    return mime


@pytest.mark.parametrize("kind", [*PLACED, *STRETCHED])
def test_what_is_dragged_is_what_is_dropped(empty_hand, kind):
    hand = empty_hand
    assert kind_in(item_mime(kind)) == kind
    id = drop_item(hand.document, hand.view, kind, (1.0, -4.0))
    assert hand.view.selection == {id}
    assert hand.document.stack.count() == 1
    record = hand.setting.find(id)
    if kind in STRETCHED:
        from designer.drill.places import corners_of, middle

        assert middle(corners_of(record)) == pytest.approx((1.0, -4.0))
    else:
        assert record.place.at == (1.0, -4.0)


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"cone",
        b"[]",
        b"\xff\xfe",
        b"[" * 100_000,
        json.dumps({"format": 2, "kind": "cone"}).encode(),
        json.dumps({"format": 1, "kind": "piano"}).encode(),
        json.dumps({"format": 1, "kind": ["cone"]}).encode(),
        json.dumps({"kind": "cone"}).encode(),
    ],
)
def test_what_is_not_ours_is_not_taken(data):
    assert kind_in(carrying(data)) is None


def test_a_file_is_not_for_the_court():
    mime = QMimeData()
    mime.setUrls([QUrl.fromLocalFile("a.drill.json")])
    mime.setText("cone")
    assert kind_in(mime) is None


def test_a_read_only_drill_takes_no_drop(empty_hand):
    empty_hand.document.read_only = True
    assert drop_item(empty_hand.document, empty_hand.view, "cone", (0.0, 0.0)) is None
    assert not empty_hand.setting.items
