"""What could not be delivered, for hosts: whom it was for and why, newest first.

Of what was for one person alone only the kind is told: it may be about what they can't eat.
"""

from bot.context import Turn
from bot.courier.calls import plain
from bot.courier.delivery import reminder_of
from bot.registry import Registry
from bot.storage.values import Post
from bot.texts import Html

MOST_LETTERS = 80


async def unsent(turn: Turn) -> None:
    """/unsent"""
    turn.hosts_only()
    posts = await turn.store.given_up_of(turn.potluck.id)
    if not posts:
        turn.say("unsent-none")
        return
    head = turn.voice("unsent-head", n=len(posts))
    turn.post(Html("\n".join([head, *(_line(turn, post) for post in posts)])))


def _line(turn: Turn, post: Post) -> str:
    voice = turn.voice
    guest = turn.potluck.guest(str(post.chat_id))
    whose = "group" if post.chat_id == turn.place.chat_id else "guest" if guest else "other"
    about = reminder_of(post)
    kind = (
        voice.plain(f"reminder-kind-{about['kind']}") if about and voice.has(f"reminder-kind-{about['kind']}") else ""
    )
    words = plain(str(post.payload.get("text") or "")) if whose == "group" else ""
    return voice(
        "unsent-line",
        whose=whose,
        name=guest.name if guest else "",
        reminds="yes" if kind else "no",
        kind=kind,
        words=words[:MOST_LETTERS] + "…" * (len(words) > MOST_LETTERS),
        said="yes" if words else "no",
        why=voice.plain(post.why) if post.why and voice.has(post.why) else voice.plain("courier-why-refused"),
    )


def register(app: Registry) -> None:
    app.command("unsent", unsent, order=80, hosts=True)
