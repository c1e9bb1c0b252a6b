"""An allergy told while dishes are promised: the host hears of it, and the cooks of the dishes it meets.

However it was told (in the open, in private, by the host for somebody, by a guest who comes after all), whatever
changed. To the cooks and the group it is "a guest", never a name.
"""

from __future__ import annotations

from collections.abc import Iterable

from bot.buttons import Button
from bot.capabilities.buying import source_words
from bot.context import Turn
from bot.outgoing import mention
from bot.registry import Registry
from bot.texts import Html, Voice
from planning.changes import may_manage
from planning.potluck import Guest, Potluck, Stage
from planning.safety.met import Met, News, as_maybe, news, told_severe
from planning.safety.urgent import country

MOST_LINES = 12


async def watch(turn: Turn) -> None:
    before = turn.before
    if before is None or turn.potluck.stage is not Stage.PLANNED or before.stage is not Stage.PLANNED:
        return
    after = turn.potluck
    back = [g.id for g in after.guests if g is not before.guest(g.id) and told_severe(before, after, g.id)]
    for who in back:
        # Down as not coming, and tells of it all the same: whoever cooks must know before they sit at the table.
        before, after = as_maybe(before, who), as_maybe(after, who)
    found = news(before, after)
    if turn.me in back:
        buttons = [Button(turn.voice.plain("button-coming"), "ans", ("yes",), owner=turn.me)]
        turn.say("allergy-comes-after-all", buttons=[buttons])
    if found.by_need or found.severe:
        await _tell_of_need(turn, found)
    if dishes := tuple(m for m in found.by_dish if m.severe or m.how in ("listed", "named")):
        await _tell_of_dish(turn, dishes)
    if before.guests != after.guests and not found.by_need and (gone := news(after, before).by_need):
        await _tell_taken_back(turn, gone)


async def _tell_taken_back(turn: Turn, gone: tuple[Met, ...]) -> None:
    """The cooks who were warned hear that nobody on the list has it any more."""
    mine: dict[str, list[Met]] = {}
    for one in gone:
        for cook in _reachable(turn.potluck, one):
            mine.setdefault(cook.id, []).append(one)
    for cook_id, dishes in list(mine.items())[:MOST_LINES]:
        cook = turn.known_guest(cook_id)
        voice = await turn.private_voice(cook) or turn.voice_in(turn.group_language)
        named = list(dict.fromkeys(m.dish for m in dishes))
        await turn.tell(cook, "allergy-back", needs=_needs(voice, dishes), dishes=named)


def is_today(turn: Turn) -> bool:
    """Whether it is the day of the potluck, or people still sit together."""
    return turn.potluck.on_its_day(turn.now)


async def _tell_of_need(turn: Turn, found: News) -> None:
    host = turn.potluck.guest(turn.potluck.host)
    if may_manage(turn.potluck, turn.actor):
        turn.post(for_host(turn, turn.voice, found, _owner(turn, found) if turn.private else None))
    else:
        turn.post(_for_teller(turn, found))
    host_voice = None
    if host is not None and host.id != turn.me:
        host_voice = await turn.private_voice(host)
        if host_voice is not None:
            text = for_host(turn, host_voice, found, _owner(turn, found))
            await turn.tell(host, "allergy-told", what=text)
    aloud: list[tuple[Guest, Met]] = []
    mine: dict[str, list[Met]] = {}
    for one in found.by_need:
        for cook in _reachable(turn.potluck, one):
            mine.setdefault(cook.id, []).append(one)
    for cook_id, dishes in mine.items():
        cook = turn.known_guest(cook_id)
        if cook.id == turn.me or (cook == host and host_voice is not None):
            continue
        voice = await turn.private_voice(cook)
        if voice is not None:
            await turn.tell(cook, "allergy-told", what=for_cook(turn, voice, found, dishes))
        else:
            aloud += [(cook, one) for one in dishes]
    called = [g for g, _ in aloud]
    if host is not None and host.id != turn.me and host_voice is None:
        called = [host, *called]
    _say_aloud(turn, found, called)


def _say_aloud(turn: Turn, found: News, called: list[Guest]) -> None:
    """One message to the group for all who can't be written to."""
    if not called:
        return
    voice = turn.voice_in(turn.group_language)
    names = [mention(g) for g in {g.id: g for g in called}.values()]
    text = for_host(turn, voice, found, None, to_all=True)
    turn.say("allergy-aloud", where="group", reply=False, names=names, what=text)


def _reachable(potluck: Potluck, one: Met) -> Iterable[Guest]:
    """Who cooks it: for somebody without an account, whoever speaks for them."""
    for who in one.cooks:
        guest = potluck.guest(who)
        if guest is not None and not guest.id.isdecimal():
            guest = potluck.guest(guest.added_by)
        if guest is not None:
            yield guest


def _owner(turn: Turn, found: News) -> str | None:
    """Whose it is, for the host's eyes only; None where it is in several parties."""
    fresh = {m.need for m in found.by_need} | {*found.severe}
    owners = {g.name for g in turn.potluck.guests if any(n.need in fresh for n in g.all_needs())}
    return owners.pop() if len(owners) == 1 else None


