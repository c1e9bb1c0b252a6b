"""What a sentence can ask for, and who said it where."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime
from typing import ClassVar

from planning.potluck import Answer, Need, Party, Say

__all__ = [
    "TOPICS", "AddPerson", "AddPromise", "Ask", "CallOff", "ChangePromise", "DropPromise", "Intent", "KitchenSays",
    "Late",
    "MoveTo", "Reading", "ReplyContext", "Reschedule", "Resize", "SetAnswer", "SetNeeds", "SetParty", "SetPregnant",
    "TakeTopping", "Undo",
]  # fmt: skip


@dataclass(frozen=True)
class Intent:
    """`start` and `end` are the characters of the message it was read from (both 0: the whole of it);
    `confidence` is between 0 and 1."""

    start: int = field(default=0, kw_only=True)
    end: int = field(default=0, kw_only=True)
    confidence: float = field(default=0.9, kw_only=True)
    also: tuple[tuple[int, int], ...] = field(default=(), kw_only=True)
    """Further characters of the message it was read from ("4 of us" - "my daughter's 15")."""
    kind: ClassVar[str]
    """A short word for the sort of intent, used in text keys and reports."""


@dataclass(frozen=True)
class SetAnswer(Intent):
    """`who` is a guest id. `implied` means nobody said "yes", but "3 of us" or "I'll bring slaw" comes to that."""

    kind = "answer"
    who: str
    answer: Answer
    conditional: bool = False
    implied: bool = False
    unknown_name: str | None = None
    """A name the group does not know (then `who` is "")."""


@dataclass(frozen=True)
class SetParty(Intent):
    """The whole party, or with `relative` how many more of each (negative: fewer)."""

    kind = "party"
    who: str
    party: Party
    relative: bool = False


def spans_of(intent: Intent) -> tuple[tuple[int, int], ...]:
    """All characters of the message an intent was read from."""
    return ((intent.start, intent.end), *intent.also)


@dataclass(frozen=True)
class SetNeeds(Intent):
    """Diets and allergies; a need's severity may be "severe allergy".

    `cleared` with no needs: there are none; with needs: these no longer hold.
    `member` is whose it is, if not the writer's own ("daughter")."""

    kind = "needs"
    who: str
    needs: tuple[Need, ...] = ()
    cleared: bool = False
    member: str | None = None


@dataclass(frozen=True)
class SetPregnant(Intent):
    """Somebody of that guest's party is pregnant, or is not (any more)."""

    kind = "pregnant"
    who: str
    pregnant: bool
    member: str | None = None


@dataclass(frozen=True)
class AddPromise(Intent):
    """`category` "" when nobody can tell; `vague` when it names no dish ("something", "a main")."""

    kind = "promise"
    dish: str
    category: str = ""
    servings: float | None = None
    quantity: str | None = None
    conditional: bool = False
    store_bought: bool = False
    vague: bool = False
    for_all: bool = False
    """ "Enough for everybody": as many servings as people come."""
    heat_text: str | None = None
    """What was said of its cooking ("50 min at 375"), as typed, one step after the other."""
    contents: tuple[str, ...] = ()
    """What was said to be in it, or not to be ("milk", "no nuts")."""
    frozen_lb: float | None = None
    """How many pounds of it come frozen."""
    with_guest: str | None = None
    """The id of a guest who brings it together with the writer."""
    by: str | None = None
    """The id of another guest who brings it ("" for one the group does not know: then `by_name`)."""
    by_name: str | None = None


@dataclass(frozen=True)
class ChangePromise(Intent):
    """What stays None stays as it was; `factor` multiplies the servings ("double it")."""

    kind = "change"
    promise: str
    servings: float | None = None
    quantity: str | None = None
    dish: str | None = None
    category: str | None = None
    factor: float | None = None
    for_all: bool = False
    """"Enough for everybody": as many servings as people come."""


@dataclass(frozen=True)
class DropPromise(Intent):
    """`promise` is None when it isn't clear which one."""

    kind = "drop"
    promise: str | None
    dish: str = ""
    to: str | None = None
    """The id of the guest who shall bring it instead."""


@dataclass(frozen=True)
class TakeTopping(Intent):
    kind = "topping"
    name: str


@dataclass(frozen=True)
class AddPerson(Intent):
    """Somebody without an account, coming with the writer's knowledge ("Ravi's mother")."""

    kind = "person"
    name: str
    party: Party = field(default_factory=Party)


