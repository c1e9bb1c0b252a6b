"""What a guest's words come to: intents become changes, and the bot says what it understood."""

from bot.understood.acting import act, say_understood
from bot.understood.context import context, place_of
from bot.understood.dishes import add_promise, ask_category, bring_words
from bot.understood.outcome import Understood

__all__ = ["Understood", "act", "add_promise", "ask_category", "bring_words", "context", "place_of", "say_understood"]
