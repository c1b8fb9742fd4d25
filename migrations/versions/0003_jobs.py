"""Field jobs of the season."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _job()


def _job() -> None:
    op.create_table(
        "job",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("planter", sa.String(), nullable=True),
        sa.Column("lateness_cost", sa.Double(), nullable=True),
        sa.Column("done", sa.Boolean(), nullable=False),
        sa.Column("lot", sa.String(), nullable=False),
        sa.Column("field", sa.String(), nullable=True),
        sa.Column("speed", sa.JSON(), nullable=False),
        sa.Column("seed_rate", sa.JSON(), nullable=True),
        sa.Column("stand", sa.JSON(), nullable=True),
        sa.Column("emergence", sa.Double(), nullable=True),
        sa.Column("moisture", sa.String(), nullable=False),
        sa.Column("tillage", sa.String(), nullable=False),
        sa.Column("soil_temperature", sa.JSON(), nullable=True),
        sa.Column("row_spacing", sa.JSON(), nullable=True),
        sa.Column("first_day", sa.Date(), nullable=True),
        sa.Column("last_day", sa.Date(), nullable=True),
        sa.Column("area", sa.JSON(), nullable=True),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_job")),
        sa.UniqueConstraint("name", name=op.f("uq_job_name")),
    )


def downgrade() -> None:

    op.drop_table("job")
