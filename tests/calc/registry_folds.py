"""How each fold of kitchenlog.calc is called with what a vector gives; see registry.py.

A fact in a vector says only what matters: the rest has the defaults below. `show` names the
fields of a state the vector is about; two more may be asked for: `finding_keys`, and
`settled_keys`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from decimal import Decimal
from typing import Any

from kitchenlog.calc import (
    batch_balance,
    batch_lines,
    batch_output,
    batch_steps,
    batches,
    bodies,
    definitions,
    folds,
    heat_results,
    lot_prices,
    market,
    record,
    spread,
    stock,
    stock_moves,
    subjects,
    trace,
    weighing,
)
from kitchenlog.calc.numbers import parse_decimal, significant, written
from kitchenlog.calc.readings import Doubt

Given = dict[str, Any]
Adapter = Callable[[Given], Any]


def fact_of(given: Mapping[str, Any]) -> record.Fact:
    """A fact from the few fields a vector or test names."""
    return record.Fact(**_envelope(given))


def _standing(given: Mapping[str, Any]) -> record.Standing:
    return record.Standing(**_envelope(given), was=tuple(given.get("was", ())))


def _envelope(given: Mapping[str, Any]) -> dict[str, Any]:
    happened_at = given.get("happened_at", "2026-06-01T08:00:00.000Z")
    return {
        "id": given["id"],
        "kind": given["kind"],
        "author": given.get("author", "ana"),
        "device": given.get("device", "k7"),
        "device_seq": given.get("device_seq", 1),
        "happened_at": happened_at,
        "local_date": given.get("local_date", happened_at[:10]),
        "seq": given.get("seq"),
        "body": given.get("body", {}),
    }


def _facts(g: Given) -> list[record.Fact]:
    return [fact_of(each) for each in g["facts"]]


def entries_of(g: Given) -> list[record.Standing]:
    """Entries as they stand, from the few fields a vector names, or from its facts."""
    if "entries" not in g:
        return list(record.as_it_stands(_facts(g)).standing)
    return [_standing(each) for each in g["entries"]]


def _shown(state: Mapping[str, Any], g: Given) -> dict[str, Any]:
    keys = [each["key"] for each in state.get("findings", ())]
    settled = [each["key"] for each in state.get("findings", ()) if each["is_settled"]]
    more = {**state, "finding_keys": keys, "settled_keys": settled}
    return {name: more[name] for name in g["show"]} if "show" in g else dict(state)


def fold_adapter(fold: Callable[[str, list[record.Fact]], Mapping[str, Any]]) -> Adapter:
    return lambda g: _shown(fold(g["subject"], _facts(g)), g)


def _leaning(fold: folds.Fold) -> Adapter:
    """`beside` are states by subject; of `folded_beside` the states are folded first."""

    def adapter(g: Given) -> dict[str, Any]:
        facts = _facts(g)
        folded = {each: folds.fold_subject(each, facts) for each in g.get("folded_beside", ())}
        return _shown(fold(g["subject"], facts, {**g.get("beside", {}), **folded}), g)

    return adapter


def _d(text: str | None) -> Decimal | None:
    return None if text is None else parse_decimal(text)


def _w(x: Decimal | None) -> str | None:
    return None if x is None else written(x)


def _amount(amount: bodies.Amount | None) -> list[str] | None:
    return None if amount is None else [written(amount.value), amount.unit]


def _amount_from(given: list[str] | None) -> bodies.Amount | None:
    return None if given is None else bodies.Amount(value=_d(given[0]), unit=given[1])


def _doubt_from(given: Mapping[str, Any] | None) -> Doubt | None:
    return None if given is None else Doubt(u=float(given["u"]), degrees=given["degrees"])


def doubt_json(doubt: Doubt | None) -> dict[str, Any] | None:
    return None if doubt is None else {"u": significant(doubt.u, 4), "degrees": doubt.degrees}


def weighing_json(made: weighing.Weighing | None) -> dict[str, Any] | None:
    if made is None:
        return None
    return {"net": written(made.net), "unit": made.unit, "doubt": doubt_json(made.doubt)}


def _in_unit(g: Given) -> dict[str, Any] | None:
    given = g["weighing"]
    made = weighing.Weighing(
        net=_d(given["net"]), unit=given["unit"], doubt=_doubt_from(given["doubt"])
    )
    return weighing_json(weighing.in_unit(made, g["unit"]))


def _standing_json(each: record.Standing) -> dict[str, Any]:
    return {"id": each.id, "kind": each.kind, "body": each.body, "was": list(each.was)}


def _as_it_stands(g: Given) -> dict[str, Any]:
    made = record.as_it_stands(_facts(g))
    findings = [
        {"key": each["key"], "detail": each.get("detail", {})} for each in made.findings
    ]
    return {"standing": [_standing_json(each) for each in made.standing], "findings": findings}


def _ids(entries: Iterable[record.Standing]) -> list[str]:
    return [each.id for each in entries]


def _findings(g: Given) -> list[record.Finding]:
    return [record.finding(key, key.partition(":")[0]) for key in g["keys"]]


def _walked(g: Given) -> dict[str, Any]:
    ledger = stock_moves.Ledger(code=g["code"], unit=g["unit"])
    for entry in entries_of(g):
        stock_moves.walked(ledger, entry)
    return {
        "places": {place: written(value) for place, value in ledger.places.items()},
        "sums": {name: written(value) for name, value in ledger.sums.items()},
        "ways": {to: [written(way.amount), way.on] for to, way in ledger.ways.items()},
        "lost_on": {day: written(value) for day, value in ledger.lost_on.items()},
        "counts": ledger.counts,
        "finding_keys": [each["key"] for each in ledger.findings],
    }


def lines_of(g: Given) -> list[batch_lines.LineWork]:
    works = batch_lines.gathered_lines(
        g.get("lines", []), entries_of(g), g.get("instruments", {})
    )
    steps = steps_of({"steps": [], **g})
    for work in works:
        work.prepared = batch_steps.measured_mass(steps, "prepared_mass", work.line)
    return works


def _line_work(work: batch_lines.LineWork) -> dict[str, Any]:
    return {
        "line": work.line,
        "unit": work.unit,
        "weigh_ins": _ids(work.weigh_ins),
        "laid_out": work.laid_out,
        "is_prepared": work.is_prepared,
    }


def _line_sum(g: Given) -> dict[str, Any]:
    made = batch_lines.line_sum(lines_of(g)[0])
    return {"amount": _amount(made.amount), "doubt": doubt_json(made.doubt)}


def logs_of(g: Given) -> list[heat_results.JudgedLog]:
    """The logs of the batch `b1`, from `facts` with their corrections or `entries` without."""
    entries = entries_of(g)
    facts = _facts(g) if "facts" in g else entries
    return heat_results.judged_logs(facts, entries, "b1", g.get("instruments", {}))


def _heat_results(g: Given) -> dict[str, Any]:
    results, findings = heat_results.heat_results(entries_of(g), logs_of(g))
    return {"results": [_shown(each, g) for each in results], "findings": findings}


def _with_findings(made: tuple[Mapping[str, Any], list[record.Finding]]) -> dict[str, Any]:
    return {"state": made[0], "finding_keys": [each["key"] for each in made[1]]}


def steps_of(g: Given) -> list[batch_steps.StepWork]:
    """`instruments` are states by subject."""
    return batch_steps.gathered_steps(g["steps"], entries_of(g), g.get("instruments", {}))


def _measured_mass(g: Given) -> dict[str, Any] | None:
    mass = batch_steps.measured_mass(steps_of(g), g["measures"], g["line"])
    return mass and {"amount": _amount(mass.amount), "doubt": doubt_json(mass.doubt)}


def _balance(g: Given) -> dict[str, Any]:
    balance, findings = batch_balance.batch_balance(
        lines_of(g), steps_of(g), entries_of(g), target_percent=_d(g["target_percent"])
    )
    keys = [each["key"] for each in findings]
    return {**_shown(balance, g), "finding_keys": keys}


def _packed(g: Given) -> dict[str, Any]:
    made = batch_output.packed_out(entries_of(g))
    return {
        "filled": _w(made.filled),
        "good": _w(made.good),
        "packs": _w(made.packs),
        "rejected": _w(made.rejected),
    }


def sheets_of(graph: Mapping[str, Any]) -> dict[str, dict[str, Any]]:
    """Sheets from a drawn graph: `lots` (code -> how made and unit), `sources`, `batches` with
    what went in and out, `poured` together, `sent` away; `names` are definitions."""
    sheets: dict[str, dict[str, Any]] = {
        f"lot:{code}": {"made_by": how, "unit": unit, "made_from": [], "went_to": []}
        for code, (how, unit) in graph["lots"].items()
    }
    for code, (source, amount) in graph.get("sources", {}).items():
        sheets[f"lot:{code}"]["made_from"].append({"origin": source, "amount": amount})
    for batch, ways in graph.get("batches", {}).items():
        sheets[f"batch:{batch}"] = _batch_drawn(batch, ways, sheets)
    for code, poured in graph.get("poured", {}).items():
        for origin, amount in poured.items():
            sheets[f"lot:{code}"]["made_from"].append(
                {"origin": f"lot:{origin}", "amount": amount}
            )
            sheets[f"lot:{origin}"]["went_to"].append({"to": f"lot:{code}", "amount": amount})
    for code, sent in graph.get("sent", {}).items():
        for target, amount in sent.items():
            sheets[f"lot:{code}"]["went_to"].append({"to": target, "amount": amount})
    for subject, name in graph.get("names", {}).items():
        sheets[subject] = {"fields": {"name": name}}
    for subject in graph.get("not_held", ()):
        del sheets[subject]
    return sheets


def _batch_drawn(
    batch: str, ways: tuple[dict[str, str], dict[str, str]], sheets: dict[str, dict[str, Any]]
) -> dict[str, Any]:
    state: dict[str, Any] = {"code": batch, "lots_in": [], "lots_out": []}
    put_in, out = ways
    for code, amount in put_in.items():
        lot = sheets[f"lot:{code}"]
        lot["went_to"].append({"to": f"batch:{batch}", "amount": amount})
        state["lots_in"].append({"lot": code, "amount": amount, "unit": lot["unit"]})
    for code, amount in out.items():
        lot = sheets[f"lot:{code}"]
        lot["made_from"].append({"origin": f"batch:{batch}", "amount": amount})
        state["lots_out"].append({"lot": code, "amount": amount, "unit": lot["unit"]})
    return state


def _trace(g: Given) -> dict[str, Any]:
    made = trace.trace(g["lot"], g["direction"], sheets_of(g["graph"]))
    of_type = {
        f"{sort}_nodes": [
            n["id"].partition(":")[2] for n in made["nodes"] if n["id"].startswith(sort)
        ]
        for sort in ("lot", "recipient", "source", "batch", "day")
    }
    return (
        {name: {**made, **of_type}[name] for name in g["show"]} if "show" in g else dict(made)
    )


def _walk(g: Given) -> dict[str, Any]:
    made = trace.walk_from(g["start"], g["direction"], sheets_of(g["graph"]))
    return {
        "reached": sorted(made.reached),
        "edges": len(made.edges),
        "missing": list(made.missing),
    }


def _reconciliation(g: Given) -> dict[str, Any]:
    given = {name: _d(value) for name, value in g.items() if name != "inside"}
    return dict(spread.reconciliation(**given, inside=[_d(each) for each in g["inside"]]))


FOLDS: dict[str, dict[str, Adapter]] = {
    "bodies": {
        "text_in": lambda g: bodies.text_in(g["body"], g["name"]),
        "object_in": lambda g: bodies.object_in(g["body"], g["name"]),
        "items_in": lambda g: bodies.items_in(g["body"], g["name"]),
        "texts_in": lambda g: bodies.texts_in(g["body"], g["name"]),
        "decimal_in": lambda g: _w(bodies.decimal_in(g["body"], g["name"])),
        "quantity_in": lambda g: bodies.quantity_in(g["body"], g["name"]),
        "amount_in": lambda g: _amount(bodies.amount_in(g["body"], g["name"])),
        "in_base_unit": lambda g: _amount(bodies.in_base_unit(_d(g["value"]), g["unit"])),
        "sum_of": lambda g: _amount(bodies.sum_of(map(_amount_from, g["amounts"]))),
    },
    "subjects": {
        "type_in": lambda g: subjects.type_in(g["subject"]),
        "id_in": lambda g: subjects.id_in(g["subject"]),
    },
    "record": {
        "as_it_stands": _as_it_stands,
        "in_business_order": lambda g: _ids(record.in_business_order(entries_of(g))),
        "in_log_order": lambda g: _ids(record.in_log_order(entries_of(g))),
        "family_roots": lambda g: record.family_roots(g["corrects"]),
        "finding": lambda g: record.finding(
            g["key"],
            g["what"],
            entry=g.get("entry"),
            place=g.get("place"),
            about=g.get("field"),
            detail=g.get("detail"),
        ),
        "settled": lambda g: record.settled(_findings(g), entries_of(g), g["subject"]),
        "notes_about": lambda g: record.notes_about(entries_of(g), g["subject"]),
    },
    "weighing": {
        "weighing_of": lambda g: weighing_json(weighing.weighing_of(g["body"])),
        "load_of": lambda g: _w(weighing.load_of(g["reading"])),
        "weighed": lambda g: _amount(weighing.weighed(g["body"])),
        "in_unit": _in_unit,
        "scaled_doubt": lambda g: doubt_json(
            weighing.scaled_doubt(_doubt_from(g["doubt"]), float(g["factor"]))
        ),
        "sum_doubt": lambda g: doubt_json(
            weighing.sum_doubt([_doubt_from(each) for each in g["doubts"]])
        ),
    },
    "lot_prices": {"price_state": fold_adapter(lot_prices.price_state)},
    "stock": {
        "lot_state": _leaning(stock.lot_state),
    },
    "stock_moves": {
        "touches_lot": lambda g: stock_moves.touches_lot(_standing(g["entry"]), g["code"]),
        "moved_amount": lambda g: _amount(
            stock_moves.moved_amount(_standing(g["entry"]), g["code"])
        ),
        "walked": _walked,
    },
    "batch_lines": {
        "gathered_lines": lambda g: [_line_work(work) for work in lines_of(g)],
        "line_sum": _line_sum,
        "written_line": lambda g: _with_findings(batch_lines.written_line(lines_of(g)[0])),
        "line_if_moved": lambda g: batch_lines.line_if_moved(lines_of(g)[0]),
    },
    "batch_steps": {
        "gathered_steps": lambda g: [
            {"step": work.step, "done": _ids(work.done)} for work in steps_of(g)
        ],
        "measured_mass": _measured_mass,
        "written_step": lambda g: _with_findings(batch_steps.written_step(steps_of(g)[0])),
        "step_if_moved": lambda g: batch_steps.step_if_moved(steps_of(g)[0], g["number"]),
    },
    "heat_results": {
        "judged_logs": lambda g: [
            [
                each.written.root,
                each.written.by,
                each.comes_to["verdict"],
                each.entry is not None,
            ]
            for each in logs_of(g)
        ],
        "heat_results": _heat_results,
    },
    "batch_output": {
        "packed_out": _packed,
        "lost_by_reason": lambda g: {
            reason: written(amount)
            for reason, amount in batch_output.lost_by_reason(entries_of(g), g["stage"]).items()
        },
        "written_output": lambda g: batch_output.written_output(_standing(g["entry"])),
        "written_loss": lambda g: batch_output.written_loss(_standing(g["entry"])),
        "lots_in": lambda g: batch_output.lots_in(entries_of(g)),
        "lots_out": lambda g: batch_output.lots_out(entries_of(g)),
    },
    "batch_balance": {"batch_balance": _balance},
    "batches": {"batch_state": _leaning(batches.batch_state)},
    "market": {"day_state": fold_adapter(market.day_state)},
    "definitions": {
        "definition_state": fold_adapter(definitions.definition_state),
        "recipe_state": fold_adapter(definitions.recipe_state),
    },
    "trace": {
        "trace": _trace,
        "walk_from": _walk,
        "edges_at": lambda g: trace.edges_at(g["subject"], g["state"], g["direction"]),
    },
    "spread": {
        "raw_lots": lambda g: spread.raw_lots(sheets_of(g["graph"])),
        "finished_lots": lambda g: spread.finished_lots(sheets_of(g["graph"])),
        "dispersion": lambda g: spread.dispersion(sheets_of(g["graph"])),
        "recall": lambda g: spread.recall(g["lot"], sheets_of(g["graph"])),
        "recall_size": lambda g: spread.recall_size(sheets_of(g["graph"])),
        "share_of": lambda g: spread.share_of(g["lot"], g["within"], sheets_of(g["graph"])),
        "reconciliation": _reconciliation,
    },
    "folds": {
        "fold_subject": _leaning(folds.fold_subject),
        "leaning_types": lambda g: list(
            folds.leaning_types(g["subject"], g["before"], g["after"])
        ),
        "fold_number": lambda g: folds.fold_number(g["subject"]),
        "is_finished": lambda g: folds.is_finished(g["subject"], g["state"]),
    },
}
