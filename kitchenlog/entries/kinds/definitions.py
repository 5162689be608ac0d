"""What people set up: each is defined once as a whole and then changed field by field."""

from __future__ import annotations

from dataclasses import replace

from kitchenlog.entries.kinds.fields import (
    NOTE_CHARS,
    SENTENCE_CHARS,
    Circle,
    Field,
    Kind,
    choice,
    decimal,
    flag,
    group,
    id_of,
    items,
    letters,
    quantity,
    text,
    whole,
)

LIFE_SORTS = ("use_by", "best_before", "expires_on")
ALLERGENS = (
    "celery", "cereals_with_gluten", "crustaceans", "eggs", "fish", "lupin", "milk",
    "molluscs", "mustard", "peanuts", "sesame", "soybeans", "sulphites", "tree_nuts", "wheat",
)  # fmt: skip

LIFE_RULE = group(
    "life",
    choice("sort", *LIFE_SORTS),
    whole("length", least=1, most=3_650),
    choice("unit", "days", "months"),
    needed=False,
)

COOPERATIVE = (
    text("name"),
    Field(name="time_zone", type="zone"),
    letters("currency", most=3),
    whole("currency_places", least=0, most=3),
    text("language", most=12),
    choice("unit_habit", "metric", "us", "imperial"),
    choice("rules", "us", "eu", "own"),
    flag("prices_shown"),
)
PLACE = (
    text("name"),
    choice("sort", "kitchen", "store", "stall", "box"),
    decimal("altitude_m", least="-500", most="6000", needed=False),
    text("note", most=SENTENCE_CHARS, needed=False),
    flag("is_retired", needed=False),
)
MATERIAL = (
    text("name"),
    choice("sort", "ingredient", "packaging", "product"),
    choice("measured_by", "mass", "volume", "count"),
    letters("letters", most=3),
    text("density_of", needed=False),
    quantity("pack_net", measures=("mass", "volume"), needed=False),
    text("pack_word", most=20, needed=False),
    decimal("price", least="0", needed=False),
    flag("loses_moisture", needed=False),  # flour and dry pasta: what a fill check proposes
    LIFE_RULE,
    Field(
        name="allergens", type="choices", choices=ALLERGENS, most_items=20, is_required=False
    ),
    text("note", most=SENTENCE_CHARS, needed=False),
    flag("is_retired", needed=False),
)
ACCURACY_CLASSES = ("I", "II", "III", "IIII", "A", "B")  # of a scale, or of a cylinder
# Whose limits a check is judged by: R 76 in service or at first, HB 44 as HB 133 uses it, the
# household five per cent, the class of a cylinder, or the cooperative's own.
CHECK_RULES = ("r76_in_service", "r76_initial", "hb133", "household", "cylinder", "own")
PARTNER = (
    text("name"),
    text("contact", most=SENTENCE_CHARS, needed=False),
    text("address", most=SENTENCE_CHARS, needed=False),
    text("note", most=SENTENCE_CHARS, needed=False),
    flag("is_retired", needed=False),
)
INSTRUMENT = (
    text("name"),
    choice(
        "sort",
        "scale",
        "thermometer",
        "ph_meter",
        "refractometer",
        "salometer",
        "cylinder",
        "cup",
        "spoon",
        "timer",
    ),
    id_of("place", needed=False),
    text("unit", most=12),
    decimal("division", least="0", needed=False),
    decimal("capacity", least="0", needed=False),
    decimal("repeatability", least="0", needed=False),
    decimal("bowl_tare", least="0", needed=False),
    decimal("interval", least="0", needed=False),  # verification interval e
    choice("accuracy_class", *ACCURACY_CLASSES, needed=False),
    choice("judged_by", *CHECK_RULES, needed=False),
    decimal("most_error", least="0", needed=False),  # where judged_by is "own"
    quantity("holds", measures=("volume",), needed=False),  # a cup, spoon or cylinder, full
    text("good_for", most=SENTENCE_CHARS, needed=False),
    whole("check_days", least=1, most=3_650, needed=False),
    whole("check_uses", least=1, most=1_000_000, needed=False),
    text("note", most=SENTENCE_CHARS, needed=False),
    flag("is_retired", needed=False),
)

