"""What the room answers the real client library (the witness: it parses every object it is sent)."""

from __future__ import annotations

from collections.abc import AsyncIterator
from datetime import timedelta
from typing import Any

import httpx
import pytest
from telegram import (
    Bot,
    BotCommand,
    BotCommandScopeAllGroupChats,
    InlineKeyboardButton,
    InlineKeyboardMarkup,
    InputMediaPhoto,
    MenuButtonCommands,
    MessageEntity,
    ReactionTypeEmoji,
    ReplyParameters,
)
from telegram.error import BadRequest, ChatMigrated, EndPointNotFound, Forbidden, NetworkError, RetryAfter

from bot.room.faults import Fault
from bot.room.people import TINY_PNG
from tests.room.world import Stage, client, stage

# Calls by name, with values the client library itself would not let pass.
pytestmark = pytest.mark.filterwarnings("ignore:Please use")

KEYS = InlineKeyboardMarkup([[InlineKeyboardButton("Coming", callback_data="yes")]])


@pytest.fixture
async def both() -> AsyncIterator[tuple[Stage, Bot]]:
    s = stage()
    async with client(s.room) as (_, bot):
        yield s, bot


Both = tuple[Stage, Bot]


async def refused(awaitable: Any, words: str, kind: type[Exception] = BadRequest) -> None:
    with pytest.raises(kind) as caught:
        await awaitable
    assert words.lower() in str(caught.value).lower()


async def test_a_sent_message_comes_back_with_its_text_entities_and_keyboard(both: Both) -> None:
    s, bot = both

    sent = await bot.send_message(s.group.id, "\U0001f954 <b>Supper</b>", parse_mode="HTML", reply_markup=KEYS)

    assert (sent.text, sent.from_user.id, sent.chat.title) == ("\U0001f954 Supper", s.room.bot.id, "Plot 9 Supper")
    assert [(e.type, sent.parse_entity(e)) for e in sent.entities] == [("bold", "Supper")]
    assert sent.reply_markup == KEYS
    assert sent.date == s.clock.now()
    assert not sent.api_kwargs


async def test_entities_may_be_given_as_a_list(both: Both) -> None:
    s, bot = both

    sent = await bot.send_message(s.group.id, "a big b", entities=[MessageEntity("bold", 2, 3)])

    assert [sent.parse_entity(e) for e in sent.entities] == ["big"]


async def test_text_is_measured_in_code_points_after_parsing(both: Both) -> None:
    s, bot = both

    await bot.send_message(s.group.id, "<b>" + "\U0001f954" * 4096 + "</b>", parse_mode="HTML")
    await refused(bot.send_message(s.group.id, "x" * 4097), "message is too long")
    await refused(bot.send_message(s.group.id, "x" * 32769), "text is too long")
    await refused(bot.send_message(s.group.id, " \n "), "message text is empty")
    await refused(bot.send_photo(s.group.id, TINY_PNG, caption="x" * 1025), "message caption is too long")


@pytest.mark.parametrize(
    ("button", "words"),
    [
        ({"text": "x"}, "text buttons are unallowed"),
        ({"text": "", "callback_data": "a"}, "non-empty"),
        ({"text": "x", "callback_data": "é" * 33}, "button_data_invalid"),  # 66 bytes
        ({"text": "x", "callback_data": ""}, "button_data_invalid"),
        ({"text": "x", "callback_data": "a", "url": "https://a.example"}, "exactly one action"),
        ({"text": "x", "url": "no address"}, "wrong http url"),
        ({"text": "x", "url": "https://t.me/b?start=a.b"}, "start parameter"),
        ({"text": "x", "url": "https://t.me/b?start=" + "a" * 65}, "start parameter"),
        ({"text": "x", "web_app": {"url": "https://a.example"}}, "does not know web_app"),
        ({"text": "x", "callback_data": "a", "colour": "red"}, 'the field "colour"'),
    ],
)
async def test_a_button_the_platform_would_not_take_is_refused(both: Both, button: dict[str, Any], words: str) -> None:
    s, bot = both
    asked = {"chat_id": s.group.id, "text": "x", "reply_markup": {"inline_keyboard": [[button]]}}

    await refused(bot.do_api_request("sendMessage", asked), words)


