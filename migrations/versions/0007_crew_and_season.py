"""The crew and its shared tools, and what a season is planned by."""

import sqlalchemy as sa
from alembic import op

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _crew()
    _season()
    _flush()


def _crew() -> None:
    op.create_table(
        "crew_member",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("skills", sa.JSON(), nullable=False),
        sa.Column("hours", sa.JSON(), nullable=False),
        sa.Column("here", sa.Boolean(), nullable=False),
        *_ends("crew_member", "name"),
    )
    op.create_table(
        "shared_tool",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        *_ends("shared_tool", "name"),
    )


def _season() -> None:
    op.create_table(
        "season_rules",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("begins", sa.Date(), nullable=True),
        sa.Column("hours", sa.Double(), nullable=False),
        sa.Column("suitable", sa.Double(), nullable=False),
        sa.Column("efficiency", sa.Double(), nullable=False),
        sa.Column("move_minutes", sa.Integer(), nullable=False),
        sa.Column("near_minutes", sa.Integer(), nullable=False),
        *_ends("season_rules", "name"),
    )
    op.create_table(
        "job_fixing",
        sa.Column("job", sa.String(), nullable=False),
        sa.Column("planter", sa.String(), nullable=False),
        sa.Column("day", sa.Date(), nullable=True),
        *_ends("job_fixing", "job"),
    )
    op.create_table(
        "delivery",
        sa.Column("part", sa.String(), nullable=False),
        sa.Column("days", sa.Integer(), nullable=False),
        *_ends("delivery", "part"),
    )


def _flush() -> None:
    op.create_table(
        "flush",
        sa.Column("planter", sa.String(), nullable=False),
        sa.Column("lot", sa.String(), nullable=False),
        sa.Column("residual", sa.Double(), nullable=False),
        sa.Column("limit", sa.Double(), nullable=False),
        sa.Column("seeds", sa.Double(), nullable=False),
        sa.Column("row_feet", sa.Double(), nullable=False),
        sa.Column("acres", sa.Double(), nullable=False),
        sa.Column("measured", sa.Boolean(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("when", sa.String(), nullable=False),
        *_ends("flush", "planter", "lot", "when"),
    )


def _ends(table: str, *key: str) -> tuple[sa.Column[int] | sa.Constraint, ...]:
    """Return the columns and constraints with which each of these tables ends."""
    return (
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{table}")),
        sa.UniqueConstraint(*key, name=op.f(f"uq_{table}_{'_'.join(key)}")),
    )


def downgrade() -> None:

    for table in (
        "flush",
        "delivery",
        "job_fixing",
        "season_rules",
        "shared_tool",
        "crew_member",
    ):
        op.drop_table(table)
