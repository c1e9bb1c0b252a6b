"""What is bought, in the reader's language: items, packages and units of the tables, which are English."""

from __future__ import annotations

import re
from functools import cache

from bot.texts import Voice
from planning.tables import rows, table_names

_SIZED = re.compile(
    r"(?P<amount>(?:No\. )?\d+(?:[.,/x]\d+)?(?: (?:fl oz|oz|lb|gal|qt|g|kg|L|mL|ml|l))?)[ -](?P<pack>[a-z]+)"
)
_OF = re.compile(r"(?P<pack>[a-z]+) of (?P<n>\d+)")


@cache
def _said(language: str) -> dict[str, str]:
    """Names of our tables -> how they are said; a dish nobody named for that goes by the first name it is known by."""
    found: dict[str, str] = {}
    if f"dishes_{language}" in table_names():
        for row in rows(f"dishes_{language}"):
            found.setdefault(row["dish"], row["name"])
    if f"goods_{language}" in table_names():
        found |= {row["name"]: row["said"] for row in rows(f"goods_{language}")}
    return found


def goods(voice: Voice, text: str) -> str:
    """A name, size or unit of our tables as this voice says it; what nobody has put into its language stays."""
    if voice.language == "en" or not text:
        return text
    known = _said(voice.language)
    if text in known:
        return known[text]
    if (of := _OF.fullmatch(text)) is not None and voice.has(f"pack-{of['pack']}"):
        return voice.plain("package-of", pack=voice.plain(f"pack-{of['pack']}"), n=int(of["n"]))
    if (sized := _SIZED.fullmatch(text)) is not None and voice.has(f"pack-{sized['pack']}"):
        return voice.plain("package-sized", pack=voice.plain(f"pack-{sized['pack']}"), amount=sized["amount"])
    return text


def meant(voice: Voice, text: str) -> str:
    """The name in our tables that words in the reader's language mean; other words come back as they are."""
    wanted = text.casefold().strip()
    known = [(name, said.casefold()) for name, said in _said(voice.language).items()]
    whole = next((name for name, said in known if wanted in (said, said[:-1])), None)
    return whole or next((name for name, said in known if said.startswith(f"{wanted} ")), text)
