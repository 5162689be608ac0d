"""What a batch cost beside its lots, and what the cooperative reckons costs and prices with.

Costs are for coordinators, and for every member where the cooperative shows prices
(`prices_shown`); what a lot cost is `price_paid`, in facts.py. What is asked for a product is
for all, because they sell it.
"""

from __future__ import annotations

from kitchenlog.entries.kinds.fields import (
    SENTENCE_CHARS,
    Kind,
    choice,
    code,
    day,
    decimal,
    flag,
    group,
    id_of,
    items,
    letters,
    quantity,
    text,
)

EXPENSE_PARTS = ("fuel", "overhead", "other")
OVERHEAD_BY = ("batch", "labour_hour", "kg", "percent")
PERCENT_OF = ("materials", "labour", "materials_and_labour")
_MONTH_MIN = "44640"  # nobody works more minutes on a batch than a month has

MONEY_KINDS: tuple[Kind, ...] = (
    Kind(
        name="labour",
        says="Somebody worked so many minutes on a batch.",
        fields=(
            id_of("batch"),
            id_of("skill", name="member", needed=False),
            text("name", needed=False),  # of somebody who is no member
            decimal("minutes", least="0", most=_MONTH_MIN, places=2),
            flag("is_paid", needed=False),  # paid where nobody says otherwise
            decimal("pay_per_hour", least="0", needed=False),  # other than the one in force
            text("note", most=SENTENCE_CHARS, needed=False),
        ),
        subjects=("cost:{batch}",),
        mentions=("batch:{batch}",),
        audience="coordinator",
        one_of=("member", "name"),
    ),
    Kind(
        name="expense",
        says="A batch cost something that is neither a lot nor labour.",
        fields=(
            id_of("batch"),
            choice("part", *EXPENSE_PARTS),
            text("says", needed=False),
            decimal("amount", least="0"),
            letters("currency", most=3),
        ),
        subjects=("cost:{batch}",),
        mentions=("batch:{batch}",),
        audience="coordinator",
    ),
    Kind(
        name="cost_shared",
        says="How the products of a batch share its cost, and what its by-products are worth.",
        fields=(
            id_of("batch"),
            choice("by", "mass", "sales_value"),  # what several main products share by
            letters("currency", most=3),
            items(
                "products",
                code(),
                choice("sort", "main", "by_product"),
                decimal("value_each", least="0", needed=False),  # of a pack, or of a kg or L
                most=20,
                least=1,
            ),
        ),
        subjects=("cost:{batch}",),
        mentions=("batch:{batch}", "lot:{products[].lot}"),
        written_by="coordinator",
        audience="coordinator",
    ),
    Kind(
        name="rates_set",
        says="What the cooperative reckons costs and prices with, from a day on.",
        fields=(
            id_of("cooperative"),
            day("since"),
            decimal("pay_per_hour", least="0", needed=False),
            group(
                "overhead",
                choice("by", *OVERHEAD_BY),
                decimal("rate", least="0"),
                choice("percent_of", *PERCENT_OF, needed=False),  # where by percent
                needed=False,
            ),
            group(
                "proposal",
                choice("of", "cost", "price"),  # markup or margin
                decimal("percent", least="0", most="100000"),
                decimal("commission_percent", least="0", most="100", needed=False),
                decimal("coin", least="0.001"),
                choice("rule", "up", "nearest", "down"),
                needed=False,
            ),
        ),
        subjects=("rates:{cooperative}",),
        written_by="coordinator",
        audience="coordinator",
    ),
    Kind(
        name="price_asked",
        says="What a stall or a business is asked for a pack of a product, from a day on.",
        fields=(
            id_of("material"),
            choice("for_whom", "stall", "business"),
            quantity("pack_net", measures=("mass", "volume"), needed=False),  # every size
            day("since"),
            decimal("price", least="0"),
            letters("currency", most=3),
        ),
        subjects=("asked:{material}",),
        mentions=("material:{material}",),
        written_by="coordinator",
    ),
)
