"""What happens to goods: received, made, moved, sold, counted. Any member may write these."""

from __future__ import annotations

from kitchenlog.entries.kinds.definitions import (
    ACIDS,
    LIFE_SORTS,
    PLANNED_LINE,
    PLANNED_STEP,
)
from kitchenlog.entries.kinds.fields import (
    SENTENCE_CHARS,
    Kind,
    choice,
    code,
    day,
    decimal,
    decimals,
    entry_id,
    group,
    id_of,
    items,
    letters,
    quantity,
    text,
)
from kitchenlog.entries.kinds.holds import DESPITE

LIFE_DAY = group("life", choice("sort", *LIFE_SORTS), day("on"), needed=False)
LOSS_REASONS = (
    "spoiled", "trim", "residue", "spilled", "breakage", "sample", "expired", "waste", "other",
)  # fmt: skip

READING = group(
    "reading",
    id_of("instrument", needed=False),
    text("unit", most=12),
    decimal("shown"),
    decimal("tare", needed=False),
    decimal("division", least="0", needed=False),
    decimal("repeatability", least="0", needed=False),
    decimals("repeats", most_items=30, needed=False),
    needed=False,
)

# What a step's check is worked out from, beside its reading: the temperature of the sample of a
# refractometer (none where it corrects itself), the scale of a salometer, a titration.
SAMPLE_CELSIUS = decimal("celsius", least="-20", most="120", needed=False)
SALOMETER_SCALE = choice("scale", "standard", "canning", needed=False)
TITRATION = group(
    "titration",
    choice("acid", *ACIDS),
    decimal("normality", least="0"),  # of the alkali, equivalents in a litre
    decimal("titre", least="0"),  # mL run in
    decimal("blank", least="0", needed=False),  # mL a blank took
    quantity("sample", measures=("mass", "volume")),
    decimal("division", least="0", needed=False),  # of the burette, mL
    needed=False,
)

