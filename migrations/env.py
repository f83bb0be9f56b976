"""Runs the migrations on the connection the program hands over (app/store/migrate.py)."""

from alembic import context

context.configure(connection=context.config.attributes["connection"])
with context.begin_transaction():
    context.run_migrations()
