"""Tasks that a person adds to a switch or splits off."""

import sqlalchemy as sa
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _own_task()
    _task_split()


def _own_task() -> None:
    op.create_table(
        "own_task",
        sa.Column("switch_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("title", sa.String(), nullable=False),
        sa.Column("work_place", sa.String(), nullable=False),
        sa.Column("places", sa.JSON(), nullable=False),
        sa.Column("minutes_fixed", sa.JSON(), nullable=False),
        sa.Column("minutes_each", sa.JSON(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("tools", sa.JSON(), nullable=False),
        sa.Column("persons", sa.Integer(), nullable=False),
        sa.Column("after", sa.JSON(), nullable=False),
        sa.Column("before", sa.JSON(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["switch_id"],
            ["switch.id"],
            name=op.f("fk_own_task_switch_id_switch"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_own_task")),
        sa.UniqueConstraint("switch_id", "name", name=op.f("uq_own_task_switch_id_name")),
    )


def _task_split() -> None:
    op.create_table(
        "task_split",
        sa.Column("switch_id", sa.Integer(), nullable=False),
        sa.Column("family", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("places", sa.JSON(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["switch_id"],
            ["switch.id"],
            name=op.f("fk_task_split_switch_id_switch"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_task_split")),
        sa.UniqueConstraint(
            "switch_id", "family", "name", name=op.f("uq_task_split_switch_id_family_name")
        ),
    )


def downgrade() -> None:

    op.drop_table("task_split")
    op.drop_table("own_task")
