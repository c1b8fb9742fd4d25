"""The seeds that mix in a row, beside each flush that is kept."""

import sqlalchemy as sa
from alembic import op

revision = "0009"
down_revision = "0008"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("flush", sa.Column("pool", sa.Double(), nullable=True))


def downgrade() -> None:
    op.drop_column("flush", "pool")
