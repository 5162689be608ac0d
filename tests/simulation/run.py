"""One seed: people work on phones under a bad network, then all becomes quiet."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any
from uuid import uuid4

from kitchenlog.logbook.models import LogHead
from kitchenlog.logbook.work import close_quiet, recompute_for_a_slice
from kitchenlog.members.models import Device
from kitchenlog.members.scope import in_cooperative
from kitchenlog.sync import people
from tests.people import PASSPHRASE, Kitchen
from tests.simulation.network import Network
from tests.simulation.phones import Phones
from tests.simulation.story import Story

ACTS = 45
QUIET_ROUNDS_MAX = 6
YEAR_MS = 400 * 86_400_000
# Who signs in where: the second phone is shared by two members.
PEOPLE = {"a": ("processor",), "b": ("seller", "coordinator"), "c": ("processor",)}


@dataclass
class Thumb:
    """A member's device on a phone."""

    phone: str
    device: str
    mark: str
    login: str


@dataclass
class Run:
    """What a seed's run knows about itself."""

    seed: int
    phones: Phones
    kitchen: Kitchen
    chance: Random = field(init=False)
    network: Network = field(init=False)
    story: Story = field(init=False)
    thumbs: list[Thumb] = field(default_factory=list)
    saved: dict[str, dict[str, Any]] = field(default_factory=dict)
    acts: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        self.chance = Random(self.seed)
        self.network = Network(self.chance)
        self.story = Story(self.chance)
        self.phones.network = self.network

    def play(self) -> None:
        """Everything, up to quiet."""
        self._begin()
        self.network.badness = self.chance.choice((0.2, 0.4, 0.6))
        for _ in range(ACTS):
            self._act()
        self.network.badness = 0.0
        self._become_quiet()

    def _begin(self) -> None:
        self.phones.order("", "forget_all")
        for number, (phone, logins) in enumerate(PEOPLE.items()):
            self.phones.order(phone, "new", seed=self.seed * 100 + number)
            for login in logins:
                self._sign_in(phone, f"{login}@{self.kitchen.cooperative.handle}")
            off_ms = self.chance.choice((0, 0, self.chance.randrange(-YEAR_MS, YEAR_MS)))
            self.phones.order(phone, "set_clock", off_ms=off_ms)

    def _sign_in(self, phone: str, login: str) -> None:
        done = self.phones.order(phone, "sign_in", login=login, passphrase=PASSPHRASE)
        known = {thumb.device for thumb in self.thumbs}
        assert "device" in done, done
        if done["device"] not in known:
            self.thumbs.append(Thumb(phone, done["device"], done["mark"], login))

    def _act(self) -> None:
        ways = {
            self._save: 12, self._save_in_two_tabs: 1, self._correct: 2, self._take_back: 2,
            self._exchange: 10, self._recompute: 3, self._restart: 1, self._jump_clock: 1,
            self._deliver_delayed: 2, self._close_quiet: 1, self._end_session: 1,
            self._new_epoch: 1, self._revoke: 0.15,
        }  # fmt: skip
        way = self.chance.choices(list(ways), weights=list(ways.values()))[0]
        self.acts.append(way.__name__.strip("_"))
        way()

    def _thumb(self) -> Thumb:
        return self.chance.choice(self.thumbs)

    def _save(self) -> None:
        thumb = self._thumb()
        self._keep(thumb, [self._order(thumb, *self.story.act(thumb.mark), tab=0)])

    def _save_in_two_tabs(self) -> None:
        thumb = self._thumb()
        acts = [self.story.act(thumb.mark) for _ in range(4)]
        orders = [self._order(thumb, *act, tab=tab % 2) for tab, act in enumerate(acts)]
        self._keep(thumb, orders)

    def _order(self, thumb: Thumb, kind: str, body: Any, *, tab: int) -> dict[str, Any]:
        return {"device": thumb.device, "tab": tab, "kind": kind, "body": body}

    def _keep(
        self, thumb: Thumb, saves: list[dict[str, Any]], do: str = "save", **given: Any
    ) -> None:
        for made in self.phones.order(thumb.phone, do, saves=saves, **given):
            assert "refusal" not in made, made
            if "saved" in made:
                entry = made["saved"]
                self.saved[entry["id"]] = entry
                self.story.remember(entry)

    def _correct(self) -> None:
        found = self.story.corrected()
        if found is not None:
            thumb = self._thumb()
            entry, body = found
            order = self._order(thumb, "correction", body, tab=0)
            self._keep(thumb, [order], do="correct", entry=entry)

    def _take_back(self) -> None:
        if self.story.made:
            thumb = self._thumb()
            entry, _, _ = self.chance.choice(self.story.made[-8:])
            order = self._order(thumb, "void", {}, tab=0)
            self._keep(thumb, [order], do="take_back", entry=entry)

    def _exchange(self) -> None:
        thumb = self._thumb()
        self._exchange_on(thumb.phone, thumb.device, tabs=self.chance.choice((1, 1, 2)))

    def _exchange_on(self, phone: str, shown: str, *, tabs: int = 1) -> dict[str, Any]:
        done: dict[str, Any] = self.phones.order(phone, "exchange", shown=shown, tabs=tabs)
        if done.get("is_off"):
            self.phones.order(phone, "restart")
        return done

    def _recompute(self) -> None:
        for _ in range(50):
            recompute_for_a_slice(clock=lambda: datetime.now(UTC))
            if not LogHead.objects.filter(has_stale=True).exists():
                return
        raise AssertionError("the stale list never ends")

    def _restart(self) -> None:
        self.phones.order(self.chance.choice(list(PEOPLE)), "restart")

    def _jump_clock(self) -> None:
        off_ms = self.chance.randrange(-YEAR_MS, YEAR_MS)
        self.phones.order(self.chance.choice(list(PEOPLE)), "set_clock", off_ms=off_ms)

    def _deliver_delayed(self) -> None:
        self.network.deliver_delayed()

    def _close_quiet(self) -> None:
        """The nightly run, as if 20 days had passed: what is finished closes for a while."""
        close_quiet(at=datetime.now(UTC) + timedelta(days=20))

    def _end_session(self) -> None:
        """A cookie is gone, as when a browser throws it away."""
        thumb = self._thumb()
        self.network.cookies.get(thumb.phone, {}).pop(f"__Host-device-{thumb.device}", None)

    def _new_epoch(self) -> None:
        with in_cooperative(self.kitchen.cooperative):
            LogHead.objects.filter(cooperative=self.kitchen.cooperative).update(
                epoch=str(uuid4())
            )

    def _revoke(self) -> None:
        with in_cooperative(self.kitchen.cooperative):
            device = Device.objects.get(pk=self._thumb().device)
            people.revoke(device, at=datetime.now(UTC))

    def _become_quiet(self) -> None:
        """The network is whole again, people sign in where they are asked, the worker works."""
        self.network.deliver_delayed()
        for _ in range(QUIET_ROUNDS_MAX):
            self._sign_in_where_asked()
            for phone in PEOPLE:
                self._exchange_on(phone, self._shown(phone))
            self._recompute()
            seen = self.look().values()
            if not any(one["waiting"] or one["standing"] == "over" for one in seen):
                break
        for phone in PEOPLE:
            self._exchange_on(phone, self._shown(phone))
            self.phones.order(phone, "mend")

    def _sign_in_where_asked(self) -> None:
        standings = {device: one["standing"] for device, one in self.look().items()}
        for thumb in list(self.thumbs):
            if standings[thumb.device] != "in":
                self._sign_in(thumb.phone, thumb.login)

    def _shown(self, phone: str) -> str:
        return next(thumb.device for thumb in self.thumbs if thumb.phone == phone)

    def look(self) -> dict[str, dict[str, Any]]:
        """What every device shows and holds back."""
        seen: dict[str, dict[str, Any]] = {}
        for phone in PEOPLE:
            seen |= self.phones.order(phone, "look")
        return seen
