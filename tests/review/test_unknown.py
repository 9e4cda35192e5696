import json

from review.situations import AT, RALLY, drill, keys, only

from designer.drill.drill import Drill
from designer.drill.setting import setting_at
from designer.review.unknown import unknown_cautions


def opened(change):
    """The drill of the tests as a file would bring it, after ``change`` of its JSON."""
    data = json.loads(drill(*RALLY).model_dump_json(exclude_defaults=True))
    change(data)
    return Drill.model_validate_json(json.dumps(data))


def own(data):
    return data["progressions"][0]["changes"]


def with_item(**item):
    return opened(lambda data: own(data).update(items=[item]))


def test_a_known_drill_has_nothing_unknown():
    assert list(unknown_cautions(drill(*RALLY))) == []


def test_a_kind_that_is_not_known_is_kept_and_the_near_one_offered():
    whole = with_item(kind="coen", id="thing", place={"at": [1.0, -5.0]})
    found = only(unknown_cautions(whole), "unknown-kind")
    assert found.weight == "caution"
    assert found.about == ("thing",)
    assert "did you mean “cone”?" in found.sentence.text
    mended = setting_at(found.mend(whole), AT).items["thing"]
    assert (mended.kind, mended.place.at) == ("cone", (1.0, -5.0))


def test_a_kind_that_is_nothing_like_ours_has_no_mend():
    found = only(unknown_cautions(with_item(kind="trampoline", id="thing", colour="red")), "unknown-kind")
    assert found.mend is None
    assert "did you mean" not in found.sentence.text


def test_a_near_kind_whose_fields_do_not_fit_has_no_mend():
    assert only(unknown_cautions(with_item(kind="coen", id="thing")), "unknown-kind").mend is None


def test_a_shape_that_is_not_known():
    whole = with_item(kind="area", id="zone", shape={"form": "elipse", "corners": [[0, 0], [1, 1]]})
    found = only(unknown_cautions(whole), "unknown-kind")
    assert found.about == ("zone",)
    assert "did you mean “ellipse”?" in found.sentence.text


def test_a_field_that_is_not_known_is_found_wherever_it_stands():
    def change(data):
        data["titel"] = "Wide Ball"
        data["court"]["surfaec"] = "clay"
        data["progressions"][0]["aims"] = "x"
        own(data)["shots"][0]["strok"] = "drive"
        own(data)["starts"][0]["bad"]["txt"] = "again"
        own(data)["weather"] = "fine"

    whole = opened(change)
    found = list(unknown_cautions(whole))
    assert keys(found) == ["unknown-field"] * 6
    said = " ".join(check.sentence.text for check in found)
    assert all(f"“{name}”" in said for name in ("titel", "surfaec", "aims", "strok", "txt", "weather"))
    assert "did you mean “surface”?" in said


def test_the_near_field_is_written_when_it_fits_and_is_free():
    whole = opened(lambda data: data["court"].update(surfaec="clay"))
    assert only(unknown_cautions(whole), "unknown-field").mend(whole).court.surface == "clay"
    wrong = opened(lambda data: data["court"].update(surfaec="mud"))
    assert only(unknown_cautions(wrong), "unknown-field").mend is None
    taken = opened(lambda data: data["court"].update(run_bak=5.0))
    assert only(unknown_cautions(taken), "unknown-field").mend is None  # run_back has a value already


def test_a_mend_inside_a_setting_keeps_all_else():
    whole = opened(lambda data: own(data)["shots"][1].update(pcae="soft"))
    mended = only(unknown_cautions(whole), "unknown-field").mend(whole)
    shot = setting_at(mended, AT).shots["reply"]
    assert shot.pace == "soft"
    assert not shot.model_extra
    assert setting_at(mended, AT).without("reply") == setting_at(whole, AT).without("reply")
