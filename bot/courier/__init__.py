"""What leaves: posts in order, boards, reminders, all within the platform's limits."""

from bot.courier.calls import reply_markup
from bot.courier.courier import Courier
from bot.courier.render import Drawn, ReminderCase, Renderer

__all__ = ["Courier", "Drawn", "ReminderCase", "Renderer", "reply_markup"]
