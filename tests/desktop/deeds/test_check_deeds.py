"""What is done about a check in a window: mended, accepted with a reason, and a barrier that must be meant."""

import pytest
from desktop import hand

from designer.desktop.deeds.check_deeds import REFUSED
from designer.drill.edits import put
from designer.drill.items import Area, Barrier, Line, Rectangle
from designer.review.checks import checks

BARRIER = Barrier(kind="barrier", id="barrier", corners=((-3.0, -15.0), (3.0, -15.0)))


def press(window, words, key):
    """Press the line ``words`` under the check of this kind in the list."""
    (found,) = [check for check in window.bottom._checks if check.key == key]
    actions = window.bottom.menu().actions()
    start = [action.text() for action in actions].index(found.sentence.text.replace("&", "&&"))
    next(action for action in actions[start + 1 :] if words in action.text()).trigger()


def with_barrier(window, **values):
    drill = window.document.drill.changed(**values)
    window.perform("Put down a barrier", put(drill, window.view.at, BARRIER))
    hand.settle()
    return window.view.setting.items["barrier"]


def test_a_barrier_must_be_meant(wide_kept, prompts):
    prompts.answers = [0]
    assert isinstance(with_barrier(wide_kept), Line)
    wide_kept.document.stack.undo()
    wide_kept.document.stack.undo()
    prompts.answers = [1]
    assert isinstance(with_barrier(wide_kept), Barrier)
    assert len(prompts.asked) == 2


def test_a_barrier_is_refused_for_under_tens(wide_kept, prompts):
    assert isinstance(with_barrier(wide_kept, age=(8, 9)), Line)
    assert prompts.asked == []
    assert wide_kept.bottom.figures.text() == REFUSED


def test_a_caution_is_accepted_with_a_reason_and_mended_by_a_press(wide_kept, prompts):
    prompts.answers = [1]
    with_barrier(wide_kept)
    wide_kept.bottom.review()
    prompts.answers = ["Foam, knee-high, adults who asked for it."]
    press(wide_kept, "Accept it", "barrier")
    drill = wide_kept.document.drill
    assert drill.accepted[-1].reason == "Foam, knee-high, adults who asked for it."
    assert "barrier" not in {check.key for check in checks(drill, wide_kept.view.at)}
    wide_kept.bottom.review()
    listed = [action.text() for action in wide_kept.bottom.menu().actions()]
    assert any(text.endswith("Accepted: Foam, knee-high, adults who asked for it.") for text in listed)
    wide_kept.document.stack.undo()
    wide_kept.bottom.review()
    press(wide_kept, "Mend it", "barrier")
    assert isinstance(wide_kept.view.setting.items["barrier"], Line)


@pytest.mark.parametrize("answer", [None, "  "])
def test_nothing_is_accepted_without_a_reason(wide_kept, prompts, answer):
    prompts.answers = [1]
    with_barrier(wide_kept)
    wide_kept.bottom.review()
    before = wide_kept.document.drill
    prompts.answers = [answer]
    press(wide_kept, "Accept it", "barrier")
    assert wide_kept.document.drill == before


def test_one_press_says_what_a_target_is_for_and_is_one_step_to_undo(wide_kept):
    window = wide_kept
    corner = Area(
        kind="area",
        id="corner",
        name="corner",
        shape=Rectangle(form="rectangle", corners=((-3.2, 9.5), (-1.2, 11.5))),
    )
    drill = put(window.document.drill, window.view.at, corner)
    reply = window.view.setting.shots["reply"]
    window.perform("Aim", put(drill, window.view.at, reply.changed(to={"on": "corner"})))
    window.bottom.show_checks(checks(window.document.drill, window.view.at, players="club"))
    before = window.document.drill
    press(window, "A bonus", "target-purpose")
    assert window.view.setting.items["corner"].purpose == "bonus"
    assert "target-purpose" not in {each.key for each in checks(window.document.drill, window.view.at, players="club")}
    window.document.stack.undo()
    assert window.document.drill == before
