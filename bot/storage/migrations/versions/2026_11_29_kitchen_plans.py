"""The kitchen's timelines, and which potlucks wait for a new one.

The table is new. Every potluck with a dish is marked as waiting: what was planned before was in no table.
"""

import sqlalchemy as sa
from alembic import op

revision = "20261129_kitchen_plans"
down_revision = "20261129_recollections"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "kitchen_plan",
        sa.Column("potluck_id", sa.String, nullable=False),
        sa.Column("wanted", sa.Integer, nullable=False),
        sa.Column("wanted_at", sa.BigInteger),
        sa.Column("planned", sa.Integer, nullable=False),
        sa.Column("revision", sa.Integer, nullable=False),
        sa.Column("part", sa.String),
        sa.Column("timeline", sa.Text),
        sa.PrimaryKeyConstraint("potluck_id", name="pk_kitchen_plan"),
        sa.ForeignKeyConstraint(["potluck_id"], ["potluck.id"], name="fk_kitchen_plan_potluck_id", ondelete="CASCADE"),
    )
    op.create_index("ix_kitchen_plan_wanted_at", "kitchen_plan", ["wanted_at"])
    op.execute(
        "INSERT INTO kitchen_plan (potluck_id, wanted, wanted_at, planned, revision)"
        " SELECT id, revision, 0, 0, 0 FROM potluck WHERE id IN (SELECT potluck_id FROM promise)"
    )


def downgrade() -> None:
    op.drop_table("kitchen_plan")
