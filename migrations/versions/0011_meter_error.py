"""The share that the meters are expected to drop too few, or too many."""

import sqlalchemy as sa
from alembic import op

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for table in ("job", "switch"):
        op.add_column(table, sa.Column("meter_error", sa.Double(), nullable=True))


def downgrade() -> None:
    for table in ("job", "switch"):
        op.drop_column(table, "meter_error")
