"""The library's contract for its HTTP door, over a real loopback line."""

import asyncio
import socket
from collections.abc import AsyncIterator

import pytest
import pytest_asyncio
import telegram
from aiohttp import web
from telegram.error import NetworkError, RetryAfter, TimedOut

from bot.courier.faults import Kind, fate_of
from bot.transport import AiohttpRequest, Broken, NotSent

TOKEN = "12345678:loopback-token-not-a-secret-0000"


@pytest_asyncio.fixture
async def line() -> AsyncIterator[dict[str, object]]:
    """A server whose next answer is chosen by `how`."""
    state: dict[str, object] = {"how": "ok", "at_once": 0, "most": 0}

    async def answer(request: web.Request) -> web.StreamResponse:
        state["at_once"] = int(str(state["at_once"])) + 1
        state["most"] = max(int(str(state["most"])), int(str(state["at_once"])))
        try:
            if request.content_type.startswith("multipart/"):
                form = await request.post()
                state["form"] = {k: v.file.read() if isinstance(v, web.FileField) else v for k, v in form.items()}
            else:
                state["form"] = dict(await request.post())
            how = state["how"]
            if how == "slow":
                await asyncio.sleep(0.2)
            if how == "torn":
                assert request.transport is not None
                request.transport.abort()
            if how == 429:
                body = {"ok": False, "description": "Too Many Requests", "parameters": {"retry_after": 7}}
                return web.json_response(body, status=429)
            if how == 500:
                return web.Response(status=500, text="<html>oops</html>")
            return web.json_response({"ok": True, "result": True})
        finally:
            state["at_once"] = int(str(state["at_once"])) - 1

    app = web.Application()
    app.router.add_route("*", "/{tail:.*}", answer)
    runner = web.AppRunner(app)
    await runner.setup()
    site = web.TCPSite(runner, "127.0.0.1", 0)
    await site.start()
    assert runner.addresses
    state["url"] = f"http://127.0.0.1:{runner.addresses[0][1]}/bot"
    yield state
    await runner.cleanup()


def bot(url: object, **more: float) -> tuple[telegram.Bot, AiohttpRequest]:
    request = AiohttpRequest(proxy_from_environment=False, **more)  # type: ignore[arg-type]
    return telegram.Bot(TOKEN, base_url=str(url), request=request), request


async def send(url: object, **more: float) -> None:
    client, request = bot(url, **more)
    async with request:
        await client.delete_message(1, 2)


async def test_an_answer_comes_through(line: dict[str, object]) -> None:
    await send(line["url"])

    assert line["form"] == {"chat_id": "1", "message_id": "2"}


async def test_files_go_as_multipart_with_their_bytes(line: dict[str, object]) -> None:
    client, request = bot(line["url"])
    async with request:
        await client.send_document(1, b"paper \x00\xff", filename="list.pdf", caption="für alle")

    form = line["form"]
    assert isinstance(form, dict)
    assert form["caption"] == "für alle"
    assert b"paper \x00\xff" in form.values()


async def test_nobody_listening_means_not_sent() -> None:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]

    with pytest.raises(NotSent):
        await send(f"http://127.0.0.1:{port}/bot")


async def test_an_unknown_host_means_not_sent() -> None:
    with pytest.raises(NotSent):
        await send("http://no-such-host.invalid/bot")


async def test_no_answer_in_time_is_a_time_out(line: dict[str, object]) -> None:
    line["how"] = "slow"

    with pytest.raises(TimedOut):
        await send(line["url"], read_timeout_s=0.05)


async def test_a_torn_line_is_doubtful(line: dict[str, object]) -> None:
    line["how"] = "torn"

    with pytest.raises(Broken) as fault:
        await send(line["url"])

    assert fate_of(fault.value, 1).kind is Kind.DOUBT


async def test_a_server_error_may_be_tried_again(line: dict[str, object]) -> None:
    line["how"] = 500

    with pytest.raises(NetworkError) as fault:
        await send(line["url"])

    assert fate_of(fault.value, 1).kind is Kind.LATER


async def test_a_flood_answer_names_its_delay(line: dict[str, object]) -> None:
    line["how"] = 429

    with pytest.raises(RetryAfter) as fault:
        await send(line["url"])

    assert fate_of(fault.value, 1).seconds == 7


async def test_no_more_connections_than_allowed(line: dict[str, object]) -> None:
    line["how"] = "slow"
    client, request = bot(line["url"], connections=3)
    async with request:
        await asyncio.gather(*(client.delete_message(1, n) for n in range(1, 9)))

    assert line["most"] == 3


async def test_a_full_pool_means_not_sent(line: dict[str, object]) -> None:
    line["how"] = "slow"
    client, request = bot(line["url"], connections=1, pool_timeout_s=0.02, connect_timeout_s=0.02)
    async with request:
        first, second = await asyncio.gather(
            client.delete_message(1, 1), client.delete_message(1, 2), return_exceptions=True
        )

    assert first is True
    assert isinstance(second, NotSent)


async def test_no_error_text_holds_the_token() -> None:
    for url in ("http://no-such-host.invalid/bot", "http://127.0.0.1:1/bot"):
        with pytest.raises(NetworkError) as fault:
            await send(url)
        assert TOKEN not in repr(fault.value)
        assert fault.value.__cause__ is None


async def test_after_a_kill_nothing_leaves(line: dict[str, object]) -> None:
    client, request = bot(line["url"])
    async with request:
        request.kill()
        with pytest.raises(asyncio.CancelledError):
            await client.delete_message(1, 2)

    assert "form" not in line
