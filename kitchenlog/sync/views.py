"""Push, pull and have: what phones hand over and are told."""

from __future__ import annotations

from datetime import UTC, datetime

from django.conf import settings
from django.http import HttpResponse
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from kitchenlog.entries.kinds import TABLE_NUMBER
from kitchenlog.logbook.selectors import fingerprints_by_id
from kitchenlog.logbook.wire import wire_time
from kitchenlog.members.access import IsMember, IsSignedIn, device_of, member_of
from kitchenlog.members.limits import DAY_S, MINUTE_S, require_within
from kitchenlog.members.models import Device
from kitchenlog.members.refusals import Refused, answered
from kitchenlog.members.rest import KitchenlogView, body_of
from kitchenlog.sync.pull import pull_answer, where_we_are
from kitchenlog.sync.push import Session, answer_to
from kitchenlog.sync.push_body import PushBody, PushParser
from kitchenlog.sync.serializers import (
    HaveAnswer,
    HaveForm,
    PullAnswer,
    PullQuery,
    PushAnswer,
    PushForm,
)


class PushView(KitchenlogView):
    """A device hands over entries; also one whose member has left, for they are kept aside."""

    permission_classes = (IsSignedIn,)
    parser_classes = (PushParser,)

    @extend_schema(request=PushForm, responses=PushAnswer)
    def post(self, request: Request) -> Response:
        """Hand over entries. Sending the same ones again changes nothing."""
        push = request.data
        if not isinstance(push, PushBody):  # DRF gives an empty form for a request without body
            raise Refused("unreadable", 400, "The body must be a push.")
        member, device, at = member_of(request), device_of(request), datetime.now(UTC)
        if push.device != device.pk:
            raise Refused("unreadable", 400, "device must be the one in the header.", "device")
        _require_within_limits(device, len(push.entries), at)
        results, place = answer_to(push, session=Session(member, device, at))
        return answered(
            {
                "push": push.push,
                "server_time": wire_time(at),
                **where_we_are(member, place),
                "results": results,
            }
        )


def _require_within_limits(device: Device, entry_count: int, at: datetime) -> None:
    require_within(
        f"push:{device.pk}", at_most=settings.PUSHES_PER_MINUTE, per_s=MINUTE_S, now=at
    )
    require_within(
        f"pushed:{device.pk}",
        at_most=settings.PUSHED_ENTRIES_PER_DAY,
        per_s=DAY_S,
        now=at,
        by=entry_count,
    )


class PullView(KitchenlogView):
    """A device asks what happened; one whose member has left begins anew with nothing."""

    permission_classes = (IsSignedIn,)

    @extend_schema(parameters=[PullQuery], responses={200: PullAnswer, 426: None})
    def get(self, request: Request) -> HttpResponse:
        """What happened after the cursor, at most `limit` changes."""
        query = PullQuery(data=request.query_params)
        query.is_valid(raise_exception=True)
        if query.validated_data["kinds"] < TABLE_NUMBER:
            raise Refused("upgrade_required", 426, "Update the app to be told more.")
        text = pull_answer(
            member_of(request),
            cursor=query.validated_data["cursor"],
            limit=query.validated_data["limit"],
            at=datetime.now(UTC),
        )
        return HttpResponse(text, content_type="application/json")


class HaveView(KitchenlogView):
    """A device asks which entries the log lacks, after a restore."""

    permission_classes = (IsMember,)

    @extend_schema(request=HaveForm, responses=HaveAnswer)
    def post(self, request: Request) -> Response:
        """Which of these ids are missing; another cooperative's are, like unknown ones."""
        form = HaveForm(data=body_of(request))
        form.is_valid(raise_exception=True)
        ids = [str(each) for each in form.validated_data["ids"]]
        known = fingerprints_by_id(member_of(request).cooperative_id, ids)
        return answered({"missing": [each for each in ids if each not in known]})
