"""What a record says after its corrections: what stands, in which order, what is open.

Every function gives the same answer in whatever order the entries arrived.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NotRequired, TypedDict

from kitchenlog.calc.bodies import Body, items_in, object_in, text_in


@dataclass(frozen=True, kw_only=True)
class Fact:
    """One entry as a fold is given it; `seq` is None until the server has numbered it."""

    id: str
    kind: str
    author: str
    device: str
    device_seq: int
    happened_at: str
    local_date: str
    seq: int | None
    body: Body


class Was(TypedDict):
    """A correction that was applied: the entry, its reason, who made it."""

    entry: str
    reason: str
    author: str


class Finding(TypedDict):
    """Something a person should look at, under a key that stays the same at each fold."""

    key: str
    what: str
    entry: NotRequired[str]
    place: NotRequired[str]
    field: NotRequired[str]
    is_settled: bool
    settled_by: NotRequired[str]
    detail: NotRequired[dict[str, str]]


class Note(TypedDict):
    """Words somebody wrote about a subject."""

    entry: str
    says: str
    author: str
    on: str


@dataclass(frozen=True, kw_only=True)
class Standing(Fact):
    """An entry as it stands: its own id and place in the order, the kind and body in force,
    and the corrections applied, the one nearest the original first."""

    was: tuple[Was, ...] = ()


@dataclass(frozen=True, kw_only=True)
class Record:
    """The entries that stand, in business order, and what their corrections leave open."""

    standing: tuple[Standing, ...]
    findings: tuple[Finding, ...]


@dataclass(frozen=True, kw_only=True)
class _Outcome:
    """What the corrections naming one entry make of it."""

    is_void: bool = False
    winner: Fact | None = None
    was: tuple[Was, ...] = ()
    rivals: Mapping[str, Sequence[str]] = field(default_factory=dict)


def as_it_stands(facts: Iterable[Fact]) -> Record:
    """Apply every correction and void (R47, R48); the same facts give the same record in any
    order of arrival. A missing original is stood for by its correction."""
    by_id = {fact.id: fact for fact in facts}
    naming = _naming(by_id.values())
    roots = _roots(by_id, naming)
    outcomes: dict[str, _Outcome] = {}
    # What names an entry comes before the entry; no recursion, for a chain may be long.
    for entry in reversed(_reached(roots, naming)):
        outcomes[entry] = _outcome(by_id.get(entry), naming.get(entry, []), outcomes)
    standing = [
        made
        for root in roots
        if (made := _stands(root, by_id.get(root), outcomes[root])) is not None
    ]
    findings = [
        finding(
            f"two_corrections:{entry}",
            "two_corrections",
            entry=entry,
            detail={"corrections": " ".join(rivals)},
        )
        for root in roots
        for entry, rivals in outcomes[root].rivals.items()
    ]
    circles = [finding(f"circle:{entry}", "circle", entry=entry) for entry in by_id
               if entry not in outcomes]  # fmt: skip
    return Record(
        standing=tuple(in_business_order(standing)),
        findings=tuple(sorted([*findings, *circles], key=lambda each: each["key"])),
    )


def in_business_order(standing: Iterable[Standing]) -> list[Standing]:
    """By happening (R52); at equal times what makes a lot first and counts last."""
    return sorted(
        standing,
        key=lambda e: (e.happened_at, _rank(e.kind), e.device, e.device_seq, e.id),
    )


def in_log_order(standing: Iterable[Standing]) -> list[Standing]:
    """By the server's number, own unsent entries last: the order definitions fold in (R49)."""
    return sorted(
        standing,
        key=lambda e: (e.seq is None, e.seq or 0, e.device, e.device_seq, e.id),
    )


def family_roots(corrects: Mapping[str, str | None]) -> dict[str, str]:
    """For each entry the root of its correction family, from what each entry corrects.

    A root may itself be missing from the log. Entries that name each other in a circle share
    the smallest id among them.
    """
    roots: dict[str, str] = {}
    for start in corrects:
        path: dict[str, int] = {}
        entry = start
        while entry not in roots and entry not in path:
            path[entry] = len(path)
            entry = corrects.get(entry) or entry
        # The walk ended at a known family, at a root (a circle of one), or in a circle.
        root = roots.get(entry) or min(list(path)[path[entry] :])
        roots.update(dict.fromkeys(path, root))
    return {entry: roots[entry] for entry in corrects}


def finding(
    key: str,
    what: str,
    *,
    entry: str | None = None,
    place: str | None = None,
    about: str | None = None,
    detail: dict[str, str] | None = None,
) -> Finding:
    """A finding nobody has settled yet; `about` names a field. What is None is left out."""
    made = Finding(key=key, what=what, is_settled=False)
    if entry is not None:
        made["entry"] = entry
    if place is not None:
        made["place"] = place
    if about is not None:
        made["field"] = about
    if detail is not None:
        made["detail"] = detail
    return made


