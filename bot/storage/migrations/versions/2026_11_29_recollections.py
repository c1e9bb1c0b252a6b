"""What was said a little while ago, so that the next words are understood whichever process takes them.

The table is new; every row carries until when it counts, and is pruned after that.
"""

import sqlalchemy as sa
from alembic import op

revision = "20261129_recollections"
down_revision = "20261125_shared_pace"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "recollection",
        sa.Column("chat_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("person_id", sa.BigInteger, nullable=False, autoincrement=False),
        sa.Column("kind", sa.String, nullable=False),
        sa.Column("about", sa.Text, nullable=False),
        sa.Column("value", sa.Text, nullable=False),
        sa.Column("potluck_id", sa.String, nullable=True),
        sa.Column("at", sa.BigInteger, nullable=False),
        sa.Column("until", sa.BigInteger, nullable=False),
        sa.PrimaryKeyConstraint("chat_id", "person_id", "kind", "about", name="pk_recollection"),
    )
    op.create_index("ix_recollection_potluck_id", "recollection", ["potluck_id"])
    op.create_index("ix_recollection_until", "recollection", ["until"])


def downgrade() -> None:
    op.drop_table("recollection")
