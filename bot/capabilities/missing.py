"""What is still missing, with amounts, computed from the headcount against the balanced table."""

from bot.buttons import Button
from bot.context import Turn
from bot.registry import Registry
from bot.texts import Html
from planning.headcount import headcount
from planning.menu import doubles, menu, most_needed


def missing_lines(turn: Turn) -> Html:
    """One line a gap, the worst first; and what is double or more than enough."""
    potluck, voice = turn.potluck, turn.voice
    count = headcount(potluck)
    table = menu(potluck, count)
    needed = most_needed(potluck, count)
    lines = [
        voice(
            "missing-head",
            people=count.at_service_level,
            low=count.low,
            high=count.high,
            expected=round(count.expected),
        )
    ]
    for n in needed:
        row = next(r for r in table if r.category == n.category)
        lines.append(
            voice(
                "missing-row",
                category=voice.plain(f"category-{n.category}"),
                short=round(row.lacking_servings),
                dishes=row.short_dishes,
                promised=round(row.covered_servings),
                target=round(row.target_servings),
            )
        )
    if not needed:
        lines.append(voice("missing-nothing"))
    for category, factor in potluck.corrections.items():
        percent, more = round(abs(factor - 1) * 100), factor > 1
        lines.append(voice("missing-learned", category=voice.plain(f"category-{category}"), percent=percent, more=more))
    for dish, ids in doubles(potluck):
        names = [g.name for i in ids if (p := potluck.promise(i)) and (g := potluck.guest(p.guest))]
        lines.append(voice("missing-double", dish=dish, names=names))
    for row in table:
        if row.too_much_servings >= 1:
            lines.append(
                voice(
                    "missing-surplus", category=voice.plain(f"category-{row.category}"), n=round(row.too_much_servings)
                )
            )
    return Html("\n".join(lines))


async def command(turn: Turn) -> None:
    turn.post(missing_lines(turn), buttons=rows(turn))


async def button(turn: Turn) -> None:
    """For everybody; the host gets the ways to close the gaps as well."""
    turn.post(missing_lines(turn), buttons=rows(turn), reply=False, where="private" if turn.person.can_dm else "here")
    turn.toast("bring-see-private" if turn.person.can_dm and not turn.private else "answer-below")


def rows(turn: Turn) -> list[list[Button]]:
    row = [Button(turn.voice.plain("button-bring"), "bring")]
    if "asks" in turn.services.registry.buttons and most_needed(turn.potluck, headcount(turn.potluck)):
        row.append(Button(turn.voice.plain("button-asks"), "asks"))
    return [row]


def register(app: Registry) -> None:
    app.command("missing", command, order=20)
    app.button("missing", button)
