"""People without an account, and people the host waits to hear from."""

from bot.capabilities.answers import party_words
from bot.context import Turn
from bot.registry import Registry
from planning.changes import Refusal, add_person, find_guest, invite, may_manage, remove_person
from planning.replies import read_party


async def add(turn: Turn) -> None:
    """/add my mother; /add Sam, 2 adults and 1 child."""
    if not turn.words:
        raise Refusal("refused-add-whom")
    name, _, rest = turn.words.partition(",")
    party = read_party(rest) if rest.strip() else None
    if rest.strip() and party is None:
        raise Refusal("refused-party-words", words=rest.strip()[:60])
    name = own_name(turn, name)
    after, guest = add_person(turn.potluck, turn.actor, name, party)
    turn.change(after, "did-add", name=guest.name)
    turn.say(
        "person-added", name=guest.name, party=party_words(turn.voice, guest.party), buttons=[[turn.undo_button()]]
    )


def own_name(turn: Turn, name: str) -> str:
    """ "my mother" becomes "Ravi's mother", so that others know whose."""
    words = name.split()
    if words and words[0].casefold() == "my" and len(words) > 1:
        return turn.voice.plain("name-of-mine", name=turn.event.person.name, who=" ".join(words[1:]))
    return name


async def expect(turn: Turn) -> None:
    """/invite Ravi, Mei and @sam: the people "no answer yet" is about."""
    if not turn.words:
        raise Refusal("refused-invite-whom")
    if turn.words.isdecimal():
        from planning.changes import resize

        turn.change(resize(turn.potluck, turn.actor, int(turn.words)), "did-resize")
        turn.say("noted-people", people=int(turn.words))
        return
    names = tuple(n.strip() for n in turn.words.replace(" and ", ",").replace("\n", ",").split(",") if n.strip())
    after, added = invite(turn.potluck, turn.actor, names)
    turn.change(after, "did-invite")
    turn.say("invited", names=[g.name for g in added], n=len(added), buttons=[[turn.undo_button()]] if added else ())


async def remove(turn: Turn) -> None:
    if not turn.words:
        raise Refusal("refused-remove-whom")
    guest = find_guest(turn.potluck, turn.words) or find_guest(turn.potluck, own_name(turn, turn.words))
    if guest is None:
        raise Refusal("refused-unknown-person", name=turn.words[:60])
    turn.change(remove_person(turn.potluck, turn.actor, guest.id), "did-remove", name=guest.name)
    turn.say("person-removed", name=guest.name, buttons=[[turn.undo_button()]])


async def answer_for(turn: Turn) -> None:
    """/answer Pat no: for a named person, who is told."""
    from planning.changes import answer
    from planning.potluck import Answer

    name, _, word = turn.words.rpartition(" ")
    said = {"yes": Answer.YES, "maybe": Answer.MAYBE, "no": Answer.NO}.get(word.casefold())
    if said is None or not name:
        raise Refusal("refused-answer-for")
    guest = find_guest(turn.potluck, name)
    if guest is None:
        raise Refusal("refused-unknown-person", name=name[:60])
    if guest.id.isdecimal() and guest.id != turn.me and not may_manage(turn.potluck, turn.actor):
        raise Refusal("refused-not-yours", name=guest.name)
    turn.change(answer(turn.potluck, turn.actor, guest.id, said), "did-answer-for", name=guest.name)
    turn.say("answered-for", name=guest.name, answer=said.value, buttons=[[turn.undo_button()]])
    await turn.tell(guest, "told-answered-for", by=turn.event.person.name, answer=said.value)


def register(app: Registry) -> None:
    app.command("add", add, order=50)
    app.command("invite", expect, order=51, hosts=True)
    app.command("remove", remove, order=52)
    app.command("answer", answer_for, order=53)
