"""Changes of who comes, with whom, and what they can't eat."""

from __future__ import annotations

from dataclasses import replace

from planning.changes.rules import (
    LONGEST_NAME,
    MOST_GUESTS,
    MOST_OF_ONE_AGE,
    Actor,
    Refusal,
    next_id,
    replace_guest,
    require_manager,
    require_open,
    require_voice,
    tidy,
    whole,
    without,
)
from planning.diets import meant, needs_in
from planning.potluck import AGE_GROUPS, Answer, Guest, Need, Party, Potluck


def meet(potluck: Potluck, by: Actor) -> Potluck:
    """The potluck with `by` among its guests, under the name they carry now.

    A person whom somebody had only named ("Ravi") and who now speaks for themselves under the same
    account name takes over that row, so nobody is counted twice.
    """
    known = potluck.guest(by.id)
    if known is not None:
        if (known.name, known.username) == (by.name, by.username):
            return potluck
        return replace_guest(potluck, replace(known, name=by.name, username=by.username))
    named = next((g for g in potluck.guests if g.id.startswith("n") and _same_person(g, by)), None)
    if named is not None:
        return _rename_id(potluck, named, by)
    if len(potluck.guests) >= MOST_GUESTS:
        raise Refusal("refused-too-many-guests", most=MOST_GUESTS)
    return replace(potluck, guests=(*potluck.guests, Guest(by.id, by.name, username=by.username)))


def _same_person(guest: Guest, by: Actor) -> bool:
    if guest.answer is not Answer.NONE:
        return False
    if guest.username and by.username:
        return guest.username.casefold() == by.username.casefold()
    return guest.name.casefold() == by.name.casefold()


def _rename_id(potluck: Potluck, named: Guest, by: Actor) -> Potluck:
    taken_over = replace(named, id=by.id, name=by.name, username=by.username, added_by=None)
    swap = {named.id: by.id}
    promises = tuple(
        replace(
            p,
            guest=swap.get(p.guest, p.guest),
            sharers=tuple(swap.get(s, s) for s in p.sharers),
            takers=tuple(swap.get(t, t) for t in p.takers),
        )
        for p in potluck.promises
    )
    bar = potluck.bar and replace(
        potluck.bar, toppings=tuple(replace(t, guest=swap.get(t.guest or "", t.guest)) for t in potluck.bar.toppings)
    )
    guests = tuple(taken_over if g.id == named.id else g for g in potluck.guests)
    cohosts = tuple(swap.get(c, c) for c in potluck.cohosts)
    return replace(potluck, guests=guests, promises=promises, bar=bar, cohosts=cohosts)


def find_guest(potluck: Potluck, name: str) -> Guest | None:
    """The one guest with this name or @username, ignoring case; a first name does when only one has it."""
    wanted = name.strip().lstrip("@").casefold()
    if not wanted:
        return None
    exact = [g for g in potluck.guests if wanted in (g.name.casefold(), (g.username or "").casefold())]
    if len(exact) == 1:
        return exact[0]
    first = [g for g in potluck.guests if g.name.casefold().split()[0:1] == [wanted]]
    return first[0] if len(first) == 1 and not exact else None


def answer(potluck: Potluck, by: Actor, guest_id: str, said: Answer) -> Potluck:
    """Record an answer. A "no" keeps the party on record: people change their minds."""
    require_open(potluck)
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = _known(potluck, guest_id)
    require_voice(potluck, by, guest)
    return replace_guest(potluck, replace(guest, answer=said))


def set_party(potluck: Potluck, by: Actor, guest_id: str, party: Party) -> Potluck:
    """Say who comes with an answer; somebody must come, and saying so is a yes unless it was a maybe."""
    require_open(potluck)
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = _known(potluck, guest_id)
    require_voice(potluck, by, guest)
    for group in AGE_GROUPS:
        whole(getattr(party, group), 0, MOST_OF_ONE_AGE, "refused-party")
    if party.total == 0:
        raise Refusal("refused-empty-party")
    said = Answer.MAYBE if guest.answer is Answer.MAYBE else Answer.YES
    return replace_guest(potluck, replace(guest, party=party, answer=said))


