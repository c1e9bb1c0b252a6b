"""Settings and log lines: one clear sentence for a mistake, and never a secret."""

import io
import json
import logging
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot import log
from bot.settings import SettingsFault, load

TOKEN = "12345678:AAHloopback_token-not-a-secret-00"
GOOD = {"TUREEN_TOKEN": TOKEN}


def faults(**more: str) -> tuple[str, ...]:
    with pytest.raises(SettingsFault) as wrong:
        load(environ={**GOOD, **more})
    return wrong.value.faults


def test_a_token_is_enough() -> None:
    settings = load(environ=GOOD)

    assert settings.token is not None
    assert settings.token.get_secret_value() == TOKEN
    assert settings.mode == "polling"


def test_a_missing_token_is_one_sentence() -> None:
    with pytest.raises(SettingsFault) as wrong:
        load(environ={})

    assert len(wrong.value.faults) == 1
    assert "TUREEN_TOKEN is missing" in wrong.value.faults[0]


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("TUREEN_TOKEN", "hello"),  # not the shape the platform gives
        ("TUREEN_MODE", "pigeon"),  # neither polling nor webhook
        ("TUREEN_DATABASE_URL", "mysql://x"),  # no driver for it here
        ("TUREEN_API_BASE_URL", "api.example.org"),  # no scheme
        ("TUREEN_WEBHOOK_LISTEN", "8443"),  # no address
        ("TUREEN_WEBHOOK_LISTEN", "127.0.0.1:99999"),  # no such port
        ("TUREEN_METRICS_LISTEN", "localhost"),  # no port
        ("TUREEN_WEBHOOK_SECRET", "has spaces"),  # the platform allows letters, digits, _ and -
        ("TUREEN_SEND_LIMITS", "maybe"),  # platform or off
        ("TUREEN_LOG", "shout"),  # no such level
    ],
)
def test_a_wrong_setting_is_named_in_one_sentence_without_a_secret(name: str, value: str) -> None:
    said = faults(**{name: value})

    assert len(said) == 1
    assert said[0].startswith(name)
    assert said[0].endswith(".")
    assert value not in said[0] or name not in ("TUREEN_TOKEN", "TUREEN_DATABASE_URL", "TUREEN_WEBHOOK_SECRET")


def test_a_webhook_needs_its_address_and_its_secret() -> None:
    assert "TUREEN_WEBHOOK_URL" in faults(TUREEN_MODE="webhook")[0]
    assert "TUREEN_WEBHOOK_SECRET" in faults(TUREEN_MODE="webhook", TUREEN_WEBHOOK_URL="https://example.org/x")[0]


def test_an_env_file_is_read_and_the_environment_wins(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "env"
    file.write_text(f"TUREEN_TOKEN={TOKEN}\nTUREEN_LOG=debug\nTUREEN_MODE=polling\n")
    monkeypatch.setenv("TUREEN_LOG", "error")

    assert load(file).log == "error"


def test_a_missing_env_file_is_said(tmp_path: Path) -> None:
    with pytest.raises(SettingsFault) as wrong:
        load(tmp_path / "nothing")

    assert "no settings file" in wrong.value.faults[0]


def test_printing_settings_shows_no_secret() -> None:
    settings = load(
        environ={
            **GOOD,
            "TUREEN_WEBHOOK_SECRET": "s3cret-word",
            "TUREEN_DATABASE_URL": "postgresql+asyncpg://u:passw0rd@h/d",
        }
    )

    shown = repr(settings) + str(settings) + str(settings.model_dump())
    assert not any(secret in shown for secret in (TOKEN, "s3cret-word", "passw0rd"))


def lines_of(act, shape: str = "info") -> str:  # type: ignore[no-untyped-def]
    stream = io.StringIO()
    root = logging.getLogger()
    before, level = root.handlers[:], root.level
    try:
        log.set_up(shape, stream=stream)
        act()
    finally:
        root.handlers[:] = before
        root.setLevel(level)
    return stream.getvalue()


def boom() -> None:
    secret_local = "a guest's allergy"
    try:
        raise ValueError(f"POST https://api.example.org/bot{TOKEN}/sendMessage failed {len(secret_local)}")
    except ValueError:
        log.get("x").exception("it failed", url=f"https://api.example.org/bot{TOKEN}/getMe")
        logging.getLogger("telegram.ext").error("polling failed: %s", f"bot{TOKEN}", exc_info=True)


@pytest.mark.parametrize("shape", ["info", "info:json"])
def test_no_line_holds_the_token_not_even_a_traceback(shape: str) -> None:
    text = lines_of(boom, shape)

    assert "it failed" in text
    assert "polling failed" in text
    assert TOKEN not in text
    assert TOKEN.split(":")[1] not in text


def test_tracebacks_show_no_local_variables() -> None:
    assert "a guest's allergy" not in lines_of(boom)


def quoting(words: str) -> None:
    """A fault whose message quotes what somebody wrote, behind another one, and one of the system's."""
    try:
        try:
            int(words)
        except ValueError as error:
            raise RuntimeError(f"no amount in {words}") from error
    except RuntimeError:
        log.get("x").exception("turn failed")
        logging.getLogger("telegram.ext").error("it failed there", exc_info=True)
    try:
        raise FileNotFoundError(2, "No such file or directory")
    except OSError:
        log.get("x").exception("no file")


@pytest.mark.parametrize("shape", ["info", "info:json"])
def test_a_traceback_shows_where_and_what_kind_but_nobodys_words(shape: str) -> None:
    text = lines_of(lambda: quoting(f"my {'pea'}nut allergy"), shape)

    assert "peanut" not in text
    assert text.count("builtins.ValueError: [its words are left out]") == 2
    assert text.count("builtins.RuntimeError: [its words are left out]") == 2
    assert "No such file or directory" in text
    assert "in quoting" in text


def test_what_people_wrote_is_left_out() -> None:
    text = lines_of(lambda: log.get("x").info("said", text="I can't eat nuts", chat=-5), "info:json")

    assert json.loads(text)["chat"] == -5
    assert "nuts" not in text


@given(
    st.integers(10_000, 10**15),
    st.text("ABCDEFabcdef0123456789_-", min_size=30, max_size=40),
    st.text(max_size=20),
    st.text(max_size=20),
)
def test_anything_of_a_tokens_shape_is_blotted_out(number: int, rest: str, before: str, after: str) -> None:
    if before[-1:].isdigit():
        before += " "

    assert rest not in log.redact(f"{before}{number}:{rest} {after}")
