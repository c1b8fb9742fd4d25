"""Price lists, own wear limits, appraisals and their photos."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _price_list()
    _wear_limit()
    _appraisal()
    _photo()


def _price_list() -> None:
    op.create_table(
        "price_list",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("tax", sa.String(), nullable=False),
        sa.Column("lines", sa.JSON(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_price_list")),
        sa.UniqueConstraint("name", name=op.f("uq_price_list_name")),
    )


def _wear_limit() -> None:
    op.create_table(
        "wear_limit",
        sa.Column("part", sa.String(), nullable=False),
        sa.Column("applies", sa.String(), nullable=False),
        sa.Column("low", sa.JSON(), nullable=True),
        sa.Column("high", sa.JSON(), nullable=True),
        sa.Column("new", sa.JSON(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_wear_limit")),
        sa.UniqueConstraint("part", "applies", name=op.f("uq_wear_limit_part_applies")),
    )


def _appraisal() -> None:
    op.create_table(
        "appraisal",
        sa.Column("planter", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("inspection", sa.Integer(), nullable=True),
        sa.Column("prices", sa.String(), nullable=False),
        sa.Column("currency", sa.String(), nullable=False),
        sa.Column("as_found", sa.String(), nullable=True),
        sa.Column("reconditioned", sa.String(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_appraisal")),
        sa.UniqueConstraint("planter", "name", name=op.f("uq_appraisal_planter_name")),
    )


def _photo() -> None:
    op.create_table(
        "photo",
        sa.Column("planter", sa.String(), nullable=False),
        sa.Column("appraisal", sa.String(), nullable=False),
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("caption", sa.String(), nullable=False),
        sa.Column("content", sa.LargeBinary(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_photo")),
        sa.UniqueConstraint(
            "planter", "appraisal", "digest", name=op.f("uq_photo_planter_appraisal_digest")
        ),
    )


def downgrade() -> None:
    for table in ("photo", "appraisal", "wear_limit", "price_list"):
        op.drop_table(table)
