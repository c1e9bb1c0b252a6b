"""A board can be claimed, so that of several processes only one edits it.

`place` has one row a potluck. Two columns that may be null are added: no row is rewritten, and the
table is locked only for the moment that takes on both databases.
"""

import sqlalchemy as sa
from alembic import op

revision = "20261125_board_claims"
down_revision = "20261124_first_tables"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("place", sa.Column("board_owner", sa.String, nullable=True))
    op.add_column("place", sa.Column("board_lease_until", sa.BigInteger, nullable=True))


def downgrade() -> None:
    op.drop_column("place", "board_lease_until")
    op.drop_column("place", "board_owner")