def merge_needs(potluck: Potluck, by: Actor, guest_id: str, needs: tuple[Need, ...]) -> Potluck:
    """Add needs to a guest's own; the same need said again replaces what was said before, but for how bad it is: that
    never gets milder by being said again ("gluten free, too"), only by being taken back."""
    require_open(potluck)
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = _known(potluck, guest_id)
    require_voice(potluck, by, guest)
    for need in needs:
        tidy(need.need, 40, empty="refused-empty")
        whole(need.count, 1, MOST_OF_ONE_AGE, "refused-party")
    new = {one.need: one for n in needs for one in meant(n)}
    for was in guest.needs:
        if was.need in new and how_bad(was.severity) > how_bad(new[was.need].severity):
            new[was.need] = replace(new[was.need], severity=was.severity)
    kept = tuple(n for n in guest.needs if n.need not in new)
    return replace_guest(potluck, replace(guest, needs=(*kept, *new.values())))


def how_bad(severity: str) -> int:
    """0 for a diet or where nobody said, then intolerance, allergy, severe allergy."""
    said = severity.casefold()
    grades = (("sever", "anaphyla"), ("allerg",), ("intoler", "sensitiv"))
    return next((3 - k for k, words in enumerate(grades) if any(w in said for w in words)), 0)


def clear_needs(potluck: Potluck, by: Actor, guest_id: str, need: str | None = None) -> Potluck:
    """Forget one need, by any of its words, or all of them when `need` is None."""
    require_open(potluck)
    guest = _known(potluck, guest_id)
    require_voice(potluck, by, guest)
    if need is None:
        return replace_guest(potluck, replace(guest, needs=(), diets=(), allergies=()))
    gone = {need, *needs_in(need)}
    return replace_guest(
        potluck,
        replace(
            guest,
            needs=tuple(n for n in guest.needs if not gone & {n.need, *needs_in(n.need)}),
            diets=tuple(d for d in guest.diets if not gone & {d, *needs_in(d)}),
            allergies=tuple(a for a in guest.allergies if not gone & {a, *needs_in(a)}),
        ),
    )


def set_pregnant(potluck: Potluck, by: Actor, guest_id: str, pregnant: bool) -> Potluck:
    """Told by the guest or who speaks for them; only the cautions use it, never with a name."""
    require_open(potluck)
    if guest_id == by.id:
        potluck = meet(potluck, by)
    guest = _known(potluck, guest_id)
    require_voice(potluck, by, guest)
    return replace_guest(potluck, replace(guest, pregnant=pregnant))


def add_person(
    potluck: Potluck, by: Actor, name: str, party: Party | None = None, said: Answer = Answer.YES
) -> tuple[Potluck, Guest]:
    """A person without an account, added by somebody who speaks for them."""
    require_open(potluck)
    potluck = meet(potluck, by)
    clean = tidy(name, LONGEST_NAME, empty="refused-empty")
    if find_guest(potluck, clean) is not None and said is not Answer.NONE:
        raise Refusal("refused-known-person", name=clean)
    if len(potluck.guests) >= MOST_GUESTS:
        raise Refusal("refused-too-many-guests", most=MOST_GUESTS)
    potluck, new_id = next_id(potluck, "n")
    guest = Guest(new_id, clean, said, party or Party(), added_by=by.id)
    return replace(potluck, guests=(*potluck.guests, guest)), guest


def invite(potluck: Potluck, by: Actor, names: tuple[str, ...]) -> tuple[Potluck, tuple[Guest, ...]]:
    """Names the host waits to hear from; those already known are passed over."""
    require_manager(potluck, by)
    require_open(potluck)
    added: list[Guest] = []
    for name in names:
        clean = tidy(name.lstrip("@"), LONGEST_NAME, empty="refused-empty")
        if find_guest(potluck, clean) is not None:
            continue
        if len(potluck.guests) >= MOST_GUESTS:
            raise Refusal("refused-too-many-guests", most=MOST_GUESTS)
        potluck, new_id = next_id(potluck, "n")
        guest = Guest(new_id, clean, username=clean if name.startswith("@") else None)
        potluck = replace(potluck, guests=(*potluck.guests, guest))
        added.append(guest)
    return potluck, tuple(added)