async def test_64_bytes_of_data_8_in_a_row_and_100_in_all_are_the_most(both: Both) -> None:
    s, bot = both

    def grid(rows: int, columns: int) -> InlineKeyboardMarkup:
        return InlineKeyboardMarkup(
            [[InlineKeyboardButton("x", callback_data="d" * 64) for _ in range(columns)] for _ in range(rows)]
        )

    await bot.send_message(s.group.id, "x", reply_markup=grid(12, 8))
    await refused(bot.send_message(s.group.id, "x", reply_markup=grid(1, 9)), "reply markup is too long")
    await refused(bot.send_message(s.group.id, "x", reply_markup=grid(13, 8)), "reply markup is too long")


async def test_edits_are_refused_in_the_platforms_words(both: Both) -> None:
    s, bot = both
    said = s.room.say(s.ravi.id, s.group.id, "hello")
    sent = await bot.send_message(s.group.id, "one", reply_markup=KEYS)
    picture = await bot.send_photo(s.group.id, TINY_PNG, caption="look")

    await refused(
        bot.edit_message_text("one", s.group.id, sent.message_id, reply_markup=KEYS), "message is not modified"
    )
    await refused(bot.edit_message_text("x", s.group.id, 999), "message to edit not found")
    await refused(bot.edit_message_text("x", s.group.id, said.id), "message can't be edited")
    await refused(bot.edit_message_text("x", s.group.id, picture.message_id), "there is no text in the message to edit")
    await refused(bot.edit_message_caption(s.group.id, sent.message_id, caption="x"), "there is no caption")


async def test_an_edit_without_a_keyboard_takes_the_keyboard_away(both: Both) -> None:
    s, bot = both
    sent = await bot.send_message(s.group.id, "one", reply_markup=KEYS)

    edited = await bot.edit_message_text("two", s.group.id, sent.message_id)

    assert edited.reply_markup is None
    assert edited.edit_date is not None


async def test_the_bots_own_message_can_be_edited_after_a_year_but_not_deleted_after_two_days(both: Both) -> None:
    s, bot = both
    sent = await bot.send_message(s.group.id, "one")
    s.clock.set(s.clock.now() + timedelta(days=365))

    await bot.edit_message_text("two", s.group.id, sent.message_id)
    await refused(bot.delete_message(s.group.id, sent.message_id), "message can't be deleted")


async def test_chats_that_cannot_be_written_to_say_why(both: Both) -> None:
    s, bot = both
    s.room.start(s.mei.id)
    s.room.block(s.mei.id)

    await refused(bot.send_message(12345, "x"), "chat not found")
    await refused(bot.send_message(s.ravi.id, "x"), "bot can't initiate conversation with a user", Forbidden)
    await refused(bot.send_message(s.mei.id, "x"), "bot was blocked by the user", Forbidden)
    s.room.remove_bot(s.group.id)
    await refused(bot.send_message(s.group.id, "x"), "bot was kicked from the group chat", Forbidden)


async def test_a_group_the_bot_left_is_one_it_is_not_a_member_of(both: Both) -> None:
    s, bot = both

    await bot.leave_chat(s.group.id)

    await refused(bot.send_message(s.group.id, "x"), "bot is not a member of the group chat", Forbidden)


async def test_an_upgraded_group_answers_with_its_new_id(both: Both) -> None:
    s, bot = both
    new = s.room.upgrade_group(s.group.id)

    with pytest.raises(ChatMigrated) as caught:
        await bot.send_message(s.group.id, "x")

    assert caught.value.new_chat_id == new.id
    assert (await bot.send_message(new.id, "x")).chat.type == "supergroup"


async def test_pinning_needs_the_right_and_makes_a_service_message(both: Both) -> None:
    s, bot = both
    sent = await bot.send_message(s.group.id, "board")

    await bot.pin_chat_message(s.group.id, sent.message_id, disable_notification=True)

    assert (await bot.get_chat(s.group.id)).pinned_message.message_id == sent.message_id
    (update,) = await bot.get_updates()
    assert update.message.pinned_message.message_id == sent.message_id
    await bot.unpin_all_chat_messages(s.group.id)
    s.group.permissions = frozenset({"can_send_messages"})
    await refused(bot.pin_chat_message(s.group.id, sent.message_id), "not enough rights to manage pinned messages")


async def test_replies_and_topics_that_are_not_there_are_refused(both: Both) -> None:
    s, bot = both

    await refused(
        bot.send_message(s.group.id, "x", reply_parameters=ReplyParameters(99)), "message to be replied not found"
    )
    await bot.send_message(s.group.id, "x", reply_parameters=ReplyParameters(99, allow_sending_without_reply=True))
    await refused(bot.send_message(s.group.id, "x", message_thread_id=1), "message thread not found")


