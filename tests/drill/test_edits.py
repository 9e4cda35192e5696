import random

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError
from strategies import drills, points, records, settings

from designer.drill.base import Place, place
from designer.drill.drill import Changes, Drill, Progression, Variation
from designer.drill.edits import (
    add_progression,
    add_variation,
    change_progression,
    change_variation,
    delete,
    duplicate,
    follow_again,
    move,
    put,
    remove_progression,
    remove_variation,
    reorder_progressions,
    with_setting,
)
from designer.drill.items import Area, Cone, Line, Note, Polygon, Rectangle, Unknown
from designer.drill.movement import Run, Shot
from designer.drill.people import Spot
from designer.drill.places import anchor
from designer.drill.rules import Aim, Finish, Keep, Part, Rule
from designer.drill.setting import EMPTY, At, Setting, addresses, below, changes_at, setting_at

ONE, TWO, EASY = At("p-1"), At("p-2"), At("p-1", "v-easy")


def drill_of(first: Setting, second: Setting | None = None, easier: Setting | None = None):
    """A drill of one or two progressions; where two are given, the second and the easier one differ as they say."""
    variation = Variation(id="v-easy")
    rungs = (Progression(id="p-1", easier=(variation,)), Progression(id="p-2"))
    drill = with_setting(Drill(id="d-made", progressions=rungs), ONE, first)
    if easier is not None:
        drill = with_setting(drill, EASY, easier)
    return drill if second is None else with_setting(drill, TWO, second)


def cone(id, x=0.0, y=0.0, on=None):
    return Cone(kind="cone", id=id, place=Place(on=on, at=(x, y)))


def all_settings(drill):
    return {at: setting_at(drill, at) for at in addresses(drill)}


def tied(setting):
    """The names that places of a setting are tied to."""
    every = [getattr(record, name, None) for _, record in setting.records() for name in ("place", "to", "contact")]
    return {place.on for place in every if isinstance(place, Place) and place.on is not None}


class TestWithSetting:
    @given(st.data())
    def test_the_setting_is_what_it_was_set_to(self, data):
        drill = data.draw(drills(most_progressions=2))
        at = data.draw(st.sampled_from(list(addresses(drill))))
        before = setting_at(drill, at)
        setting = data.draw(settings(before))
        edited = with_setting(drill, at, setting)
        gone = (before.ids() - setting.ids()) | {spot.job for spot in before.spots.values()}
        if not tied(setting) & gone:
            assert setting_at(edited, at) == setting
        assert setting_at(edited, at).ids() == setting.ids()

    @given(st.data())
    def test_settings_that_do_not_lie_on_it_stay_as_they_were(self, data):
        drill = data.draw(drills())
        at = data.draw(st.sampled_from(list(addresses(drill))))
        edited = with_setting(drill, at, data.draw(settings(setting_at(drill, at))))
        order = [rung.id for rung in drill.progressions]
        for other, before in all_settings(drill).items():
            lies_on = at.variation is None and order.index(other.progression) >= order.index(at.progression)
            if other != at and not lies_on:
                assert setting_at(edited, other) == before

    def test_what_was_tied_to_a_thing_far_out_is_set_free_at_the_edge_of_the_world(self):
        tied = Cone(kind="cone", id="tied", place=Place(on="home", at=(70.0, 1.0)))
        home = Cone(kind="cone", id="home", place=place(60.0, 0.0))
        rung = Progression(id="p-1", changes=Changes(items=(home, tied)))
        edited = delete(Drill(id="d-made", progressions=(rung,)), ONE, ["home"])
        assert setting_at(edited, ONE).items["tied"].place == place(100.0, 1.0)

    def test_unknown_fields_of_the_changes_are_kept(self):
        rung = Progression(id="p-1", changes=Changes(later=[1], self=2))
        edited = put(Drill(id="d-made", progressions=(rung,)), ONE, cone("home"))
        assert changes_at(edited, ONE).model_extra == {"later": [1], "self": 2}

    def test_a_circle_of_shots_is_refused_also_in_a_setting_above(self):
        first = EMPTY.having(Shot(id="feed", by="A"), Shot(id="reply", by="B", after="feed"))
        drill = drill_of(first, second=first.having(Shot(id="feed", by="A", after="other"), Shot(id="other", by="B")))
        with pytest.raises(ValueError, match=r"shots .* in a circle"):
            put(drill, ONE, Shot(id="feed", by="A", after="reply"))
        with pytest.raises(ValueError, match="circle"):
            put(drill, TWO, Shot(id="other", by="B", after="reply"))


