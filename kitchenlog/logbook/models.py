"""Tables of the log: the head row, entries and their links, the work list, sheets, kept aside.

Every key starts with the cooperative, so that one cooperative's rows never meet another's. An
entry's key is (cooperative, id): the phone makes the id, so there is nothing to gain from a
second one. Links name an entry by its number, which is shorter and is the order of reading.
"""

from __future__ import annotations

from typing import ClassVar

from django.db import models

from kitchenlog.members.models import Cooperative

SUBJECT_CHARS = 120
HASH_CHARS = 64
FIRST_CHAIN_HASH = "0" * HASH_CHARS  # what the first entry of a log is chained to

AUDIENCES = [
    ("member", "every member"),
    ("own", "the member it is about, and coordinators"),
    ("coordinator", "coordinators"),
]


class LogHead(models.Model):
    """The turnstile: one row a cooperative, locked by whoever numbers entries or sheets."""

    cooperative = models.OneToOneField(
        Cooperative, on_delete=models.PROTECT, primary_key=True, related_name="log_head"
    )
    last_seq = models.BigIntegerField(default=0)
    has_stale = models.BooleanField(default=False)
    epoch = models.CharField(max_length=40)
    chain_hash = models.CharField(max_length=HASH_CHARS, default=FIRST_CHAIN_HASH)

    def __str__(self) -> str:
        return f"log of {self.cooperative_id} at {self.last_seq}"


class Entry(models.Model):
    """One entry as it was made, with what the server adds. Triggers refuse to change it."""

    pk = models.CompositePrimaryKey("cooperative_id", "id")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    id = models.UUIDField()
    seq = models.BigIntegerField()
    kind = models.CharField(max_length=40)
    author = models.UUIDField()
    device = models.UUIDField()
    device_seq = models.BigIntegerField()
    happened_at = models.DateTimeField()
    corrects = models.UUIDField(null=True)
    audience = models.CharField(max_length=12, choices=AUDIENCES)
    canonical = models.TextField()
    fingerprint = models.CharField(max_length=HASH_CHARS)
    chain_hash = models.CharField(max_length=HASH_CHARS)
    received_at = models.DateTimeField()
    skew_ms = models.BigIntegerField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["cooperative", "seq"], name="entry_seq_once"),
        ]
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "corrects"], name="entry_corrects"),
            models.Index(fields=["cooperative", "device", "device_seq"], name="entry_device"),
        ]

    def __str__(self) -> str:
        return f"{self.kind} {self.id}"


class EntrySubject(models.Model):
    """An entry changes this subject. Rows are added later when a correction widens a family."""

    pk = models.CompositePrimaryKey("cooperative_id", "subject", "seq")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=SUBJECT_CHARS)
    seq = models.BigIntegerField()
    can_open = models.BooleanField()

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "seq"], name="entry_subject_seq")
        ]

    def __str__(self) -> str:
        return f"{self.subject} {self.seq}"


class EntryMention(models.Model):
    """An entry names this subject without changing it."""

    pk = models.CompositePrimaryKey("cooperative_id", "subject", "seq")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=SUBJECT_CHARS)
    seq = models.BigIntegerField()

    def __str__(self) -> str:
        return f"{self.subject} {self.seq}"


class StaleSubject(models.Model):
    """Work to do: this subject's sheet is behind. The mark moves with each new reason."""

    pk = models.CompositePrimaryKey("cooperative_id", "subject")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=SUBJECT_CHARS)
    mark = models.BigIntegerField()

    def __str__(self) -> str:
        return f"{self.subject} since {self.mark}"


class Sheet(models.Model):
    """What all entries about one subject add up to, as phones are told of it."""

    pk = models.CompositePrimaryKey("cooperative_id", "subject")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    subject = models.CharField(max_length=SUBJECT_CHARS)
    seq = models.BigIntegerField()
    upto_seq = models.BigIntegerField()
    entry_count = models.IntegerField()
    fold = models.IntegerField()
    is_open = models.BooleanField()
    is_finished = models.BooleanField()
    audience = models.CharField(max_length=12, choices=AUDIENCES)
    last_received_at = models.DateTimeField(null=True)
    state = models.TextField()

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["cooperative", "seq"], name="sheet_seq_once"),
        ]
        indexes: ClassVar = [
            models.Index(
                fields=["cooperative", "is_open", "last_received_at"], name="sheet_quiet"
            ),
        ]

    def __str__(self) -> str:
        return self.subject


class Quarantined(models.Model):
    """What was handed over and stands outside the record until somebody decides.

    `digest` is the fingerprint of a readable entry, else the hash of its raw text: the same
    thing sent again is one row.
    """

    pk = models.CompositePrimaryKey("cooperative_id", "digest", "code")
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="+", db_index=False
    )
    digest = models.CharField(max_length=HASH_CHARS)
    code = models.CharField(max_length=20)
    detail = models.TextField()
    entry_id = models.UUIDField(null=True)
    is_readable = models.BooleanField()
    author = models.UUIDField()
    device = models.UUIDField()
    raw = models.BinaryField()
    received_at = models.DateTimeField()

    class Meta:
        indexes: ClassVar = [
            models.Index(fields=["cooperative", "received_at"], name="quarantined_received"),
        ]

    def __str__(self) -> str:
        return f"{self.code} {self.digest[:8]}"
