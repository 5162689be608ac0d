"""What phones say (Form), ask (Query) and are answered (Answer, made of Parts)."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from drf_spectacular.utils import extend_schema_field
from rest_framework import serializers

from kitchenlog.entries.kinds import TABLE_NUMBER
from kitchenlog.members.models import ROLES
from kitchenlog.sync.pull import PULL_CHANGES_MAX

STATUSES = ("created", "exists", "mismatch", "quarantined", "retry")
MOMENT = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z$"
IDS_MAX = 1_000
KINDS_MAX = 1_000_000
NAME_CHARS = 200
LOGIN_CHARS = 81  # name, @, handle
PASSPHRASE_CHARS = 500


class PushForm(serializers.Serializer[Any]):
    """A push. An entry of any form is answered by itself, so entries are not described here."""

    protocol = serializers.IntegerField(min_value=1, max_value=1)
    push = serializers.UUIDField()
    device = serializers.UUIDField()
    device_time = serializers.RegexField(MOMENT)
    epoch = serializers.CharField(allow_blank=True)
    entries = serializers.ListField(
        child=serializers.JSONField(), max_length=settings.PUSH_ENTRIES_MAX
    )


class ResultPart(serializers.Serializer[Any]):
    """What became of one entry."""

    id = serializers.CharField(allow_null=True)
    status = serializers.ChoiceField(choices=STATUSES)
    code = serializers.CharField(required=False)
    detail = serializers.CharField(required=False)


class PushAnswer(serializers.Serializer[Any]):
    """One result for each entry, in the order of the push."""

    protocol = serializers.IntegerField()
    push = serializers.UUIDField()
    server_time = serializers.CharField()
    epoch = serializers.CharField()
    through = serializers.CharField()
    results = ResultPart(many=True)


@extend_schema_field(str)
class CursorField(serializers.Field[str, Any, str, Any]):
    """Any text at all: what is no cursor of ours means that the phone begins anew (R44)."""

    def to_internal_value(self, data: Any) -> str:
        """As it came."""
        return str(data)


class PullQuery(serializers.Serializer[Any]):
    """Where to go on from and how much at once."""

    cursor = CursorField(required=False, default="")
    limit = serializers.IntegerField(
        required=False, min_value=1, max_value=PULL_CHANGES_MAX, default=PULL_CHANGES_MAX
    )
    kinds = serializers.IntegerField(
        required=False, min_value=0, max_value=KINDS_MAX, default=TABLE_NUMBER
    )


class ChangePart(serializers.Serializer[Any]):
    """One entry, one sheet, or how often one instrument was used since its last check; a
    sheet's id is its subject."""

    type = serializers.ChoiceField(choices=("entry", "sheet", "uses"))
    id = serializers.CharField()
    seq = serializers.IntegerField()

    def get_fields(self) -> dict[str, serializers.Field[Any, Any, Any, Any]]:
        """A serializer has a `data` of its own, so this one cannot be written as a line."""
        return {**super().get_fields(), "data": serializers.DictField()}


class PullAnswer(serializers.Serializer[Any]):
    """A page of changes, or `reset` where the phone must begin anew."""

    protocol = serializers.IntegerField()
    epoch = serializers.CharField()
    server_time = serializers.CharField()
    reset = serializers.BooleanField(required=False)
    changes = ChangePart(many=True, required=False)
    next = serializers.CharField(required=False)
    more = serializers.BooleanField(required=False)


class HaveForm(serializers.Serializer[Any]):
    """Ids a phone asks after."""

    ids = serializers.ListField(child=serializers.UUIDField(), max_length=IDS_MAX)


class HaveAnswer(serializers.Serializer[Any]):
    """Those of the ids that the log does not hold."""

    protocol = serializers.IntegerField()
    missing = serializers.ListField(child=serializers.UUIDField())


class SignInForm(serializers.Serializer[Any]):
    """A member who has a passphrase."""

    login = serializers.CharField(max_length=LOGIN_CHARS)
    passphrase = serializers.CharField(max_length=PASSPHRASE_CHARS, trim_whitespace=False)
    app_version = serializers.CharField(max_length=40, allow_blank=True, default="")


class JoinForm(serializers.Serializer[Any]):
    """Somebody with a code. Name and login are needed unless the code is for one member."""

    join_code = serializers.CharField(max_length=40)
    name = serializers.CharField(max_length=NAME_CHARS, allow_blank=True, default="")
    login = serializers.CharField(max_length=LOGIN_CHARS, allow_blank=True, default="")
    passphrase = serializers.CharField(max_length=PASSPHRASE_CHARS, trim_whitespace=False)
    app_version = serializers.CharField(max_length=40, allow_blank=True, default="")


class JoinCodeForm(serializers.Serializer[Any]):
    """Whom a code is for."""

    roles = serializers.ListField(
        child=serializers.ChoiceField(choices=ROLES), required=False, max_length=len(ROLES)
    )
    member = serializers.UUIDField(required=False)


class MemberAnswer(serializers.Serializer[Any]):
    """Who signed in."""

    id = serializers.UUIDField()
    name = serializers.CharField()
    login = serializers.CharField()
    roles = serializers.ListField(child=serializers.CharField())


class CooperativeAnswer(serializers.Serializer[Any]):
    """Whose record it is, and what its definition may begin with."""

    id = serializers.UUIDField()
    handle = serializers.CharField()
    name = serializers.CharField()
    starts_with = serializers.DictField(child=serializers.CharField())


class SessionAnswer(serializers.Serializer[Any]):
    """What a device needs to begin."""

    protocol = serializers.IntegerField()
    device = serializers.UUIDField()
    mark = serializers.CharField()
    epoch = serializers.CharField()
    server_time = serializers.CharField()
    member = MemberAnswer()
    cooperative = CooperativeAnswer()


class DeviceAnswer(serializers.Serializer[Any]):
    """One device as the coordinator sees it."""

    device = serializers.UUIDField()
    mark = serializers.CharField()
    member = serializers.UUIDField()
    app_version = serializers.CharField()
    signed_in_at = serializers.CharField()
    last_contact_at = serializers.CharField()
    highest_device_seq = serializers.IntegerField()
    waiting_count = serializers.IntegerField()
    is_revoked = serializers.BooleanField()
    is_signed_out = serializers.BooleanField()


class DevicesAnswer(serializers.Serializer[Any]):
    """Every device the cooperative has had."""

    protocol = serializers.IntegerField()
    devices = DeviceAnswer(many=True)


class DoneAnswer(serializers.Serializer[Any]):
    """It is done; there is nothing to tell."""

    protocol = serializers.IntegerField()


class JoinCodeAnswer(serializers.Serializer[Any]):
    """A code, in clear this once."""

    protocol = serializers.IntegerField()
    code = serializers.CharField()
    expires_at = serializers.CharField()
