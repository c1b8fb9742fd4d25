"""The revisions of the tables, oldest first, so that a store of today opens without alembic."""

REVISIONS = (
    "0001",
    "0002",
    "0003",
    "0004",
    "0005",
    "0006",
    "0007",
    "0008",
    "0009",
    "0010",
    "0011",
    "0012",
)
HEAD = REVISIONS[-1]
