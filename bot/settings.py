"""Everything that is set from outside: TUREEN_* in the environment, or in an env file.

`load()` is the one way in. It returns `Settings` or raises `SettingsFault`, whose `faults` are whole
sentences that each say what to change. The token is a `SecretStr`: printing a `Settings` shows stars.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Literal

from pydantic import Field, SecretStr, ValidationError, field_validator, model_validator
from pydantic_settings import BaseSettings, SettingsConfigDict

from bot import log

PREFIX = "TUREEN_"
PLATFORM_API = "https://api.telegram.org/bot"
PLATFORM_FILES = "https://api.telegram.org/file/bot"
DEFAULT_DATABASE = "sqlite+aiosqlite:///tureen.db"

_TOKEN = re.compile(r"^\d{1,20}:[A-Za-z0-9_-]{20,200}$")
# The platform's own rule for a webhook's secret: 1-256 of A-Z a-z 0-9 _ - (Bot API, setWebhook).
_SECRET = re.compile(r"^[A-Za-z0-9_-]{1,256}$")
_LEVELS = ("debug", "info", "warning", "error")


class SettingsFault(Exception):
    """One or more settings are missing or wrong. `faults`: one sentence each, without any secret."""

    def __init__(self, faults: tuple[str, ...]) -> None:
        super().__init__(" ".join(faults))
        self.faults = faults


def host_port(value: str) -> tuple[str, int]:
    """("127.0.0.1", 8443) from "127.0.0.1:8443", ":8443" (all addresses) or "[::1]:8443"."""
    host, colon, port = value.rpartition(":")
    if not colon or not port.isdecimal() or not 0 < int(port) < 65536:
        raise ValueError("must be an address and a port, like 127.0.0.1:8443")
    return host.strip("[]") or "0.0.0.0", int(port)


class Settings(BaseSettings):
    """The settings of one bot. `log` is "<level>" or "<level>:json"."""

    model_config = SettingsConfigDict(
        env_prefix=PREFIX, extra="ignore", hide_input_in_errors=True, env_ignore_empty=True, validate_default=True
    )

    token: SecretStr | None = None
    database_url: SecretStr = SecretStr(DEFAULT_DATABASE)
    api_base_url: str = PLATFORM_API
    api_file_url: str = PLATFORM_FILES
    mode: Literal["polling", "webhook"] = "polling"
    webhook_url: str | None = None
    webhook_listen: str = "127.0.0.1:8443"
    webhook_secret: SecretStr | None = None
    send_limits: Literal["platform", "off"] = "platform"
    log: str = "info"
    metrics_listen: str | None = None
    webhook_connections: int = Field(default=40, ge=1, le=100)
    keep_days: int = Field(default=60, ge=1, le=3650)

    @field_validator("token")
    @classmethod
    def _token(cls, value: SecretStr | None) -> SecretStr | None:
        if value is not None and not _TOKEN.match(value.get_secret_value()):
            raise ValueError("must look like 123456:ABC-def, as the platform gave it to you")
        return value

    @field_validator("api_base_url", "api_file_url")
    @classmethod
    def _http(cls, value: str) -> str:
        if not re.match(r"^https?://[^\s/]+", value):
            raise ValueError("must be an http(s) address, like http://127.0.0.1:8081/bot")
        return value

    @field_validator("webhook_url")
    @classmethod
    def _https(cls, value: str | None) -> str | None:
        if value is not None and not re.match(r"^https?://[^\s/]+", value):
            raise ValueError("must be the public https address the platform can reach")
        return value

    @field_validator("webhook_secret")
    @classmethod
    def _secret(cls, value: SecretStr | None) -> SecretStr | None:
        if value is not None and not _SECRET.match(value.get_secret_value()):
            raise ValueError("must be 1 to 256 letters, digits, _ or -")
        return value

    @field_validator("webhook_listen", "metrics_listen")
    @classmethod
    def _listen(cls, value: str | None) -> str | None:
        if value is not None:
            host_port(value)
        return value

    @field_validator("database_url")
    @classmethod
    def _database(cls, value: SecretStr) -> SecretStr:
        scheme = value.get_secret_value().split("://")[0]
        if scheme not in ("sqlite+aiosqlite", "postgresql+asyncpg"):
            raise ValueError(
                "must begin with sqlite+aiosqlite:// or postgresql+asyncpg://, like sqlite+aiosqlite:///tureen.db"
            )
        return value

    @field_validator("log")
    @classmethod
    def _log(cls, value: str) -> str:
        level, _, shape = value.lower().partition(":")
        if level not in _LEVELS or shape not in ("", "json", "text"):
            raise ValueError("must be debug, info, warning or error, with :json after it for machine-readable lines")
        return value.lower()

    @model_validator(mode="after")
    def _webhook_is_whole(self) -> Settings:
        if self.mode == "webhook" and self.webhook_url is None:
            raise ValueError(
                "TUREEN_WEBHOOK_URL is missing: with TUREEN_MODE=webhook it must be the public https address."
            )
        if self.mode == "webhook" and self.webhook_secret is None:
            raise ValueError(
                "TUREEN_WEBHOOK_SECRET is missing: without it anybody could send updates; "
                "set 1 to 256 letters, digits, _ or -."
            )
        return self

    @property
    def secrets(self) -> tuple[str, ...]:
        """What must never be printed."""
        found = [s.get_secret_value() for s in (self.token, self.webhook_secret) if s is not None]
        password = re.search(r"://[^:/@]*:([^@/]+)@", self.database_url.get_secret_value())
        return (*found, password.group(1)) if password else tuple(found)


def load(
    env_file: Path | None = None, *, need_token: bool = True, environ: Mapping[str, str] | None = None
) -> Settings:
    """Read the environment (or `environ`) and `env_file`; the environment wins.

    Raises SettingsFault with one sentence for each wrong setting, and for a missing token when `need_token`.
    """
    given: dict[str, Any] = {}
    if env_file is not None and not env_file.is_file():
        raise SettingsFault((f"There is no settings file {env_file}: give the path of an existing one.",))
    try:
        if environ is not None:
            for key, value in environ.items():
                if key.upper().startswith(PREFIX) and value != "":
                    given[key[len(PREFIX) :].lower()] = value
            settings = Settings.model_validate(given)
        else:
            settings = Settings(_env_file=env_file)  # type: ignore[call-arg]
    except ValidationError as wrong:
        raise SettingsFault(tuple(_sentence(e) for e in wrong.errors(include_input=False, include_url=False))) from None
    if need_token and settings.token is None:
        raise SettingsFault(
            ("TUREEN_TOKEN is missing: put the bot's token in the environment, or try `room`, which needs none.",)
        )
    log.hide(*settings.secrets)
    return settings


def _sentence(error: Any) -> str:
    why = str(error["msg"]).removeprefix("Value error, ")
    if not error["loc"]:
        return why if why.endswith(".") else f"{why}."
    name = PREFIX + str(error["loc"][0]).upper()
    if error["type"] == "literal_error":
        return f"{name} must be {error['ctx']['expected'].replace(chr(39), '')}."
    if not why.startswith("must"):
        why = "is wrong: " + why[0].lower() + why[1:]
    return f"{name} {why}."
