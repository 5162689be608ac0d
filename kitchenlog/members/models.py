"""Tables of cooperatives, members, devices and join codes."""

import uuid
from typing import ClassVar

from django.contrib.auth.base_user import AbstractBaseUser
from django.db import models

ROLES = ("processor", "seller", "coordinator")


class Cooperative(models.Model):
    """One cooperative; what it defines about itself stands in the log, not here."""

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    handle = models.CharField(max_length=40, unique=True)
    name = models.CharField(max_length=200)
    # What its first phone proposes when it writes the cooperative's definition:
    # time_zone, currency, language.
    starts_with = models.JSONField(default=dict)
    created_at = models.DateTimeField()

    class Meta:
        constraints: ClassVar = [
            models.CheckConstraint(
                condition=models.Q(handle__regex=r"^[a-z0-9][a-z0-9-]*$"),
                name="cooperative_handle_is_plain",
            )
        ]

    def __str__(self) -> str:
        return self.handle


class Member(AbstractBaseUser):
    """One person in one cooperative; who works with two has an account in each."""

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="members"
    )
    login = models.CharField(max_length=40)
    name = models.CharField(max_length=200)
    roles = models.JSONField(default=list)
    joined_at = models.DateTimeField()
    left_at = models.DateTimeField(null=True, blank=True)
    # A device knows when it signed in; a second clock beside it would only differ.
    last_login = None

    objects: ClassVar[models.Manager["Member"]] = models.Manager()

    # A login is unique within its cooperative only; Django wants one field unique over all.
    USERNAME_FIELD = "id"
    REQUIRED_FIELDS: ClassVar = ["login", "name"]

    class Meta:
        constraints: ClassVar = [
            models.UniqueConstraint(fields=["cooperative", "login"], name="member_login"),
        ]

    def __str__(self) -> str:
        return str(self.id)

    @property
    def full_login(self) -> str:
        """What the person types to sign in: `name@handle`."""
        return f"{self.login}@{self.cooperative.handle}"

    @property
    def has_left(self) -> bool:
        """Whether the membership has ended."""
        return self.left_at is not None

    @property
    def is_coordinator(self) -> bool:
        """Whether this member looks after people, recipes and devices."""
        return "coordinator" in self.roles


class Device(models.Model):
    """One browser as used by one member. Its token is kept as a hash only."""

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="devices"
    )
    member = models.ForeignKey(Member, on_delete=models.PROTECT, related_name="devices")
    mark = models.CharField(max_length=2)
    token_hash = models.CharField(max_length=64, blank=True)
    signed_in_at = models.DateTimeField()
    last_contact_at = models.DateTimeField()
    expires_at = models.DateTimeField()
    revoked_at = models.DateTimeField(null=True, blank=True)
    signed_out_at = models.DateTimeField(null=True, blank=True)
    app_version = models.CharField(max_length=40, blank=True)
    highest_device_seq = models.BigIntegerField(default=0)
    waiting_count = models.BigIntegerField(default=0)

    class Meta:
        constraints: ClassVar = [
            # Lot codes made without signal hold the mark, so two devices may never share one.
            models.UniqueConstraint(fields=["cooperative", "mark"], name="device_mark"),
        ]

    def __str__(self) -> str:
        return str(self.id)


class JoinCode(models.Model):
    """A code that lets one person in once: as a new member, or as `member` again."""

    id = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    cooperative = models.ForeignKey(
        Cooperative, on_delete=models.PROTECT, related_name="join_codes"
    )
    code_hash = models.CharField(max_length=64, unique=True)
    roles = models.JSONField(default=list)
    member = models.ForeignKey(
        Member, on_delete=models.PROTECT, null=True, blank=True, related_name="join_codes"
    )
    made_by = models.ForeignKey(
        Device, on_delete=models.PROTECT, null=True, blank=True, related_name="join_codes_made"
    )
    created_at = models.DateTimeField()
    expires_at = models.DateTimeField()
    used_at = models.DateTimeField(null=True, blank=True)

    def __str__(self) -> str:
        return str(self.id)


class Attempt(models.Model):
    """How often something limited was tried since its window opened (R76)."""

    key = models.CharField(max_length=200, primary_key=True)
    window_from_s = models.BigIntegerField()
    count = models.BigIntegerField()

    def __str__(self) -> str:
        return self.key