async def test_a_query_is_answered_once_and_in_time(both: Both) -> None:
    s, bot = both
    sent = await bot.send_message(s.group.id, "x", reply_markup=KEYS)
    first = s.room.press(s.ravi.id, s.group.id, sent.message_id, 0, 0)
    late = s.room.press(s.ravi.id, s.group.id, sent.message_id, 0, 0)

    await refused(bot.answer_callback_query(first, "x" * 201), "message_too_long")
    await bot.answer_callback_query(first, "noted")
    await refused(bot.answer_callback_query(first), "query is too old")
    s.clock.set(s.clock.now() + timedelta(hours=1))
    await refused(bot.answer_callback_query(late), "query is too old")


async def test_a_picture_and_a_document_come_back_byte_for_byte(both: Both) -> None:
    s, bot = both

    picture = await bot.send_photo(s.group.id, TINY_PNG, filename="table.png")
    paper = await bot.send_document(
        s.group.id, b"BEGIN:VCALENDAR", filename="supper.ics", caption="<i>c</i>", parse_mode="HTML"
    )

    assert bytes(await (await picture.photo[-1].get_file()).download_as_bytearray()) == TINY_PNG
    assert bytes(await (await paper.document.get_file()).download_as_bytearray()) == b"BEGIN:VCALENDAR"
    assert (paper.document.file_name, paper.caption) == ("supper.ics", "c")
    again = await bot.send_photo(s.group.id, picture.photo[-1].file_id)
    assert again.photo[-1].file_id == picture.photo[-1].file_id
    await refused(bot.send_photo(s.group.id, b"not a picture"), "image_process_failed")
    await refused(bot.send_photo(s.group.id, "https://a.example/x.png"), "failed to get HTTP URL content")


async def test_an_album_is_sent_by_attachment_names(both: Both) -> None:
    s, bot = both

    sent = await bot.send_media_group(s.group.id, [InputMediaPhoto(TINY_PNG), InputMediaPhoto(TINY_PNG, caption="two")])

    assert len({m.media_group_id for m in sent}) == 1
    assert [m.caption for m in sent] == [None, "two"]


async def test_a_bot_sets_one_reaction_from_the_fixed_list(both: Both) -> None:
    s, bot = both
    said = s.room.say(s.ravi.id, s.group.id, "hello")

    await bot.set_message_reaction(s.group.id, said.id, "\U0001f44d")

    assert s.room.log[-1].kind == "reaction"
    asked = [ReactionTypeEmoji("\U0001f44d"), ReactionTypeEmoji("\U0001f389")]
    await refused(bot.set_message_reaction(s.group.id, said.id, asked), "reactions_too_many")
    await refused(bot.set_message_reaction(s.group.id, said.id, "\U0001f954"), "reaction_invalid")


async def test_members_and_admins_are_told_as_they_are(both: Both) -> None:
    s, bot = both
    s.room.make_admin(s.group.id, quietly=True)

    statuses = [(await bot.get_chat_member(s.group.id, u.id)).status for u in (s.ines, s.ravi, s.room.bot)]
    admins = {member.user.id for member in await bot.get_chat_administrators(s.group.id)}

    assert statuses == ["creator", "member", "administrator"]
    assert admins == {s.ines.id, s.room.bot.id}
    assert await bot.get_chat_member_count(s.group.id) == 4
    s.room.start(s.mei.id)
    await refused(bot.get_chat_administrators(s.mei.id), "no administrators in the private chat")


async def test_commands_are_kept_by_scope_and_language_and_the_most_specific_is_shown(both: Both) -> None:
    s, bot = both
    await bot.set_my_commands([BotCommand("help", "Help")])
    await bot.set_my_commands([BotCommand("potluck", "Start")], scope=BotCommandScopeAllGroupChats())
    await bot.set_my_commands([BotCommand("ayuda", "Ayuda")], language_code="es")

    assert [c.command for c in await bot.get_my_commands(language_code="es")] == ["ayuda"]
    offered = s.room.profile.menu(s.group.id, False, False, s.ravi.id, "en")
    assert [c["command"] for c in offered] == ["potluck"]
    await refused(bot.set_my_commands([BotCommand("Upper", "x")]), "bot_command_invalid")


async def test_the_bots_words_about_itself_are_kept(both: Both) -> None:
    _, bot = both
    await bot.set_my_description("long")
    await bot.set_my_short_description("short")
    await bot.set_my_name("Tureen")
    await bot.set_chat_menu_button(menu_button=MenuButtonCommands())

    assert (await bot.get_my_description()).description == "long"
    assert (await bot.get_my_short_description()).short_description == "short"
    assert (await bot.get_my_name()).name == "Tureen"
    assert (await bot.get_chat_menu_button()).type == "commands"


