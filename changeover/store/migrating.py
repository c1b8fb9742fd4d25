"""Bringing the tables of a store to the newest revision, with alembic, only when that is due."""

from sqlalchemy import Connection

from changeover.bundled import bundled


def migrate(connection: Connection, to: str = "head") -> None:
    """Run the migrations up to a revision over a connection that is open.

    The caller's transaction holds them all: either every one is kept or none.
    """
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(bundled("migrations")).replace("%", "%%"))
    config.attributes["connection"] = connection
    command.upgrade(config, to)
