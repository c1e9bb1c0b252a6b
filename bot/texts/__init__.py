"""Every sentence the bot says, as data: Fluent files in `bot/texts/<language>/`.

A `Voice` speaks one language, on one wall clock, in one system of units. It gives HTML for the chat
(`voice(key, ...)`) or plain text (`voice.plain(key, ...)`), escaping whatever people typed.
"""

from bot.texts.catalogue import Catalogue, TextFault, languages
from bot.texts.voice import Html, Voice, visible

__all__ = ["Catalogue", "Html", "TextFault", "Voice", "languages", "visible"]
