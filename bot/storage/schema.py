"""The tables, as the newest migration leaves them (a test compares the two).

Rows are not the domain's values: `mapping.py` turns one into the other by hand. Lists keep their
order by `position`. Money is text (exact decimals); instants are microseconds since 1970 UTC.
"""

from __future__ import annotations

from typing import Any

from sqlalchemy import (
    BigInteger,
    Boolean,
    Column,
    Double,
    ForeignKey,
    Index,
    Integer,
    MetaData,
    String,
    Table,
    UniqueConstraint,
)

from bot.storage.columns import BigId, Instant, JsonText, Words

HEAD = "20261129_kitchen_plans"
"""The newest migration; kept here so that a start on an up-to-date database needn't load Alembic."""

metadata = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "fk": "fk_%(table_name)s_%(column_0_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    }
)


def _yes_no(name: str) -> Column[bool]:
    return Column(name, Boolean, nullable=False)


def _json(name: str) -> Column[object]:
    return Column(name, JsonText, nullable=False)


chat = Table(
    "chat",
    metadata,
    Column("id", BigInteger, primary_key=True, autoincrement=False),
    Column("kind", String, nullable=False),
    Column("title", Words, nullable=False),
    Column("timezone", String),
    Column("units", String, nullable=False),
    Column("language", String, nullable=False),
    Column("quiet_from", String, nullable=False),
    Column("quiet_to", String, nullable=False),
    _json("reminder_kinds_off"),
    _yes_no("bot_is_admin"),
    _yes_no("bot_present"),
    _json("settings"),
)

chat_moved = Table(
    "chat_moved",
    metadata,
    Column("old_id", BigInteger, primary_key=True, autoincrement=False),
    Column("new_id", BigInteger, nullable=False),
)

person = Table(
    "person",
    metadata,
    Column("id", BigInteger, primary_key=True, autoincrement=False),
    Column("name", Words, nullable=False),
    Column("username", Words),
    Column("language", Words),
    _yes_no("can_dm"),
    _yes_no("muted"),
    Column("private_potluck", String),
    Column("units", String),
)

potluck = Table(
    "potluck",
    metadata,
    Column("id", String, primary_key=True),
    Column("revision", BigInteger, nullable=False),
    Column("starts_at", Instant, nullable=False, index=True),
    Column("timezone", Words, nullable=False),
    Column("host", Words, index=True),
    Column("title", Words, nullable=False),
    Column("ends_at", Instant),
    Column("place", Words, nullable=False),
    Column("stage", String, nullable=False),
    Column("mealtime", Words, nullable=False),
    Column("setting", Words, nullable=False),
    Column("outdoor_temp_f", Double),
    Column("units", Words, nullable=False),
    Column("service_level", Double, nullable=False),
    Column("budget_amount", String),
    Column("budget_currency", Words),
    _json("cohosts"),
    Column("expected_people", BigInteger),
    Column("answer_by", Instant),
    Column("bar_base", Words),
    Column("bar_combos", JsonText),
    Column("bar_most_asks", Integer),
    _json("items"),
    _json("kitchen"),
    Column("answer_odds", JsonText),
    _json("prices"),
    Column("previous", JsonText),
    Column("last_number", BigInteger, nullable=False),
    _json("more"),
)

place = Table(
    "place",
    metadata,
    Column("potluck_id", ForeignKey("potluck.id", ondelete="CASCADE"), primary_key=True),
    Column("chat_id", BigInteger, nullable=False, index=True),
    Column("thread_id", BigInteger),
    Column("board_message_id", BigInteger),
    _yes_no("board_pinned"),
    _yes_no("current"),
    Column("board_dirty_since", Instant, index=True),
    Column("board_owner", String),
    Column("board_lease_until", Instant),
)


def _part(name: str, *columns: Column[Any] | UniqueConstraint) -> Table:
    """A list inside a potluck."""
    return Table(
        name,
        metadata,
        Column("potluck_id", ForeignKey("potluck.id", ondelete="CASCADE"), primary_key=True),
        Column("position", Integer, primary_key=True, autoincrement=False),
        *columns,
    )


guest = _part(
    "guest",
    Column("id", Words, nullable=False, index=True),
    Column("name", Words, nullable=False),
    Column("answer", String, nullable=False),
    Column("adults", BigInteger, nullable=False),
    Column("teens", BigInteger, nullable=False),
    Column("children", BigInteger, nullable=False),
    Column("toddlers", BigInteger, nullable=False),
    Column("infants", BigInteger, nullable=False),
    _json("diets"),
    _json("allergies"),
    _json("needs"),
    _yes_no("pregnant"),
    Column("travel_min", BigInteger, nullable=False),
    _yes_no("can_cook"),
    _yes_no("has_oven"),
    Column("added_by", Words),
    Column("username", Words),
    _json("more"),
    UniqueConstraint("potluck_id", "id"),
)

promise = _part(
    "promise",
    Column("id", Words, nullable=False),
    Column("guest", Words, nullable=False, index=True),
    Column("dish", Words, nullable=False),
    Column("category", Words, nullable=False),
    Column("servings", Double),
    Column("quantity", Words),
    Column("ingredients", JsonText),
    Column("heat", JsonText),
    Column("arrives_at", Instant),
    Column("frozen_lb", Double),
    Column("serve", Words),
    Column("out_since", Instant),
    Column("out_min", Double, nullable=False),
    _json("sharers"),
    _json("more"),
    UniqueConstraint("potluck_id", "id"),
)

