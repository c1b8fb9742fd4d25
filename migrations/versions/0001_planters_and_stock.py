"""Planters, settings, lots, fields, parts, meters and the history of every change."""

import sqlalchemy as sa
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    _about()
    _entry()
    _field()
    _lot()
    _manual_value()
    _meter()
    _part()
    _planter()
    _setting()
    _shelf()
    _standard_time()
    _cell()
    _change()
    _depth_offset()
    _drive()
    _position()
    _row_group()


def _about() -> None:
    op.create_table(
        "about",
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("value", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("key", name=op.f("pk_about")),
    )


def _entry() -> None:
    op.create_table(
        "entry",
        sa.Column("when", sa.String(), nullable=False),
        sa.Column("who", sa.String(), nullable=False),
        sa.Column("why", sa.String(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_entry")),
    )


def _field() -> None:
    op.create_table(
        "field",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("area", sa.JSON(), nullable=False),
        sa.Column("texture", sa.String(), nullable=False),
        sa.Column("where", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_field")),
        sa.UniqueConstraint("name", name=op.f("uq_field_name")),
    )


def _lot() -> None:
    op.create_table(
        "lot",
        sa.Column("number", sa.String(), nullable=False),
        sa.Column("crop", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("thousand_seed_mass", sa.JSON(), nullable=True),
        sa.Column("sieve", sa.JSON(), nullable=True),
        sa.Column("length", sa.JSON(), nullable=True),
        sa.Column("width", sa.JSON(), nullable=True),
        sa.Column("thickness", sa.JSON(), nullable=True),
        sa.Column("germination", sa.Double(), nullable=True),
        sa.Column("treatment", sa.String(), nullable=False),
        sa.Column("treatment_name", sa.String(), nullable=False),
        sa.Column("purity", sa.String(), nullable=False),
        sa.Column("genetically_modified", sa.Boolean(), nullable=False),
        sa.Column("package_seeds", sa.Integer(), nullable=True),
        sa.Column("package_mass", sa.JSON(), nullable=True),
        sa.Column("packages", sa.Double(), nullable=True),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_lot")),
        sa.UniqueConstraint("number", name=op.f("uq_lot_number")),
    )


def _manual_value() -> None:
    op.create_table(
        "manual_value",
        sa.Column("crop", sa.String(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("planter", sa.String(), nullable=True),
        sa.Column("part", sa.String(), nullable=True),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_manual_value")),
    )


def _meter() -> None:
    op.create_table(
        "meter",
        sa.Column("serial", sa.String(), nullable=False),
        sa.Column("planter", sa.String(), nullable=True),
        sa.Column("row", sa.Integer(), nullable=True),
        sa.Column("hub_zero", sa.JSON(), nullable=True),
        sa.Column("hours", sa.Double(), nullable=False),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_meter")),
        sa.UniqueConstraint("serial", name=op.f("uq_meter_serial")),
    )


def _part() -> None:
    op.create_table(
        "part",
        sa.Column("code", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("sort", sa.String(), nullable=False),
        sa.Column("suits", sa.JSON(), nullable=False),
        sa.Column("cells", sa.Integer(), nullable=True),
        sa.Column("hole", sa.JSON(), nullable=True),
        sa.Column("cell_circle", sa.JSON(), nullable=True),
        sa.Column("seed_from", sa.JSON(), nullable=True),
        sa.Column("seed_to", sa.JSON(), nullable=True),
        sa.Column("note", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_part")),
        sa.UniqueConstraint("code", name=op.f("uq_part_code")),
    )


def _planter() -> None:
    op.create_table(
        "planter",
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("retired", sa.Boolean(), nullable=False),
        sa.Column("rows", sa.Integer(), nullable=False),
        sa.Column("row_spacing", sa.JSON(), nullable=False),
        sa.Column("split_rows", sa.JSON(), nullable=False),
        sa.Column("depth_first", sa.JSON(), nullable=False),
        sa.Column("depth_step", sa.JSON(), nullable=False),
        sa.Column("depth_count", sa.Integer(), nullable=False),
        sa.Column("hub_spacing_step", sa.JSON(), nullable=False),
        sa.Column("fan_limit", sa.JSON(), nullable=True),
        sa.Column("sensors_per_controller", sa.Integer(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_planter")),
        sa.UniqueConstraint("name", name=op.f("uq_planter_name")),
    )


def _setting() -> None:
    op.create_table(
        "setting",
        sa.Column("position", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("scope", sa.String(), nullable=False),
        sa.Column("work_place", sa.String(), nullable=False),
        sa.Column("measure", sa.String(), nullable=True),
        sa.Column("options", sa.JSON(), nullable=False),
        sa.Column("part_sort", sa.String(), nullable=True),
        sa.Column("hint", sa.String(), nullable=False),
        sa.Column("hidden", sa.Boolean(), nullable=False),
        sa.Column("own", sa.Boolean(), nullable=False),
        sa.Column("record_only", sa.Boolean(), nullable=False),
        sa.Column("tolerance", sa.JSON(), nullable=True),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_setting")),
        sa.UniqueConstraint("key", name=op.f("uq_setting_key")),
    )


def _shelf() -> None:
    op.create_table(
        "shelf",
        sa.Column("part", sa.String(), nullable=False),
        sa.Column("condition", sa.String(), nullable=False),
        sa.Column("count", sa.Integer(), nullable=False),
        sa.Column("bin", sa.String(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_shelf")),
        sa.UniqueConstraint("part", "condition", name=op.f("uq_shelf_part_condition")),
    )


def _standard_time() -> None:
    op.create_table(
        "standard_time",
        sa.Column("task", sa.String(), nullable=False),
        sa.Column("fixed", sa.JSON(), nullable=False),
        sa.Column("each", sa.JSON(), nullable=False),
        sa.Column("version", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_standard_time")),
        sa.UniqueConstraint("task", name=op.f("uq_standard_time_task")),
    )


def _cell() -> None:
    op.create_table(
        "cell",
        sa.Column("side", sa.String(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("value", sa.JSON(), nullable=False),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_cell_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_cell")),
        sa.UniqueConstraint(
            "planter_id",
            "side",
            "setting",
            "place",
            name=op.f("uq_cell_planter_id_side_setting_place"),
        ),
    )


def _change() -> None:
    op.create_table(
        "change",
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("planter", sa.String(), nullable=False),
        sa.Column("what", sa.String(), nullable=False),
        sa.Column("setting", sa.String(), nullable=False),
        sa.Column("place", sa.String(), nullable=False),
        sa.Column("old", sa.String(), nullable=False),
        sa.Column("new", sa.String(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entry.id"], name=op.f("fk_change_entry_id_entry")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_change")),
    )
    op.create_index(op.f("ix_change_entry_id"), "change", ["entry_id"], unique=False)
    op.create_index(op.f("ix_change_planter"), "change", ["planter"], unique=False)


def _depth_offset() -> None:
    op.create_table(
        "depth_offset",
        sa.Column("row", sa.Integer(), nullable=False),
        sa.Column("offset", sa.JSON(), nullable=False),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_depth_offset_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_depth_offset")),
        sa.UniqueConstraint("planter_id", "row", name=op.f("uq_depth_offset_planter_id_row")),
    )


def _drive() -> None:
    op.create_table(
        "drive",
        sa.Column("group_name", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("ratio", sa.Double(), nullable=False),
        sa.Column("driver", sa.JSON(), nullable=True),
        sa.Column("driven", sa.JSON(), nullable=True),
        sa.Column("rolling_circumference", sa.JSON(), nullable=True),
        sa.Column("slip", sa.Double(), nullable=True),
        sa.Column("least_speed", sa.JSON(), nullable=True),
        sa.Column("most_speed", sa.JSON(), nullable=True),
        sa.Column("displacement", sa.JSON(), nullable=True),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_drive_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_drive")),
        sa.UniqueConstraint(
            "planter_id", "group_name", name=op.f("uq_drive_planter_id_group_name")
        ),
    )


def _position() -> None:
    op.create_table(
        "position",
        sa.Column("scale", sa.String(), nullable=False),
        sa.Column("number", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("open_share", sa.Double(), nullable=True),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_position_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_position")),
        sa.UniqueConstraint(
            "planter_id", "scale", "number", name=op.f("uq_position_planter_id_scale_number")
        ),
    )


def _row_group() -> None:
    op.create_table(
        "row_group",
        sa.Column("sort", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("rows", sa.JSON(), nullable=False),
        sa.Column("planter_id", sa.Integer(), nullable=False),
        sa.Column("id", sa.Integer(), nullable=False),
        sa.ForeignKeyConstraint(
            ["planter_id"],
            ["planter.id"],
            name=op.f("fk_row_group_planter_id_planter"),
            ondelete="CASCADE",
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_row_group")),
        sa.UniqueConstraint(
            "planter_id", "sort", "name", name=op.f("uq_row_group_planter_id_sort_name")
        ),
    )


def downgrade() -> None:
    op.drop_table("row_group")
    op.drop_table("position")
    op.drop_table("drive")
    op.drop_table("depth_offset")
    op.drop_table("change")
    op.drop_table("cell")
    op.drop_table("standard_time")
    op.drop_table("shelf")
    op.drop_table("setting")
    op.drop_table("planter")
    op.drop_table("part")
    op.drop_table("meter")
    op.drop_table("manual_value")
    op.drop_table("lot")
    op.drop_table("field")
    op.drop_table("entry")
    op.drop_table("about")
