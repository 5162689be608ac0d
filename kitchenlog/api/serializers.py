"""What the read API is asked (Query) and answers (Answer, made of Parts)."""

from __future__ import annotations

from typing import Any

from rest_framework import serializers

from kitchenlog.entries.forms import is_subject
from kitchenlog.entries.kinds import SUBJECT_TYPES


def _require_subject(text: str) -> None:
    if not is_subject(text, types=(*SUBJECT_TYPES, "member")):
        raise serializers.ValidationError("subject must be a type and an id, such as lot:MJ-1.")


class SubjectQuery(serializers.Serializer[Any]):
    """Which subject."""

    subject = serializers.CharField(max_length=101, validators=[_require_subject])


class DirectionQuery(serializers.Serializer[Any]):
    """Which way to walk."""

    direction = serializers.ChoiceField(choices=("back", "forward"))


class EntryPart(serializers.Serializer[Any]):
    """One entry as made, with what the server adds."""

    entry = serializers.DictField()
    received_at = serializers.CharField()
    skew_ms = serializers.IntegerField()
    seq = serializers.IntegerField()


class EntryAnswer(EntryPart):
    """One entry."""

    protocol = serializers.IntegerField()


class SheetPart(serializers.Serializer[Any]):
    """One sheet."""

    state = serializers.DictField()
    upto_seq = serializers.IntegerField()
    entry_count = serializers.IntegerField()
    fold = serializers.IntegerField()
    is_open = serializers.BooleanField()
    seq = serializers.IntegerField()


class SubjectAnswer(serializers.Serializer[Any]):
    """Every entry about a subject, in order of number, and its sheet."""

    protocol = serializers.IntegerField()
    entries = EntryPart(many=True)
    sheet = SheetPart(allow_null=True)


class LotAnswer(SheetPart):
    """One lot's sheet."""

    protocol = serializers.IntegerField()
    lot = serializers.CharField()


class AsidePart(serializers.Serializer[Any]):
    """What is kept aside: `raw` as it was sent, `other` the entry that came first."""

    id = serializers.UUIDField(allow_null=True)
    code = serializers.CharField()
    detail = serializers.CharField()
    received_at = serializers.CharField()
    author = serializers.UUIDField()
    device = serializers.UUIDField()
    entry = serializers.DictField(allow_null=True)
    raw = serializers.CharField()
    other = serializers.DictField(required=False)


class QuarantineAnswer(serializers.Serializer[Any]):
    """Everything kept aside, the latest first."""

    protocol = serializers.IntegerField()
    items = AsidePart(many=True)


class NodePart(serializers.Serializer[Any]):
    """A lot, batch, source, recipient or stall day."""

    id = serializers.CharField()

    def get_fields(self) -> dict[str, serializers.Field[Any, Any, Any, Any]]:
        """Every field has a `label` of its own, so this one cannot be written as a line."""
        return {**super().get_fields(), "label": serializers.CharField(required=False)}


class EdgePart(serializers.Serializer[Any]):
    """Goods that went from one node to another."""

    to = serializers.CharField()
    amount = serializers.CharField()
    unit = serializers.CharField(allow_null=True)

    def get_fields(self) -> dict[str, serializers.Field[Any, Any, Any, Any]]:
        """`from` is a word of Python's, so it cannot be written as a line above."""
        return {"from": serializers.CharField(), **super().get_fields()}


class TraceAnswer(serializers.Serializer[Any]):
    """A walk over the graph of goods; edges point the way goods went."""

    protocol = serializers.IntegerField()
    lot = serializers.CharField()
    direction = serializers.ChoiceField(choices=("back", "forward"))
    nodes = NodePart(many=True)
    edges = EdgePart(many=True)
    is_complete = serializers.BooleanField()
    missing = serializers.ListField(child=serializers.CharField())


class CostLinePart(serializers.Serializer[Any]):
    """What one lot, member or expense cost; `entries` wrote it."""

    part = serializers.CharField()
    of = serializers.CharField()
    material = serializers.CharField(allow_null=True)
    amount = serializers.CharField(allow_null=True)
    unit = serializers.CharField(allow_null=True)
    minutes = serializers.CharField(allow_null=True)
    entries = serializers.ListField(child=serializers.CharField())
    cost = serializers.CharField()
    is_paid = serializers.BooleanField()


class LackingPart(serializers.Serializer[Any]):
    """What is not known, of what, and through which lot of the batch."""

    what = serializers.CharField()
    of = serializers.CharField()
    through = serializers.CharField(allow_null=True)