class TestPut:
    def test_settings_above_follow(self):
        drill = put(drill_of(EMPTY, EMPTY.having(cone("away"))), ONE, cone("home"))
        assert set(setting_at(drill, TWO).items) == {"home", "away"}
        assert [item.id for item in changes_at(drill, TWO).items] == ["away"]

    def test_settings_above_that_have_their_own_do_not(self):
        drill = drill_of(EMPTY.having(cone("home", 1.0)), second=EMPTY.having(cone("home", 5.0)))
        drill = put(drill, ONE, cone("home", 2.0))
        assert setting_at(drill, TWO).items["home"].place.at == (5.0, 0.0)

    def test_what_is_put_back_as_below_is_no_longer_stored(self):
        drill = drill_of(EMPTY.having(cone("home", 1.0)), second=EMPTY.having(cone("home", 5.0)))
        assert changes_at(put(drill, TWO, cone("home", 1.0)), TWO) == Changes()


class TestDelete:
    def test_what_was_tied_to_it_stays_where_it_stood_in_every_setting(self):
        first = EMPTY.having(
            cone("home", 2.0, 3.0),
            Run(id="back", by="A", to=Place(on="home", at=(0.5, 0.0))),
            cone("flag", 1.0, 1.0, "home"),
        )
        drill = drill_of(
            first, second=first.having(cone("home", 4.0, 3.0)), easier=first.having(cone("home", 6.0, 0.0))
        )
        edited = delete(drill, ONE, ["home"])
        assert setting_at(edited, ONE).runs["back"].to == place(2.5, 3.0)
        assert setting_at(edited, ONE).items["flag"].place == place(3.0, 4.0)
        # These two have a home cone of their own, and keep it.
        assert setting_at(edited, TWO).runs["back"].to == place(2.5, 3.0)
        assert "home" in setting_at(edited, TWO).items
        assert "home" in setting_at(edited, EASY).items

    def test_a_setting_above_without_its_own_lets_go_at_the_place_it_had_there(self):
        first = EMPTY.having(Spot(id="spot-a", job="A", place=place(1.0, -10.0)), cone("home", 1.0, 0.0, "A"))
        second = first.having(cone("home", 2.0, 0.0, "A"))
        edited = delete(drill_of(first, second), ONE, ["spot-a"])
        assert setting_at(edited, ONE).items["home"].place == place(2.0, -10.0)
        assert setting_at(edited, TWO).items["home"].place == place(3.0, -10.0)

    def test_a_run_tied_to_a_shot_and_a_shot_tied_to_the_run_both_stay(self):
        first = EMPTY.having(
            Shot(id="feed", by="B", to=place(1.0, -5.0)),
            Run(id="reach", by="A", during="feed", to=Place(on="feed", at=(0.0, -1.0))),
            Shot(id="reply", by="A", after="feed", contact=Place(on="reach"), to=place(0.0, 8.0)),
        )
        setting = setting_at(delete(drill_of(first), ONE, ["feed", "reach"]), ONE)
        assert setting.shots["reply"].contact == place(1.0, -6.0)
        assert setting.shots["reply"].after is None

    def test_the_order_closes_over_what_is_gone(self):
        first = EMPTY.having(
            Shot(id="one", by="A"),
            Shot(id="two", by="B", after="one"),
            Shot(id="three", by="A", after="two"),
            Shot(id="four", by="B", after="three"),
            Run(id="back", by="A", during="three", to=Place()),
            Part(id="first", kind="cooperative", shots=("one", "two", "three")),
            Part(id="second", kind="open", after="first"),
        )
        setting = setting_at(delete(drill_of(first), ONE, ["two", "three", "first"]), ONE)
        assert setting.shots["four"].after == "one"
        assert setting.runs["back"].during == "one"
        assert setting.parts == {"second": Part(id="second", kind="open")}

    def test_parts_forget_a_deleted_shot(self):
        first = EMPTY.having(Shot(id="one", by="A"), Part(id="rally", kind="open", shots=("one", "two")))
        assert setting_at(delete(drill_of(first), ONE, ["one"]), ONE).parts["rally"].shots == ("two",)

    def test_rules_keep_naming_what_is_gone(self):
        rule = Rule(id="r", of=("feed",), must=Aim(do="aim", direction="new line"))
        first = EMPTY.having(Shot(id="feed", by="B"), rule)
        assert setting_at(delete(drill_of(first), ONE, ["feed"]), ONE).rules["r"] == rule

    @given(st.data())
    def test_what_is_deleted_is_gone_and_nothing_is_tied_to_it(self, data):
        drill = data.draw(drills(most_progressions=2))
        at = data.draw(st.sampled_from(list(addresses(drill))))
        before = setting_at(drill, at)
        gone = data.draw(st.sets(st.sampled_from(sorted(before.ids())))) if before.ids() else set()
        after = setting_at(delete(drill, at, gone), at)
        assert after.ids() == before.ids() - gone
        findable = {id for id in gone if anchor(before, id) is not None}
        assert not tied(after) & findable


