"""A small bot on the real client library, enough to rehearse with: a board, a button, a link, a reminder."""

from __future__ import annotations

import asyncio
from datetime import datetime, timedelta
from typing import Any

from telegram import InlineKeyboardButton, InlineKeyboardMarkup, Update
from telegram.ext import Application, CallbackQueryHandler, CommandHandler, MessageHandler, filters

from bot.room.player import BotSetup


class FakeBot:
    """`shelf` is what outlives the process; `due_at` the one reminder it knows."""

    def __init__(self, setup: BotSetup, shelf: dict[str, Any]) -> None:
        self.setup = setup
        self.shelf = shelf
        self.busy = 0
        self.waiting = 0
        self.kinds: dict[tuple[int, int], str] = {}
        self.tasks: set[asyncio.Task[None]] = set()
        self.app = (
            Application.builder().token(setup.token).base_url(setup.base_url).base_file_url(setup.base_file_url).build()
        )
        self.app.add_handler(CommandHandler("board", self.counted(self.board)))
        self.app.add_handler(CommandHandler("start", self.counted(self.started)))
        self.app.add_handler(CommandHandler("later", self.counted(self.later)))
        self.app.add_handler(CommandHandler("slow", self.counted(self.slow)))
        self.app.add_handler(CallbackQueryHandler(self.counted(self.pressed)))
        self.app.add_handler(MessageHandler(filters.TEXT, self.counted(self.heard)))

    def counted(self, handler: Any) -> Any:
        async def run(update: Update, context: Any) -> None:
            self.busy += 1
            try:
                await handler(update)
            finally:
                self.busy -= 1

        return run

    async def board(self, update: Update) -> None:
        link = f"https://t.me/{self.setup.username}?start=needs_7"
        keys = InlineKeyboardMarkup(
            [[InlineKeyboardButton("Coming", callback_data="yes"), InlineKeyboardButton("My needs", url=link)]]
        )
        sent = await update.effective_chat.send_message("<b>Supper</b>, 0 coming", parse_mode="HTML", reply_markup=keys)
        await sent.pin(disable_notification=True)

    async def pressed(self, update: Update) -> None:
        count = self.shelf["coming"] = self.shelf.get("coming", 0) + 1
        await update.callback_query.answer("Noted")
        keys = update.callback_query.message.reply_markup
        await update.callback_query.edit_message_text(f"<b>Supper</b>, {count} coming", "HTML", reply_markup=keys)

    async def started(self, update: Update) -> None:
        await update.effective_message.reply_text(f"opened with {update.effective_message.text}")

    async def heard(self, update: Update) -> None:
        await update.effective_message.reply_text(f"heard {update.effective_message.text}")

    async def later(self, update: Update) -> None:
        self.shelf["due"] = self.setup.clock.now() + timedelta(hours=2)
        self.remind(update.effective_chat.id)

    def remind(self, chat_id: int) -> None:
        async def run() -> None:
            await self.setup.clock.sleep_until(self.shelf["due"], schedule=True)
            self.busy += 1
            sent = await self.app.bot.send_message(chat_id, "time to preheat")
            self.kinds[chat_id, sent.message_id] = "preheat"
            self.shelf.pop("due")
            self.busy -= 1

        self.keep(run())

    async def slow(self, update: Update) -> None:
        async def run() -> None:
            self.waiting += 1
            await self.setup.clock.sleep(30)
            await update.effective_message.reply_text("half a minute later")
            self.waiting -= 1

        self.keep(run())

    def keep(self, running: Any) -> None:
        task = asyncio.ensure_future(running)
        self.tasks.add(task)
        task.add_done_callback(self.tasks.discard)

    async def start(self) -> None:
        await self.app.initialize()
        await self.app.start()
        await self.app.updater.start_polling(poll_interval=0, allowed_updates=Update.ALL_TYPES)

    async def stop(self) -> None:
        await self.app.updater.stop()
        await self.app.stop()
        await self.kill_tasks()
        await self.app.shutdown()

    async def kill_tasks(self) -> None:
        for task in list(self.tasks):
            task.cancel()
        await asyncio.gather(*self.tasks, return_exceptions=True)

    async def kill(self) -> None:
        await self.stop()

    def quiet(self) -> bool:
        # A reminder that was just woken is not counted yet; its due time has come.
        due = self.shelf.get("due")
        late = due is not None and due <= self.setup.clock.now()
        return not (self.busy or late or self.app.update_queue.qsize())

    def waiting_to_send(self) -> bool:
        return bool(self.waiting)

    def due(self) -> datetime | None:
        return self.shelf.get("due")

    def reminder_kind(self, chat_id: int, message_id: int) -> str | None:
        return self.kinds.get((chat_id, message_id))
