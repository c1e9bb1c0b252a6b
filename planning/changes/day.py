"""Changes of the day itself and of the days after: who is here, what happened, what is left, what comes home."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from planning.changes.guests import meet
from planning.changes.promises import owned
from planning.changes.rules import (
    LONGEST_TEXT,
    MOST_OF_ONE_AGE,
    Actor,
    Refusal,
    may_manage,
    next_id,
    replace_guest,
    require_manager,
    require_open,
    tidy,
    whole,
    without,
)
from planning.potluck import Answer, Guest, Kitchen, Party, PastAnswer, Potluck, Promise, Stage
from planning.safety.clocks import clock
from planning.safety.words import perishable

OUTCOMES = ("ran-out", "came-back")
DOOR_WORDS = 60


def come_late(potluck: Potluck, by: Actor, arrives_at: datetime) -> Potluck:
    """The person's own dishes come at `arrives_at` (UTC) instead of earlier; their party comes all the same."""
    require_open(potluck)
    if arrives_at >= potluck.ends:
        raise Refusal("refused-late-after-end")
    potluck = meet(potluck, by)
    return replace(
        potluck,
        promises=tuple(replace(p, arrives_at=arrives_at) if p.guest == by.id else p for p in potluck.promises),
    )


def arrive(potluck: Potluck, by: Actor, now: datetime) -> Potluck:
    """ "We're here": the person comes, and what they bring is at the venue from now on."""
    require_open(potluck)
    potluck = meet(potluck, by)
    guest = potluck.guest(by.id)
    assert guest is not None
    potluck = replace_guest(potluck, replace(guest, answer=Answer.YES, arrived_at=now))
    return replace(
        potluck,
        promises=tuple(
            replace(p, arrives_at=now) if p.guest == by.id and p.arrives_at is not None and p.arrives_at > now else p
            for p in potluck.promises
        ),
    )


def no_show(potluck: Potluck, by: Actor, guest_id: str) -> Potluck:
    """Somebody does not come after all and neither do their dishes, unless another brings them too."""
    require_manager(potluck, by)
    require_open(potluck)
    guest = potluck.guest(guest_id)
    if guest is None:
        raise Refusal("refused-unknown-person", name="")
    day = potluck.local(potluck.starts_at).date().isoformat()
    missed = PastAnswer(day, guest_id, None, guest.answer.value, False)
    if guest.answer in (Answer.YES, Answer.MAYBE) and missed not in potluck.history:
        potluck = replace(potluck, history=(*potluck.history, missed))
    potluck = replace_guest(potluck, replace(guest, answer=Answer.NO, arrived_at=None))
    kept = (_without_cook(p, guest_id) for p in potluck.promises)
    bar = potluck.bar and replace(
        potluck.bar,
        toppings=tuple(replace(t, guest=None) if t.guest == guest_id else t for t in potluck.bar.toppings),
    )
    return replace(potluck, promises=tuple(p for p in kept if p is not None), bar=bar)


def _without_cook(promise: Promise, guest_id: str) -> Promise | None:
    if promise.guest != guest_id:
        return replace(promise, sharers=without(promise.sharers, guest_id))
    if not promise.sharers:
        return None
    return replace(promise, guest=promise.sharers[0], sharers=promise.sharers[1:])


def lose_dish(potluck: Potluck, by: Actor, promise_id: str) -> Potluck:
    """A dish is burnt, dropped or spoilt: it is off the table, and its cook still comes."""
    require_open(potluck)
    found = owned(potluck, by, promise_id)
    return replace(potluck, promises=tuple(p for p in potluck.promises if p.id != found.id))


def lose_oven(potluck: Potluck, by: Actor, number: int | None = None) -> Potluck:
    """The oven (number 1, 2, ...; the last when not said) is out."""
    require_manager(potluck, by)
    require_open(potluck)
    ovens = potluck.kitchen.ovens
    if not ovens:
        raise Refusal("refused-no-oven-left")
    at = len(ovens) - 1 if number is None else number - 1
    if not 0 <= at < len(ovens):
        raise Refusal("refused-which-oven", most=len(ovens))
    return _with_less(potluck, replace(potluck.kitchen, ovens=ovens[:at] + ovens[at + 1 :]))


