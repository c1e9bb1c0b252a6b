"""What nobody brings, in packages; how much of each thing; who paid what, evened out."""

from decimal import Decimal, InvalidOperation

from bot.context import Turn
from bot.goods import goods, meant
from bot.outgoing import Buttons
from bot.registry import Registry
from bot.texts import Html
from planning.changes import Refusal, pay, set_price, want_item
from planning.headcount import headcount
from planning.portions import Item, find, portions
from planning.shopping import evening_out, shopping

MOST_LINES = 40


async def shopping_list(turn: Turn) -> None:
    """/shopping; "/shopping add charcoal" wants a total of one more thing."""
    voice, potluck = turn.voice, turn.potluck
    if turn.words.casefold().startswith("add "):
        turn.change(want_item(potluck, turn.actor, turn.words[4:]), "did-item")
        potluck = turn.potluck
    rows = shopping(potluck)
    lines = [voice("shopping-head", n=len(rows))]
    for r in rows[:MOST_LINES]:
        packs = [voice.plain("package", size=goods(voice, p.size), count=p.count) for p in r.packages]
        lines.append(
            voice(
                "shopping-row",
                item=goods(voice, r.item),
                packs=packs,
                n=len(packs),
                need=r.need,
                unit=goods(voice, r.unit),
                cost=r.cost or "",
                priced=r.cost is not None,
                estimated=r.estimated,
            )
        )
    last = next((r.running for r in reversed(rows) if r.running is not None), None)
    if last is not None:
        over = any(r.over_budget for r in rows)
        lines.append(
            voice(
                "shopping-total",
                total=last,
                budget=potluck.budget or "",
                has_budget=potluck.budget is not None,
                over=over,
            )
        )
    turn.post(Html("\n".join(lines)))


async def amount(turn: Turn) -> None:
    """/amount potatoes: how much for everybody, with the source of the figure."""
    if not turn.words:
        raise Refusal("refused-amount-of-what")
    item = find(turn.words) or find(meant(turn.voice, turn.words))
    if item is None:
        raise Refusal("refused-unknown-item", words=turn.words[:60])
    row = amount_of(turn, item)
    if row is None:
        raise Refusal("refused-unknown-item", words=turn.words[:60])
    turn.post(row)


def amount_of(turn: Turn, item: Item) -> Html | None:
    """How much of it for everybody, with the source of the figure; None where the tables have none."""
    wanted = want_item(turn.potluck, turn.actor, item.name, anybody=True)
    count = headcount(wanted)
    row = next((p for p in portions(wanted, count) if p.item == item.name), None)
    if row is None:
        return None
    packs = [turn.voice.plain("package", size=goods(turn.voice, p.size), count=p.count) for p in row.packages]
    return turn.voice(
        "amount-of",
        item=goods(turn.voice, row.item),
        per=row.per_eater,
        total=row.total,
        unit=goods(turn.voice, row.total_unit),
        buy=row.buy,
        buyunit=goods(turn.voice, row.buy_unit),
        packs=packs,
        n=len(packs),
        people=count.at_service_level,
        source=source_words(turn, row.source),
    )


def source_words(turn: Turn, source: str) -> str:
    from planning.tables import sources

    known = sources().get(source)
    if known is None or source == "practice":
        return turn.voice.plain("source-practice")
    title = known["title"] if isinstance(known, dict) else known.title
    publisher = known["publisher"] if isinstance(known, dict) else known.publisher
    return f"{title} ({publisher})"


async def price(turn: Turn) -> None:
    """/price potatoes 4.50 per 5 lb bag - the host's own figure replaces the estimate."""
    head, per_word, per = turn.words.partition(" per ")
    item_words, _, figure = head.rpartition(" ")
    item = find(item_words) if item_words else None
    if item is None or not per_word:
        raise Refusal("refused-price-words")
    turn.change(
        set_price(turn.potluck, turn.actor, item.name, _money(figure), per.strip(), _currency(turn, figure)),
        "did-price",
    )
    turn.say(
        "price-noted",
        item=item.name,
        money=turn.potluck.prices[item.name].money,
        per=per.strip(),
        buttons=[[turn.undo_button()]],
    )


async def paid(turn: Turn) -> None:
    """/paid 23.40 charcoal; alone it shows who owes whom."""
    if turn.words:
        figure, _, what = turn.words.partition(" ")
        turn.change(pay(turn.potluck, turn.actor, _money(figure), _currency(turn, figure), what.strip()), "did-pay")
    paid_sheet(turn, buttons=[[turn.undo_button()]] if turn.words else ())


def paid_sheet(turn: Turn, *, buttons: Buttons = ()) -> None:
    """Who paid what, and who gives whom how much so that all is even."""
    transfers = evening_out(turn.potluck)
    lines = [
        turn.voice("handed-row", name=g.name, to=to.name, money=p.money)
        if (to := turn.potluck.guest(p.to)) is not None
        else turn.voice("paid-row", name=g.name, money=p.money, what=p.what, has_what=bool(p.what))
        for p in turn.potluck.payments
        if (g := turn.potluck.guest(p.guest))
    ]
    if not lines:
        raise Refusal("refused-nothing-paid")
    if not transfers:
        lines.append(turn.voice("owes-nothing"))
    for t in transfers:
        a, b = turn.potluck.guest(t.from_), turn.potluck.guest(t.to)
        lines.append(turn.voice("owes-row", name=a.name if a else t.from_, to=b.name if b else t.to, money=t.money))
    turn.post(Html("\n".join([turn.voice("paid-head"), *lines])), buttons=buttons)


def _money(figure: str) -> Decimal:
    try:
        return Decimal("".join(c for c in figure.replace(",", ".") if c.isdecimal() or c in ".-"))
    except InvalidOperation:
        raise Refusal("refused-money", words=figure[:20]) from None


def _currency(turn: Turn, figure: str) -> str:
    known = {"$": "USD", "€": "EUR", "£": "GBP"}
    budget = turn.potluck.budget
    return next((c for sign, c in known.items() if sign in figure), budget.currency if budget else "USD")


def register(app: Registry) -> None:
    app.command("shopping", shopping_list, order=24)
    app.command("amount", amount, order=25)
    app.command("price", price, order=26, hosts=True)
    app.command("paid", paid, order=27)
