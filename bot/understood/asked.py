"""Questions to the bot, answered shortly from the plan to whoever asked; the rest goes to the host."""

from __future__ import annotations

import re

from bot.context import Turn
from planning.changes import find_guest
from planning.diets import foods_asked
from planning.diets.asked import ALLERGEN
from planning.potluck import CATEGORIES, Answer
from planning.replies import Ask
from planning.theday.begun import waits_for
from planning.theday.evening import of_a_table


async def answer_question(turn: Turn, question: Ask) -> None:
    from bot.capabilities import eating, mylist
    from bot.capabilities.missing import missing_lines

    potluck = turn.potluck
    match question.topic:
        case "missing" | "what-should-i-bring":
            turn.post(missing_lines(turn))
        case "when":
            _when(turn)
        case "where":
            turn.say("answer-where", place=potluck.place, known=bool(potluck.place))
        case "who-brings":
            await _who_brings(turn, question.about)
        case "who-comes":
            _who_comes(turn, question.about)
        case "my-list":
            await mylist.show(turn)
        case "can-eat":
            await eating.asked(turn)
        case "why":
            await _why(turn)
        case _:
            await _to_host(turn)


def _when(turn: Turn) -> None:
    """The start, and which dish makes people wait longer, as far as its cook told."""
    wait = waits_for(turn.potluck)
    if wait is None:
        turn.say("answer-when", when=turn.potluck.starts_at)
    else:
        turn.say("begun-when", when=turn.potluck.starts_at, dish=wait[0].dish, ready=turn.voice.time(wait[1]))


async def _to_host(turn: Turn) -> None:
    """What the plan does not know is the host's to say."""
    host = turn.potluck.guest(turn.potluck.host)
    if host is None or host.id == turn.me:
        turn.say("answer-nobody-knows")
        return
    turn.say("answer-ask-host", host=host.name)
    await turn.tell(host, "told-question", name=turn.event.person.name, words=turn.words[:200])


def _who_comes(turn: Turn, name: str) -> None:
    guest = find_guest(turn.potluck, name) if name else None
    if guest is not None:
        turn.say("answer-comes", name=guest.name, answer=guest.answer.value)
        return
    yes = [g for g in turn.potluck.guests if g.answer is Answer.YES]
    turn.say("answer-who-comes", names=[g.name for g in yes], n=len(yes), people=sum(g.party.total for g in yes))


def _kind_named(turn: Turn) -> str | None:
    """The sort of dish a question names without naming a dish ("who brings dessert?")."""
    spoken = {w.strip("?!.,\u00bf").rstrip("s") for w in turn.words.casefold().split()}
    for category in CATEGORIES:
        first = turn.voice.plain(f"category-{category}").casefold().split()[0].rstrip("s")
        if first in spoken:
            return category
    return None


def _thing_asked(turn: Turn, but: str) -> str:
    """The last word of a "who brings ..." that names something for a table, other than that person."""
    asked = _ASKED_FOR.search(turn.words)
    words = re.findall(r"[^\W\d_]{3,}", asked["what"]) if asked is not None else []
    found = [w for w in words if w.casefold() not in but.casefold() and of_a_table(w.casefold(), turn.voice.language)]
    return found[0].casefold() if found else ""


_ASKED_FOR = re.compile(
    r"\b(?:bring(?:s|ing)?|doing|does|do|mak(?:e|es|ing)|got|has|trae|trae[nr]?|lleva[nr]?|hace)\s+(?P<what>[^?.,!]{2,60})",
    re.IGNORECASE,
)


async def _who_brings(turn: Turn, about: str) -> None:
    from rapidfuzz import fuzz

    from bot.capabilities import eating

    guest = find_guest(turn.potluck, about) if about else None
    if guest is not None or not about:
        # "Who's doing plates?", "can anyone bring plates since Gil is out": the thing asked for stands in the words.
        about = _thing_asked(turn, guest.name if guest is not None else "") or about
        guest = None if guest is not None and about.casefold() != guest.name.casefold() else guest
    if guest is not None:
        turn.say("answer-brings-all", name=guest.name, dishes=[p.dish for p in turn.potluck.promises_of(guest.id)])
        return
    wanted, kind = about.casefold(), None if about else _kind_named(turn)
    found = [
        p
        for p in turn.potluck.promises
        if p.category == (kind or wanted.rstrip("s"))
        or (kind is None and (not wanted or fuzz.partial_ratio(wanted, p.dish.casefold()) > 85))
    ]
    about = about or (turn.voice.plain(f"category-{kind}") if kind else "")
    if not found and any(one.sense == ALLERGEN for one in foods_asked(turn.words, turn.potluck.promises)[0]):
        await eating.asked(turn)  # no dish of that name says nothing of what is in the others
        return
    if not found:
        turn.say("answer-nobody-brings", what=about)
        return
    lines = [
        turn.voice.plain("answer-brings", dish=p.dish, name=g.name)
        for p in found[:12]
        if (g := turn.potluck.guest(p.guest)) is not None
    ]
    turn.say("answer-who-brings", lines=lines)


async def _why(turn: Turn) -> None:
    """Why the bot did the last thing it did on this person's words: the words it read it from."""
    action = await turn.store.last_action(turn.potluck.id, turn.me)
    words = str(action.facts.get("read", "")) if action is not None else ""
    if turn.dialog is not None and turn.dialog.kind == "confirm":
        turn.say("why-asked", words=str(turn.dialog.data.get("words", ""))[:120])
    elif words:
        turn.say("why-done", words=words)
    else:
        turn.say("why-unknown")
