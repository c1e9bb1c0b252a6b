"""The whole chat against a simple model, in any interleaving: `ChatMachine`, for hypothesis to drive.

The model knows who answered what and how many dishes each guest brings; after every step the stored
potlucks must agree with it, whoever pressed or wrote what, where, twice, at once or out of order.
"""

from __future__ import annotations

import argparse
import asyncio
from dataclasses import dataclass, field
from typing import Any

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, rule, run_state_machine_as_test

from planning.potluck import Answer
from tests.faults.chat import Chat
from tests.faults.table import Row

HERE, THERE = -1001, -1002
GROUPS = (HERE, THERE)
HOST = 101
PEOPLE = (101, 102, 103, 104)
PRESSED = {"yes": Answer.YES, "maybe": Answer.MAYBE, "no": Answer.NO}
DISHES = ("lasagna", "potato salad", "coleslaw", "brownies")

groups = st.sampled_from(GROUPS)
people = st.sampled_from(PEOPLE)
pressed = st.sampled_from(sorted(PRESSED))


@dataclass
class Model:
    answers: dict[int, Answer] = field(default_factory=dict)
    dishes: dict[int, int] = field(default_factory=dict)


class ChatMachine(RuleBasedStateMachine):
    def __init__(self) -> None:
        super().__init__()
        self.loop = asyncio.new_event_loop()
        self.chat: Chat = self.run(Chat.open(*GROUPS))
        self.models = {g: Model({HOST: Answer.YES}) for g in GROUPS}
        self.revisions = dict.fromkeys(GROUPS, 0)
        self.taken: list[dict[str, Any]] = []

    def run(self, work: Any) -> Any:
        return self.loop.run_until_complete(work)

    def teardown(self) -> None:
        self.run(self.chat.close())
        self.loop.close()

    def take(self, *updates: dict[str, Any]) -> None:
        self.taken += updates
        self.run(self.chat.take(*updates))

    def potluck(self, group: int) -> Any:
        stored = self.run(self.chat.current(group))
        assert stored is not None
        return stored.potluck

    def button(self, group: int, said: str) -> str:
        """A board's answer button, as the board of this group carries it."""
        data = self.run(self.chat.buttons(group))
        return next(d for d in data if d.split(".")[1] == "ans" and d.split(".")[3] == said)

    @initialize()
    def opened(self) -> None:
        self.take(*(self.chat.words(g, HOST, "/potluck in 8 days 5pm, about 24 people, at the hut") for g in GROUPS))

    # --- what people do ---

    @rule(group=groups, person=people, said=pressed)
    def somebody_answers(self, group: int, person: int, said: str) -> None:
        self.take(self.chat.press(group, person, self.button(group, said)))
        self.models[group].answers[person] = PRESSED[said]

    @rule(group=groups, said=st.lists(pressed, min_size=4, max_size=4))
    def all_answer_at_once(self, group: int, said: list[str]) -> None:
        self.take(*(self.chat.press(group, p, self.button(group, s)) for p, s in zip(PEOPLE, said, strict=True)))
        for person, answer in zip(PEOPLE, said, strict=True):
            self.models[group].answers[person] = PRESSED[answer]

    @rule(group=groups, person=people, dish=st.sampled_from(DISHES), servings=st.integers(2, 30))
    def somebody_brings(self, group: int, person: int, dish: str, servings: int) -> None:
        model = self.models[group]
        self.take(self.chat.words(group, person, f"/bring {dish} for {servings}"))
        stored = self.potluck(group)
        brought = len(stored.promises_of(str(person)))
        # The same dish again may be asked about first; never does it vanish, and never come two.
        assert brought - model.dishes.get(person, 0) in (0, 1)
        assert brought > 0
        model.dishes[person] = brought
        guest = stored.guest(str(person))
        assert guest.answer in (Answer.YES, model.answers.get(person, Answer.NONE))
        if guest.answer is not Answer.NONE:
            model.answers[person] = guest.answer

    @rule(group=groups, one=people, other=people, dish=st.sampled_from(DISHES), said=pressed)
    def two_people_at_the_same_moment(self, group: int, one: int, other: int, dish: str, said: str) -> None:
        if one == other:
            return
        press = self.chat.press(group, one, self.button(group, said))
        self.take(press, self.chat.words(group, other, f"/bring {dish} for 8"))
        model, stored = self.models[group], self.potluck(group)
        model.answers[one] = PRESSED[said]
        model.dishes[other] = len(stored.promises_of(str(other)))
        if (answer := stored.guest(str(other)).answer) is not Answer.NONE:
            model.answers[other] = answer

    # --- what the platform and strangers do ---

    @rule(data=st.data())
    def an_update_comes_again(self, data: st.DataObject) -> None:
        self.take_quietly(data.draw(st.sampled_from(self.taken)))

    @rule(data=st.data(), person=people, group=groups)
    def a_button_of_another_group_is_pressed_here(self, data: st.DataObject, person: int, group: int) -> None:
        other = next(g for g in GROUPS if g != group)
        buttons = self.run(self.chat.buttons(other))
        self.take_quietly(self.chat.press(group, person, data.draw(st.sampled_from(buttons))))

    @rule(data=st.data(), person=people, group=groups, place=st.integers(0, 70), letter=st.sampled_from("a.,0Z-"))
    def a_forged_button_is_pressed(self, data: st.DataObject, person: int, group: int, place: int, letter: str) -> None:
        real = data.draw(st.sampled_from(self.run(self.chat.buttons(group))))
        forged = real[: place % len(real)] + letter + real[place % len(real) + 1 :]
        if forged != real:
            self.take_quietly(self.chat.press(group, person, forged))

    def take_quietly(self, update: dict[str, Any]) -> None:
        """Nothing may change by it, anywhere, and nothing be said."""
        before = {g: self.run(self.chat.current(g)) for g in GROUPS}
        posts = len(self.run(self.chat.store.pending_posts(100_000)))
        self.run(self.chat.take(update))
        assert {g: self.run(self.chat.current(g)) for g in GROUPS} == before
        assert len(self.run(self.chat.store.pending_posts(100_000))) == posts

    # --- what is always so ---

    @invariant()
    def what_is_stored_is_what_people_said(self) -> None:
        for group, model in self.models.items():
            stored = self.run(self.chat.current(group))
            if stored is None:
                continue
            said = {int(g.id): g.answer for g in stored.potluck.guests if g.answer is not Answer.NONE}
            assert said == model.answers
            assert {p: len(stored.potluck.promises_of(str(p))) for p in model.dishes} == model.dishes
            assert len(stored.potluck.promises) == sum(model.dishes.values())

    @invariant()
    def revisions_never_go_back(self) -> None:
        for group in GROUPS:
            stored = self.run(self.chat.current(group))
            if stored is not None:
                assert stored.revision >= self.revisions[group]
                self.revisions[group] = stored.revision

    @invariant()
    def the_board_counts_who_comes(self) -> None:
        for group, model in self.models.items():
            if self.run(self.chat.current(group)) is not None:
                coming = sum(1 for a in model.answers.values() if a is Answer.YES)
                assert f"Coming: {coming}" in self.run(self.chat.board(group)).replace("<b>", "")

    @invariant()
    def nothing_went_wrong_inside(self) -> None:
        assert self.chat.dispatcher.failed == []

    @invariant()
    def every_press_is_acknowledged(self) -> None:
        queries = {u["callback_query"]["id"] for u in self.taken if "callback_query" in u}
        assert queries <= set(self.chat.bot.answers)


async def rows(args: argparse.Namespace) -> list[Row]:
    if args.database == "postgresql":
        return []
    played = max(1, args.examples // 10)
    how = settings(
        max_examples=played, stateful_step_count=40, deadline=None, database=None,
        suppress_health_check=list(HealthCheck),
    )  # fmt: skip
    await asyncio.to_thread(run_state_machine_as_test, ChatMachine, settings=how)
    return [
        Row("any order", "SQLite", f"{played} random chats of up to 40 steps in two groups, against a model", 0, 0, 0)
    ]
