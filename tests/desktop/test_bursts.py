"""Letters without a pause are one step, letters after one are another."""

from designer.desktop.bursts import PAUSE, Bursts


def test_letters_without_a_pause_share_a_key():
    now = [0.0]
    bursts = Bursts(clock=lambda: now[0])
    first = bursts.key("title")
    now[0] += PAUSE * 0.9
    second = bursts.key("title")
    now[0] += PAUSE * 0.9
    assert first == second == bursts.key("title")


def test_a_pause_another_field_or_an_end_begins_a_new_one():
    now = [0.0]
    bursts = Bursts(clock=lambda: now[0])
    keys = [bursts.key("title")]
    now[0] += PAUSE * 1.1
    keys.append(bursts.key("title"))
    keys.append(bursts.key("objective"))
    keys.append(bursts.key("title"))
    bursts.end()
    keys.append(bursts.key("title"))
    assert len(set(keys)) == len(keys)