async def test_what_the_room_does_not_know_it_refuses(both: Both) -> None:
    s, bot = both

    await refused(bot.do_api_request("sendElephant", {}), "not found", EndPointNotFound)
    asked = {"chat_id": s.group.id, "text": "only for you", "ephemeral_message_parameters": {"receiver_user_id": 1}}
    await refused(bot.do_api_request("sendMessage", asked), "does not know the parameter")
    await refused(bot.send_message(s.group.id, "*x*", parse_mode="MarkdownV2"), "unsupported parse_mode")


async def test_methods_are_read_from_the_address_a_form_json_or_multipart_and_in_any_case() -> None:
    s = stage()
    async with client(s.room) as (server, _), httpx.AsyncClient(base_url=f"{server.base_url}{s.room.token}/") as web:
        asked = {"chat_id": str(s.group.id), "text": "hello"}
        answers = [
            await web.get("SENDMESSAGE", params=asked),
            await web.post("sendmessage", data=asked),
            await web.post("sendMessage", json=asked | {"chat_id": s.group.id}),
            await web.post("sendMessage", data=asked, files={"unused": ("x.txt", b"x")}),
        ]
        wrong = await web.post(f"{server.base_url}1:wrong/getMe")
        form = "application/x-www-form-urlencoded"
        ill = [
            await web.post("sendMessage", content=b"{", headers={"content-type": "application/json"}),
            await web.post("sendMessage", content=b"chat_id=%FF", headers={"content-type": form}),
            await web.post("sendMessage", content=b"hi", headers={"content-type": "text/plain"}),
        ]

    assert [a.json()["ok"] for a in answers] == [True, True, True, False]
    assert answers[3].json()["description"] == 'Bad Request: the uploaded file "unused" is used by no parameter'
    assert (wrong.status_code, wrong.json()["description"]) == (401, "Unauthorized")
    assert [i.status_code for i in ill] == [400, 400, 400]


async def test_the_21st_message_of_a_minute_in_a_group_waits_and_private_chats_do_not(both: Both) -> None:
    s, bot = both
    s.room.start(s.mei.id)
    for i in range(20):
        await bot.send_message(s.group.id, str(i))
        s.clock.set(s.clock.now() + timedelta(seconds=1))

    with pytest.raises(RetryAfter) as caught:
        await bot.send_message(s.group.id, "one too many")

    assert caught.value._retry_after.total_seconds() == 40  # the first was sent 20 s ago: 60 - 20
    await bot.send_message(s.mei.id, "still fine")
    s.clock.set(s.clock.now() + timedelta(seconds=40))
    await bot.send_message(s.group.id, "now it may")


async def test_faults_on_order_hit_the_next_calls_and_never_getupdates(both: Both) -> None:
    s, bot = both
    s.room.faults.add(Fault("429", retry_after=7))
    s.room.faults.add(Fault("500", count=1))
    s.room.faults.add(Fault("403"))
    s.room.faults.add(Fault("400", method="getMe"))

    assert await bot.get_updates() == ()
    with pytest.raises(RetryAfter):
        await bot.send_message(s.group.id, "x")
    await refused(bot.send_message(s.group.id, "x"), "Internal Server Error", NetworkError)
    await refused(bot.send_message(s.group.id, "x"), "kicked", Forbidden)
    await bot.send_message(s.group.id, "x")
    await refused(bot.get_me(), "fault")
    assert not s.room.faults.queue


@pytest.mark.parametrize(("stored", "said"), [(True, 1), (False, 0)])
async def test_a_lost_answer_breaks_the_line_whether_or_not_the_message_arrived(
    both: Both, stored: bool, said: int
) -> None:
    s, bot = both
    s.room.faults.add(Fault("timeout", stored=stored))

    with pytest.raises(NetworkError):
        await bot.send_message(s.group.id, "x")

    assert len(s.group.messages) == said
    await bot.send_message(s.group.id, "the next one passes")


async def test_a_migration_on_order_upgrades_the_group_under_the_call(both: Both) -> None:
    s, bot = both
    s.room.faults.add(Fault("migrate"))

    with pytest.raises(ChatMigrated) as caught:
        await bot.send_message(s.group.id, "x")

    kinds = [(u.message.migrate_to_chat_id, u.message.migrate_from_chat_id) for u in await bot.get_updates()]
    assert kinds == [(caught.value.new_chat_id, None), (None, s.group.id)]
