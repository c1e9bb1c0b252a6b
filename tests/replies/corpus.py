"""The labelled sentences and how a reading is compared with a label.

A line is `place<TAB>text<TAB>expected`. Places: board, bot, chat (the open group), person (below somebody else's
message), q:<kind> (below a question of the bot's); "host:" before it
is the host; "=2a1c" behind it is the party known so far (the answer was
yes), "+slaw" a promise of slaw for 12 made by the writer, "+bar" a potato bar. Expected are pieces between ";":

    yes no maybe, no@pat          the writer's answer, a named guest's
    party=2a1c party+1a party-2c  a: adults, t: teens, c: children, d: toddlers, i: infants
    need=peanut! need=milk~ need=vegan*2 need=egg!@pat   "!" an allergy, "~" an intolerance; gone=vegan; noneeds
    bring=slaw|salad|12|2 dozen   dish, category, servings, quantity; vague=main
    need "!!" is a severe allergy; pregnant; heat= frozen= with= by= beside a bring
    reschedule= move= size= kitchen= are the host's
    change=p1|20 drop=p1 top=chives add=Ravi's mother ask=when late=20 undo

"near" is the open group right below the board ("chat": long after it).

"-" is nothing at all. "?" before it: a question is the right answer (or silence, where nothing follows).
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from planning import replies
from planning.potluck import Answer, Party
from planning.replies import Intent, Reading, ReplyContext, read
from planning.replies.spanish.lexicon import PLAIN, expand

HERE = Path(__file__).parent
_LETTER = {"a": "adults", "t": "teens", "c": "children", "d": "toddlers", "i": "infants"}
NOW = datetime(2027, 9, 10, 14, tzinfo=UTC)
SLAW_FOR = 12
"""How many servings the slaw of the places is for: doubled, it is for 24."""
GUESTS = (("ravi", "Ravi"), ("pat", "Pat"), ("mei", "Mei Lin"))


@dataclass(frozen=True)
class Line:
    file: str
    number: int
    place: str
    text: str
    expected: frozenset[tuple[str, str]]
    asks: bool

    @property
    def addressed(self) -> bool:
        return not self.place.startswith(("chat", "near", "person"))


def party_of(word: str) -> Party:
    counts = {_LETTER[letter]: int(n) for n, letter in re.findall(r"(\d+)([atcdi])", word)}
    return Party(**({"adults": 0} | counts))


def party_word(party: Party) -> str:
    return "".join(f"{abs(n)}{k}" for k, name in _LETTER.items() if (n := getattr(party, name)))


def context_of(place: str) -> ReplyContext:
    host, place = place.startswith("host:"), place.removeprefix("host:")
    party = (re.findall(r"=([0-9a-z]+)", place) or [""])[0]
    where, *extras = re.sub(r"=[0-9a-z]+", "", place).split("+")
    kinds: dict[str, str | None] = {"chat": None, "near": None, "person": "person", "board": "board", "bot": "bot"}
    return ReplyContext(
        "ravi", "Ravi", f"question:{where[2:]}" if where.startswith("q:") else kinds[where],
        guests=GUESTS,
        own_promises=(("p1", "slaw"),) if "slaw" in extras else (),
        party=party_of(party) if party else None,
        answer=Answer.YES if party or extras else Answer.NONE,
        toppings=("sour cream", "chives", "bacon bits", "grated cheese") if "bar" in extras else (),
        bar_base="baked potato" if "bar" in extras else "",
        host=host,
        now=NOW if host else None,
        near_board=where == "near",
    )  # fmt: skip


def party_told(value: str, known: Party | None) -> str:
    """The party it comes to: "+1a" from somebody known to be two is three, from somebody nobody knows of is two."""
    sign = value[:1] if value[:1] in ("+", "-") else ""
    told = party_of(value.removeprefix(sign))
    if not sign:
        return party_word(told)
    before, times = known or Party(adults=1), -1 if sign == "-" else 1
    after = {name: getattr(before, name) + times * getattr(told, name) for name in _LETTER.values()}
    if min(after.values()) < 0:
        return sign + party_word(told)
    return party_word(Party(**after))


def pieces_of(expected: str) -> frozenset[tuple[str, str]]:
    found = set()
    for piece in expected.split(";"):
        piece = piece.strip()
        if not piece or piece == "-":
            continue
        kind, _, value = piece.partition("=") if "=" in piece else (piece, "", "")
        if (relative := re.match(r"party([+-])(.+)", piece)) is not None:
            kind, value = "party", relative[1] + relative[2]
        if kind.split("@")[0] in ("yes", "no", "maybe"):
            kind, value = "answer", kind
        if kind == "need":
            kind = "needs"
        if kind == "bring":
            dish, category, servings, quantity = (value.split("|") + [""] * 4)[:4]
            value = "|".join((dish.lower(), category, servings, quantity.lower()))
        found.add((kind, value))
    return frozenset(found)


FROZEN = "corpus_frozen*.tsv"
"""Written by somebody who has not seen the reader; looked at only to report, never to mend."""


def lines(pattern: str = "corpus_*.tsv") -> Iterator[Line]:
    """The labelled lines of the files of that name; the frozen ones only when they are asked for."""
    for path in sorted(HERE.glob(pattern)):
        if path.match(FROZEN) and not pattern.startswith("corpus_frozen"):
            continue
        for number, row in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
            if not row.strip() or row.startswith("#"):
                continue
            place, text, expected = row.split("\t")
            asks = expected.startswith("?")
            yield Line(path.name, number, place, text.replace("\\n", "\n"), pieces_of(expected.lstrip("?")), asks)


def said(intent: Intent) -> list[tuple[str, str]]:
    """An intent in the words of a label; an implied yes is one that is right when expected, never wrong."""
    match intent:
        case replies.SetAnswer():
            return [("answer", intent.answer.value + ("" if intent.who == "ravi" else f"@{intent.who}"))]
        case replies.SetParty():
            sign = "" if not intent.relative else "-" if intent.party.total < 0 else "+"
            return [("party", sign + party_word(intent.party))]
        case replies.SetNeeds():
            if intent.cleared and not intent.needs:
                return [("noneeds", "")]
            mark = {"allergy": "!", "severe allergy": "!!", "intolerance": "~"}
            return [
                ("gone" if intent.cleared else "needs",
                 n.need + ("" if intent.cleared else mark.get(n.severity, "")) + (f"*{n.count}" if n.count > 1 else "")
                 + ("" if intent.who == "ravi" else f"@{intent.who}"))
                for n in intent.needs
            ]  # fmt: skip
        case replies.AddPromise():
            if intent.vague and intent.dish not in ("drinks",):
                return [("vague", intent.category)]
            servings = f"{intent.servings:g}" if intent.servings else ""
            amount = (intent.quantity or "").lower()
            said_of = [("bring", "|".join((intent.dish.lower(), intent.category, servings, amount)))]
            if intent.heat_text:
                said_of.append(("heat", intent.heat_text.lower()))
            if intent.frozen_lb:
                said_of.append(("frozen", f"{intent.frozen_lb:g}"))
            if intent.with_guest:
                said_of.append(("with", intent.with_guest))
            if intent.by is not None:
                said_of.append(("by", intent.by or intent.by_name or ""))
            return said_of
        case replies.ChangePromise():
            size = intent.servings or (intent.factor or 0) * SLAW_FOR
            return [("change", intent.promise + (f"|{size:g}" if size else ""))]
        case replies.DropPromise():
            return [("drop", intent.promise or "")]
        case replies.TakeTopping():
            return [("top", intent.name)]
        case replies.AddPerson():
            return [("add", intent.name)]
        case replies.Ask():
            return [("ask", intent.topic)]
        case replies.Late():
            return [("late", str(intent.minutes or ""))]
        case replies.SetPregnant():
            return [("pregnant", "" if intent.pregnant else "no")]
        case replies.Reschedule():
            return [("reschedule", intent.words.lower())]
        case replies.MoveTo():
            return [("move", intent.place.lower())]
        case replies.Resize():
            return [("size", str(intent.people))]
        case replies.KitchenSays():
            return [("kitchen", intent.words.lower())]
        case replies.Undo():
            return [("undo", "")]
    raise AssertionError(intent)


@dataclass(frozen=True)
class Outcome:
    line: Line
    reading: Reading
    right: frozenset[tuple[str, str]]
    wrong: frozenset[tuple[str, str]]
    missed: frozenset[tuple[str, str]]
    silent: frozenset[tuple[str, str]]
    """What is done without a question, of all that was read."""


def _alike(pieces: Collection[tuple[str, str]]) -> set[tuple[str, str]]:
    """Spanish labels with amounts in figures ("dos barras" is "2 barras") and diets by one name."""
    made = set()
    for kind, value in pieces:
        if kind == "bring":
            dish, category, servings, quantity = value.split("|")
            figures = [_FIGURES.get(w) or expand().get(w, w) for w in quantity.translate(PLAIN).split()]
            value = "|".join((dish, category, servings, " ".join(figures)))
        if kind == "needs" and value.split("*")[0].rstrip("!~") == "pork":
            value = value.replace("pork", "pork-free")
        made.add((kind, value))
    return made


_FIGURES = {"un": "1", "una": "1"}


def _people(pieces: Collection[tuple[str, str]], known: Party | None) -> Party | None:
    """How many come in all, whether "my friend" is one more of the party or a guest of their own; None where nothing
    of the sort was said."""
    told = [party_of(value) for kind, value in pieces if kind == "party"]
    added = sum(kind == "add" for kind, _ in pieces)
    if not told and not added:
        return None
    base = told[0] if told else known or Party(adults=1)
    return replace(base, adults=base.adults + added)


def _come_to(pieces: Collection[tuple[str, str]], known: Party | None) -> set[tuple[str, str]]:
    """The same with every party as what it comes to, and "thirty pieces" as thirty."""
    made = set()
    for kind, value in pieces:
        if kind == "party":
            value = party_told(value, known)
        made.add((kind, value.removesuffix(" pieces").removesuffix(" piece") if kind == "bring" else value))
    return made


def outcome(line: Line) -> Outcome:
    """What was read right, wrong and not at all."""
    language = "es" if line.file.startswith("spanish") else "en"
    return outcome_of(line, read(line.text, replace(context_of(line.place), language=language)))


def outcome_of(line: Line, reading: Reading) -> Outcome:
    """A reading compared with the line's label."""
    got: set[tuple[str, str]] = set()
    implied: set[tuple[str, str]] = set()
    silent: set[tuple[str, str]] = set()
    for intent in reading.intents:
        target = implied if isinstance(intent, replies.SetAnswer) and intent.implied else got
        target.update(said(intent))
        if reading.sure or intent in reading.now:
            silent.update(said(intent))
    expected = set(line.expected)
    if line.file.startswith("spanish"):
        got, implied, silent, expected = (_alike(pieces) for pieces in (got, implied, silent, expected))
    known = context_of(line.place).party
    got, implied, silent, expected = (_come_to(pieces, known) for pieces in (got, implied, silent, expected))
    if _people(got, known) == _people(expected, known) is not None:
        got = {p for p in got if p[0] not in ("party", "add")} | {p for p in expected if p[0] in ("party", "add")}
    swaps = {i.dish.lower() for i in reading.intents if isinstance(i, replies.ChangePromise) and i.dish}
    named = {value.split("|")[0] for kind, value in expected if kind == "bring"}
    if ("drop", "p1") in expected and ("change", "p1") in got and swaps & named:
        # a swap is one dish given up and another brought, in one change or in two
        swapped = {p for p in expected if p[0] == "bring" and p[1].split("|")[0] in swaps} | {("drop", "p1")}
        got = got - {("change", "p1")} | swapped
        silent = silent - {("change", "p1")} | (swapped if ("change", "p1") in silent else set())
    yes = ("answer", "yes")
    if yes in got - expected and any(kind in ("bring", "party", "vague", "top") for kind, _ in expected & got):
        got, implied = got - {yes}, implied | {yes}  # it comes to a yes, whether or not the words said one, too
    right = (got | implied) & expected
    return Outcome(
        line, reading, frozenset(right), frozenset(got - expected), frozenset(expected - right), frozenset(silent)
    )
