"""The read API: entries, what is kept aside, lots and their traces."""

from __future__ import annotations

import json
import re
from typing import Any
from uuid import UUID

from django.http import Http404, HttpResponse
from drf_spectacular.utils import extend_schema
from rest_framework.request import Request
from rest_framework.response import Response

from kitchenlog.api.serializers import (
    BatchCostAnswer,
    DirectionQuery,
    EntryAnswer,
    ImpactAnswer,
    ImpactQuery,
    ImpactReadingsAnswer,
    ImpactReadingsQuery,
    LotAnswer,
    QuarantineAnswer,
    SubjectAnswer,
    SubjectQuery,
    TraceAnswer,
)
from kitchenlog.batches.costs import cost_in_log
from kitchenlog.entries import forms
from kitchenlog.logbook.eyes import eyes_of, sees_money
from kitchenlog.logbook.selectors import (
    entries_about,
    entries_by_id,
    entry_row,
    kept_aside,
    sheet_about,
)
from kitchenlog.logbook.wire import (
    AsideRow,
    numbered_entry_json,
    numbered_sheet_json,
    wire_time,
)
from kitchenlog.members.access import IsMember, member_of
from kitchenlog.members.refusals import Refused, answered
from kitchenlog.members.rest import KitchenlogView
from kitchenlog.tracing.doubtful import readings_page
from kitchenlog.tracing.impact import has_failed, impact_of
from kitchenlog.tracing.selectors import trace_of


class EntryView(KitchenlogView):
    """One entry."""

    permission_classes = (IsMember,)

    @extend_schema(responses=EntryAnswer)
    def get(self, request: Request, entry: UUID) -> HttpResponse:
        """The entry as made, with its number and when it was received."""
        member = member_of(request)
        row = entry_row(member.cooperative_id, entry, eyes=eyes_of(member))
        if row is None:
            raise Http404
        return _json(f'{{"protocol":1,{numbered_entry_json(row)[1:]}')


class EntriesView(KitchenlogView):
    """Every entry about a subject."""

    permission_classes = (IsMember,)

    @extend_schema(
        operation_id="entries_about", parameters=[SubjectQuery], responses=SubjectAnswer
    )
    def get(self, request: Request) -> HttpResponse:
        """All entries about one subject and its sheet; none for a subject nobody wrote of."""
        query = SubjectQuery(data=request.query_params)
        query.is_valid(raise_exception=True)
        member, subject = member_of(request), query.validated_data["subject"]
        rows = entries_about(member.cooperative_id, subject, eyes=eyes_of(member))
        sheet = sheet_about(member.cooperative_id, subject, eyes=eyes_of(member))
        entries = ",".join(numbered_entry_json(row) for row in rows)
        held = "null" if sheet is None else numbered_sheet_json(sheet)
        return _json(f'{{"protocol":1,"entries":[{entries}],"sheet":{held}}}')


class QuarantineView(KitchenlogView):
    """What stands outside the record until somebody decides."""

    permission_classes = (IsMember,)

    @extend_schema(responses=QuarantineAnswer)
    def get(self, request: Request) -> Response:
        """One's own; a coordinator sees everybody's."""
        member = member_of(request)
        author = None if member.is_coordinator else member.pk
        rows = kept_aside(member.cooperative_id, author=author)
        named = [row.entry_id for row in rows if row.code == "mismatch" and row.entry_id]
        first = entries_by_id(member.cooperative_id, named, eyes=eyes_of(member))
        others = {entry: json.loads(row.canonical) for entry, row in first.items()}
        return answered({"items": [_item(row, others) for row in rows]})


def _item(row: AsideRow, others: dict[UUID, Any]) -> dict[str, Any]:
    raw = row.raw.decode()
    item = {
        "id": row.entry_id,
        "code": row.code,
        "detail": row.detail,
        "received_at": wire_time(row.received_at),
        "author": row.author,
        "device": row.device,
        "entry": json.loads(raw) if row.is_readable else None,
        "raw": raw,
    }
    if row.code == "mismatch" and row.entry_id in others:
        item["other"] = others[row.entry_id]
    return item


