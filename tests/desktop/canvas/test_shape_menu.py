from PySide6.QtWidgets import QMenu

from designer.desktop.canvas.shape_menu import add_shape_entries


def entries(menu):
    """Every entry by its words, those of menus inside it after theirs."""
    found = {}
    for action in menu.actions():
        inner = action.menu()
        words = action.text().split("\t")[0]
        if inner is None:
            found[words] = action
        else:
            found |= {f"{words} > {deeper}": entry for deeper, entry in entries(inner).items()}
    return found


def menu_of(hand, at=(0.0, 0.0)):
    menu = QMenu()
    add_shape_entries(menu, hand.bench, at)
    return menu, entries(menu)


def test_what_is_picked_can_be_marked_and_run_on_and_the_menu_says_how_it_is(hand):
    hand.view.select(("line",))
    _menu, found = menu_of(hand)
    assert not found["Imagined longer at both ends"].isChecked()
    found["Marked by > Discs"].trigger()
    found["Imagined longer at both ends"].trigger()
    _menu, found = menu_of(hand)
    assert found["Marked by > Discs"].isChecked()
    assert found["Imagined longer at both ends"].isChecked()
    assert "Form > Round" not in found


def test_an_area_can_be_formed_and_split(hand):
    hand.view.select(("zone",))
    _menu, found = menu_of(hand)
    assert found["Form > A rectangle"].isChecked()
    found["Form > Corners of its own"].trigger()
    assert hand.setting.items["zone"].shape.form == "polygon"
    found["Split by a line …"].trigger()
    assert hand.view.tool == "split area"


def test_bare_ground_offers_the_parts_of_the_court_there(hand):
    _menu, found = menu_of(hand, (2.0, -3.0))
    found["Make an area of > The right service box"].trigger()
    (id,) = hand.view.selection
    area = hand.setting.items[id]
    assert area.marked == "painted"
    # 21 ft by 13 ft 6 in (ITF Rules of Tennis, rule 1).
    assert area.shape.corners == ((0.0, -6.4008), (4.1148, 0.0))
    assert hand.undo_text == "Add the right service box"


def test_with_a_cone_picked_there_is_nothing_to_add(hand):
    hand.view.select(("cone",))
    _menu, found = menu_of(hand, (2.0, -3.0))
    assert found == {}
