"""How alembic runs here: over the connection that the program hands in."""

from alembic import context

context.configure(
    connection=context.config.attributes["connection"],
    render_as_batch=True,
    transaction_per_migration=False,
)
context.run_migrations()
