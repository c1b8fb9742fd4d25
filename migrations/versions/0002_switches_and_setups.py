"""Switches with what was there before and what is ticked off, and saved setups."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _setup()
    _switch()
    _before_cell()
    _setup_cell()
    _tick()


def _setup() -> None:
    op.create_table(
        "setup",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("saved", sa.String(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("lot", sa.String(), nullable=True),
        sa.Column("crop", sa.String(), nullable=True),
        sa.Column("field", sa.String(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("proved", sa.String(), nullable=False),
        sa.Column("signed", sa.Boolean(), nullable=False),
        sa.Column("withdrawn", sa.Boolean(), nullable=False),
        sa.Column("seed_diameter", sa.JSON(), nullable=True),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_setup_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_setup")),
    )
    op.create_index(
        "uq_setup_planter_id_name",
        "setup",
        ["planter_id", "name"],
        unique=True,
        sqlite_where=sa.text("NOT withdrawn"),
        postgresql_where=sa.text("NOT withdrawn"),
    )


def _switch() -> None:
    op.create_table(
        "switch",
        sa.Column("started", sa.String(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("ended", sa.String(), nullable=True),
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
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_switch_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_switch")),
    )


def _before_cell() -> None:
    op.create_table(
        "before_cell",
        sa.Column("switch_id", sa.Integer(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["switch_id"],
            ["switch.id"],
            name=op.f("fk_before_cell_switch_id_switch"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_before_cell")),
        sa.UniqueConstraint(
            "switch_id", "setting", "place", name=op.f("uq_before_cell_switch_id_setting_place")
        ),
    )


def _setup_cell() -> None:
    op.create_table(
        "setup_cell",
        sa.Column("setup_id", sa.Integer(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["setup_id"],
            ["setup.id"],
            name=op.f("fk_setup_cell_setup_id_setup"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_setup_cell")),
        sa.UniqueConstraint(
            "setup_id", "setting", "place", name=op.f("uq_setup_cell_setup_id_setting_place")
        ),
    )


def _tick() -> None:
    op.create_table(
        "tick",
        sa.Column("switch_id", sa.Integer(), nullable=False),
        sa.Column("task", sa.String(), nullable=False),
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("when", sa.String(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["switch_id"], ["switch.id"], name=op.f("fk_tick_switch_id_switch"), ondelete="CASCADE"
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tick")),
        sa.UniqueConstraint(
            "switch_id", "task", "place", name=op.f("uq_tick_switch_id_task_place")
        ),
    )


def downgrade() -> None:

    op.drop_table("tick")
    op.drop_table("setup_cell")
    op.drop_table("before_cell")
    op.drop_table("switch")
    op.drop_table("setup")