def settled(
    findings: Iterable[Finding], standing: Sequence[Standing], subject: str
) -> list[Finding]:
    """The findings of a subject by key, each once, those somebody settled marked as such."""
    settled_by = {
        text_in(each.body, "finding") or "": each.id
        for each in standing
        if each.kind == "finding_settled" and text_in(each.body, "subject") == subject
    }
    by_key: dict[str, Finding] = {}
    for each in findings:
        by_key.setdefault(each["key"], each)
    return [_marked(each, settled_by.get(key)) for key, each in sorted(by_key.items())]


def notes_about(standing: Sequence[Standing], subject: str) -> list[Note]:
    """What members wrote about a subject, in business order."""
    return [
        Note(
            entry=each.id,
            says=text_in(each.body, "says") or "",
            author=each.author,
            on=each.local_date,
        )
        for each in standing
        if each.kind == "note" and text_in(each.body, "subject") == subject
    ]


def _marked(each: Finding, settled_by: str | None) -> Finding:
    if settled_by is None:
        return each
    marked = each.copy()
    marked["is_settled"] = True
    marked["settled_by"] = settled_by
    return marked


_ABOUT_ENTRIES = ("correction", "void")
_MAKING = ("receipt", "output", "topped_up")


def _rank(kind: str) -> int:
    if kind in _MAKING:
        return 0
    return 2 if kind == "count" else 1


def _naming(facts: Iterable[Fact]) -> dict[str, list[Fact]]:
    """Entry -> the corrections and voids that name it, by id."""
    naming: dict[str, list[Fact]] = {}
    for fact in sorted(facts, key=lambda each: each.id):
        if fact.kind in _ABOUT_ENTRIES:
            naming.setdefault(text_in(fact.body, "corrects") or "", []).append(fact)
    return naming


def _roots(by_id: Mapping[str, Fact], naming: Mapping[str, Sequence[Fact]]) -> list[str]:
    """Entries that correct nothing, and corrected ones that are not here."""
    own = [fact.id for fact in by_id.values() if fact.kind not in _ABOUT_ENTRIES]
    missing = [entry for entry in naming if entry not in by_id]
    return sorted([*own, *missing])


def _reached(roots: Sequence[str], naming: Mapping[str, Sequence[Fact]]) -> list[str]:
    """Roots and all that names them, each after what it names. A circle has no root."""
    reached = list(roots)
    for entry in reached:  # grows while it is walked
        reached.extend(fact.id for fact in naming.get(entry, ()))
    return reached


def _outcome(
    own: Fact | None, named_by: Sequence[Fact], outcomes: Mapping[str, _Outcome]
) -> _Outcome:
    candidates = [fact for fact in named_by if not outcomes[fact.id].is_void]
    replaced = {entry for fact in candidates for entry in _instead_of(fact) if entry != fact.id}
    # Two that replace each other are rivals again: nobody has decided.
    live = [fact for fact in candidates if fact.id not in replaced] or candidates
    if len(live) == 1:
        return _decided(live[0], outcomes[live[0].id])
    if not live:
        return _Outcome(winner=own)
    named = text_in(live[0].body, "corrects") or ""
    return _Outcome(winner=own, rivals={named: [fact.id for fact in live]})


def _decided(last: Fact, inner: _Outcome) -> _Outcome:
    if last.kind == "void":
        return _Outcome(is_void=True)
    was = Was(entry=last.id, reason=text_in(last.body, "reason") or "", author=last.author)
    return _Outcome(winner=inner.winner, was=(was, *inner.was), rivals=inner.rivals)


def _instead_of(fact: Fact) -> list[str]:
    return [text_in(each, "entry") or "" for each in items_in(fact.body, "instead_of")]


def _stands(root: str, own: Fact | None, outcome: _Outcome) -> Standing | None:
    """The root with the body in force; its place in the order stays its own."""
    if outcome.winner is None:
        return None
    place = own or outcome.winner
    is_own = outcome.winner is own
    body = outcome.winner.body if is_own else object_in(outcome.winner.body, "body") or {}
    kind = outcome.winner.kind if is_own else (text_in(outcome.winner.body, "of_kind") or "")
    return Standing(
        id=root,
        kind=kind,
        author=place.author,
        device=place.device,
        device_seq=place.device_seq,
        happened_at=place.happened_at,
        local_date=place.local_date,
        seq=place.seq,
        body=body,
        was=outcome.was,
    )
