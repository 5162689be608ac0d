"""What sync speaks, as the API's description says it."""

from __future__ import annotations

from typing import Any

from django.conf import settings
from rest_framework import serializers

from kitchenlog.entries.kinds import TABLE_NUMBER
from kitchenlog.sync.pull import PULL_CHANGES_MAX

STATUSES = ("created", "exists", "mismatch", "quarantined", "retry")
MOMENT = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}\.[0-9]{3}Z$"
IDS_MAX = 1_000
KINDS_MAX = 1_000_000


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


class ResultForm(serializers.Serializer[Any]):
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
    results = ResultForm(many=True)


class PullQuery(serializers.Serializer[Any]):
    """Where to go on from and how much at once."""

    cursor = serializers.CharField(required=False, allow_blank=True, default="")
    limit = serializers.IntegerField(
        required=False, min_value=1, max_value=PULL_CHANGES_MAX, default=PULL_CHANGES_MAX
    )
    kinds = serializers.IntegerField(
        required=False, min_value=0, max_value=KINDS_MAX, default=TABLE_NUMBER
    )


class ChangeForm(serializers.Serializer[Any]):
    """One entry or one sheet; a sheet's id is its subject."""

    type = serializers.ChoiceField(choices=("entry", "sheet"))
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
    changes = ChangeForm(many=True, required=False)
    next = serializers.CharField(required=False)
    more = serializers.BooleanField(required=False)


class HaveForm(serializers.Serializer[Any]):
    """Ids a phone asks after."""

    ids = serializers.ListField(child=serializers.UUIDField(), max_length=IDS_MAX)


class HaveAnswer(serializers.Serializer[Any]):
    """Those of the ids that the log does not hold."""

    protocol = serializers.IntegerField()
    missing = serializers.ListField(child=serializers.UUIDField())
