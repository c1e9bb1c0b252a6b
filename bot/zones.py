"""Finding an IANA time zone from what people write: "Chicago", "europe/berlin", "New York"."""

from __future__ import annotations

from functools import cache
from zoneinfo import available_timezones

# Words people use for a clock that name no city of the database. Common practice, no source.
_EVERYDAY = {
    "eastern": "America/New_York",
    "central": "America/Chicago",
    "mountain": "America/Denver",
    "pacific": "America/Los_Angeles",
    "uk": "Europe/London",
    "germany": "Europe/Berlin",
    "france": "Europe/Paris",
    "spain": "Europe/Madrid",
    "utc": "UTC",
    "gmt": "UTC",
}


@cache
def _by_city() -> dict[str, str]:
    found: dict[str, str] = {}
    # Sorted, so that of "America/Louisville" and "America/Kentucky/Louisville" the shorter name wins.
    for zone in sorted(available_timezones(), key=lambda z: (z.count("/"), len(z), z)):
        if "/" in zone and not zone.startswith(("Etc/", "posix/", "right/", "SystemV/")):
            found.setdefault(zone.rsplit("/", 1)[-1].replace("_", " ").casefold(), zone)
    return found


def find_zone(text: str) -> str | None:
    """The zone's name, or None when the words name no place we know."""
    wanted = " ".join(text.strip().strip(".!").split())
    exact = {z.casefold(): z for z in available_timezones()}.get(wanted.replace(" ", "_").casefold())
    if exact is not None and "/" in exact:
        return exact
    folded = wanted.casefold()
    for part in (folded, folded.split(",")[0].strip(), folded.removesuffix(" time").strip()):
        if part in _EVERYDAY:
            return _EVERYDAY[part]
        if part in _by_city():
            return _by_city()[part]
    return None
