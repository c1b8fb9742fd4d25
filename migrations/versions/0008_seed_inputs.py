"""What seed need, refills, down pressure and altitude are reckoned from."""

from typing import Any

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _planter()
    for name in ("bulk_density", "lubricant"):
        op.add_column("lot", sa.Column(name, sa.JSON(none_as_null=True), nullable=True))
    for name in ("altitude", "run_length"):
        op.add_column("field", sa.Column(name, sa.JSON(none_as_null=True), nullable=True))
    for table in ("job", "switch"):
        op.add_column(table, sa.Column("overlap", sa.Double(), nullable=True))
        op.add_column(table, sa.Column("reserve", sa.Double(), nullable=True))
        op.add_column(table, _filled("seed_at_both_ends", sa.Boolean(), sa.false()))
        op.add_column(table, _filled("other_lots", sa.JSON(), sa.text("'[]'")))


def _planter() -> None:
    op.add_column("planter", sa.Column("tank_capacity", sa.JSON(), nullable=True))
    op.add_column("planter", _filled("wheel_track_rows", sa.JSON(), sa.text("'[]'")))
    op.add_column("planter", _filled("twin_rows", sa.Boolean(), sa.false()))
    op.create_table(
        "load_reading",
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("setting", sa.JSON(), nullable=False),
        sa.Column("load", sa.JSON(), nullable=False),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_load_reading_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_load_reading")),
    )


def _filled(
    name: str, sort: sa.types.TypeEngine[Any], filling: sa.ColumnElement[Any] | sa.TextClause
) -> sa.Column[Any]:
    """Return a column that is filled in the lines that are there already."""
    return sa.Column(name, sort, nullable=False, server_default=filling)


def downgrade() -> None:
    op.drop_table("load_reading")
    gone = {
        "planter": ("tank_capacity", "wheel_track_rows", "twin_rows"),
        "lot": ("bulk_density", "lubricant"),
        "field": ("altitude", "run_length"),
        "job": ("overlap", "reserve", "seed_at_both_ends", "other_lots"),
        "switch": ("overlap", "reserve", "seed_at_both_ends", "other_lots"),
    }
    for table, columns in gone.items():
        for column in columns:
            op.drop_column(table, column)
