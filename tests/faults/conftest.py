"""A PostgreSQL server for the tests that need only a database of it."""

from tests.storage.conftest import empty_postgres, postgres, shared_postgres, url

__all__ = ["empty_postgres", "postgres", "shared_postgres", "url"]