topping = _part(
    "topping",
    Column("name", Words, nullable=False),
    Column("guest", Words),
    _json("more"),
)

past_answer = _part(
    "past_answer",
    Column("date", Words, nullable=False),
    Column("guest", Words, nullable=False),
    Column("category", Words),
    Column("said", Words, nullable=False),
    _yes_no("came"),
    _json("more"),
)

payment = _part(
    "payment",
    Column("guest", Words, nullable=False),
    Column("amount", String, nullable=False),
    Column("currency", Words, nullable=False),
    Column("what", Words, nullable=False),
    _json("more"),
)

declined = _part(
    "declined",
    Column("guest", Words, nullable=False),
    Column("category", Words, nullable=False),
    _json("more"),
)

dialog = Table(
    "dialog",
    metadata,
    Column("chat_id", BigInteger, primary_key=True, autoincrement=False),
    Column("person_id", BigInteger, primary_key=True, autoincrement=False),
    Column("kind", String, nullable=False),
    _json("data"),
    Column("message_id", BigInteger),
    Column("expires_at", Instant, index=True),
)

action = Table(
    "action",
    metadata,
    Column("id", BigId, primary_key=True),
    Column("potluck_id", ForeignKey("potluck.id", ondelete="CASCADE"), nullable=False),
    Column("actor", Words, nullable=False),
    Column("at", Instant, nullable=False),
    Column("key", String, nullable=False),
    _json("facts"),
    _json("changes"),
    _yes_no("undone"),
    Index("ix_action_potluck_id_id", "potluck_id", "id"),
    sqlite_autoincrement=True,
)

post = Table(
    "post",
    metadata,
    Column("id", BigId, primary_key=True),
    Column("chat_id", BigInteger, nullable=False),
    Column("thread_id", BigInteger),
    Column("method", String, nullable=False),
    _json("payload"),
    Column("potluck_id", String, index=True),
    Column("reminder_key", String),
    Column("not_before", Instant),
    Column("tries", Integer, nullable=False),
    Column("state", String, nullable=False),
    Column("lease_until", Instant),
    Column("owner", String),
    _yes_no("doubtful"),
    Column("why", Words),
    Index("ix_post_state_chat_id_id", "state", "chat_id", "id"),
    sqlite_autoincrement=True,
)

reminder = Table(
    "reminder",
    metadata,
    Column("potluck_id", ForeignKey("potluck.id", ondelete="CASCADE"), primary_key=True),
    Column("key", Words, primary_key=True),
    Column("kind", String, nullable=False),
    Column("to", Words, nullable=False),
    Column("due_at", Instant, nullable=False),
    Column("expires_at", Instant),
    Column("about_key", String, nullable=False),
    _json("about_facts"),
    Column("state", String, nullable=False),
    Column("lease_until", Instant),
    Column("owner", String),
    Column("tries", Integer, nullable=False),
    _yes_no("doubtful"),
    Column("message_id", BigInteger),
    Index("ix_reminder_state_due_at", "state", "due_at"),
)

sent_message = Table(
    "sent_message",
    metadata,
    Column("chat_id", BigInteger, primary_key=True, autoincrement=False),
    Column("message_id", BigInteger, primary_key=True, autoincrement=False),
    Column("kind", String, nullable=False),
    Column("potluck_id", String, index=True),
    Column("reminder_key", String),
    Column("at", Instant, index=True),
)

update_taken = Table(
    "update_taken",
    metadata,
    Column("update_id", BigInteger, primary_key=True, autoincrement=False),
    Column("at", Instant, nullable=False, index=True),
)

pace = Table(
    "pace",
    metadata,
    Column("chat_id", BigInteger, primary_key=True, autoincrement=False),
    _json("taken"),
    Column("at", Instant, nullable=False, index=True),
)

recollection = Table(
    "recollection",
    metadata,
    Column("chat_id", BigInteger, primary_key=True, autoincrement=False),
    Column("person_id", BigInteger, primary_key=True, autoincrement=False),
    Column("kind", String, primary_key=True),
    Column("about", Words, primary_key=True),
    _json("value"),
    Column("potluck_id", String, index=True),
    Column("at", Instant, nullable=False),
    Column("until", Instant, nullable=False, index=True),
)

kitchen_plan = Table(
    "kitchen_plan",
    metadata,
    Column("potluck_id", ForeignKey("potluck.id", ondelete="CASCADE"), primary_key=True),
    Column("wanted", Integer, nullable=False),
    Column("wanted_at", Instant, index=True),
    Column("planned", Integer, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("part", String),
    Column("timeline", JsonText),
)
"""The kitchen's timeline, so that a restart or another replica goes on with the same one. `wanted`: the potluck's
revision that asked for a new one, and since when it waits (null: it does not); `planned`: the newest that has been
looked at; `revision`: that which the timeline was stored with; `part`: what of the potluck it was made for."""

PARTS = (guest, promise, topping, past_answer, payment, declined)