TOPICS = (
    "missing", "when", "where", "who-brings", "can-eat", "oven", "what-should-i-bring", "my-list", "who-comes", "host",
    "why",
)  # fmt: skip


@dataclass(frozen=True)
class Ask(Intent):
    """`topic` is one of TOPICS ("host": what only the host can know, "why": why the bot did what it did); `about` a
    need, a dish or a guest's name."""

    kind = "ask"
    topic: str
    about: str = ""


@dataclass(frozen=True)
class Late(Intent):
    """`minutes` None when they didn't say how late; `at` is the hour they come at, in words ("4:30pm")."""

    kind = "late"
    minutes: int | None = None
    at: str | None = None


@dataclass(frozen=True)
class Reschedule(Intent):
    """The host moves the potluck; `words` say to when ("Sunday 19 Sep at 4pm")."""

    kind = "reschedule"
    words: str


@dataclass(frozen=True)
class MoveTo(Intent):
    """The host names another place; `setting` is "indoor" or "outdoor" where the words say so."""

    kind = "move"
    place: str
    setting: str = ""


@dataclass(frozen=True)
class Resize(Intent):
    """How many people the host reckons with in all."""

    kind = "size"
    people: int


@dataclass(frozen=True)
class CallOff(Intent):
    """The host says that there will be no potluck: always asked about before anything happens."""

    kind = "cancel"


@dataclass(frozen=True)
class KitchenSays(Intent):
    """What the host has to cook with ("one oven, two racks")."""

    kind = "kitchen"
    words: str


@dataclass(frozen=True)
class Undo(Intent):
    """The writer's own last change was wrong."""

    kind = "undo"


@dataclass(frozen=True)
class ReplyContext:
    """Who writes, below what, and what the bot knows about them.

    `replying_to` is "board", "bot" (another message of the bot, or a private chat with it), "question:<kind>"
    (kinds: answer, people, diets, bring, servings, yes-no), "person" (somebody else's message) or None: the open
    chatter of the group. `starts_at` and `replied_text` may be left out.
    """

    writer: str
    writer_name: str = ""
    replying_to: str | None = None
    guests: tuple[tuple[str, str], ...] = ()
    own_promises: tuple[tuple[str, str], ...] = ()
    all_promises: tuple[tuple[str, str], ...] = ()
    party: Party | None = None
    answer: Answer = Answer.NONE
    toppings: tuple[str, ...] = ()
    bar_base: str = ""
    now: datetime | None = None
    timezone: str = "UTC"
    host: bool = False
    starts_at: datetime | None = None
    replied_text: str = ""
    language: str = "en"
    near_board: bool = False
    """Whether the group was asked just before: only a few messages stand between the board and this one."""
    today: bool = False
    """Whether it is the potluck's day: what the group asks then is mostly about it."""
    needs: tuple[str, ...] = ()
    """What is noted of the writer's party: taking all of it back is asked about."""

    @property
    def addressed(self) -> bool:
        """Whether the message was written to the bot."""
        return self.replying_to is not None and self.replying_to != "person"

    @property
    def asked(self) -> str | None:
        """The kind of question of the bot's this is below."""
        kind = self.replying_to or ""
        return kind.removeprefix("question:") if kind.startswith("question:") else None

    def own_promise_in(self, text: str) -> str | None:
        """The writer's promise named in a sentence's plain words (which begin and end with a space)."""
        for promise, dish in self.own_promises:
            if any(f" {word} " in text for word in dish.casefold().split() if len(word) > 2):
                return promise
        return None

    @property
    def name(self) -> str:
        return self.writer_name or dict(self.guests).get(self.writer, "")


@dataclass(frozen=True)
class Reading:
    """`sure`: act at once. Not sure and a `question`: ask it, and act on `intents` if the answer is yes.
    Neither intents nor a question: stay silent. `now` are those of the intents that are sure all the same and need not
    wait for the answer. `why` explains the decision."""

    intents: tuple[Intent, ...] = ()
    unread: tuple[str, ...] = field(default=(), kw_only=True)
    """Sentences beside those that were read which look meant for us too and came to nothing, as typed."""
    overheard: bool = field(default=False, kw_only=True)
    """Said to nobody in the open group, and taken as if it were written to the bot."""
    sure: bool = False
    question: Say | None = None
    now: tuple[Intent, ...] = ()
    why: Say = field(default_factory=lambda: Say("reply-why-nothing", {"reason": "none"}))
