"""Something goes wrong on the day: one message of the host, answered with what it changes and what to do now."""

from __future__ import annotations

import asyncio
import re
from datetime import timedelta
from html import unescape

from bot.buttons import Button
from bot.capabilities import coldpot, lesser
from bot.capabilities.buying import source_words
from bot.capabilities.kitchentold import read_kitchen_told
from bot.context import Turn
from bot.kitchen_words import step_line
from bot.naming import dish_named
from bot.registry import Registry
from bot.texts import Html
from planning.changes import (
    Refusal,
    find_guest,
    go_inside,
    lose_burners,
    lose_dish,
    lose_gas,
    lose_oven,
    lose_power,
    lose_slow_cooker,
    may_manage,
    more_people,
    no_show,
    restore_kitchen,
    set_place,
    set_setting,
)
from planning.kitchen import PlannedStep, Timeline, timeline
from planning.kitchen.known import with_last
from planning.kitchen.units import say_in_units
from planning.potluck import Answer, Potluck, Promise, Stage
from planning.safety.heat import cook_notes
from planning.safety.words import perishable
from planning.theday.difference import Difference, difference
from planning.theday.halfway import as_it_runs, interrupted, without_conflicts_of
from planning.theday.now import soon
from planning.theday.troubles import Trouble, read_trouble

GUESTS_TELL = ("power-out", "oven-out")
"""What any guest may see first: the rule is told at once, the plan stays until a host presses."""
DAY_BEFORE = timedelta(hours=24)
"""Free words are taken for trouble only so shortly before the start, and until the end."""
AFTER = timedelta(hours=12)
EFFORT, SECONDS = 0.3, 5.0
MOST_STEPS = 6
MOST_NAMED = 8
_INSIDE_TO = re.compile(
    r"\b(?:inside|indoors|adentro|dentro|bajo techo) (?:to|into|in|at|a|al|en) (?P<place>[^,.;!?\n]{2,60})",
    re.IGNORECASE,
)
_BESIDE = re.compile(
    r"(?:inside|indoors|adentro|dentro|bajo techo)\b[^,.;:!?\n]*[,.;:!\n]\s*(?P<rest>.{4,})",
    re.IGNORECASE,
)
"""What is said beside moving inside."""
_I_MYSELF = re.compile(
    r"\b(?:i|we|i'm|we're|yo|no puedo|no podemos)\b[^.!?]*\b(?:come|coming|make it|ir|venir)\b", re.IGNORECASE
)
_BOLD = re.compile(r"<b>(.*?)</b>")
RULES = {
    "trouble-power": ("POWER-01", "POWER-13", "TIME-05"),
    "trouble-works-again": ("TIME-01", "POWER-13"),
    "trouble-rain": ("CO-01",),
    "trouble-slow-cooker": ("TIME-05",),
    "trouble-oven": ("TIME-01", "COOK-38"),
    "trouble-gas": ("TIME-01", "COOK-38"),
    "trouble-burners": ("TIME-01", "COOK-38"),
}
"""The rows of `data/safety.csv` that a message rests on, told on demand."""
_SENTENCES = re.compile(r"(?<=[.!?;])\s+|\n")
BACK_WORDS = 8
"""What is back is told shortly (common practice, no source)."""
OPEN_WORDS = 12
"""In the open chat a longer message is a story and no call for help."""


async def command(turn: Turn) -> None:
    """/trouble the oven broke; alone it offers what can go wrong."""
    potluck = turn.potluck
    if not turn.words:
        if not may_manage(potluck, turn.actor):
            raise Refusal("refused-not-host", host=_host_name(potluck))
        turn.say("trouble-which", buttons=_choices(turn))
        return
    found = read_trouble(turn.words, turn.voice.language, told=True)
    if found is None:
        raise Refusal("refused-trouble-words")
    await _take(turn, found)


async def pressed(turn: Turn) -> None:
    await _take(turn, Trouble(turn.args[0], "", None))
    turn.toast("answer-below")


async def dish_pressed(turn: Turn) -> None:
    found = turn.known_promise(turn.args[0])
    await lost(turn, found)
    turn.toast("answer-below")


async def person_pressed(turn: Turn) -> None:
    await _absent(turn, turn.known_guest(turn.args[0]).id)
    turn.toast("answer-below")


