"""How well people read: each against known answers, and several on the same things.

A study is readings of every person on every item, several trials each. Method: AIAG
Measurement Systems Analysis, 4th edition, chapter III (read-secondary: as worked in open test
suites). What it calls reproducibility is between people of one kitchen here, which is
intermediate precision (JCGM 200:2012 2.22, read).
"""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from types import MappingProxyType

from kitchenlog.calc.elementary import added
from kitchenlog.calc.gauge_tables import GAUGE_ROWS, GaugeRow
from kitchenlog.calc.numbers import as_double, difference
from kitchenlog.calc.quantiles import f_beyond, t_beyond
from kitchenlog.calc.repeats import Interval, mean_interval, repeats_of

# An interaction is pooled with the error when its p is above this: a looser level than for
# other tests, because pooling a real interaction hides it (Bancroft 1964, memory).
POOLING_P = 0.25
CATEGORIES_FACTOR = 1.41  # AIAG MSA: distinct categories = 1.41 PV / GRR, cut; read-secondary

# Person, item, trial.
Study = Sequence[Sequence[Sequence[Decimal]]]

_ROWS: Mapping[int, GaugeRow] = MappingProxyType({row.n: row for row in GAUGE_ROWS})


@dataclass(frozen=True, kw_only=True)
class Known:
    """One reading and the answer that was known to whoever made the drill."""

    reading: Decimal
    answer: Decimal


@dataclass(frozen=True, kw_only=True)
class Bias:
    """Mean of reading - answer with its t interval. `sd` is the reader's spread about it. All
    but `bias` and `count` are None for a single reading; t and p also when nothing varies."""

    count: int
    bias: float
    sd: float | None
    u: float | None
    interval: Interval | None
    t: float | None
    p: float | None
    is_significant: bool | None


@dataclass(frozen=True, kw_only=True)
class Gauge:
    """What a study finds, as standard deviations in the unit of the readings.

    `within_person_sd` is EV, `between_people_sd` AV, `measuring_sd` GRR, `items_sd` PV and
    `total_sd` TV of AIAG. `percent_of_total_sd` is 100 GRR / TV, `percent_of_variance` its
    square as percent: not the same figure. `set_to_zero` names what came out negative.
    """

    within_person_sd: float
    between_people_sd: float
    interaction_sd: float
    measuring_sd: float
    items_sd: float
    total_sd: float
    percent_of_total_sd: float | None
    percent_of_variance: float | None
    distinct_categories: int | None
    set_to_zero: tuple[str, ...]


@dataclass(frozen=True, kw_only=True)
class TwoWay:
    """Sums of squares and degrees of people x items x trials. F and p of the interaction are
    None when nothing varies between trials."""

    people: int
    items: int
    trials: int
    squares_people: float
    squares_items: float
    squares_interaction: float
    squares_error: float
    interaction_f: float | None
    interaction_p: float | None


def bias_of(readings: Sequence[Known], level: float) -> Bias:
    """A reader's bias against known answers, by Student's t at this level, two-sided.
    Raises ValueError for none."""
    repeats = repeats_of([difference(each.reading, each.answer) for each in readings])
    u = repeats.standard_error
    found = Bias(
        count=repeats.count,
        bias=repeats.mean,
        sd=repeats.sd,
        u=u,
        interval=mean_interval(repeats, level),
        t=None,
        p=None,
        is_significant=None,
    )
    if u is None:
        return found
    if u == 0:
        return replace(found, is_significant=repeats.mean != 0)
    t = repeats.mean / u
    p = t_beyond(t, degrees=repeats.degrees)
    return replace(found, t=t, p=p, is_significant=p < 1.0 - level)


def gauge_by_ranges(study: Study) -> Gauge:
    """Average and range: EV = mean range x K1; AV^2 = (range of people x K2)^2 - EV^2 / (items
    x trials); PV = range of items x K3.

    Raises ValueError unless all people read all items equally often, two to ten of each.
    """
    people, items, trials = _sizes(study)
    if max(people, items, trials) > max(_ROWS):
        raise ValueError("more than ten people, items or trials")
    centred = _centred(study)
    ranges = [max(cell) - min(cell) for person in centred for cell in person]
    people_means = [_mean([x for cell in person for x in cell]) for person in centred]
    items_means = [
        _mean([x for person in centred for x in person[item]]) for item in range(items)
    ]
    within = added(ranges) / len(ranges) * _ROWS[trials].k1
    apart = (max(people_means) - min(people_means)) * _ROWS[people].k2
    between = apart * apart - within * within / (items * trials)
    items_sd = (max(items_means) - min(items_means)) * _ROWS[items].k3
    return _gauge(within * within, between, 0.0, items_sd * items_sd)


