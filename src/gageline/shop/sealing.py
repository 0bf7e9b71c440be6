"""Tables that are only ever added to: the database itself refuses to change or take out what stands there."""

from __future__ import annotations

from django.db.backends.base.base import BaseDatabaseWrapper

__all__ = ["SEALED", "seal", "unseal"]

SEALED = ("logentry", "revision", "reading", "stickrevision", "racktext")
"""The log, what was read, and everything that was ever saved."""
_SAYS = "what stands here is never changed or taken out: add to it"
_FUNCTION = f"""CREATE OR REPLACE FUNCTION shop_only_added() RETURNS trigger AS $$
BEGIN RAISE EXCEPTION '{_SAYS}' USING ERRCODE = 'integrity_constraint_violation'; END
$$ LANGUAGE plpgsql"""


def seal(connection: BaseDatabaseWrapper) -> None:
    """Have the database refuse every change of what is only added to; done again it does nothing.

    Whoever owns the database can lift this, as `unseal` does: it keeps programs and hands from slipping,
    not the owner from cheating.

    Args:
        connection: to SQLite or PostgreSQL.

    Source: https://www.sqlite.org/lang_createtrigger.html and PostgreSQL's manual, CREATE TRIGGER.
    """
    there = set(connection.introspection.table_names())
    with connection.cursor() as cursor:
        if connection.vendor == "postgresql":
            cursor.execute(_FUNCTION)
        for name in SEALED:
            table = f"shop_{name}"
            if table not in there:
                continue
            if connection.vendor == "postgresql":
                cursor.execute(f"DROP TRIGGER IF EXISTS {table}_only_added ON {table}")
                cursor.execute(
                    f"CREATE TRIGGER {table}_only_added BEFORE UPDATE OR DELETE ON {table} "
                    "FOR EACH ROW EXECUTE FUNCTION shop_only_added()"
                )
                continue
            for event in ("update", "delete"):
                cursor.execute(
                    f"CREATE TRIGGER IF NOT EXISTS {table}_no_{event} BEFORE {event} ON {table} "
                    f"BEGIN SELECT RAISE(ABORT, '{_SAYS}'); END"
                )


def unseal(connection: BaseDatabaseWrapper) -> None:
    """Lift the seal, for a restore that puts everything back inside one transaction.

    Args:
        connection: to SQLite or PostgreSQL.
    """
    there = set(connection.introspection.table_names())
    with connection.cursor() as cursor:
        for table in (f"shop_{name}" for name in SEALED if f"shop_{name}" in there):
            if connection.vendor == "postgresql":
                cursor.execute(f"DROP TRIGGER IF EXISTS {table}_only_added ON {table}")
                continue
            for event in ("update", "delete"):
                cursor.execute(f"DROP TRIGGER IF EXISTS {table}_no_{event}")
