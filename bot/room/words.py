"""The page's own labels, from the same texts as everything the bot says."""

from __future__ import annotations

from functools import cache

from bot.texts import Catalogue, Voice, languages

PREFIX = "room-"
FACTS = ("name", "n", "of", "text")
"""What the page itself puts into a label: the text goes out with "{name}" where the name will stand."""


def spoken(wanted: str | None) -> str:
    """A language we have, the nearest to the one asked for ("es-MX" gets "es"); English for any other."""
    short = (wanted or "").lower().split("-")[0].split("_")[0]
    return short if short in languages() else "en"


@cache
def page_words(language: str) -> dict[str, str]:
    """Key without its prefix -> label."""
    voice = Voice(language)
    stands = {name: f"{{{name}}}" for name in FACTS}
    keys = (k for k in Catalogue(language).keys if k.startswith(PREFIX) and k != "room-deed")
    return {key.removeprefix(PREFIX): str(voice.plain(key, **stands)) for key in keys}