class ProductCostPart(serializers.Serializer[Any]):
    """What a product costs, or a by-product is worth; `each` is of a good pack, kg or L."""

    lot = serializers.CharField()
    material = serializers.CharField(allow_null=True)
    sort = serializers.ChoiceField(choices=("main", "by_product"))
    per = serializers.CharField(allow_null=True)
    good = serializers.CharField(allow_null=True)
    cost = serializers.CharField(allow_null=True)
    each = serializers.CharField(allow_null=True)
    by = serializers.CharField(allow_null=True)
    basis = serializers.CharField(allow_null=True)


class BatchCostAnswer(serializers.Serializer[Any]):
    """What a batch cost: `total` is null, and so is what rests on it, while anything is
    missing; lines and parts add up to `known`."""

    protocol = serializers.IntegerField()
    batch = serializers.CharField()
    currency = serializers.CharField(allow_null=True)
    places = serializers.IntegerField()
    lines = CostLinePart(many=True)
    parts = serializers.DictField(child=serializers.CharField())
    known = serializers.CharField()
    unpaid = serializers.CharField()
    total = serializers.CharField(allow_null=True)
    missing = LackingPart(many=True)
    per = serializers.CharField(allow_null=True)
    good = serializers.CharField(allow_null=True)
    filled = serializers.CharField(allow_null=True)
    per_good_pack = serializers.CharField(allow_null=True)
    per_filled_pack = serializers.CharField(allow_null=True)
    per_good_pack_paid = serializers.CharField(allow_null=True)
    minutes = serializers.CharField(allow_null=True)
    products = ProductCostPart(many=True)


class ImpactQuery(serializers.Serializer[Any]):
    """Which failed check."""

    check = serializers.UUIDField()


class ImpactReadingsQuery(ImpactQuery):
    """Which failed check, and after which subject; nothing for the first page."""

    after = serializers.CharField(max_length=120, default="", allow_blank=True)


class DoubtfulReadingPart(serializers.Serializer[Any]):
    """A reading in question; `moves` is what would be added to it, in its unit."""

    entry = serializers.UUIDField()
    kind = serializers.CharField()
    subject = serializers.CharField()
    place = serializers.CharField(allow_null=True)
    material = serializers.CharField(allow_null=True)
    says = serializers.CharField(allow_null=True)
    happened_at = serializers.CharField()
    author = serializers.UUIDField()
    read = serializers.CharField(allow_null=True)
    corrected = serializers.CharField(allow_null=True)
    u = serializers.CharField(allow_null=True)
    unit = serializers.CharField(allow_null=True)
    moves = serializers.CharField(allow_null=True)


class ImpactReadingsAnswer(serializers.Serializer[Any]):
    """Readings by subject; `more` is the subject to ask for others after, null at the end."""

    protocol = serializers.IntegerField()
    readings = DoubtfulReadingPart(many=True)
    more = serializers.CharField(allow_null=True)


class TouchedPart(serializers.Serializer[Any]):
    """A batch or lot with readings in question; `would_change` as place:was:would_be."""

    subject = serializers.CharField()
    code = serializers.CharField(allow_null=True)
    material = serializers.CharField(allow_null=True)
    readings = serializers.IntegerField()
    would_change = serializers.ListField(child=serializers.CharField())


class OfLotPart(serializers.Serializer[Any]):
    """How much of one lot."""

    lot = serializers.CharField()
    amount = serializers.CharField()


class ReachedPart(NodePart):
    """Who has some of it, and how much of which lot."""

    amount = serializers.CharField()
    unit = serializers.CharField(allow_null=True)
    lots = OfLotPart(many=True)


class ImpactAnswer(serializers.Serializer[Any]):
    """What leaned on an instrument from its last pass on."""

    protocol = serializers.IntegerField()
    instrument = serializers.CharField()
    check = serializers.UUIDField()
    failed_at = serializers.CharField(allow_null=True)
    after = serializers.CharField(allow_null=True)
    until = serializers.CharField(allow_null=True)
    readings = serializers.IntegerField()
    touched = TouchedPart(many=True)
    elsewhere = DoubtfulReadingPart(many=True)
    lots = serializers.ListField(child=serializers.CharField())
    reached = ReachedPart(many=True)
    is_complete = serializers.BooleanField()
    is_adding_up = serializers.BooleanField()
    missing = serializers.ListField(child=serializers.CharField())