# How sure a verdict on a limit must be, in percent, one-sided; 95 where nobody says.
LEVEL = decimal("level", least="80", most="99.9", needed=False)
# What is left of 100 as bought, and who says so: the shipped table, this kitchen's own
# preparations, or whoever wrote the recipe.
YIELDS = group(
    "yields",
    decimal("percent", least="0.01", most="10000"),
    choice("by", "table", "own", "typed"),
    text("source", most=SENTENCE_CHARS, needed=False),
    text("prepared_as", needed=False),
    needed=False,
)
# An amount always stands there, as it is to be weighed in; `percent` says that it was written
# as a share of all base lines together, or of the whole, and is scaled so.
PLANNED_LINE = items(
    "lines",
    text("line", most=20),
    id_of("material"),
    quantity(),
    decimal("percent", least="0", most="10000", needed=False),
    choice("percent_of", "base", "whole", needed=False),
    flag("is_base", needed=False),
    choice("state", "as_bought", "prepared", needed=False),
    YIELDS,
    decimal("below", least="0", needed=False),
    decimal("above", least="0", needed=False),
    LEVEL,
    decimal("soluble_percent", least="0", most="100", needed=False),
    text("note", most=SENTENCE_CHARS, needed=False),
    most=60,
    least=1,
)
ACIDS = ("citric", "tartaric", "lactic", "acetic", "malic")
# What it may be filled into; of the lines that are some size's packaging a batch takes only
# those of its own size.
PACK_SIZES = items(
    "pack_sizes",
    text("size", most=20),
    quantity("net", measures=("mass", "volume")),
    text("word", most=20, needed=False),
    id_of("material", name="packaging", needed=False),
    most=12,
    needed=False,
)
PLANNED_STEP = items(
    "steps",
    text("step", most=20),
    text("says", most=SENTENCE_CHARS),
    choice(
        "measures",
        "prepared_mass",
        "kettle_mass",
        "mass",
        "temperature",
        "ph",
        "brix",
        "water_activity",
        "salt",
        "salometer",
        "salt_weighed",
        "sugar_weighed",
        "acidity",
        "minutes",
        needed=False,
    ),
    text("line", most=20, needed=False),
    choice("acid", *ACIDS, needed=False),  # which one an acidity is reckoned as
    # Of which lines how much counts as the salt or sugar worked out; of the others nothing.
    items(
        "counts",
        text("line", most=20),
        decimal("percent", least="0", most="100"),
        most=60,
        needed=False,
    ),
    decimal("minutes", least="0", needed=False),  # how long it takes
    text("unit", most=12, needed=False),
    decimal("low", needed=False),
    decimal("high", needed=False),
    LEVEL,
    text("set_by", needed=False),
    text("caution", most=SENTENCE_CHARS, needed=False),
    most=60,
)


def _pair(
    name: str, says: str, fields: tuple[Field, ...], *, anyone: bool = False
) -> tuple[Kind, Kind]:
    """The two kinds of one definition: `..._defined` holds all, `..._changed` some fields."""
    writer: Circle = "member" if anyone else "coordinator"
    defined = Kind(
        name=f"{name}_defined",
        says=f"{says} is set up.",
        fields=(id_of(name), *fields),
        subjects=(f"{name}:{{{name}}}",),
        written_by=writer,
    )
    changes = Field(name="changes", type="changes", of_kind=defined.name)
    changed = replace(
        defined,
        name=f"{name}_changed",
        says=f"{says} is edited: each field from what to what.",
        fields=(id_of(name), changes, text("reason", most=SENTENCE_CHARS, needed=False)),
    )
    return defined, changed


DEFINITION_KINDS: tuple[Kind, ...] = (
    *_pair("cooperative", "The cooperative", COOPERATIVE),
    *_pair("place", "A kitchen, store, stall or box", PLACE),
    *_pair("material", "An ingredient, packaging or product", MATERIAL),
    *_pair("source", "An immediate previous source", PARTNER, anyone=True),
    *_pair("recipient", "An immediate subsequent recipient", PARTNER, anyone=True),
    *_pair("instrument", "What measures", INSTRUMENT),
    Kind(
        name="recipe_published",
        says="A version of a recipe that never changes afterwards.",
        fields=(
            id_of("recipe"),
            whole("number", least=1, most=9_999),
            text("name"),
            id_of("material", name="product"),
            quantity("makes", measures=("mass", "volume", "count")),
            whole("packs", least=1, most=100_000, needed=False),
            PLANNED_LINE,
            PLANNED_STEP,
            decimal("target_solids_percent", least="0", most="100", needed=False),
            decimal("loss_percent", least="0", most="99.9", needed=False),
            PACK_SIZES,
            LIFE_RULE,
            text("does_not_scale", most=NOTE_CHARS, needed=False),
            text("note", most=NOTE_CHARS, needed=False),
        ),
        subjects=("recipe:{recipe}",),
        mentions=(
            "material:{product}",
            "material:{lines[].material}",
            "material:{pack_sizes[].packaging}",
        ),
        written_by="coordinator",
    ),
)
