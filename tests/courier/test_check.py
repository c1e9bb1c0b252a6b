"""`check` finds what is wrong, and changes nothing."""

from datetime import timedelta
from pathlib import Path

import pytest
from aiohttp import web

from bot.clock import RealClock, SimulatedClock
from bot.health import Finding, check, check_clock, check_database
from bot.storage import Store
from bot.texts import Voice
from tests.courier.rig import START, Rig


def keys(found: list[Finding]) -> list[str]:
    return [f.key for f in found]


async def test_all_is_well_beside_a_running_room(rig: Rig) -> None:
    found = await check(
        rig.clock,
        environ={
            "TUREEN_TOKEN": rig.room.token,
            "TUREEN_API_BASE_URL": rig.server.base_url,
            "TUREEN_DATABASE_URL": f"sqlite+aiosqlite:///{rig.folder / 'rig.db'}",
        },
    )

    assert keys(found)[:3] == ["check-settings-ok", "check-database-ok", "check-migrations-ok"]
    assert keys(found)[-1].startswith("check-token-")
    assert all(f.ok for f in found)
    assert all(Voice().plain(f.key, **f.facts) for f in found)


async def test_a_refused_token_is_said_without_showing_it(rig: Rig) -> None:
    wrong = "999:AAHloopback_token-not-a-secret-00"
    found = await check(rig.clock, environ={"TUREEN_TOKEN": wrong, "TUREEN_API_BASE_URL": rig.server.base_url})

    assert keys(found)[-1] == "check-token-bad"
    assert not found[-1].ok
    assert wrong not in str(found)


async def test_a_platform_out_of_reach_is_said_without_the_token(rig: Rig) -> None:
    base = "http://127.0.0.1:1/bot"
    found = await check(rig.clock, environ={"TUREEN_TOKEN": rig.room.token, "TUREEN_API_BASE_URL": base})

    assert keys(found)[-2:] == ["check-clock-unknown", "check-token-unknown"]
    assert rig.room.token not in str(found)


async def test_wrong_settings_are_each_a_line() -> None:
    found = await check(RealClock(), environ={"TUREEN_MODE": "pigeon", "TUREEN_LOG": "shout"})

    assert keys(found) == ["check-settings-bad"] * 2


async def test_a_database_that_is_not_there_yet_is_not_made(tmp_path: Path) -> None:
    found = await check_database(f"sqlite+aiosqlite:///{tmp_path / 'new.db'}")

    assert keys(found) == ["check-database-new", "check-migrations-first"]
    assert not (tmp_path / "new.db").exists()


async def test_a_folder_that_is_missing_is_said(tmp_path: Path) -> None:
    found = await check_database(f"sqlite+aiosqlite:///{tmp_path / 'nowhere' / 'new.db'}")

    assert keys(found) == ["check-database-bad"]


async def test_a_file_that_is_no_database_is_said(tmp_path: Path) -> None:
    (tmp_path / "letter.db").write_text("Dear committee, " * 200)

    assert keys(await check_database(f"sqlite+aiosqlite:///{tmp_path / 'letter.db'}")) == ["check-database-bad"]


async def test_an_unknown_migration_is_said(tmp_path: Path) -> None:
    import sqlite3

    url = f"sqlite+aiosqlite:///{tmp_path / 'a.db'}"
    await (await Store.open(url)).close()
    with sqlite3.connect(tmp_path / "a.db") as db:
        db.execute("UPDATE alembic_version SET version_num = 'from_the_future'")

    found = await check_database(url)
    assert [f.key for f in found if not f.ok] == ["check-migrations-newer"]


@pytest.mark.parametrize(("off_s", "ok"), [(2, True), (90, False), (-90, False)])
async def test_the_clock_is_compared_with_the_platforms(off_s: int, ok: bool) -> None:
    async def answer(_: web.Request) -> web.Response:
        return web.Response(headers={"Date": START.strftime("%a, %d %b %Y %H:%M:%S GMT")})

    app = web.Application()
    app.router.add_get("/", answer)
    served = web.AppRunner(app)
    await served.setup()
    await web.TCPSite(served, "127.0.0.1", 0).start()
    try:
        base = f"http://127.0.0.1:{served.addresses[0][1]}/bot"
        found = await check_clock(base, SimulatedClock(START + timedelta(seconds=off_s)))
    finally:
        await served.cleanup()

    assert [f.ok for f in found] == [ok]