async def read_words(turn: Turn) -> None:
    """Words of somebody who hosts, on the day: below a message of the bot, in private, or where it reads along."""
    event = turn.event
    addressed = turn.about is not None or (event.private and event.reply_to is None)
    if not event.is_words or not turn.has_potluck:
        return
    if event.reply_to is not None and turn.about is None:
        return
    potluck = turn.potluck
    if potluck.stage is not Stage.PLANNED or event.person.anonymous:
        return
    languages = dict.fromkeys((turn.voice.language, "en"))
    found = next((t for language in languages if (t := read_trouble(turn.words, language))), None)
    if found is None or found.kind.startswith("cooker-") or not _in_time(turn, found):
        return
    if not _may_tell(turn, found) or (not addressed and not _in_short_words(turn, found)):
        return
    turn.handled = True
    await _take(turn, found)
    beside = _BESIDE.search(turn.words)
    if found.kind == "rain" and beside is not None:  # where it goes there may be another kitchen
        turn.words = beside["rest"]
        await read_kitchen_told(turn)


def _in_short_words(turn: Turn, found: Trouble) -> bool:
    """Whether one of the sentences tells of it in few words; a longer one is a story."""
    for one in _SENTENCES.split(turn.words):
        if len(one.split()) > OPEN_WORDS:
            continue
        told = (read_trouble(one, code) for code in (turn.voice.language, "en"))
        if any(t is not None and t.kind == found.kind for t in told):
            return True
    return False


def _in_time(turn: Turn, found: Trouble) -> bool:
    """From a day before the start to the end; what is in the refrigerator counts on into the night."""
    more = AFTER if found.kind in ("power-out", "power-back", "back-on", "fridge-out") else timedelta()
    return turn.potluck.starts_at - DAY_BEFORE <= turn.now <= turn.potluck.ends + more


def _may_tell(turn: Turn, found: Trouble) -> bool:
    """Hosts may tell everything that names somebody or something known; a cook tells of their own dish."""
    potluck = turn.potluck
    if found.kind in lesser.KINDS:
        return lesser.takes(turn, found)
    if found.kind == "back-on" and (potluck.kitchen_before is None or len(turn.words.split()) > BACK_WORDS):
        return False
    if found.kind == "burnt":
        among = potluck.promises if may_manage(potluck, turn.actor) else potluck.promises_of(turn.me)
        return dish_named(turn, found.about, among) is not None
    if not may_manage(potluck, turn.actor):
        return found.kind in GUESTS_TELL and turn.guest() is not None
    if found.kind == "no-show" and _I_MYSELF.search(turn.words) is not None:
        return False  # a host who cannot come says so of themselves
    return found.kind != "no-show" or person_named(potluck, turn.words) is not None


