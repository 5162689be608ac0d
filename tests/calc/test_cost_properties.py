"""What must hold for any cost, price and share, whatever was paid."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from kitchenlog.calc.coins import coin_parts
from kitchenlog.calc.costs import Expense, Labour, Packs, UsedLot, batch_cost
from kitchenlog.calc.numbers import divided
from kitchenlog.calc.prices import PackCost, Wanted, price_proposal
from kitchenlog.calc.share_outs import Use, share_out
from kitchenlog.calc.stock_costs import Move, stock_cost

MONEY = st.decimals(min_value=0, max_value=10_000, places=2)
AMOUNTS = st.decimals(min_value=Decimal("0.1"), max_value=50_000, places=1)
FRACTIONS = st.fractions(min_value=-1000, max_value=10_000, max_denominator=999)
USED = st.lists(
    st.builds(
        UsedLot,
        part=st.sampled_from(["materials", "packs"]),
        lot=st.sampled_from(["a", "b", "c"]),
        amount=AMOUNTS,
        price=st.one_of(st.none(), MONEY),
        of_amount=AMOUNTS,
    ),
    max_size=8,
)
LABOUR = st.lists(
    st.builds(
        Labour,
        member=st.sampled_from(["ana", "ben"]),
        minutes=st.integers(1, 600).map(Decimal),
        rate_per_hour=MONEY,
        is_paid=st.booleans(),
    ),
    max_size=3,
)
EXPENSES = st.lists(
    st.builds(
        Expense, part=st.sampled_from(["fuel", "overhead"]), name=st.just("x"), amount=MONEY
    ),
    max_size=3,
)
MOVES = st.lists(
    st.tuples(
        st.sampled_from(["in", "out"]),
        st.integers(1, 50).map(Decimal),
        MONEY,
    ),
    max_size=12,
)
PACKS = Packs(good=Decimal(64), filled=Decimal(66))


@given(st.lists(FRACTIONS, max_size=12), st.integers(0, 4))
def test_parts_add_up_to_the_coin_and_none_is_a_coin_off(
    parts: list[Fraction], places: int
) -> None:
    coins = coin_parts(parts, places)

    whole = sum(parts, Fraction(0))
    assert sum(coins) == divided(Decimal(whole.numerator), Decimal(whole.denominator), places)
    assert all(
        abs(Fraction(coin) - part) < Fraction(1, 10**places)
        for coin, part in zip(coins, parts, strict=True)
    )


@given(USED, LABOUR, EXPENSES)
def test_lines_and_parts_of_a_batch_add_up_to_its_cost_to_the_coin(
    used: Sequence[UsedLot], labour: Sequence[Labour], expenses: Sequence[Expense]
) -> None:
    found = batch_cost(used, labour=labour, expenses=expenses, packs=PACKS, places=2)

    assert sum(line.cost for line in found.lines) == found.known
    assert sum(found.parts.values()) == found.known
    assert (found.total is None) == bool(found.missing)
    assert len(found.lines) + len(found.missing) == len(used) + len(labour) + len(expenses)
    exact = sum(
        (
            Fraction(each.price) * Fraction(each.amount) / Fraction(each.of_amount)
            for each in used
            if each.price is not None and each.of_amount
        ),
        Fraction(0),
    )
    exact += sum(
        (Fraction(each.minutes) * Fraction(each.rate_per_hour or 0) / 60 for each in labour),
        Fraction(0),
    )
    exact += sum((Fraction(each.amount or 0) for each in expenses), Fraction(0))
    assert abs(Fraction(found.known) - exact) <= Fraction(1, 200)


@given(USED.filter(bool), LABOUR)
def test_a_missing_price_never_makes_a_batch_cheaper(
    used: Sequence[UsedLot], labour: Sequence[Labour]
) -> None:
    hidden = [UsedLot(**{**vars(used[0]), "price": None}), *used[1:]]

    found = batch_cost(hidden, labour=labour, expenses=[], packs=PACKS, places=2)

    assert found.total is None
    assert found.per_good_pack is None
    assert ("price", used[0].lot) in [(each.what, each.of) for each in found.missing]


@given(MOVES, st.sampled_from(["fifo", "moving_average"]))
def test_what_was_paid_is_the_cost_of_goods_and_what_is_left(
    moves: list[tuple[str, Decimal, Decimal]], view: str
) -> None:
    walked = [
        Move(sort=sort, id=str(n), amount=amount, price=price if sort == "in" else None)
        for n, (sort, amount, price) in enumerate(moves)
    ]

    found = stock_cost(walked, view, 2)

    paid = sum((price for sort, _, price in moves if sort == "in"), Decimal(0))
    came = sum((amount for sort, amount, _ in moves if sort == "in"), Decimal(0))
    went = sum((amount for sort, amount, _ in moves if sort == "out"), Decimal(0))
    assert found.closing_amount == came - went
    if not found.missing:
        assert found.cost_of_goods is not None and found.closing is not None
        assert found.cost_of_goods + found.closing == paid


@given(
    st.decimals(min_value=-1000, max_value=1000, places=2),
    st.lists(st.integers(0, 500), min_size=1, max_size=12).filter(any),
    st.integers(0, 100).map(Decimal),
    st.sampled_from(["shared", "carried"]),
)
def test_reserve_shares_and_what_is_carried_add_up_to_the_net_margin(
    net: Decimal, amounts: list[int], reserve_percent: Decimal, loss: str
) -> None:
    uses = [Use(member=f"m{n:02}", amount=Decimal(amount)) for n, amount in enumerate(amounts)]

    found = share_out(net, uses, reserve_percent=reserve_percent, loss=loss, places=2)
    turned = share_out(net, uses[::-1], reserve_percent=reserve_percent, loss=loss, places=2)

    assert found == turned
    assert found.reserve + sum(x.amount for x in found.shares) + found.carried == net


@given(MONEY, st.integers(1, 99), st.integers(0, 60), st.sampled_from(["0.05", "0.25", "1"]))
def test_a_price_rounded_upwards_never_earns_less_than_was_wanted(
    cost: Decimal, packs: int, percent: int, coin: str
) -> None:
    wanted = Wanted(of="price", percent=Decimal(percent))

    found = price_proposal(
        PackCost(cost=cost, packs=Decimal(packs)), wanted, coin=Decimal(coin)
    )

    assert found.price % Decimal(coin) == 0
    assert found.margin_percent is None or found.margin_percent >= percent - Decimal("0.0001")
    assert found.price - found.exact <= Decimal(coin) + Decimal("0.0001")
