"""Proofs with their readings, and the findings that came of them."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    _proof()
    _finding()


def _proof() -> None:
    op.create_table(
        "proof",
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("taken", sa.String(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("lot", sa.String(), nullable=True),
        sa.Column("meters", sa.JSON(), nullable=False),
        sa.Column("form", sa.Integer(), nullable=False),
        sa.Column("readings", sa.JSON(), nullable=False),
        sa.Column("settles", sa.JSON(), nullable=False),
        sa.Column("withdraws", sa.Integer(), nullable=True),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_proof_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.ForeignKeyConstraint(["withdraws"], ["proof.id"], name=op.f("fk_proof_withdraws_proof")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_proof")),
    )
    op.create_index("ix_proof_planter_id_kind", "proof", ["planter_id", "kind"])


def _finding() -> None:
    op.create_table(
        "finding",
        sa.Column("proof_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("row", sa.Integer(), nullable=True),
        sa.Column("part", sa.String(), nullable=False),
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("evidence", sa.String(), nullable=False),
        sa.Column("advice", sa.JSON(), nullable=False),
        sa.Column("weight", sa.String(), nullable=False),
        sa.Column("parts", sa.JSON(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("task", sa.Boolean(), nullable=False),
        sa.Column("closed_by", sa.Integer(), nullable=True),
        sa.Column("acknowledged", sa.String(), nullable=False),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["closed_by"], ["proof.id"], name=op.f("fk_finding_closed_by_proof")
        ),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_finding_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.ForeignKeyConstraint(["proof_id"], ["proof.id"], name=op.f("fk_finding_proof_id_proof")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_finding")),
    )
    op.create_index("ix_finding_planter_id_state", "finding", ["planter_id", "state"])


def downgrade() -> None:
    op.drop_table("finding")
    op.drop_table("proof")