async def _take(turn: Turn, found: Trouble) -> None:
    before = turn.potluck
    if found.kind in GUESTS_TELL and turn.event.kind == "message" and not may_manage(before, turn.actor):
        # What to do now is for everybody; that the plan changes is the host's to say.
        rows = [[Button(turn.voice.plain("button-plan-so"), "trouble", (found.kind,))]]
        if found.kind == "power-out":
            turn.say("trouble-power", buttons=rows)
        else:
            turn.say("trouble-oven", buttons=rows, left=max(0, len(before.kitchen.ovens) - 1))
        return
    match found.kind:
        case "oven-out":
            after = lose_oven(before, turn.actor, found.number)
            await changed(turn, before, after, "trouble-oven", back=True, left=len(after.kitchen.ovens))
        case "slow-cooker-out":
            after = lose_slow_cooker(before, turn.actor)
            left = len(after.kitchen.slow_cookers)
            await changed(turn, before, after, "trouble-slow-cooker", back=True, left=left)
        case "gas-out":
            await changed(turn, before, lose_gas(before, turn.actor), "trouble-gas", back=True)
        case "power-out":
            after = lose_power(before, turn.actor)
            await changed(turn, before, after, "trouble-power", back=True)
        case "cooker-cold" | "cooker-off" | "cooker-sat":
            coldpot.take(turn, found)
        case "fridge-out":
            cold = [p.dish for p in before.promises if perishable(p) and p.serve != "hot" and p.out_since is None]
            turn.say("trouble-fridge", dishes=cold[:MOST_NAMED], n=len(cold), source=source_words(turn, "POWER-13"))
        case "burner-out":
            after = lose_burners(before, turn.actor, found.number)
            await changed(turn, before, after, "trouble-burners", back=True, left=after.kitchen.burners)
        case "dry":
            if before.setting == "outdoor":
                turn.say("trouble-outside-already")
                return
            await changed(turn, before, set_setting(before, turn.actor, "outdoor"), "trouble-dry")
        case "power-back" | "back-on" if before.kitchen_before is None:
            turn.say("trouble-power-back", source=source_words(turn, "POWER-13"))
        case "power-back" | "oven-back" | "back-on":
            after, power = restore_kitchen(before, turn.actor), found.kind != "oven-back"
            await changed(turn, before, after, "trouble-works-again", power=power)
        case "burnt":
            burnt = dish_named(turn, found.about, before.promises)
            if burnt is None:
                turn.say("trouble-which-dish", buttons=[[Button(p.dish, "lostdish", (p.id,))] for p in _food(before)])
                return
            await lost(turn, burnt)
        case "no-show":
            who = person_named(before, found.about)
            if who is None:
                rows = [
                    [Button(g.name, "noshow", (g.id,))]
                    for g in before.guests
                    if g.id != before.host and g.answer.value in ("yes", "maybe") and g.arrived_at is None
                ]
                if not rows:
                    raise Refusal("refused-nobody-missing")
                turn.say("trouble-who", buttons=rows[:12])
                return
            await _absent(turn, who)
        case "more-people":
            if found.number is None:
                turn.ask("doormore", "trouble-how-many")
                return
            await _crowd(turn, found.number)
        case kind if kind in lesser.KINDS:
            await lesser.take(turn, found)
        case "rain":
            if before.setting == "indoor":
                turn.say("trouble-inside-already")
                return
            after, there = go_inside(before, turn.actor), _INSIDE_TO.search(turn.words)
            after = set_place(after, turn.actor, there["place"].strip()) if there is not None else after
            await changed(turn, before, after, "trouble-rain", place=after.place if there is not None else "")


async def crowd_told(turn: Turn) -> None:
    found = read_trouble(f"{turn.words} more people", turn.voice.language, told=True)
    digits = "".join(c for c in turn.words if c.isdecimal())
    number = found.number if found is not None and found.number else int(digits) if 0 < len(digits) <= 3 else None
    if number is None:
        raise Refusal("refused-party", low=1, high=50)
    turn.answered()
    await _crowd(turn, number)


async def _crowd(turn: Turn, number: int) -> None:
    before = turn.potluck
    after, _ = more_people(before, turn.actor, number, turn.voice.plain("name-at-the-door"))
    await changed(turn, before, after, "trouble-more", n=number)


async def lost(turn: Turn, dish: Promise) -> None:
    """The dish is off the table: what that changes."""
    before = turn.potluck
    await changed(turn, before, lose_dish(before, turn.actor, dish.id), "trouble-burnt", dish=dish.dish)


async def _absent(turn: Turn, guest_id: str) -> None:
    before = turn.potluck
    guest = turn.known_guest(guest_id)
    if guest.answer is Answer.NO and not before.promises_of(guest_id):
        turn.say("trouble-no-show-known", name=guest.name)
        return
    gone = [p.dish for p in before.promises if p.guest == guest_id and not p.sharers]
    after = no_show(before, turn.actor, guest_id)
    await changed(turn, before, after, "trouble-no-show", name=guest.name, dishes=gone, n=len(gone))


