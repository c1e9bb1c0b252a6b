"""A reading is carried out, and what was understood is said in one line."""

from __future__ import annotations

from datetime import datetime
from typing import Any

from bot.context import Turn
from bot.texts import Html
from bot.understood.dishes import add_dish, change_dish, drop_dish, take
from bot.understood.outcome import Understood
from bot.understood.people import say_still_theirs, set_answer, set_guests_needs, set_guests_party, set_guests_pregnancy
from planning.changes import Refusal, add_person, reschedule, resize, set_kitchen, set_place, set_setting
from planning.kitchen_words import Unread, read_kitchen
from planning.potluck import Say
from planning.replies import (
    AddPerson,
    AddPromise,
    ChangePromise,
    DropPromise,
    Intent,
    KitchenSays,
    MoveTo,
    Reading,
    Reschedule,
    Resize,
    SetAnswer,
    SetNeeds,
    SetParty,
    SetPregnant,
    TakeTopping,
)
from planning.when import as_read_here

SETTINGS = {"indoors": "indoor", "inside": "indoor", "outdoors": "outdoor", "outside": "outdoor"}
ORDER = (SetAnswer, SetParty, AddPerson, SetNeeds, ChangePromise, DropPromise, AddPromise, TakeTopping)
"""Who comes is settled before what they bring, whatever the order of the words."""


def act(turn: Turn, reading: Reading) -> Understood:
    """Carry out every intent of a reading. Raises Refusal when it is not allowed; one refused topping or change of a
    dish does not take the rest of the sentence with it."""
    understood = Understood()
    intents = sorted(reading.intents, key=lambda i: ORDER.index(type(i)) if type(i) in ORDER else len(ORDER))
    for intent in intents:
        try:
            _act(turn, intent, understood)
        except Refusal as no:
            if len(intents) == 1 or not isinstance(intent, (TakeTopping, ChangePromise, DropPromise)):
                raise
            if no.key == "refused-no-own-promise" and understood.lines:
                continue  # the only one there was is off the list by this very message
            understood.lines.append(Say(no.key, no.facts))
            understood.warned = True
    say_still_theirs(turn, understood)
    return understood


def _act(turn: Turn, intent: Intent, understood: Understood) -> None:
    match intent:
        case SetAnswer():
            set_answer(turn, intent, understood)
        case SetParty():
            set_guests_party(turn, intent, understood)
        case SetNeeds():
            set_guests_needs(turn, intent, understood)
        case AddPromise():
            if intent.vague:
                understood.vague = True
            else:
                add_dish(turn, intent, understood)
        case ChangePromise():
            change_dish(turn, intent, understood)
        case DropPromise():
            drop_dish(turn, intent, understood)
        case TakeTopping():
            take(turn, intent, understood)
        case SetPregnant():
            set_guests_pregnancy(turn, intent, understood)
        case Reschedule() | MoveTo() | Resize() | KitchenSays():
            _hosting(turn, intent, understood)
        case AddPerson():
            after, guest = add_person(turn.potluck, turn.actor, intent.name, intent.party)
            turn.change(after, "did-add", name=guest.name)
            understood.lines.append(Say("read-person", {"name": guest.name}))


def _hosting(turn: Turn, intent: Intent, understood: Understood) -> None:
    """What a host says about the potluck itself."""
    match intent:
        case Reschedule():
            from bot.capabilities.hosting import new_start

            starts_at = new_start(turn, intent.words).starts_at
            if starts_at == turn.potluck.starts_at:
                understood.lines.append(Say("read-when", {"when": starts_at}))
                return
            turn.change(reschedule(turn.potluck, turn.actor, starts_at, turn.now), "did-when")
            understood.lines.append(Say("read-when", {"when": turn.potluck.starts_at}))
        case MoveTo() if (setting := SETTINGS.get(intent.place.casefold())) is not None:
            turn.change(set_setting(turn.potluck, turn.actor, setting), "did-place")
            understood.lines.append(Say("setting-changed", {"setting": setting}))
        case MoveTo():
            turn.change(set_place(turn.potluck, turn.actor, intent.place), "did-place")
            if intent.setting and intent.setting != turn.potluck.setting:
                turn.change(set_setting(turn.potluck, turn.actor, intent.setting), "did-place")
            understood.lines.append(Say("read-where", {"place": turn.potluck.place}))
        case Resize():
            turn.change(resize(turn.potluck, turn.actor, intent.people), "did-resize")
            understood.lines.append(Say("read-size", {"people": intent.people}))
        case KitchenSays():
            try:
                words = as_read_here(intent.words, turn.voice.language, "words_cooking")
                kitchen = read_kitchen(words, turn.potluck.kitchen)
            except Unread as unread:
                raise Refusal("refused-kitchen-words", words=unread.words) from None
            turn.change(set_kitchen(turn.potluck, turn.actor, kitchen), "did-kitchen")
            understood.lines.append(Say("read-kitchen", {"words": intent.words}))


def say_understood(turn: Turn, understood: Understood, until: datetime | None = None) -> None:
    """One quiet line for everything that was read, with undo; one without a warning need not be sent after `until`."""
    if not understood.lines:
        return
    what = "; ".join(turn.voice.say(line).rstrip(".") for line in understood.lines)
    text = turn.voice("understood", what=Html(what))
    late: dict[str, Any] = {"until": until.isoformat()} if until is not None and not understood.warned else {}
    turn.post(text, buttons=[[turn.undo_button()]], silent=True, **late)