def lose_slow_cooker(potluck: Potluck, by: Actor) -> Potluck:
    """One slow cooker is out: the largest, as nobody said which."""
    require_manager(potluck, by)
    require_open(potluck)
    cookers = potluck.kitchen.slow_cookers
    if not cookers:
        raise Refusal("refused-no-slow-cooker-left")
    gone = max(range(len(cookers)), key=lambda n: cookers[n].quarts)
    return _with_less(potluck, replace(potluck.kitchen, slow_cookers=cookers[:gone] + cookers[gone + 1 :]))


def lose_burners(potluck: Potluck, by: Actor, number: int | None = None) -> Potluck:
    """So many burners are out; one where nobody said how many."""
    require_manager(potluck, by)
    require_open(potluck)
    if potluck.kitchen.burners <= 0:
        raise Refusal("refused-no-burner-left")
    left = max(0, potluck.kitchen.burners - (number or 1))
    return _with_less(potluck, replace(potluck.kitchen, burners=left))


def lose_gas(potluck: Potluck, by: Actor) -> Potluck:
    """The gas is gone: burners and grills are out; whether the oven burns gas nobody said, and it stays."""
    require_manager(potluck, by)
    require_open(potluck)
    return _with_less(potluck, replace(potluck.kitchen, burners=0, grills=0))


def lose_power(potluck: Potluck, by: Actor) -> Potluck:
    """Nothing electric works. Whether oven and burners burn gas nobody said: the cautious reading is that
    they are out as well; what is left is the grill."""
    require_manager(potluck, by)
    require_open(potluck)
    dark = replace(potluck.kitchen, ovens=(), burners=0, slow_cookers=(), microwaves=(), circuits=())
    return _with_less(potluck, dark)


def _with_less(potluck: Potluck, kitchen: Kitchen) -> Potluck:
    return replace(potluck, kitchen=kitchen, kitchen_before=potluck.kitchen_before or potluck.kitchen)


def restore_kitchen(potluck: Potluck, by: Actor) -> Potluck:
    """It works again: the kitchen is what it was before something in it failed."""
    require_manager(potluck, by)
    require_open(potluck)
    if potluck.kitchen_before is None:
        raise Refusal("refused-nothing-failed")
    return replace(potluck, kitchen=potluck.kitchen_before, kitchen_before=None)


def more_people(potluck: Potluck, by: Actor, adults: int, name: str) -> tuple[Potluck, Guest]:
    """So many more people stand at the door than were reckoned with: they count as come, under one name.

    `adults` 1 to 50."""
    require_manager(potluck, by)
    require_open(potluck)
    count = whole(adults, 1, MOST_OF_ONE_AGE, "refused-party")
    potluck, new_id = next_id(potluck, "n")
    guest = Guest(new_id, tidy(name, LONGEST_TEXT, empty="refused-empty"), Answer.YES, Party(count), added_by=by.id)
    expected = potluck.expected_people and potluck.expected_people + count
    return replace(potluck, guests=(*potluck.guests, guest), expected_people=expected), guest


def go_inside(potluck: Potluck, by: Actor) -> Potluck:
    """Rain: the table moves indoors; the temperature outside no longer counts."""
    require_manager(potluck, by)
    require_open(potluck)
    return replace(potluck, setting="indoor", outdoor_temp_f=None)


def set_weather(potluck: Potluck, by: Actor, words: str, temp_f: float | None) -> Potluck:
    """In the host's words; a temperature in it (°F, -40 to 130) also sets the clocks of food outdoors."""
    require_manager(potluck, by)
    if temp_f is not None and not -40 <= temp_f <= 130:
        raise Refusal("refused-temperature")
    clean = tidy(words, LONGEST_TEXT, empty="refused-empty")
    return replace(potluck, weather=clean, outdoor_temp_f=potluck.outdoor_temp_f if temp_f is None else temp_f)


def hotter_outside(potluck: Potluck, by: Actor, temp_f: float) -> Potluck:
    """A temperature outside (°F) told in passing: anybody may say it is hotter than was known, a host also cooler."""
    if potluck.setting != "outdoor" or not -40 <= temp_f <= 130:
        return potluck
    known = potluck.outdoor_temp_f
    if may_manage(potluck, by) or known is None or temp_f > known:
        return replace(potluck, outdoor_temp_f=temp_f)
    return potluck


