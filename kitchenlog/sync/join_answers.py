"""What the views of sync/join.py answer, field by field."""

from __future__ import annotations

from typing import Any

from rest_framework import serializers


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