def _needs(voice: Voice, dishes: Iterable[Met], more: Iterable[str] = ()) -> list[str]:
    names = dict.fromkeys([*(m.need for m in dishes), *more])
    return list(dict.fromkeys(voice.plain("allergy-of", need=name) for name in names))


def _lines(turn: Turn, voice: Voice, dishes: tuple[Met, ...] | list[Met], *, cooks: bool) -> list[str]:
    lines: list[str] = []
    grouped: dict[tuple[str, str], list[Met]] = {}
    for one in dishes:
        grouped.setdefault((one.promise, one.dish), []).append(one)
    for (_, dish), held in list(grouped.items())[:MOST_LINES]:
        for how in dict.fromkeys(m.how for m in held):
            these = [m for m in held if m.how == how]
            names = [g.name for who in these[0].cooks if (g := turn.potluck.guest(who))] if cooks else []
            lines.append(voice("allergy-dish", dish=dish, how=how, needs=_needs(voice, these), names=names))
    return lines


def _head(voice: Voice, found: News, name: str | None) -> Html:
    needs = _needs(voice, found.by_need, found.severe)
    return voice("allergy-head", needs=needs, degree=found.degree, name=name or "")


def for_host(turn: Turn, voice: Voice, found: News, name: str | None, *, to_all: bool = False) -> Html:
    """What is on the list that it meets, what nobody has said anything of, and what to do."""
    lines: list[str] = [_head(voice, found, name)]
    lines += _lines(turn, voice, found.by_need, cooks=True) or [voice("allergy-nothing-known")]
    if found.unlisted:
        lines.append(voice("allergy-unlisted", dishes=list(found.unlisted[:MOST_LINES])))
    lines += _do(turn, voice, "group" if to_all else "host", bool(found.by_need))
    return Html("\n".join(lines))


def for_cook(turn: Turn, voice: Voice, found: News, dishes: list[Met]) -> Html:
    needs = _needs(voice, dishes)
    lines: list[str] = [voice("allergy-head", needs=needs, degree=found.degree, name="")]
    lines += _lines(turn, voice, dishes, cooks=False)
    lines.append(voice("allergy-list-it", dish=dishes[0].dish))
    lines += _do(turn, voice, "cook", True)
    return Html("\n".join(lines))


def _do(turn: Turn, voice: Voice, to: str, met: bool) -> list[str]:
    if not met:
        return []
    source = source_words(turn, "XCON-01")
    if not is_today(turn):
        return [voice("allergy-do", to=to, source=source)]
    return [
        voice("allergy-do-now", to=to, source=source),
        voice("safety-emergency", country=country(turn.zone.key)),
    ]


def _for_teller(turn: Turn, found: News) -> Html:
    """Whoever told it hears what it meets, and that it was passed on without a name."""
    voice = turn.voice
    lines: list[str] = _lines(turn, voice, found.by_need, cooks=True) or [voice("allergy-nothing-known")]
    if found.unlisted:
        lines.append(voice("allergy-unlisted", dishes=list(found.unlisted[:MOST_LINES])))
    lines.append(voice("allergy-passed-on", cooks=bool(found.by_need), urgent=is_today(turn)))
    return Html("\n".join(lines))


async def _tell_owners(turn: Turn, found: list[Met]) -> None:
    """Whoever must not eat it hears of it at once, where they have a private chat; to them alone by their need."""
    owners: dict[str, list[Met]] = {}
    for one in found:
        for who in one.owners - {turn.me, *one.cooks}:
            owners.setdefault(who, []).append(one)
    for who, dishes in owners.items():
        guest = turn.potluck.guest(who)
        voice = await turn.private_voice(guest) if guest is not None else None
        if guest is not None and voice is not None:
            lines = _lines(turn, voice, dishes, cooks=True)
            await turn.tell(guest, "allergy-new-dish", what=Html("\n".join(lines)))


async def _tell_of_dish(turn: Turn, dishes: tuple[Met, ...]) -> None:
    """A dish that is new, or whose cook has now said what is in it."""
    voice = turn.voice
    fresh = [m for m in dishes if m.promise not in turn.warned_of or not m.promise]
    if fresh:
        degree = "severe" if any(m.severe for m in fresh) else "allergy"
        head = voice("allergy-head", needs=_needs(voice, fresh), degree=degree, name="")
        lines = [head, *_lines(turn, voice, fresh, cooks=False), *_do(turn, voice, "cook", True)]
        turn.post(Html("\n".join(lines)))
    await _tell_owners(turn, [m for m in fresh if m.how in ("listed", "named")])
    host = turn.potluck.guest(turn.potluck.host)
    severe = [m for m in dishes if m.severe]
    if not severe or host is None or host.id == turn.me:
        return
    their = await turn.private_voice(host)
    if their is None and not turn.private:
        return  # it was said where the host reads it
    told = their or turn.voice_in(turn.group_language)
    head = told("allergy-head", needs=_needs(told, severe), degree="severe", name="")
    lines = [head, *_lines(turn, told, severe, cooks=True), *_do(turn, told, "host", True)]
    await turn.tell(host, "allergy-told", what=Html("\n".join(lines)))


def register(app: Registry) -> None:
    app.watch(watch)
