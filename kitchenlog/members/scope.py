"""One cooperative at a time: the transaction and the database's own wall, opened together."""

from collections.abc import Iterator
from contextlib import contextmanager

from django.db import connection, transaction

from kitchenlog.members.models import Cooperative


@contextmanager
def in_cooperative(cooperative: Cooperative, *, writes: bool = True) -> Iterator[None]:
    """Work for one cooperative, in one transaction, on PostgreSQL behind row security.

    With `writes=False` SQLite is read without a transaction: each of ours begins IMMEDIATE
    and would take the write lock, which a pull must not. A read that needs one point in
    time reads the head row first and then only what stands below it.
    """
    if connection.vendor == "sqlite" and not writes:
        yield
        return
    with transaction.atomic():
        if connection.vendor == "postgresql":
            with connection.cursor() as cursor:
                cursor.execute(
                    "SELECT set_config('kitchenlog.cooperative', %s, true)",
                    [str(cooperative.pk)],
                )
        yield
