"""Runs migrations on the connection the store hands over; see `bot/storage/migrate.py`."""

from alembic import context

from bot.storage.schema import metadata

connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=metadata,
    render_as_batch=connection.dialect.name == "sqlite",
    transactional_ddl=True,
)
# The caller's transaction holds the lock and commits: no transaction of our own.
context.run_migrations()
