"""The run sheet on paper: what to do when, at home and here, and the food safety notes with their rules."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from bot.prints.kitchen_day import kitchen_day
from bot.prints.qr import qr_svg
from bot.prints.say import Writer
from bot.prints.timeline import trouble_of
from planning.potluck import Potluck
from planning.tables import sources

Plan = Mapping[str, Any]


def run_sheet_data(potluck: Potluck, plan: Plan, write: Writer, link: str | None = None) -> dict[str, Any]:
    day = kitchen_day(potluck, plan, write)
    groups: list[dict[str, Any]] = []
    for event in day.events:
        label = write.day(event.at)
        if not groups or groups[-1]["title"] != label:
            groups.append({"title": label, "events": []})
        groups[-1]["events"].append(
            {
                "time": write.time(event.at),
                "kind": event.kind,
                "text": event.text,
                "number": str(day.numbers.get(event.promise or "", "")),
            }
        )
    return {
        "page": write.page,
        "title": write("run-sheet"),
        "subtitle": f"{write.title} · {write.when}",
        **trouble_of(plan, write),
        "groups": groups,
        "home_title": write("at-home") if day.home_events else "",
        "home": [{"time": write.moment(e.at), "text": e.text} for e in day.home_events],
        "notes_title": write("food-safety"),
        "notes": _notes(plan, write),
        "empty": "" if day.steps else write("kitchen-empty"),
        "qr": qr_svg(link),
        "qr_text": write("qr") if link else "",
    }


def _notes(plan: Plan, write: Writer) -> list[dict[str, Any]]:
    """Blocks first, then by deadline; each with where its rule comes from. What is said of several dishes alike
    is said once, with the others named after it."""
    rank = {"block": 0, "warn": 1, "note": 2}
    notes = sorted(
        plan.get("safety") or (), key=lambda n: (rank.get(str(n.get("severity")), 3), str(n.get("deadline") or "~"))
    )
    alike: dict[Any, list[Mapping[str, Any]]] = {}
    for number, note in enumerate(notes):
        facts = {k: v for k, v in (note.get("facts") or {}).items() if k != "dish"}
        same = (note.get("key"), note.get("deadline"), note.get("severity"), repr(sorted(facts.items())))
        alike.setdefault(same if note.get("key") and note.get("promise") else number, []).append(note)
    return [
        {
            "text": write.sentence(first.get("say")),
            "same": write("note-same", dishes=write.listed(write.dish(n["promise"]) for n in others)) if others else "",
            "until": write.moment(first["deadline"]) if first.get("deadline") else "",
            "severe": first.get("severity") == "block",
            "source": write("source", source=_source(str(first.get("source") or first.get("rule") or ""))),
        }
        for first, *others in alike.values()
    ]


def _source(source_id: str) -> str:
    """The publication's name with the rule's id, so that a reader of paper can look it up."""
    known = sources().get(source_id)
    if known is None or not known.publisher:
        return known.title if known else source_id
    return f"{known.title}, {known.publisher} ({known.id})"