class LotView(KitchenlogView):
    """One lot."""

    permission_classes = (IsMember,)

    @extend_schema(responses=LotAnswer)
    def get(self, request: Request, code: str) -> HttpResponse:
        """The lot's sheet."""
        _require(forms.LOT_CODE, code)
        member = member_of(request)
        sheet = sheet_about(member.cooperative_id, f"lot:{code}", eyes=eyes_of(member))
        if sheet is None:
            raise Http404
        return _json(
            f'{{"protocol":1,"lot":{json.dumps(code)},{numbered_sheet_json(sheet)[1:]}'
        )


class LotTraceView(KitchenlogView):
    """Where a lot came from or went."""

    permission_classes = (IsMember,)

    @extend_schema(parameters=[DirectionQuery], responses=TraceAnswer)
    def get(self, request: Request, code: str) -> Response:
        """Back to receipts, or forward to recipients, with amounts."""
        _require(forms.LOT_CODE, code)
        query = DirectionQuery(data=request.query_params)
        query.is_valid(raise_exception=True)
        traced = trace_of(
            member_of(request).cooperative_id, code, query.validated_data["direction"]
        )
        if traced is None:
            raise Http404
        return answered({**traced})


class BatchCostView(KitchenlogView):
    """What one batch cost."""

    permission_classes = (IsMember,)

    @extend_schema(responses=BatchCostAnswer)
    def get(self, request: Request, batch: str) -> Response:
        """The actual cost of its lots, labour and expenses; for those who may see prices."""
        _require(forms.ID, batch)
        member = member_of(request)
        if not sees_money(member):
            raise Refused("forbidden", 403, "Prices are shown to coordinators only.")
        found = cost_in_log(member.cooperative_id, batch)
        if found is None:
            raise Http404
        return answered({**found})


class ImpactView(KitchenlogView):
    """What leaned on an instrument whose check failed."""

    permission_classes = (IsMember,)

    @extend_schema(parameters=[ImpactQuery], responses=ImpactAnswer)
    def get(self, request: Request, instrument: str) -> Response:
        """Batches, fills and lots since its last pass, and who has them."""
        _require(forms.ID, instrument)
        query = ImpactQuery(data=request.query_params)
        query.is_valid(raise_exception=True)
        member = member_of(request)
        check = str(query.validated_data["check"])
        found = impact_of(member.cooperative_id, instrument, check, eyes=eyes_of(member))
        if found is None:
            raise Http404
        return answered({**found})


class ImpactReadingsView(KitchenlogView):
    """The readings a failed check puts in question, in pages."""

    permission_classes = (IsMember,)

    @extend_schema(parameters=[ImpactReadingsQuery], responses=ImpactReadingsAnswer)
    def get(self, request: Request, instrument: str) -> HttpResponse:
        """Those after a subject; `more` is what to ask for next, null at the end."""
        _require(forms.ID, instrument)
        query = ImpactReadingsQuery(data=request.query_params)
        query.is_valid(raise_exception=True)
        cooperative = member_of(request).cooperative_id
        check, after = str(query.validated_data["check"]), query.validated_data["after"]
        if not has_failed(cooperative, instrument, check):
            raise Http404
        page = readings_page(cooperative, check, after=after)
        more = json.dumps(page.more)
        return _json(f'{{"protocol":1,"readings":{page.readings_json},"more":{more}}}')


def _require(form: re.Pattern[str], named: str) -> None:
    """What cannot be an id is nobody's: PostgreSQL would not even be asked after U+0000."""
    if not form.fullmatch(named):
        raise Http404


def _json(text: str) -> HttpResponse:
    return HttpResponse(text, content_type="application/json")
