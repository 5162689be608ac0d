"""How single batches went: masses read, losses, packs. One is [B01], digit for digit."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from decimal import Decimal
from random import Random

from demo_data.story import Row, Story

JAR_G = 250
BAG_G = 100
FINE_UP_TO_G = 150


@dataclass(frozen=True)
class Loss:
    """What was lost from a batch, in g."""

    stage: str
    reason: str
    amount_g: Decimal
    line: str | None = None


@dataclass(frozen=True, kw_only=True)
class Run:
    """One batch as it went; `nets` by line in the line's unit, `read` by step in its unit.

    What a pinch too much would spoil is read three times."""

    recipe: Row
    by: str
    at: datetime
    nets: Mapping[str, Decimal]
    read: Mapping[str, Decimal] = field(default_factory=dict)
    losses: tuple[Loss, ...] = ()
    good: int = 0
    rejected: int = 0
    is_finished: bool = True
    action: Mapping[str, str] = field(default_factory=dict)
    forgets_tare_of: str | None = None
    on_scale: Mapping[str, str] = field(default_factory=dict)
    read_thrice: tuple[str, ...] = ()  # lines


def b01(story: Story, *, by: str, at: datetime) -> Run:
    """Production pack 1.9 [B01]: 15.00 kg mango to 64 good jars out of 66.

    Source: own worked example of the reference pack, all masses in g.
    """
    return Run(
        recipe=story.recipes["mango-jam"],
        by=by,
        at=at,
        nets={
            "mango": Decimal(15000),
            "sugar": Decimal(10000),
            "pectin": Decimal("60.0"),
            "citric acid": Decimal("55.0"),
            "jars": Decimal(66),
            "labels": Decimal(64),
        },
        read={
            "pulp": Decimal(10000),
            "boil": Decimal("68.5"),
            "kettle": Decimal(16700),
            "fill": Decimal("88.4"),
        },
        losses=(
            Loss("preparation", "spoiled", Decimal(600), "mango"),
            Loss("preparation", "trim", Decimal(4250), "mango"),
            Loss("filling", "residue", Decimal(120)),
            Loss("filling", "sample", Decimal(50)),
        ),
        good=64,
        rejected=2,
    )


def jam(story: Story, chance: Random, *, by: str, at: datetime) -> Run:
    """A batch of mango jam: near the recipe, never the same twice."""
    recipe = story.recipes["mango-jam"]
    nets = _nets(story, recipe, chance)
    pulp = Decimal(chance.randrange(9800, 10400, 5))
    spoiled = Decimal(chance.randrange(150, 700, 5))
    trim = nets["mango"] - pulp - spoiled - Decimal(chance.randrange(40, 180, 5))
    solids = pulp * Decimal("0.14") + nets["sugar"] + nets["pectin"] + nets["citric acid"]
    kettle = _to_division(solids / Decimal("0.68") + chance.randrange(-200, 60), 5)
    residue = Decimal(chance.randrange(80, 180, 5))
    filled = int((kettle - residue) // JAR_G)
    rejected = chance.choice((0, 0, 1, 2))
    nets |= {"jars": Decimal(filled), "labels": Decimal(filled - rejected)}
    return Run(
        recipe=recipe,
        by=by,
        at=at,
        nets=nets,
        read={
            "pulp": pulp,
            "boil": Decimal("67.5") + chance.randrange(4) / Decimal(2),
            "kettle": kettle,
            "fill": Decimal("86.0") + chance.randrange(60) / Decimal(10),
        },
        losses=(
            Loss("preparation", "spoiled", spoiled, "mango"),
            Loss("preparation", "trim", trim, "mango"),
            Loss("filling", "residue", residue),
        ),
        good=filled - rejected,
        rejected=rejected,
        read_thrice=("pectin", "citric acid"),
    )


def pickle(story: Story, chance: Random, *, by: str, at: datetime) -> Run:
    """A batch of cucumber pickle."""
    recipe = story.recipes["cucumber-pickle"]
    nets = _nets(story, recipe, chance)
    nets["vinegar"] = Decimal(4000) + chance.choice((20, 40))
    filled = chance.choice((40, 41))
    rejected = chance.choice((0, 0, 1))
    trim = Decimal(chance.randrange(200, 420, 2))
    nets |= {"jars": Decimal(filled), "labels": Decimal(filled - rejected)}
    return Run(
        recipe=recipe,
        by=by,
        at=at,
        nets=nets,
        read={"acid": Decimal("3.60") + chance.randrange(30) / Decimal(100)},
        losses=(Loss("preparation", "trim", trim, "cucumber"),),
        good=filled - rejected,
        rejected=rejected,
        read_thrice=("mustard seed",),
    )


def banana(story: Story, chance: Random, *, by: str, at: datetime) -> Run:
    """A batch of dried banana; packed the next day."""
    recipe = story.recipes["dried-banana"]
    nets = _nets(story, recipe, chance)
    slices = Decimal(chance.randrange(7450, 7800))
    trim = nets["banana"] - slices - chance.randrange(20, 90)
    dried = slices * 31 // 100
    packs = int(dried // BAG_G)
    nets |= {"bags": Decimal(packs), "labels": Decimal(packs)}
    return Run(
        recipe=recipe,
        by=by,
        at=at,
        nets=nets,
        read={"slice": slices, "dryer": Decimal(chance.choice((60, 62, 64))), "dry": dried},
        losses=(Loss("preparation", "trim", trim, "banana"),),
        good=packs,
        read_thrice=("citric acid",),
    )


def biscuits(story: Story, chance: Random, *, by: str, at: datetime) -> Run:
    """A batch of coconut biscuits."""
    recipe = story.recipes["coconut-biscuits"]
    nets = _nets(story, recipe, chance)
    good = chance.choice((18, 19, 20))
    nets |= {"bags": Decimal(good), "labels": Decimal(good)}
    oven = Decimal("165.0") + chance.randrange(100) / Decimal(10)
    return Run(
        recipe=recipe,
        by=by,
        at=at,
        nets=nets,
        read={"oven": oven},
        good=good,
        read_thrice=("salt",),
    )


def _nets(story: Story, recipe: Row, chance: Random) -> dict[str, Decimal]:
    """Each line as written, off by at most two divisions of the scale that weighs it."""
    nets = {}
    for line in recipe["lines"]:
        planned = Decimal(line["amount"]["amount"])
        division = Decimal(story.instruments[scale_for(recipe, planned)]["division"])
        off = chance.randrange(-2, 3) * division if line["amount"]["unit"] == "g" else 0
        nets[line["line"]] = planned + off
    return nets


def scale_for(recipe: Row, amount_g: Decimal) -> str:
    """What a mass is weighed on: pinches on the fine scale, the rest on the bench."""
    name: str = recipe["fine_scale"] if amount_g <= FINE_UP_TO_G else recipe["scale"]
    return name


def _to_division(value: Decimal, division: int) -> Decimal:
    return Decimal(int(value) // division * division)
