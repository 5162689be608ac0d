"""What keeps a batch or lot back, and what a coordinator decided about it.

A cause stays open until a decision names it, whenever either came in: what one phone put on
hold is not let go by somebody who had not seen it. What once was a cause is one also after it
was corrected or taken back, for that any member may do.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TypedDict

from kitchenlog.calc.bodies import Body, items_in, object_in, text_in
from kitchenlog.calc.record import Fact, Finding, Standing, family_roots, finding
from kitchenlog.calc.subjects import id_in, type_in


class Cause(TypedDict):
    """Why something is kept back: `hold` (a member said so), `outside` or `cannot_tell` (the
    check of a step), `fail` or `not_proven` (a log of time and temperature by the rule in
    `judged_by`) or `decision` (a coordinator). `stands` is false where the entry was corrected
    or taken back since; `decided` is what the decision named `decided_by` said."""

    entry: str
    what: str
    because: str | None
    step: str | None
    judged_by: str | None
    reason: str | None
    at: str
    author: str
    stands: bool
    decided: str | None
    decided_by: str | None


class Decision(TypedDict):
    """What a coordinator decided about the causes named."""

    entry: str
    decision: str
    decides: list[str]
    reason: str | None
    at: str
    author: str


class Hold(TypedDict):
    """Whether something is kept back now. `is_decided`: a coordinator looked at all that is
    open and keeps it back; `since` is when the first open cause happened."""

    is_held: bool
    is_decided: bool
    since: str | None
    causes: list[Cause]
    decisions: list[Decision]


@dataclass(frozen=True, kw_only=True)
class Written:
    """A body an entry has or once had. `root` is the entry's id, also where a correction wrote
    the body; `by` is what wrote it; `fact` is the entry itself as far as it is here."""

    root: str
    by: str
    fact: Fact
    body: Body


_HOLDING = "hold"
_CHECK_CAUSES = ("outside", "cannot_tell")
_CHECK_FINDINGS = ("step_outside", "step_cannot_tell")
_LOG_CAUSES = ("fail", "not_proven")
_LOG_FINDINGS = ("heat_failed", "heat_not_proven")


def hold_state(
    subject: str,
    facts: Sequence[Fact],
    standing: Sequence[Standing],
    checks: Sequence[Cause] = (),
) -> Hold:
    """All that keeps `batch:<id>` or `lot:<code>` back. `standing` are the facts as they stand,
    in business order; `checks` are the causes that the readings and logs of a batch gave."""
    named = type_in(subject)
    about = [each for each in standing if text_in(each.body, named) == id_in(subject)]
    decisions = [_decision(each) for each in about if each.kind == "hold_decided"]
    causes = [*checks, *_put_on_hold(subject, facts, standing)]
    causes.extend(_kept_back(each) for each in decisions if each["decision"] == _HOLDING)
    return hold_of(causes, decisions)


def hold_of(causes: Sequence[Cause], decisions: Sequence[Decision]) -> Hold:
    """What causes and decisions, in business order, add up to, wherever they came from."""
    decided = [_decided(cause, decisions) for cause in causes]
    decided.sort(key=lambda cause: (cause["at"], cause["entry"]))
    still = [cause for cause in decided if cause["decided"] != "release"]
    return Hold(
        is_held=bool(still),
        is_decided=bool(still) and not any(_is_open(cause) for cause in still),
        since=min((cause["at"] for cause in still), default=None),
        causes=decided,
        decisions=list(decisions),
    )


def held_findings(hold: Hold) -> list[Finding]:
    """One finding while something is kept back about which nobody has decided."""
    waiting = [cause for cause in hold["causes"] if _is_open(cause)]
    return [finding("held", "held", entry=waiting[0]["entry"])] if waiting else []


def decided_findings(findings: Iterable[Finding], hold: Hold) -> list[Finding]:
    """The same findings, those about the check of a step or a log settled where a coordinator
    decided about every reading that failed it, or about the log."""
    return [_settled(each, hold) for each in findings]


def ever_written(facts: Iterable[Fact], kind: str) -> list[Written]:
    """Every body entries of a kind have or once had, by the entry and then by what wrote it."""
    held = {fact.id: fact for fact in facts}
    corrects = {
        fact.id: text_in(fact.body, "corrects") if fact.kind in ("correction", "void") else None
        for fact in held.values()
    }
    roots = family_roots(corrects)
    written = [
        (roots[fact.id], fact.id, body)
        for fact in held.values()
        if (body := _body_of(fact, kind)) is not None
    ]
    return [
        Written(root=root, by=by, fact=held.get(root, held[by]), body=body)
        for root, by, body in sorted(written, key=lambda each: each[:2])
    ]


def _body_of(fact: Fact, kind: str) -> Body | None:
    if fact.kind == kind:
        return fact.body
    is_correction = fact.kind == "correction" and text_in(fact.body, "of_kind") == kind
    return object_in(fact.body, "body") if is_correction else None


def _put_on_hold(
    subject: str, facts: Sequence[Fact], standing: Sequence[Standing]
) -> list[Cause]:
    """By a member, in words; the words in force, where there are any."""
    named, own_id = type_in(subject), id_in(subject)
    now = {each.id: each.body for each in standing if text_in(each.body, named) == own_id}
    found = {
        each.root: each
        for each in ever_written(facts, "held")
        if text_in(each.body, named) == own_id
    }
    return [_cause(each, now.get(root)) for root, each in found.items()]


def _cause(written: Written, now: Body | None) -> Cause:
    body = written.body if now is None else now
    return Cause(
        entry=written.root,
        what="hold",
        because=text_in(body, "because"),
        step=None,
        judged_by=None,
        reason=text_in(body, "reason"),
        at=written.fact.happened_at,
        author=written.fact.author,
        stands=now is not None,
        decided=None,
        decided_by=None,
    )


def _decision(entry: Standing) -> Decision:
    return Decision(
        entry=entry.id,
        decision=text_in(entry.body, "decision") or _HOLDING,
        decides=[text_in(each, "entry") or "" for each in items_in(entry.body, "decides")],
        reason=text_in(entry.body, "reason"),
        at=entry.happened_at,
        author=entry.author,
    )


def _kept_back(decision: Decision) -> Cause:
    """A decision to keep something back is itself to be let go by name."""
    return Cause(
        entry=decision["entry"],
        what="decision",
        because=None,
        step=None,
        judged_by=None,
        reason=decision["reason"],
        at=decision["at"],
        author=decision["author"],
        stands=True,
        decided=None,
        decided_by=None,
    )


def _decided(cause: Cause, decisions: Sequence[Decision]) -> Cause:
    """A release that names a cause counts, whatever else was decided about it."""
    about = [each for each in decisions if cause["entry"] in each["decides"]]
    releases = [each for each in about if each["decision"] == "release"]
    last = (releases or about)[-1:]
    for each in last:
        return {**cause, "decided": each["decision"], "decided_by": each["entry"]}
    return cause


def _is_open(cause: Cause) -> bool:
    return cause["decided"] is None and cause["what"] != "decision"


def _settled(each: Finding, hold: Hold) -> Finding:
    failed = [cause for cause in hold["causes"] if _is_behind(cause, each)]
    if each["is_settled"] or not failed:
        return each
    by = [cause["decided_by"] for cause in failed]
    last = by[-1]
    if last is None or None in by:
        return each
    settled = each.copy()
    settled["is_settled"] = True
    settled["settled_by"] = last
    return settled


def _is_behind(cause: Cause, each: Finding) -> bool:
    """What a log says since it was corrected is another thing: nobody has decided about it."""
    if each["what"] in _LOG_FINDINGS:
        is_of_log = cause["what"] in _LOG_CAUSES and cause["stands"]
        return is_of_log and cause["entry"] == each.get("entry")
    is_of_check = each["what"] in _CHECK_FINDINGS and cause["what"] in _CHECK_CAUSES
    return is_of_check and cause["step"] == each.get("detail", {}).get("step")