def two_way(study: Study) -> TwoWay:
    """The analysis of variance of a study, people crossed with items.

    Raises ValueError unless all people read all items equally often, two or more of each.
    """
    people, items, trials = _sizes(study)
    centred = _centred(study)
    cells = [[_mean(cell) for cell in person] for person in centred]
    people_means = [_mean(person) for person in cells]
    items_means = [_mean([person[item] for person in cells]) for item in range(items)]
    grand = _mean(people_means)
    interaction = trials * added(
        _squared(cells[i][j] - people_means[i] - items_means[j] + grand)
        for i in range(people)
        for j in range(items)
    )
    error = added(
        _squared(x - cells[i][j])
        for i in range(people)
        for j in range(items)
        for x in centred[i][j]
    )
    degrees, error_degrees = (people - 1) * (items - 1), people * items * (trials - 1)
    f = (interaction / degrees) / (error / error_degrees) if error > 0 else None
    return TwoWay(
        people=people,
        items=items,
        trials=trials,
        squares_people=items * trials * added(_squared(m - grand) for m in people_means),
        squares_items=people * trials * added(_squared(m - grand) for m in items_means),
        squares_interaction=interaction,
        squares_error=error,
        interaction_f=f,
        interaction_p=None if f is None else f_beyond(f, over=degrees, under=error_degrees),
    )


def is_pooled(found: TwoWay) -> bool:
    """Whether the interaction counts as error: its p is above 0.25. With no error at all there
    is nothing to pool it with."""
    return found.interaction_p is not None and found.interaction_p > POOLING_P


def gauge_by_variance(found: TwoWay) -> Gauge:
    """Components from the analysis of variance, the interaction pooled by the rule of
    `is_pooled`. Negative components are set to zero and named."""
    degrees = (found.people - 1) * (found.items - 1)
    error_degrees = found.people * found.items * (found.trials - 1)
    error = found.squares_error / error_degrees
    interaction = found.squares_interaction / degrees
    if is_pooled(found):
        error = (found.squares_error + found.squares_interaction) / (error_degrees + degrees)
        interaction = error
    people = found.squares_people / (found.people - 1)
    items = found.squares_items / (found.items - 1)
    return _gauge(
        error,
        (people - interaction) / (found.items * found.trials),
        (interaction - error) / found.trials,
        (items - interaction) / (found.people * found.trials),
    )


def _gauge(within: float, between: float, interaction: float, items: float) -> Gauge:
    """All of a study's figures from its four variances."""
    parts = {"between_people": between, "interaction": interaction, "items": items}
    kept_between, kept_interaction = max(between, 0.0), max(interaction, 0.0)
    kept_items = max(items, 0.0)
    measuring = within + kept_between + kept_interaction
    whole = measuring + kept_items
    measuring_sd, items_sd = math.sqrt(measuring), math.sqrt(kept_items)
    return Gauge(
        within_person_sd=math.sqrt(within),
        between_people_sd=math.sqrt(kept_between),
        interaction_sd=math.sqrt(kept_interaction),
        measuring_sd=measuring_sd,
        items_sd=items_sd,
        total_sd=math.sqrt(whole),
        percent_of_total_sd=100 * measuring_sd / math.sqrt(whole) if whole > 0 else None,
        percent_of_variance=100 * measuring / whole if whole > 0 else None,
        distinct_categories=(
            math.floor(CATEGORIES_FACTOR * items_sd / measuring_sd) if measuring > 0 else None
        ),
        set_to_zero=tuple(name for name, variance in parts.items() if variance < 0),
    )


def _sizes(study: Study) -> tuple[int, int, int]:
    people = len(study)
    items = len(study[0]) if people else 0
    trials = len(study[0][0]) if items else 0
    is_even = all(
        len(person) == items and all(len(cell) == trials for cell in person) for person in study
    )
    if not is_even or min(people, items, trials) < 2:
        raise ValueError("everybody reads every item equally often, at least twice")
    return people, items, trials


def _centred(study: Study) -> list[list[list[float]]]:
    """Distances from the first reading, exact before they become doubles."""
    origin = study[0][0][0]
    return [
        [[as_double(difference(x, origin)) for x in cell] for cell in person]
        for person in study
    ]


def _mean(values: Sequence[float]) -> float:
    return added(values) / len(values)


def _squared(x: float) -> float:
    return x * x
