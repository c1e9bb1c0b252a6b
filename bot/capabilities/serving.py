"""The table: whose dish it is, what it contains, what it is served with, which labels are missing."""

from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.theday.table import Standing, table, tools

MOST_DISHES = 40


async def show(turn: Turn) -> None:
    """/table: every dish with its cook and its contents, then the tools and trivets in all."""
    voice = turn.voice
    standing = table(turn.potluck)
    lines = [voice("table-head", n=len(standing), place=turn.potluck.place)]
    lines += [_line(turn, s) for s in standing[:MOST_DISHES]]
    needed = [voice.plain("table-tool", n=n, what=voice.plain(f"tool-{tool}")) for tool, n in tools(standing)]
    if needed:
        lines.append(voice("table-tools", tools=needed))
    trivets = sum(s.trivet for s in standing)
    if trivets:
        lines.append(voice("table-trivets", n=trivets))
    unlabelled = [s.promise.dish for s in standing if s.label_missing]
    if unlabelled:
        lines.append(voice("table-labels", dishes=unlabelled, n=len(unlabelled)))
    turn.post(Html("\n".join(lines)))


def _line(turn: Turn, standing: Standing) -> Html:
    promise = standing.promise
    cook = turn.potluck.guest(promise.guest)
    return turn.voice(
        "table-row",
        dish=promise.dish,
        name=cook.name if cook else "",
        contains=[turn.voice.plain("prints-need", need=a) for a in sorted(standing.listed.contains)],
        basis=standing.listed.basis.replace(" ", "-"),
        hot=standing.trivet,
        out=promise.out_since is not None,
        since=turn.voice.time(promise.out_since) if promise.out_since else "",
    )


def register(app: Registry) -> None:
    app.command("table", show, order=24)