def name_cohost(potluck: Potluck, by: Actor, name: str) -> tuple[Potluck, str]:
    """A co-host who has not written yet, by name or @username, from their first message on; also gives their id."""
    require_manager(potluck, by)
    after, added = invite(potluck, by, (name,))
    guest = added[0] if added else find_guest(after, name)
    if guest is None:
        raise Refusal("refused-unknown-person", name=name[:60])
    return replace(after, cohosts=(*dict.fromkeys((*after.cohosts, guest.id)),)), guest.id


def remove_person(potluck: Potluck, by: Actor, guest_id: str) -> Potluck:
    """Take out a person somebody had only named; people with an account answer "no" instead."""
    require_open(potluck)
    guest = _known(potluck, guest_id)
    if not guest.id.startswith("n"):
        raise Refusal("refused-has-account", name=guest.name)
    if guest.added_by != by.id:
        require_manager(potluck, by)
    return _without_guest(potluck, guest_id)


def leave(potluck: Potluck, guest_id: str) -> tuple[Potluck, str | None]:
    """A person left the group: their answer becomes "no", their dishes are free again.

    A host who leaves hands over to the first co-host, else to the first other guest with an account
    who comes. Returns the new potluck and the new host's id when it changed.
    """
    guest = potluck.guest(guest_id)
    if guest is None:
        return potluck, None
    potluck = _without_dishes(replace_guest(potluck, replace(guest, answer=Answer.NO)), guest_id)
    potluck = replace(potluck, cohosts=without(potluck.cohosts, guest_id))
    if potluck.host != guest_id:
        return potluck, None
    coming = [g.id for g in potluck.guests if not g.id.startswith("n") and g.answer is Answer.YES]
    heir = next(iter((*potluck.cohosts, *coming)), None)
    potluck = replace(potluck, host=heir, cohosts=without(potluck.cohosts, heir or ""))
    return potluck, heir


def forget(potluck: Potluck, guest_id: str) -> Potluck:
    """Everything a person said is gone, with their dishes; the people they added stay on their own."""
    potluck, _ = leave(potluck, guest_id)
    potluck = _without_guest(potluck, guest_id)
    return replace(
        potluck,
        history=tuple(h for h in potluck.history if h.guest != guest_id),
        payments=tuple(p for p in potluck.payments if guest_id not in (p.guest, p.to)),
        declined=tuple(d for d in potluck.declined if d.guest != guest_id),
    )


def _without_guest(potluck: Potluck, guest_id: str) -> Potluck:
    potluck = _without_dishes(potluck, guest_id)
    guests = tuple(
        replace(g, added_by=None) if g.added_by == guest_id else g for g in potluck.guests if g.id != guest_id
    )
    return replace(potluck, guests=guests)


def _without_dishes(potluck: Potluck, guest_id: str) -> Potluck:
    kept = []
    for p in potluck.promises:
        if p.guest == guest_id and p.sharers:
            kept.append(replace(p, guest=p.sharers[0], sharers=p.sharers[1:]))
        elif p.guest != guest_id:
            kept.append(replace(p, sharers=without(p.sharers, guest_id)))
    bar = potluck.bar and replace(
        potluck.bar,
        toppings=tuple(replace(t, guest=None) if t.guest == guest_id else t for t in potluck.bar.toppings),
    )
    return replace(potluck, promises=tuple(kept), bar=bar)


def _known(potluck: Potluck, guest_id: str) -> Guest:
    guest = potluck.guest(guest_id)
    if guest is None:
        raise Refusal("refused-unknown-person", name="")
    return guest
