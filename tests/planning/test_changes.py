"""What people may do to a potluck: example and law for each change."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from planning import changes
from planning.changes import Actor, Refusal
from planning.potluck import Answer, Need, Party, Stage

NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
STARTS = datetime(2027, 9, 18, 22, tzinfo=UTC)
INES = Actor("1", "Inés")
RAVI = Actor("2", "Ravi")
MEI = Actor("3", "Mei")
ADMIN = Actor("9", "Bea", is_admin=True)


def opened(**more):
    return changes.open_potluck("abc", INES, starts_at=STARTS, timezone="America/Chicago", now=NOW, **more)


def with_ravis_slaw():
    return changes.promise(opened(), RAVI, "2", "slaw", "salad", 12)


def test_whoever_opens_a_potluck_hosts_it_and_comes():
    potluck = opened()

    assert potluck.host == "1"
    assert potluck.guest("1").answer is Answer.YES


def test_a_potluck_can_not_start_in_the_past():
    with pytest.raises(Refusal, match="refused-past"):
        changes.open_potluck("abc", INES, starts_at=NOW, timezone="UTC", now=NOW)


@given(st.integers().filter(lambda n: not 1 <= n <= 1000))
def test_sizes_out_of_range_are_refused(people):
    with pytest.raises(Refusal, match="refused-size"):
        changes.resize(opened(), INES, people)


@pytest.mark.parametrize(
    "change",
    [
        lambda p: changes.reschedule(p, RAVI, STARTS + timedelta(days=1), NOW),
        lambda p: changes.set_place(p, RAVI, "the barn"),
        lambda p: changes.resize(p, RAVI, 30),
        lambda p: changes.cancel(p, RAVI),
        lambda p: changes.add_cohost(p, RAVI, "2"),
        lambda p: changes.open_bar(p, RAVI, "taco"),
        lambda p: changes.hand_over(p, RAVI, "2"),
    ],
)
def test_guests_do_not_change_the_potluck(change):
    potluck = changes.meet(opened(), RAVI)

    with pytest.raises(Refusal, match="refused-not-host"):
        change(potluck)


def test_an_administrator_of_the_group_may_step_in():
    assert changes.set_place(opened(), ADMIN, "the barn").place == "the barn"


@given(st.timedeltas(timedelta(days=-5), timedelta(days=300)))
def test_a_new_date_moves_what_has_its_own_time_by_as_much(shift):
    potluck, made = with_ravis_slaw()
    potluck = changes.change_promise(potluck, RAVI, made.id, arrives_at=STARTS - timedelta(hours=1))

    moved = changes.reschedule(potluck, INES, STARTS + shift, NOW)

    assert moved.promise(made.id).arrives_at - moved.starts_at == -timedelta(hours=1)


@pytest.mark.parametrize("answer", list(Answer))
def test_answers_are_ones_own(answer):
    potluck = changes.answer(opened(), RAVI, "2", answer)

    assert potluck.guest("2").answer is answer
    with pytest.raises(Refusal, match="refused-not-yours"):
        changes.answer(potluck, MEI, "2", Answer.NO)


@given(st.lists(st.sampled_from(list(Answer)), min_size=1, max_size=8))
def test_the_last_answer_counts_and_nobody_is_there_twice(answers):
    potluck = opened()
    for said in answers:
        potluck = changes.answer(potluck, RAVI, "2", said)

    assert [g.id for g in potluck.guests] == ["1", "2"]
    assert potluck.guest("2").answer is answers[-1]


@given(st.builds(Party, *[st.integers(-3, 60)] * 5))
def test_a_party_is_taken_whole_or_refused(party):
    counts = (party.adults, party.teens, party.children, party.toddlers, party.infants)
    fits = all(0 <= n <= 50 for n in counts) and sum(counts) > 0
    try:
        potluck = changes.set_party(opened(), RAVI, "2", party)
    except Refusal:
        assert not fits
    else:
        assert fits
        assert potluck.guest("2").party == party


def test_a_person_the_host_had_named_takes_over_their_own_place():
    potluck, _ = changes.invite(opened(), INES, ("Ravi", "Mei"))

    potluck = changes.answer(potluck, RAVI, "2", Answer.YES)

    assert sorted(g.name for g in potluck.guests) == ["Inés", "Mei", "Ravi"]


def test_the_same_need_said_again_replaces_what_was_said():
    potluck = changes.merge_needs(opened(), RAVI, "2", (Need("peanut", 1),))
    potluck = changes.merge_needs(potluck, RAVI, "2", (Need("peanut", 2), Need("vegan", 1)))

    assert {(n.need, n.count) for n in potluck.guest("2").needs} == {("peanut", 2), ("vegan", 1)}


@given(st.floats(allow_nan=False, allow_infinity=False).filter(lambda s: not 0 < s <= 1000))
def test_servings_out_of_range_are_refused(servings):
    with pytest.raises(Refusal, match="refused-servings"):
        changes.promise(opened(), RAVI, "2", "slaw", "salad", servings)


def test_only_its_cook_or_a_host_drops_a_dish():
    potluck, made = with_ravis_slaw()

    with pytest.raises(Refusal, match="refused-not-your-dish"):
        changes.drop_promise(potluck, MEI, made.id)
    assert changes.drop_promise(potluck, RAVI, made.id).promises == ()
    assert changes.drop_promise(potluck, INES, made.id).promises == ()


def test_of_a_shared_dish_only_ones_own_part_is_dropped():
    potluck, made = with_ravis_slaw()
    potluck = changes.share_promise(changes.meet(potluck, MEI), RAVI, made.id, "3")

    assert changes.drop_promise(potluck, RAVI, made.id).promise(made.id).guest == "3"
    assert changes.drop_promise(potluck, MEI, made.id).promise(made.id).sharers == ()


def test_ids_are_never_used_twice():
    potluck, first = with_ravis_slaw()
    potluck = changes.drop_promise(potluck, RAVI, first.id)

    _, second = changes.promise(potluck, RAVI, "2", "rolls", "bread", 12)

    assert second.id != first.id


def test_a_taken_topping_stays_with_who_took_it():
    potluck = changes.open_bar(opened(), INES, "baked potato")
    potluck = changes.take_topping(potluck, RAVI, "Chives")

    with pytest.raises(Refusal, match="refused-topping-taken"):
        changes.take_topping(potluck, MEI, "chives")


def test_who_leaves_takes_their_dishes_off_and_a_host_hands_over():
    potluck, _ = with_ravis_slaw()
    potluck = changes.answer(potluck, MEI, "3", Answer.YES)

    without_ravi, _ = changes.leave(potluck, "2")
    without_ines, heir = changes.leave(potluck, "1")

    assert without_ravi.promises == ()
    assert (heir, without_ines.host) == ("3", "3")


def test_whoever_asks_to_be_forgotten_leaves_no_trace():
    potluck, made = with_ravis_slaw()
    potluck = changes.share_promise(changes.meet(potluck, MEI), RAVI, made.id, "3")

    gone = changes.forget(potluck, "2")

    assert "'2'" not in repr(gone)
    assert "Ravi" not in repr(gone)
    assert [p.guest for p in gone.promises] == ["3"]


def test_a_cancelled_potluck_takes_no_more_changes():
    potluck = changes.cancel(opened(), INES)

    assert potluck.stage is Stage.CANCELLED
    with pytest.raises(Refusal, match="refused-cancelled"):
        changes.answer(potluck, RAVI, "2", Answer.YES)


def test_minutes_on_the_table_add_up():
    potluck, made = with_ravis_slaw()
    for start in (STARTS, STARTS + timedelta(hours=1)):
        potluck = changes.put_out(potluck, RAVI, made.id, start)
        potluck = changes.put_away(potluck, RAVI, made.id, start + timedelta(minutes=25))

    assert potluck.promise(made.id).out_min == 50


def test_another_clock_keeps_the_hour_people_read():
    moved = changes.move_clock(opened(), INES, "Europe/Berlin")

    assert moved.local(moved.starts_at).hour == opened().local(STARTS).hour == 17


@given(st.text(max_size=150))
def test_names_are_one_clean_line_or_refused(name):
    try:
        _, guest = changes.add_person(opened(), INES, name)
    except Refusal:
        return
    assert guest.name == " ".join(guest.name.split())
    assert len(guest.name) <= 100


def test_changes_leave_the_old_value_alone():
    potluck = opened()

    changes.answer(potluck, RAVI, "2", Answer.YES)

    assert potluck == replace(potluck)
    assert len(potluck.guests) == 1
