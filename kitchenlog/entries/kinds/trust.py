"""How good numbers are: checks of instruments, drills of people, fills of packs."""

from __future__ import annotations

from kitchenlog.entries.kinds.definitions import ACCURACY_CLASSES, CHECK_RULES
from kitchenlog.entries.kinds.fields import (
    SENTENCE_CHARS,
    Field,
    Kind,
    choice,
    code,
    day,
    decimal,
    decimals,
    flag,
    group,
    id_of,
    items,
    quantity,
    text,
    whole,
)

CHECK_STEPS = (
    "zero", "tare", "rising", "falling", "off_centre", "return_to_zero", "repeats",  # scales
    "water",  # vessels: what the water in it weighed
    "ice", "boiling",  # thermometers
    "buffer",  # pH meters
    "comparison",  # with what another instrument shows, or a solution of known strength
)  # fmt: skip
CORRECTION_LINES = ("none", "offset", "two_point", "least_squares")
TECHNIQUES = (
    "level_surface", "eye_level", "lowest_point", "needle_on_zero", "waited_until_steady",
    "tared_the_bowl", "levelled_with_a_straight_edge", "spooned_not_scooped",
    "wrote_it_at_once",
)  # fmt: skip

TRUST_KINDS: tuple[Kind, ...] = (
    Kind(
        name="instrument_checked",
        says="An instrument was compared with known values; its sheet says what that means.",
        fields=(
            id_of("instrument"),
            id_of("place", needed=False),
            text("unit", most=12),  # of what it showed; g of water for a vessel
            decimal("division", least="0", needed=False),
            items(
                "steps",
                choice("sort", *CHECK_STEPS),
                decimals("readings", most_items=30),
                decimal("reference", needed=False),  # in `unit`; what it should show
                decimal(
                    "tolerance", least="0", needed=False
                ),  # the reference is true to +- this
                text("where", most=40, needed=False),  # of an off-centre load
                # Of the water or the buffer; of the scale that weighed the water, in g.
                decimal("celsius", least="-20", most="120", needed=False),
                decimal("celsius_tolerance", least="0", needed=False),
                decimal("tare", needed=False),
                decimal("division", least="0", needed=False),
                decimal("repeatability", least="0", needed=False),
                # Of the place where water boils; of the electrode.
                decimal("altitude_m", least="-500", most="6000", needed=False),
                decimal("pressure_hpa", least="300", most="1100", needed=False),
                decimal("millivolts", needed=False),
                most=40,
                least=1,
            ),
            choice("judged_by", *CHECK_RULES, needed=False),
            choice("accuracy_class", *ACCURACY_CLASSES, needed=False),
            decimal("interval", least="0", needed=False),
            decimal("most_error", least="0", needed=False),
            quantity("holds", measures=("volume",), needed=False),
            choice("line", *CORRECTION_LINES, needed=False),
            flag("is_adjusted", needed=False),  # what was corrected before counts no longer
            id_of("instrument", name="check_scale", needed=False),
            text("note", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("instrument:{instrument}",),
        mentions=("place:{place}", "instrument:{check_scale}"),
    ),
    Kind(
        name="drill_done",
        says="A member read what the app drew, then weighed one thing several times.",
        fields=(
            id_of("skill", name="member"),
            whole("seed", most=2**31 - 1),
            whole("drawn_by", least=1, most=9_999),  # number of the maker of the questions
            items(
                "questions",
                choice("sort", "dial", "surface", "spoon"),
                decimal("truth"),
                decimal("division", least="0"),
                decimal("read"),
                most=40,
                least=1,
            ),
            group(
                "weighing",
                id_of("instrument", needed=False),
                text("unit", most=12),
                decimal("division", least="0", needed=False),
                decimals("shown", most_items=30),
                needed=False,
            ),
            Field(
                name="techniques",
                type="choices",
                choices=TECHNIQUES,
                most_items=20,
                is_required=False,
            ),
            text("note", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("skill:{member}",),
        mentions=("instrument:{weighing.instrument}",),
        audience="own",
    ),
    Kind(
        name="fill_checked",
        says="Packs of a lot were weighed against what their label says is in them.",
        fields=(
            code(),
            day("on"),
            items("label", quantity(measures=("mass", "volume")), most=2, least=1),
            choice("rules", "us", "eu"),
            text("unit", most=12),
            decimals("tares", most_items=60),
            decimals("gross", most_items=250),
            id_of("instrument", needed=False),
            decimal("division", least="0", needed=False),
            whole("lot_size", least=1, most=1_000_000, needed=False),
            decimal("density", least="0", needed=False),  # g/mL where the label states a volume
            flag("loses_moisture", needed=False),
            text("note", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("lot:{lot}",),
        mentions=("instrument:{instrument}",),
        leans_on=("instrument:{instrument}",),
    ),
)
