"""What was sent lately in each chat, so that several replicas keep the platform's limits together.

The table is new and small: rows of chats that were quiet for a day are pruned.
"""

import sqlalchemy as sa
from alembic import op

revision = "20261125_shared_pace"
down_revision = "20261125_board_claims"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "pace",
        sa.Column("chat_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("taken", sa.Text, nullable=False),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("chat_id", name="pk_pace"),
    )
    op.create_index("ix_pace_at", "pace", ["at"])


def downgrade() -> None:
    op.drop_table("pace")