class TestMove:
    def test_everything_drawn_at_a_free_point_moves(self):
        first = EMPTY.having(
            cone("home", 1.0, 1.0),
            Line(kind="line", id="tick", corners=((0.0, 0.0), (1.0, 0.0))),
            Area(kind="area", id="zone", shape=Polygon(form="polygon", corners=((0.0, 0.0), (1.0, 0.0), (0.0, 1.0)))),
            Run(id="back", by="A", to=place(3.0, 3.0), via=((1.0, 2.0),)),
        )
        setting = setting_at(move(drill_of(first), ONE, ["home", "tick", "zone", "back"], (0.5, -0.25)), ONE)
        assert setting.items["home"].place == place(1.5, 0.75)
        assert setting.items["tick"].corners == ((0.5, -0.25), (1.5, -0.25))
        assert setting.items["zone"].shape.corners == ((0.5, -0.25), (1.5, -0.25), (0.5, 0.75))
        assert setting.runs["back"].via == ((1.5, 1.75),)
        assert setting.runs["back"].to == place(3.5, 2.75)

    def test_what_is_tied_to_something_that_moves_too_keeps_its_distance(self):
        first = EMPTY.having(
            Spot(id="spot-a", job="A", place=place(0.0, -12.0)),
            cone("home", 1.0, 0.0, "A"),
            cone("flag", 0.0, 1.0, "home"),
        )
        drill = drill_of(first)
        both = setting_at(move(drill, ONE, ["spot-a", "home", "flag"], (2.0, 0.0)), ONE)
        assert both.items == first.items
        assert (anchor(both, "home"), anchor(both, "flag")) == ((3.0, -12.0), (3.0, -11.0))
        alone = setting_at(move(drill, ONE, ["home"], (2.0, 0.0)), ONE)
        assert alone.items["home"].place == Place(on="A", at=(3.0, 0.0))
        assert alone.items["flag"] == first.items["flag"]

    def test_an_unknown_item_stays_as_it_came(self):
        odd = Unknown(kind="rebound wall", id="wall", corners=[[0, 0], "x"], place={"at": "left"}, via=7)
        assert setting_at(move(drill_of(EMPTY.having(odd)), ONE, ["wall"], (1.0, 1.0)), ONE).items["wall"] == odd

    def test_nothing_is_moved_off_the_drawing(self):
        with pytest.raises(ValidationError):
            move(drill_of(EMPTY.having(cone("home", 99.0))), ONE, ["home"], (2.0, 0.0))

    @given(st.data(), points())
    def test_moving_changes_places_by_just_that_much(self, data, by):
        drill = data.draw(drills(most_progressions=1))
        at = At(drill.progressions[0].id)
        before = setting_at(drill, at)
        free = [id for id, item in before.items.items() if isinstance(item, Cone | Note) and item.place.on is None]
        by = place(*by).at
        near = [id for id in free if all(abs(value) < 70 for value in before.items[id].place.at)]
        after = setting_at(move(drill, at, near, by), at)
        for id in near:
            old, new = before.items[id].place.at, after.items[id].place.at
            assert new == pytest.approx((old[0] + by[0], old[1] + by[1]), abs=0.0001)
        assert after.ids() == before.ids()


