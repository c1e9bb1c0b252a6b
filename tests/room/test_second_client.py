"""A second client library polls the room and sends into it."""

from __future__ import annotations

import pytest
from aiogram import Bot
from aiogram.client.session.aiohttp import AiohttpSession
from aiogram.client.telegram import TelegramAPIServer
from aiogram.exceptions import TelegramBadRequest, TelegramRetryAfter
from aiogram.types import BufferedInputFile, InlineKeyboardButton, InlineKeyboardMarkup

from bot.room.faults import Fault
from bot.room.people import TINY_PNG
from bot.room.server import RoomServer
from tests.room.world import stage


async def test_another_client_library_polls_sends_edits_and_fetches_files() -> None:
    s = stage()
    async with RoomServer(s.room) as server:
        api = TelegramAPIServer(
            base=server.base_url + "{token}/{method}", file=server.base_file_url + "{token}/{path}", is_local=False
        )
        async with Bot(s.room.token, session=AiohttpSession(api=api)) as bot:
            s.room.say(s.ravi.id, s.group.id, "/list")
            (update,) = await bot.get_updates(timeout=1)
            keys = InlineKeyboardMarkup(inline_keyboard=[[InlineKeyboardButton(text="Coming", callback_data="yes")]])
            sent = await bot.send_message(s.group.id, "<b>x</b>", parse_mode="HTML", reply_markup=keys)
            s.room.press(s.ravi.id, s.group.id, sent.message_id, 0, 0)
            _, press = await bot.get_updates()
            await bot.answer_callback_query(press.callback_query.id, "noted", show_alert=True)
            edited = await sent.edit_text("y")
            picture = await bot.send_photo(s.group.id, BufferedInputFile(TINY_PNG, "x.png"), caption="p")
            fetched = await bot.download(picture.photo[-1])

            assert update.message is not None
            assert update.message.text == "/list"
            assert press.callback_query.data == "yes"
            assert edited.text == "y"
            assert fetched.read() == TINY_PNG
            with pytest.raises(TelegramBadRequest, match="message is not modified"):
                await sent.edit_text("y")
            s.room.faults.add(Fault("429", retry_after=3))
            with pytest.raises(TelegramRetryAfter):
                await bot.get_me()
