"""The first tables: chats, people, potlucks with their lists, and what must be sent.

Nothing is locked: the tables are new.
"""

import sqlalchemy as sa
from alembic import op

revision = "20261124_first_tables"
down_revision = None
branch_labels = None
depends_on = None

BIG_ID = sa.BigInteger().with_variant(sa.Integer(), "sqlite")


def upgrade() -> None:
    op.create_table(
        "chat",
        sa.Column("id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("kind", sa.String, nullable=False),
        sa.Column("title", sa.Text, nullable=False),
        sa.Column("timezone", sa.String, nullable=True),
        sa.Column("units", sa.String, nullable=False),
        sa.Column("language", sa.String, nullable=False),
        sa.Column("quiet_from", sa.String, nullable=False),
        sa.Column("quiet_to", sa.String, nullable=False),
        sa.Column("reminder_kinds_off", sa.Text, nullable=False),
        sa.Column("bot_is_admin", sa.Boolean, nullable=False),
        sa.Column("bot_present", sa.Boolean, nullable=False),
        sa.Column("settings", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_chat"),
    )
    op.create_table(
        "chat_moved",
        sa.Column("old_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("new_id", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("old_id", name="pk_chat_moved"),
    )
    op.create_table(
        "dialog",
        sa.Column("chat_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("person_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("kind", sa.String, nullable=False),
        sa.Column("data", sa.Text, nullable=False),
        sa.Column("message_id", sa.BigInteger, nullable=True),
        sa.Column("expires_at", sa.BigInteger, nullable=True),
        sa.PrimaryKeyConstraint("chat_id", "person_id", name="pk_dialog"),
    )
    op.create_index("ix_dialog_expires_at", "dialog", ["expires_at"])
    op.create_table(
        "person",
        sa.Column("id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("username", sa.Text, nullable=True),
        sa.Column("language", sa.Text, nullable=True),
        sa.Column("can_dm", sa.Boolean, nullable=False),
        sa.Column("muted", sa.Boolean, nullable=False),
        sa.Column("private_potluck", sa.String, nullable=True),
        sa.Column("units", sa.String, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_person"),
    )
    op.create_table(
        "post",
        sa.Column("id", BIG_ID, nullable=False),
        sa.Column("chat_id", sa.BigInteger, nullable=False),
        sa.Column("thread_id", sa.BigInteger, nullable=True),
        sa.Column("method", sa.String, nullable=False),
        sa.Column("payload", sa.Text, nullable=False),
        sa.Column("potluck_id", sa.String, nullable=True),
        sa.Column("reminder_key", sa.String, nullable=True),
        sa.Column("not_before", sa.BigInteger, nullable=True),
        sa.Column("tries", sa.Integer, nullable=False),
        sa.Column("state", sa.String, nullable=False),
        sa.Column("lease_until", sa.BigInteger, nullable=True),
        sa.Column("owner", sa.String, nullable=True),
        sa.Column("doubtful", sa.Boolean, nullable=False),
        sa.Column("why", sa.Text, nullable=True),
        sa.PrimaryKeyConstraint("id", name="pk_post"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_post_potluck_id", "post", ["potluck_id"])
    op.create_index("ix_post_state_chat_id_id", "post", ["state", "chat_id", "id"])
    op.create_table(
        "potluck",
        sa.Column("id", sa.String, nullable=False),
        sa.Column("revision", sa.BigInteger, nullable=False),
        sa.Column("starts_at", sa.BigInteger, nullable=False),
        sa.Column("timezone", sa.Text, nullable=False),
        sa.Column("host", sa.Text, nullable=True),
        sa.Column("title", sa.Text, nullable=False),
        sa.Column("ends_at", sa.BigInteger, nullable=True),
        sa.Column("place", sa.Text, nullable=False),
        sa.Column("stage", sa.String, nullable=False),
        sa.Column("mealtime", sa.Text, nullable=False),
        sa.Column("setting", sa.Text, nullable=False),
        sa.Column("outdoor_temp_f", sa.Double, nullable=True),
        sa.Column("units", sa.Text, nullable=False),
        sa.Column("service_level", sa.Double, nullable=False),
        sa.Column("budget_amount", sa.String, nullable=True),
        sa.Column("budget_currency", sa.Text, nullable=True),
        sa.Column("cohosts", sa.Text, nullable=False),
        sa.Column("expected_people", sa.BigInteger, nullable=True),
        sa.Column("answer_by", sa.BigInteger, nullable=True),
        sa.Column("bar_base", sa.Text, nullable=True),
        sa.Column("bar_combos", sa.Text, nullable=True),
        sa.Column("bar_most_asks", sa.Integer, nullable=True),
        sa.Column("items", sa.Text, nullable=False),
        sa.Column("kitchen", sa.Text, nullable=False),
        sa.Column("answer_odds", sa.Text, nullable=True),
        sa.Column("prices", sa.Text, nullable=False),
        sa.Column("previous", sa.Text, nullable=True),
        sa.Column("last_number", sa.BigInteger, nullable=False),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_potluck"),
    )
    op.create_index("ix_potluck_host", "potluck", ["host"])
    op.create_index("ix_potluck_starts_at", "potluck", ["starts_at"])
    op.create_table(
        "sent_message",
        sa.Column("chat_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("message_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("kind", sa.String, nullable=False),
        sa.Column("potluck_id", sa.String, nullable=True),
        sa.Column("reminder_key", sa.String, nullable=True),
        sa.Column("at", sa.BigInteger, nullable=True),
        sa.PrimaryKeyConstraint("chat_id", "message_id", name="pk_sent_message"),
    )
    op.create_index("ix_sent_message_at", "sent_message", ["at"])
    op.create_index("ix_sent_message_potluck_id", "sent_message", ["potluck_id"])
    op.create_table(
        "update_taken",
        sa.Column("update_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("update_id", name="pk_update_taken"),
    )
    op.create_index("ix_update_taken_at", "update_taken", ["at"])
    op.create_table(
        "action",
        sa.Column("id", BIG_ID, nullable=False),
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("actor", sa.Text, nullable=False),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.Column("key", sa.String, nullable=False),
        sa.Column("facts", sa.Text, nullable=False),
        sa.Column("changes", sa.Text, nullable=False),
        sa.Column("undone", sa.Boolean, nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_action"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_action_potluck_id", ondelete="CASCADE"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_action_potluck_id_id", "action", ["potluck_id", "id"])
    op.create_table(
        "declined",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("guest", sa.Text, nullable=False),
        sa.Column("category", sa.Text, nullable=False),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_declined"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_declined_potluck_id", ondelete="CASCADE"),
    )
    op.create_table(
        "guest",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("id", sa.Text, nullable=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("answer", sa.String, nullable=False),
        sa.Column("adults", sa.BigInteger, nullable=False),
        sa.Column("teens", sa.BigInteger, nullable=False),
        sa.Column("children", sa.BigInteger, nullable=False),
        sa.Column("toddlers", sa.BigInteger, nullable=False),
        sa.Column("infants", sa.BigInteger, nullable=False),
        sa.Column("diets", sa.Text, nullable=False),
        sa.Column("allergies", sa.Text, nullable=False),
        sa.Column("needs", sa.Text, nullable=False),
        sa.Column("pregnant", sa.Boolean, nullable=False),
        sa.Column("travel_min", sa.BigInteger, nullable=False),
        sa.Column("can_cook", sa.Boolean, nullable=False),
        sa.Column("has_oven", sa.Boolean, nullable=False),
        sa.Column("added_by", sa.Text, nullable=True),
        sa.Column("username", sa.Text, nullable=True),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_guest"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_guest_potluck_id", ondelete="CASCADE"),
        sa.UniqueConstraint("potluck_id", "id", name="uq_guest_potluck_id_id"),
    )
    op.create_index("ix_guest_id", "guest", ["id"])
    op.create_table(
        "past_answer",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("date", sa.Text, nullable=False),
        sa.Column("guest", sa.Text, nullable=False),
        sa.Column("category", sa.Text, nullable=True),
        sa.Column("said", sa.Text, nullable=False),
        sa.Column("came", sa.Boolean, nullable=False),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_past_answer"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_past_answer_potluck_id", ondelete="CASCADE"),
    )
    op.create_table(
        "payment",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("guest", sa.Text, nullable=False),
        sa.Column("amount", sa.String, nullable=False),
        sa.Column("currency", sa.Text, nullable=False),
        sa.Column("what", sa.Text, nullable=False),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_payment"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_payment_potluck_id", ondelete="CASCADE"),
    )
    op.create_table(
        "place",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("chat_id", sa.BigInteger, nullable=False),
        sa.Column("thread_id", sa.BigInteger, nullable=True),
        sa.Column("board_message_id", sa.BigInteger, nullable=True),
        sa.Column("board_pinned", sa.Boolean, nullable=False),
        sa.Column("current", sa.Boolean, nullable=False),
        sa.Column("board_dirty_since", sa.BigInteger, nullable=True),
        sa.PrimaryKeyConstraint("potluck_id", name="pk_place"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_place_potluck_id", ondelete="CASCADE"),
    )
    op.create_index("ix_place_board_dirty_since", "place", ["board_dirty_since"])
    op.create_index("ix_place_chat_id", "place", ["chat_id"])
    op.create_table(
        "promise",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("id", sa.Text, nullable=False),
        sa.Column("guest", sa.Text, nullable=False),
        sa.Column("dish", sa.Text, nullable=False),
        sa.Column("category", sa.Text, nullable=False),
        sa.Column("servings", sa.Double, nullable=True),
        sa.Column("quantity", sa.Text, nullable=True),
        sa.Column("ingredients", sa.Text, nullable=True),
        sa.Column("heat", sa.Text, nullable=True),
        sa.Column("arrives_at", sa.BigInteger, nullable=True),
        sa.Column("frozen_lb", sa.Double, nullable=True),
        sa.Column("serve", sa.Text, nullable=True),
        sa.Column("out_since", sa.BigInteger, nullable=True),
        sa.Column("out_min", sa.Double, nullable=False),
        sa.Column("sharers", sa.Text, nullable=False),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_promise"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_promise_potluck_id", ondelete="CASCADE"),
        sa.UniqueConstraint("potluck_id", "id", name="uq_promise_potluck_id_id"),
    )
    op.create_index("ix_promise_guest", "promise", ["guest"])
    op.create_table(
        "reminder",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("key", sa.Text, nullable=False),
        sa.Column("kind", sa.String, nullable=False),
        sa.Column("to", sa.Text, nullable=False),
        sa.Column("due_at", sa.BigInteger, nullable=False),
        sa.Column("expires_at", sa.BigInteger, nullable=True),
        sa.Column("about_key", sa.String, nullable=False),
        sa.Column("about_facts", sa.Text, nullable=False),
        sa.Column("state", sa.String, nullable=False),
        sa.Column("lease_until", sa.BigInteger, nullable=True),
        sa.Column("owner", sa.String, nullable=True),
        sa.Column("tries", sa.Integer, nullable=False),
        sa.Column("doubtful", sa.Boolean, nullable=False),
        sa.Column("message_id", sa.BigInteger, nullable=True),
        sa.PrimaryKeyConstraint("potluck_id", "key", name="pk_reminder"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_reminder_potluck_id", ondelete="CASCADE"),
    )
    op.create_index("ix_reminder_state_due_at", "reminder", ["state", "due_at"])
    op.create_table(
        "topping",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("position", sa.Integer, nullable=False, autoincrement=False),
        sa.Column("name", sa.Text, nullable=False),
        sa.Column("guest", sa.Text, nullable=True),
        sa.Column("more", sa.Text, nullable=False),
        sa.PrimaryKeyConstraint("potluck_id", "position", name="pk_topping"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_topping_potluck_id", ondelete="CASCADE"),
    )


def downgrade() -> None:
    op.drop_table("topping")
    op.drop_table("reminder")
    op.drop_table("promise")
    op.drop_table("place")
    op.drop_table("payment")
    op.drop_table("past_answer")
    op.drop_table("guest")
    op.drop_table("declined")
    op.drop_table("action")
    op.drop_table("update_taken")
    op.drop_table("sent_message")
    op.drop_table("potluck")
    op.drop_table("post")
    op.drop_table("person")
    op.drop_table("dialog")
    op.drop_table("chat_moved")
    op.drop_table("chat")