class TestDuplicate:
    def test_the_copies_speak_of_one_another(self):
        zone = Area(kind="area", id="zone", shape=Rectangle(form="rectangle", corners=((0.0, 0.0), (1.0, 1.0))))
        first = EMPTY.having(
            zone,
            Shot(id="feed", by="B", to=Place(on="zone")),
            Shot(id="reply", by="A", after="feed", to=Place(on="other")),
            Run(id="back", by="A", during="reply", to=Place(on="zone")),
            Rule(id="r", of=("reply",), must=Keep(do="keep", where=({"area": "zone"},)), note="In {zone}."),
            cone("other"),
        )
        drill, ids = duplicate(
            drill_of(first), ONE, ["zone", "feed", "reply", "back", "r"], (2.0, 0.0), random.Random(4)
        )
        after = setting_at(drill, ONE)
        assert len(set(ids)) == 5
        new = {
            old: id for old in first.ids() for id in ids if id.startswith({"r": "rule", "zone": "area"}.get(old, "?"))
        }
        copies = [after.find(id) for id in ids]
        area = next(copy for copy in copies if isinstance(copy, Area))
        feed, reply = [copy for copy in copies if isinstance(copy, Shot)]
        run = next(copy for copy in copies if isinstance(copy, Run))
        rule = next(copy for copy in copies if isinstance(copy, Rule))
        assert area.id == new["zone"]
        assert area.shape.corners == ((2.0, 0.0), (3.0, 1.0))
        assert feed.to == Place(on=area.id)
        assert reply.after == feed.id
        assert reply.to.on == "other"
        assert (run.during, run.to.on) == (reply.id, area.id)
        assert (rule.of, rule.must.where[0].area, rule.note) == ((reply.id,), area.id, f"In {{{area.id}}}.")

    def test_a_job_and_the_finish_are_there_only_once(self):
        first = EMPTY.having(Spot(id="spot-a", job="A", place=Place()), Finish(id="end", kind="race"), cone("home"))
        drill, ids = duplicate(drill_of(first), ONE, ["spot-a", "end", "home"], (1.0, 0.0), random.Random(1))
        assert len(ids) == 1
        assert setting_at(drill, ONE).ids() == first.ids() | set(ids)

    def test_a_copy_takes_no_id_that_another_setting_has(self):
        taken = duplicate(drill_of(EMPTY.having(cone("home"))), ONE, ["home"], (0.0, 0.0), random.Random(9))[1][0]
        drill = drill_of(EMPTY.having(cone("home")), second=EMPTY.having(cone("home"), cone(taken)))
        assert duplicate(drill, ONE, ["home"], (0.0, 0.0), random.Random(9))[1][0] != taken

    @given(st.data())
    def test_originals_stay_and_copies_are_of_the_same_kind(self, data):
        drill = data.draw(drills(most_progressions=1))
        at = At(drill.progressions[0].id)
        before = setting_at(drill, at)
        chosen = [id for id in before.ids() if id not in before.spots and before.find(id) is not before.finish]
        edited, ids = duplicate(drill, at, chosen, (0.0, 0.0), data.draw(st.randoms(use_true_random=False)))
        after = setting_at(edited, at)
        assert after.ids() == before.ids() | set(ids)
        assert all(after.find(id) == before.find(id) for id in before.ids())
        assert sorted(type(after.find(id)).__name__ for id in ids) == sorted(
            type(before.find(id)).__name__ for id in chosen
        )


