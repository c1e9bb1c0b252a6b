"""Answers, parties and needs in a guest's own words become changes."""

from __future__ import annotations

from dataclasses import replace

from bot.context import Turn
from bot.understood.outcome import Understood
from planning.changes import add_person, answer, clear_needs, find_guest, merge_needs, set_party, set_pregnant
from planning.potluck import AGE_GROUPS, Answer, Party, Say
from planning.replies import SetAnswer, SetNeeds, SetParty, SetPregnant


def person(turn: Turn, name: str, said: Answer = Answer.YES) -> str:
    """The id of the person of this name, who is added when nobody here is called so."""
    known = find_guest(turn.potluck, name)
    if known is not None:
        return known.id
    after, guest = add_person(turn.potluck, turn.actor, name, said=said)
    turn.change(after, "did-add", name=guest.name)
    return guest.id


def set_answer(turn: Turn, intent: SetAnswer, understood: Understood) -> None:
    if not intent.who:
        name = intent.unknown_name or ""
        named = person(turn, name, intent.answer)
        turn.change(answer(turn.potluck, turn.actor, named, intent.answer))
        understood.lines.append(Say("read-answer-for", {"answer": intent.answer.value, "name": name}))
        return
    who = turn.potluck.guest(intent.who)
    if intent.implied and who is not None and who.answer is not Answer.NONE:
        return
    turn.change(answer(turn.potluck, turn.actor, intent.who, intent.answer), "did-answer", answer=intent.answer.value)
    key = "read-answer" if intent.who == turn.me else "read-answer-for"
    name = turn.known_guest(intent.who).name
    understood.lines.append(Say(key, {"answer": intent.answer.value, "name": name}))
    if intent.answer is Answer.NO:
        understood.out.append(intent.who)


def say_still_theirs(turn: Turn, understood: Understood) -> None:
    """What those who can't come still have on the list, once the whole message is carried out."""
    still = [p.dish for p in turn.potluck.promises if p.guest in understood.out]
    if still:
        understood.lines.append(Say("read-still-theirs", {"dishes": still}))


def set_guests_party(turn: Turn, intent: SetParty, understood: Understood) -> None:
    from bot.capabilities.answers import party_words

    party = intent.party
    guest = turn.potluck.guest(intent.who)
    if intent.relative:
        now = guest.party if guest and guest.answer is not Answer.NONE else Party()
        party = Party(**{g: max(0, getattr(now, g) + getattr(party, g)) for g in AGE_GROUPS})
    turn.change(set_party(turn.potluck, turn.actor, intent.who, party), "did-party")
    understood.lines.append(Say("read-party", {"party": party_words(turn.voice, party)}))


def set_guests_pregnancy(turn: Turn, intent: SetPregnant, understood: Understood) -> None:
    who = owner(turn, intent.who, intent.member)
    turn.change(set_pregnant(turn.potluck, turn.actor, who, intent.pregnant), "did-needs")
    understood.lines.append(Say("read-pregnant", {"pregnant": intent.pregnant}))


def set_guests_needs(turn: Turn, intent: SetNeeds, understood: Understood) -> None:
    from bot.capabilities.needs import need_name

    intent = replace(intent, who=owner(turn, intent.who, intent.member))
    other = turn.known_guest(intent.who).name if intent.who != turn.me else ""
    if intent.cleared and not intent.needs:
        turn.change(clear_needs(turn.potluck, turn.actor, intent.who), "did-needs")
        understood.lines.append(Say("read-no-needs"))
        return
    if intent.cleared:
        for need in intent.needs:
            turn.change(clear_needs(turn.potluck, turn.actor, intent.who, need.need), "did-needs")
        understood.lines.append(
            Say("read-needs-gone", {"needs": [need_name(turn.voice, n.need) for n in intent.needs]})
        )
        return
    # Only whoever has it, or speaks for them, makes it known by writing it in the open.
    own = intent.who == turn.me or turn.known_guest(intent.who).added_by == turn.me
    needs = tuple(replace(n, open=own and not turn.private) for n in intent.needs)
    turn.change(merge_needs(turn.potluck, turn.actor, intent.who, needs), "did-needs")
    words = [turn.voice.plain("read-need", need=need_name(turn.voice, n.need), n=n.count) for n in needs]
    understood.lines.append(Say("read-needs", {"needs": words, "name": other}))


def owner(turn: Turn, who: str, member: str | None) -> str:
    """Whose it is: a member of the writer's party who is down as a person of their own ("my mother", who was added)
    has it for themselves; everybody else has it within the party of `who`."""
    if member is None or who != turn.me:
        return who
    wanted = {member.casefold(), *(_SAME_KIN.get(member.casefold(), ()))}
    for guest in turn.potluck.guests:
        name = guest.name.casefold()
        if guest.added_by == turn.me and (name in wanted or any(name.endswith(f" {w}") for w in wanted)):
            return guest.id
    return who


_MOTHER, _FATHER = (
    ("mother", "mum", "mom", "mam", "mummy", "mommy", "madre", "mamá", "mama"),
    ("father", "dad", "daddy", "padre", "papá", "papa"),
)
_SAME_KIN = {word: words for words in (_MOTHER, _FATHER) for word in words}
