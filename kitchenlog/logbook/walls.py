"""Migration steps both databases need in their own words: triggers and row security."""

from __future__ import annotations

from django.apps.registry import Apps
from django.db.backends.base.schema import BaseDatabaseSchemaEditor
from django.db.migrations import RunPython

_SQLITE_TRIGGER = """
CREATE TRIGGER {table}_refuses_{word} BEFORE {word} ON {table}
BEGIN SELECT RAISE(ABORT, 'an entry is never changed or deleted'); END
"""
_POSTGRESQL_FUNCTION = """
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN RAISE EXCEPTION 'an entry is never changed or deleted'; END $$
"""
_POSTGRESQL_TRIGGER = """
CREATE TRIGGER {table}_refuses_{word} BEFORE {word} ON {table}
FOR EACH ROW EXECUTE FUNCTION refuse_change()
"""
# nullif: a setting once made and reset reads as an empty text, which is no UUID.
_POLICY = """
CREATE POLICY one_cooperative ON {table}
USING (cooperative_id = nullif(current_setting('kitchenlog.cooperative', true), '')::uuid)
"""


def append_only(table: str) -> RunPython:
    """Have the database refuse UPDATE and DELETE on a table (R47).

    On SQLite a later migration that alters the table drops these: add this step again after it.
    """

    def forwards(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
        is_postgresql = schema_editor.connection.vendor == "postgresql"
        if is_postgresql:
            schema_editor.execute(_POSTGRESQL_FUNCTION)
        trigger = _POSTGRESQL_TRIGGER if is_postgresql else _SQLITE_TRIGGER
        for word in ("UPDATE", "DELETE"):
            schema_editor.execute(trigger.format(table=table, word=word))

    def backwards(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
        is_postgresql = schema_editor.connection.vendor == "postgresql"
        where = f" ON {table}" if is_postgresql else ""
        for word in ("UPDATE", "DELETE"):
            schema_editor.execute(f"DROP TRIGGER {table}_refuses_{word}{where}")
        if is_postgresql:
            schema_editor.execute("DROP FUNCTION refuse_change()")

    return RunPython(forwards, backwards)


def one_cooperative_at_a_time(*tables: str) -> RunPython:
    """Have PostgreSQL show only the rows of the cooperative in scope (R68), to owners too."""

    def forwards(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
        if schema_editor.connection.vendor != "postgresql":
            return
        for table in tables:
            schema_editor.execute(f"ALTER TABLE {table} ENABLE ROW LEVEL SECURITY")
            schema_editor.execute(f"ALTER TABLE {table} FORCE ROW LEVEL SECURITY")
            schema_editor.execute(_POLICY.format(table=table))

    def backwards(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
        if schema_editor.connection.vendor != "postgresql":
            return
        for table in tables:
            schema_editor.execute(f"DROP POLICY one_cooperative ON {table}")
            schema_editor.execute(f"ALTER TABLE {table} NO FORCE ROW LEVEL SECURITY")
            schema_editor.execute(f"ALTER TABLE {table} DISABLE ROW LEVEL SECURITY")

    return RunPython(forwards, backwards)