async def changed(
    turn: Turn, before: Potluck, after: Potluck, key: str, *, back: bool = False, **facts: object
) -> None:
    """Say what happened, what it changes, and what to do within ten minutes."""
    last = _last(turn)
    half = interrupted(after.kitchen, last.doable if last is not None else (), turn.now)
    was = await _timeline(turn, before, last)
    is_now = await _timeline(turn, after, as_it_runs(after, last))
    # What is in it half cooked is told of by itself: that it could be cooked elsewhere later is no way out.
    is_now = without_conflicts_of(is_now, {s.promise for s in half})
    turn.change(after, "did-trouble", what=_in_short(turn, key, facts))
    said = difference(before, after, was, is_now, turn.now)
    lines = [turn.voice(key, **facts), *(_half_line(turn, after, s) for s in half), *_lines(turn, after, said, is_now)]
    buttons = [[turn.undo_button()]]
    if said.short:
        buttons.append([Button(turn.voice.plain("button-asks"), "asks")])
    if back:
        buttons[0].append(Button(turn.voice.plain("button-works-again"), "trouble", ("power-back",)))
    if key in RULES:
        buttons.append([Button(turn.voice.plain("button-why"), "whys", RULES[key])])
    turn.post(Html("\n".join(lines)), buttons=buttons, reply=None if turn.event.kind == "message" else False)


def _last(turn: Turn) -> Timeline | None:
    """The timeline as it was last planned, with what has begun."""
    planner = turn.services.planner
    return planner.timeline(turn.potluck) if planner is not None else None


async def _timeline(turn: Turn, potluck: Potluck, last: Timeline | None) -> Timeline | None:
    """Near to the last one: what has begun is not begun again."""
    if not any(p.heat for p in potluck.promises):
        return None
    known = with_last(potluck, last, turn.now)
    return await asyncio.to_thread(timeline, known, turn.now, EFFORT, 0, SECONDS)


def _half_line(turn: Turn, after: Potluck, step: PlannedStep) -> Html:
    """A dish that was in it: finished now and in one go, or thrown out; never kept half cooked."""
    promise = after.promise(step.promise)
    note = next(iter(cook_notes(promise)), None) if promise is not None else None
    return turn.voice(
        "day-half", dish=promise.dish if promise is not None else "", since=turn.voice.time(step.start),
        rule=turn.voice.say(say_in_units(after, note.say)) if note is not None else "", raw=note is not None,
        source=source_words(turn, "COOK-38"),
    )  # fmt: skip


def _in_short(turn: Turn, key: str, facts: dict[str, object]) -> str:
    """What is taken back when it is: the first line without its marks and its stop."""
    whole = str(turn.voice(key, **facts))
    bold = _BOLD.search(whole)
    return unescape(bold[1] if bold is not None else turn.voice.plain(key, **facts)).rstrip(".")


def _lines(turn: Turn, after: Potluck, said: Difference, is_now: Timeline | None) -> list[str]:
    voice = turn.voice
    lines: list[str] = [voice.say(say) for say in said.says]
    if said.moved:
        lines.append(voice("day-moved-head"))
        lines += [step_line(voice, after, s) for s in said.moved[:MOST_STEPS]]
    if not lines:
        lines.append(voice("day-nothing-else"))
    due = soon(is_now, turn.now)
    if due:
        lines.append(voice("day-soon-head"))
        lines += [step_line(voice, after, s) for s in due[:MOST_STEPS]]
    return lines


def _choices(turn: Turn) -> list[list[Button]]:
    kinds = ("oven-out", "power-out", "burnt", "no-show", "more-people", "rain")
    buttons = [Button(turn.voice.plain(f"button-{kind}"), "trouble", (kind,), owner=turn.me) for kind in kinds]
    return [buttons[n : n + 2] for n in range(0, len(buttons), 2)]


def _food(potluck: Potluck) -> tuple[Promise, ...]:
    return tuple(p for p in potluck.promises if p.category not in ("drink", "supplies"))[:12]


def person_named(potluck: Potluck, words: str) -> str | None:
    """The one guest whose name stands in these words."""
    whole = find_guest(potluck, words)
    if whole is not None:
        return whole.id
    spoken = words.casefold().replace(",", " ").replace("'s", " ").split()
    found = {g.id for word in spoken if (g := find_guest(potluck, word)) is not None}
    return found.pop() if len(found) == 1 else None


def _host_name(potluck: Potluck) -> str:
    host = potluck.guest(potluck.host)
    return host.name if host else ""


def register(app: Registry) -> None:
    app.command("trouble", command, order=77, hosts=True)
    app.button("trouble", pressed)
    app.button("lostdish", dish_pressed)
    app.button("noshow", person_pressed)
    app.question("doormore", crowd_told)
    app.reader(read_words, order=40)