class TestFollowAgain:
    def test_a_record_of_its_own_is_let_go(self):
        first = EMPTY.having(cone("home", 1.0), cone("flag", 1.0), Finish(id="end", kind="race", to=7))
        second = first.having(cone("home", 2.0), cone("flag", 2.0), Finish(id="end", kind="race", to=9))
        drill = follow_again(drill_of(first, second), TWO, ["home", "end"])
        assert setting_at(drill, TWO) == first.having(cone("flag", 2.0))
        moved = put(drill, ONE, cone("home", 7.0))
        assert setting_at(moved, TWO).items["home"].place.at == (7.0, 0.0)

    def test_a_dropped_record_comes_back(self):
        drill = drill_of(EMPTY.having(cone("home")), second=EMPTY)
        assert setting_at(follow_again(drill, TWO, ["home"]), TWO) == EMPTY.having(cone("home"))

    def test_what_was_tied_to_a_record_that_is_only_here_is_set_free(self):
        second = EMPTY.having(cone("home", 3.0), cone("flag", 1.0, 0.0, "home"))
        drill = follow_again(drill_of(EMPTY, second), TWO, ["home"])
        assert setting_at(drill, TWO) == EMPTY.having(cone("flag", 4.0))

    @given(drills())
    def test_letting_all_go_makes_a_setting_like_the_one_below(self, drill):
        for at in addresses(drill):
            own = changes_at(drill, at)
            every = setting_at(drill, at).ids() | set(own.drop)
            followed = follow_again(drill, at, every)
            assert setting_at(followed, at).ids() == below(followed, at).ids()


class TestProgressions:
    @given(st.data())
    def test_reordering_keeps_every_setting(self, data):
        drill = data.draw(drills())
        order = data.draw(st.permutations([rung.id for rung in drill.progressions]))
        edited = reorder_progressions(drill, order)
        assert [rung.id for rung in edited.progressions] == order
        assert all_settings(edited) == all_settings(drill)

    @given(st.data())
    def test_removing_keeps_every_other_setting(self, data):
        drill = data.draw(drills(fewest_progressions=2))
        gone = data.draw(st.sampled_from([rung.id for rung in drill.progressions]))
        edited = remove_progression(drill, gone)
        assert all_settings(edited) == {
            at: setting for at, setting in all_settings(drill).items() if at.progression != gone
        }
        assert edited.main != gone

    @given(st.data())
    def test_adding_keeps_every_setting(self, data):
        drill = data.draw(drills(most_progressions=2))
        after = data.draw(st.none() | st.sampled_from([rung.id for rung in drill.progressions]))
        new = data.draw(
            records(Progression, id="p-new", changes=Changes(items=(cone("added"),)), easier=(), harder=(), others=())
        )
        edited = add_progression(drill, new, after)
        before = all_settings(drill)
        assert {at: setting for at, setting in all_settings(edited).items() if at in before} == before
        ids = [rung.id for rung in edited.progressions]
        assert ids.index("p-new") == (len(ids) - 1 if after is None else ids.index(after) + 1)
        assert "added" in setting_at(edited, At("p-new")).items

    def test_the_last_progression_stays(self):
        with pytest.raises(ValueError, match="at least one"):
            remove_progression(Drill(id="d", progressions=(Progression(id="p-1"),)), "p-1")

    @pytest.mark.parametrize("order", [["p-1"], ["p-1", "p-1"], ["p-1", "p-3"], ["p-1", "p-2", "p-2"]])
    def test_an_order_names_each_progression_once(self, order):
        with pytest.raises(ValueError, match="every progression once"):
            reorder_progressions(drill_of(EMPTY), order)

    def test_fields_are_changed_and_checked(self):
        drill = change_progression(drill_of(EMPTY), "p-2", name="Points", minutes=8)
        assert (drill.progressions[1].name, drill.progressions[1].minutes) == ("Points", 8)
        assert drill.progressions[0].name == ""
        with pytest.raises(ValidationError):
            change_progression(drill, "p-2", minutes=0)


class TestVariations:
    def test_one_is_added_last_of_its_degree_renamed_and_removed(self):
        drill = add_variation(drill_of(EMPTY), "p-1", "easier", Variation(id="v-slow", name="Slower"))
        assert [variation.id for variation in drill.progressions[0].easier] == ["v-easy", "v-slow"]
        drill = change_variation(drill, At("p-1", "v-slow"), name="Slower feed")
        assert drill.progressions[0].easier[1].name == "Slower feed"
        drill = remove_variation(drill, At("p-1", "v-easy"))
        assert [variation.id for variation in drill.progressions[0].easier] == ["v-slow"]
        assert list(addresses(drill)) == [ONE, At("p-1", "v-slow"), TWO]