def set_parking(potluck: Potluck, by: Actor, words: str) -> Potluck:
    require_manager(potluck, by)
    return replace(potluck, parking=tidy(words, LONGEST_TEXT, empty="refused-empty"))


def set_door(potluck: Potluck, by: Actor, words: str) -> Potluck:
    """The code or the way in, told privately to those who come."""
    require_manager(potluck, by)
    return replace(potluck, door_code=tidy(words, DOOR_WORDS, empty="refused-empty"))


def set_pin(potluck: Potluck, by: Actor, latitude: float, longitude: float) -> Potluck:
    """Where it is on the map, in degrees."""
    require_manager(potluck, by)
    if not (abs(latitude) <= 90 and abs(longitude) <= 180):
        raise Refusal("refused-pin")
    return replace(potluck, pin=(latitude, longitude))


def take_home(
    potluck: Potluck, by: Actor, promise_id: str, now: datetime | None = None, *, all_of_it: bool = True
) -> Potluck:
    """The person takes what is left of a dish home, or no longer does when they already said so.

    With `now` (UTC) and all of it gone, the dish's clock stops there: the minutes so far stay counted, and of a dish
    nobody told of those since the start, as long as they are within the limit. Left again, its clock runs on.
    """
    if potluck.stage is Stage.CANCELLED:
        raise Refusal("refused-cancelled")
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    potluck = meet(potluck, by)
    if by.id in found.takers:
        back = replace(found, takers=without(found.takers, by.id))
        if now is not None and all_of_it and not back.takers and back.out_since is None and back.out_min > 0:
            back = replace(back, out_since=now)
        return _put(potluck, back)
    taken = replace(found, takers=(*found.takers, by.id))
    return _put(potluck, _stopped(potluck, taken, now) if now is not None and all_of_it else taken)


def _stopped(potluck: Potluck, promise: Promise, now: datetime) -> Promise:
    """The dish goes into somebody's refrigerator now."""
    if promise.out_since is not None:
        minutes = max(0.0, (now - promise.out_since).total_seconds() / 60)
        return replace(promise, out_since=None, out_min=promise.out_min + minutes)
    served = max(0.0, (now - potluck.starts_at).total_seconds() / 60)
    if promise.out_min > 0 or not perishable(promise) or served >= clock(potluck, promise).limit_min:
        return promise
    return replace(promise, out_min=served)


def give_back(potluck: Potluck, by: Actor, promise_id: str) -> Potluck:
    """The container of a dish is with its owner again; whoever has something to do with it may say so."""
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    if potluck.guest(by.id) is None:
        require_manager(potluck, by)
    return _put(potluck, replace(found, returned=True))


def say_outcome(potluck: Potluck, by: Actor, promise_id: str, outcome: str) -> Potluck:
    """A dish ran out or came back; saying the same again takes it back."""
    if outcome not in OUTCOMES:
        raise Refusal("refused-button-old")
    if potluck.stage is Stage.CANCELLED:
        raise Refusal("refused-cancelled")
    require_manager(potluck, by)
    found = potluck.promise(promise_id)
    if found is None:
        raise Refusal("refused-no-promise")
    return _put(potluck, replace(found, outcome="" if found.outcome == outcome else outcome))


def set_repeats(potluck: Potluck, by: Actor, repeats: str) -> Potluck:
    """ "monthly", or "" for once."""
    require_manager(potluck, by)
    if repeats not in ("", "monthly"):
        raise Refusal("refused-repeats")
    return replace(potluck, repeats=repeats)


def set_corrections(potluck: Potluck, by: Actor, corrections: Mapping[str, float]) -> Potluck:
    """What the group's own potlucks taught about portions (see `planning.again`)."""
    require_manager(potluck, by)
    return replace(potluck, corrections=dict(corrections))


def _put(potluck: Potluck, changed: Promise) -> Potluck:
    return replace(potluck, promises=tuple(changed if p.id == changed.id else p for p in potluck.promises))