RECEIVING_KINDS: tuple[Kind, ...] = (
    Kind(
        name="receipt",
        says="Goods came from a source and became a lot, or were refused.",
        fields=(
            code(),
            id_of("material"),
            id_of("source"),
            text("their_lot", needed=False),
            quantity(),
            id_of("place"),
            choice("condition", "fit", "refused"),
            text("refused_why", most=SENTENCE_CHARS, needed=False),
            LIFE_DAY,
            text("note", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("lot:{lot}",),
        mentions=("material:{material}", "source:{source}", "place:{place}"),
    ),
    Kind(
        name="price_paid",
        says="What a received lot cost; kept apart because not everybody sees it.",
        fields=(code(), decimal("price", least="0"), letters("currency", most=3)),
        subjects=("price:{lot}",),
        mentions=("lot:{lot}",),
        audience="coordinator",
    ),
    Kind(
        name="topped_up",
        says="What was left in a bin and what was added become a new lot.",
        fields=(
            code(),
            id_of("material"),
            id_of("place"),
            items("from", code(), quantity(), most=20, least=1),
            LIFE_DAY,
            DESPITE,
        ),
        subjects=("lot:{lot}", "lot:{from[].lot}"),
        mentions=("material:{material}", "place:{place}"),
    ),
)

MAKING_KINDS: tuple[Kind, ...] = (
    Kind(
        name="batch_started",
        says="One run of one recipe version begins, with its planned lines and steps.",
        fields=(
            id_of("batch"),
            code("code"),
            id_of("recipe"),
            entry_id("recipe_version"),
            id_of("material", name="product"),
            id_of("place"),
            quantity("makes"),
            choice("scaled_by", "as_written", "mass", "packs", "limiting"),
            PLANNED_LINE,
            PLANNED_STEP,
            decimal("target_solids_percent", least="0", most="100", needed=False),
            quantity("pack_net", measures=("mass", "volume"), needed=False),
        ),
        subjects=("batch:{batch}",),
        mentions=("recipe:{recipe}", "place:{place}", "material:{product}"),
    ),
    Kind(
        name="laid_out",
        says="One line stands on the bench before anything is combined.",
        fields=(
            id_of("batch"),
            text("line", most=20),
            items("lots", code(), quantity(needed=False), most=10, least=1),
            DESPITE,
        ),
        subjects=("batch:{batch}",),
        mentions=("lot:{lots[].lot}",),
    ),
    Kind(
        name="weigh_in",
        says="An amount of a lot was weighed or counted into a batch.",
        fields=(
            id_of("batch"),
            text("line", most=20),
            id_of("material"),
            code(),
            id_of("place"),
            READING,
            quantity("counted", measures=("count",), needed=False),
            DESPITE,
        ),
        subjects=("batch:{batch}", "lot:{lot}"),
        mentions=("material:{material}", "place:{place}", "instrument:{reading.instrument}"),
        leans_on=("instrument:{reading.instrument}",),
        one_of=("reading", "counted"),
    ),
    Kind(
        name="step_done",
        says="A step was carried out, with its reading where it has a check.",
        fields=(
            id_of("batch"),
            text("step", most=20),
            READING,
            SAMPLE_CELSIUS,
            SALOMETER_SCALE,
            TITRATION,
            text("action", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("batch:{batch}",),
        mentions=("instrument:{reading.instrument}",),
        leans_on=("instrument:{reading.instrument}",),
    ),
    Kind(
        name="output",
        says="Good packs, or a good mass, came out of a batch and became a lot.",
        fields=(
            id_of("batch"),
            code(),
            id_of("material"),
            id_of("place"),
            quantity(),
            quantity("pack_net", measures=("mass", "volume"), needed=False),
            quantity("rejected", needed=False),
            text("rejected_why", most=SENTENCE_CHARS, needed=False),
            LIFE_DAY,
        ),
        subjects=("batch:{batch}", "lot:{lot}"),
        mentions=("material:{material}", "place:{place}"),
    ),
    Kind(
        name="loss",
        says="Something was lost, from a batch or from a lot in stock, for a reason.",
        fields=(
            id_of("batch", needed=False),
            code(needed=False),
            id_of("place", needed=False),
            quantity(),
            choice("reason", *LOSS_REASONS),
            choice(
                "stage", "preparation", "cooking", "filling", "store", "stall", needed=False
            ),
            text("line", most=20, needed=False),
            text("note", most=SENTENCE_CHARS, needed=False),
            DESPITE,
        ),
        subjects=("batch:{batch}", "lot:{lot}"),
        mentions=("place:{place}",),
        one_of=("batch", "lot"),
        together=(("lot", "place"),),
    ),
    Kind(
        name="batch_finished",
        says="Nothing more is expected of a batch.",
        fields=(id_of("batch"), text("note", most=SENTENCE_CHARS, needed=False)),
        subjects=("batch:{batch}",),
    ),
)

_LOT_AMOUNT_PLACE = (code(), quantity(), id_of("place"))

MOVING_KINDS: tuple[Kind, ...] = (
    Kind(
        name="transfer",
        says="Stock went from one place to another; one entry, both legs.",
        fields=(
            code(),
            quantity(),
            id_of("place", name="from_place"),
            id_of("place", name="to_place"),
            DESPITE,
        ),
        subjects=("lot:{lot}",),
        mentions=("place:{from_place}", "place:{to_place}"),
    ),
    Kind(
        name="dispatch",
        says="Stock went to a business, by name.",
        fields=(
            *_LOT_AMOUNT_PLACE,
            id_of("recipient"),
            decimal("price_each", least="0", needed=False),
            text("document", needed=False),
            DESPITE,
        ),
        subjects=("lot:{lot}",),
        mentions=("place:{place}", "recipient:{recipient}"),
    ),
    Kind(
        name="sale",
        says="Stock was sold to a private buyer, who is not recorded.",
        fields=(
            *_LOT_AMOUNT_PLACE,
            day("on"),
            decimal("price_each", least="0", needed=False),
            decimal("discount", least="0", needed=False),
            DESPITE,
        ),
        subjects=("lot:{lot}", "day:{place}:{on}"),
        mentions=("place:{place}",),
    ),
    Kind(
        name="return",
        says="Stock came back from a recipient or a stall.",
        fields=(
            *_LOT_AMOUNT_PLACE,
            day("on"),
            id_of("recipient", needed=False),
            choice("condition", "fit", "unfit"),
            text("reason", most=SENTENCE_CHARS),
        ),
        subjects=("lot:{lot}", "day:{place}:{on}"),
        mentions=("place:{place}", "recipient:{recipient}"),
    ),
    Kind(
        name="count",
        says="What was seen at a place: an observation, not a movement.",
        fields=_LOT_AMOUNT_PLACE,
        subjects=("lot:{lot}",),
        mentions=("place:{place}",),
    ),
)
