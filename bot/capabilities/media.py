"""What is no text: below a message of the bot or in private it gets one kind sentence, elsewhere silence."""

from bot.context import Turn
from bot.registry import Registry

HEARD = ("voice", "audio", "video_note")
SEEN = ("photo", "video", "document", "animation")


async def answer(turn: Turn) -> None:
    event = turn.event
    if event.kind != "message" or event.media is None or event.text or event.forwarded:
        return
    if not event.private and turn.about is None:
        return
    if event.media in HEARD:
        turn.handled = True
        turn.say("media-heard")
    elif event.media in SEEN:
        turn.handled = True
        turn.say("media-seen")
    elif event.media in ("location", "venue", "contact", "poll") and event.private:
        turn.handled = True
        turn.say("media-other")


def register(app: Registry) -> None:
    app.reader(answer, order=60)
