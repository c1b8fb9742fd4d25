"""Each row's own depth step, and the digs behind its calibration."""

import sqlalchemy as sa
from alembic import op

revision = "0010"
down_revision = "0009"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for name in ("step", "spread"):
        op.add_column("depth_offset", sa.Column(name, sa.JSON(none_as_null=True), nullable=True))
    op.add_column("depth_offset", sa.Column("digs", sa.Integer(), nullable=True))
    for name in ("middle", "squares"):
        op.add_column("depth_offset", sa.Column(name, sa.Double(), nullable=True))


def downgrade() -> None:
    for name in ("squares", "middle", "digs", "spread", "step"):
        op.drop_column("depth_offset", name)
