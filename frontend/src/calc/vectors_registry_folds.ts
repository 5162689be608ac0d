/**
 * How each fold of calc is called with what a vector gives; see vectors_registry.ts. The twin of
 * tests/calc/registry_folds.py, where the short forms of a vector are told.
 */

import { batchBalance } from "./batch_balance.ts";
import { gatheredLines, type LineWork, lineIfMoved, lineSum, writtenLine } from "./batch_lines.ts";
import * as batchOutput from "./batch_output.ts";
import {
  gatheredSteps,
  measuredMass,
  type StepWork,
  stepIfMoved,
  writtenStep,
} from "./batch_steps.ts";
import * as bodies from "./bodies.ts";
import { definitionState, recipeState } from "./definitions.ts";
import { type Beside, foldNumber, foldSubject, isFinished, leaningTypes } from "./folds.ts";
import { heatResults, type JudgedLog, judgedLogs } from "./heat_results.ts";
import { priceState } from "./lot_prices.ts";
import { dayState } from "./market.ts";
import { type Decimal, parseDecimal, significant, written } from "./numbers.ts";
import type { Doubt } from "./readings.ts";
import * as record from "./record.ts";
import * as spread from "./spread.ts";
import { type Ledger, movedAmount, touchesLot, walked } from "./stock_moves.ts";
import { idIn, typeIn } from "./subjects.ts";
import { edgesAt, type Sheets, trace, walkFrom } from "./trace.ts";
import type { Adapters, Given } from "./vectors_registry.ts";
import * as weighing from "./weighing.ts";

/** A fact from the few fields a vector or test names. */
export function factOf(given: Given): record.Fact {
  const happened_at: string = given.happened_at ?? "2026-06-01T08:00:00.000Z";
  return {
    id: given.id,
    kind: given.kind,
    author: given.author ?? "ana",
    device: given.device ?? "k7",
    device_seq: given.device_seq ?? 1,
    happened_at,
    local_date: given.local_date ?? happened_at.slice(0, 10),
    seq: given.seq ?? null,
    body: given.body ?? {},
  };
}

function standing(given: Given): record.Standing {
  return { ...factOf(given), was: given.was ?? [] };
}

export const factsOf = (g: Given): record.Fact[] => g.facts.map(factOf);
/** Entries as they stand, from the few fields a vector names, or from its facts. */
export const entriesOf = (g: Given): record.Standing[] =>
  g.entries?.map(standing) ?? [...record.asItStands(factsOf(g)).standing];
const d = (text: string | null | undefined): Decimal | null =>
  text == null ? null : parseDecimal(text);
const w = (x: Decimal | null): string | null => (x === null ? null : written(x));
const idsOf = (entries: readonly record.Standing[]) => entries.map((each) => each.id);
const texts = (values: ReadonlyMap<string, Decimal>) =>
  Object.fromEntries([...values].map(([name, value]) => [name, written(value)]));

interface WithFindings {
  readonly findings?: readonly record.Finding[];
}

function shown(state: object, g: Given): object {
  const { findings = [] }: WithFindings = state;
  const more: Record<string, unknown> = {
    ...state,
    finding_keys: findings.map((each) => each.key),
    settled_keys: findings.filter((each) => each.is_settled).map((each) => each.key),
  };
  return g.show ? picked(more, g.show) : state;
}

export function picked(state: Readonly<Record<string, unknown>>, names: readonly string[]): object {
  return Object.fromEntries(names.map((name) => [name, state[name]]));
}

export function fold(made: (subject: string, facts: readonly record.Fact[]) => object) {
  return (g: Given) => shown(made(g.subject, factsOf(g)), g);
}

/** `beside` are states by subject; of `folded_beside` the states are folded first. */
function leaning(made: (subject: string, facts: readonly record.Fact[], beside: Beside) => object) {
  return (g: Given) => {
    const facts = factsOf(g);
    const beside = new Map(statesOf(g.beside));
    for (const each of g.folded_beside ?? []) beside.set(each, foldSubject(each, facts));
    return shown(made(g.subject, facts, beside), g);
  };
}

/** States by subject. */
export function statesOf(given: Given): Map<string, object> {
  return new Map(Object.entries(given ?? {}));
}

function amountJson(amount: bodies.Amount | null): string[] | null {
  return amount === null ? null : [written(amount.value), amount.unit];
}

function amountFrom(given: [string, string] | null): bodies.Amount | null {
  return given === null ? null : { value: parseDecimal(given[0]), unit: given[1] };
}

function doubtFrom(given: Given): Doubt | null {
  return given === null ? null : { u: Number(given.u), degrees: given.degrees };
}

export function doubtJson(doubt: Doubt | null) {
  return doubt === null ? null : { u: significant(doubt.u, 4), degrees: doubt.degrees };
}

export function weighingJson(made: weighing.Weighing | null) {
  if (made === null) return null;
  return { net: written(made.net), unit: made.unit, doubt: doubtJson(made.doubt) };
}

function inUnit(g: Given) {
  const { net, unit, doubt } = g.weighing;
  const made = { net: parseDecimal(net), unit, doubt: doubtFrom(doubt) };
  return weighingJson(weighing.inUnit(made, g.unit));
}

function asItStands(g: Given) {
  const made = record.asItStands(factsOf(g));
  return {
    standing: made.standing.map(({ id, kind, body, was }) => ({ id, kind, body, was })),
    findings: made.findings.map(({ key, detail = {} }) => ({ key, detail })),
  };
}

function findingOf(key: string): record.Finding {
  return record.finding(key, key.split(":", 1)[0] ?? "");
}

function walkedLedger(g: Given) {
  const ledger: Ledger = {
    code: g.code,
    unit: g.unit,
    places: new Map(),
    sums: new Map(),
    ways: new Map(),
    lost_on: new Map(),
    counts: [],
    findings: [],
  };
  for (const entry of entriesOf(g)) walked(ledger, entry);
  return {
    places: texts(ledger.places),
    sums: texts(ledger.sums),
    ways: Object.fromEntries(
      [...ledger.ways].map(([to, way]) => [to, [written(way.amount), way.on]]),
    ),
    lost_on: texts(ledger.lost_on),
    counts: ledger.counts,
    finding_keys: ledger.findings.map((each) => each.key),
  };
}

export function linesOf(g: Given): LineWork[] {
  const steps = stepsOf({ steps: [], ...g });
  const works = gatheredLines(g.lines ?? [], entriesOf(g), statesOf(g.instruments));
  for (const work of works) work.prepared = measuredMass(steps, "prepared_mass", work.line);
  return works;
}

export function firstOf<Each>(works: readonly Each[]): Each {
  const [first] = works;
  if (first === undefined) throw new Error("a vector has no line or step to show");
  return first;
}

function lineSumJson(g: Given) {
  const made = lineSum(firstOf(linesOf(g)));
  return { amount: amountJson(made.amount), doubt: doubtJson(made.doubt) };
}

/** The logs of the batch `b1`, from `facts` with their corrections or `entries` without. */
export function logsOf(g: Given): JudgedLog[] {
  const entries = entriesOf(g);
  const facts = g.facts ? factsOf(g) : entries;
  return judgedLogs(facts, entries, "b1", statesOf(g.instruments));
}

function judgedLogsJson(g: Given): object[] {
  return logsOf(g).map(({ written: { root, by }, comesTo, entry }) => [
    root,
    by,
    comesTo.verdict,
    entry !== null,
  ]);
}

function heatResultsFor(g: Given): object {
  const [results, findings] = heatResults(entriesOf(g), logsOf(g));
  return { results: results.map((each) => shown(each, g)), findings };
}

function withFindings([state, findings]: readonly [object, readonly record.Finding[]]) {
  return { state, finding_keys: findings.map((each) => each.key) };
}

export function stepsOf(g: Given): StepWork[] {
  return gatheredSteps(g.steps, entriesOf(g), statesOf(g.instruments));
}

function massJson(g: Given) {
  const mass = measuredMass(stepsOf(g), g.measures, g.line);
  return mass && { amount: amountJson(mass.amount), doubt: doubtJson(mass.doubt) };
}

function balanceJson(g: Given) {
  const made = batchBalance(linesOf(g), stepsOf(g), entriesOf(g), d(g.target_percent));
  return { ...shown(made[0], g), finding_keys: made[1].map((each) => each.key) };
}

function packedJson(g: Given) {
  const made = batchOutput.packedOut(entriesOf(g));
  return {
    filled: w(made.filled),
    good: w(made.good),
    packs: w(made.packs),
    rejected: w(made.rejected),
  };
}

type Row = Record<string, string>;
interface LotDrawn {
  readonly made_by: string;
  readonly unit: string;
  readonly made_from: Row[];
  readonly went_to: Row[];
}

/** Sheets from a drawn graph, see the Python twin. */
function sheetsOf(graph: Given): Sheets {
  const lots = new Map<string, LotDrawn>();
  const lot = (code: string): LotDrawn => {
    const [made_by, unit] = graph.lots[code];
    const drawn = lots.get(code) ?? { made_by, unit, made_from: [], went_to: [] };
    lots.set(code, drawn);
    return drawn;
  };
  for (const code of Object.keys(graph.lots)) lot(code);
  for (const [code, [origin, amount]] of rows(graph.sources)) {
    lot(code).made_from.push({ origin, amount });
  }
  const others = new Map<string, object>(batchesOf(graph, lot));
  for (const [code, poured] of rows(graph.poured)) {
    for (const [origin, amount] of rows(poured)) {
      lot(code).made_from.push({ origin: `lot:${origin}`, amount });
      lot(origin).went_to.push({ to: `lot:${code}`, amount });
    }
  }
  for (const [code, sent] of rows(graph.sent)) {
    for (const [to, amount] of rows(sent)) lot(code).went_to.push({ to, amount });
  }
  for (const [subject, name] of rows(graph.names)) others.set(subject, { fields: { name } });
  for (const [code, drawn] of lots) others.set(`lot:${code}`, drawn);
  for (const subject of graph.not_held ?? []) others.delete(subject);
  return others;
}

function batchesOf(graph: Given, lot: (code: string) => LotDrawn): [string, object][] {
  return rows(graph.batches).map(([batch, [putIn, out]]) => {
    const lots_in: Row[] = [];
    const lots_out: Row[] = [];
    for (const [code, amount] of rows(putIn)) {
      lot(code).went_to.push({ to: `batch:${batch}`, amount });
      lots_in.push({ lot: code, amount, unit: lot(code).unit });
    }
    for (const [code, amount] of rows(out)) {
      lot(code).made_from.push({ origin: `batch:${batch}`, amount });
      lots_out.push({ lot: code, amount, unit: lot(code).unit });
    }
    return [`batch:${batch}`, { code: batch, lots_in, lots_out }];
  });
}

const rows = (given: Given): [string, Given][] => Object.entries(given ?? {});

function traceJson(g: Given) {
  const made = trace(g.lot, g.direction, sheetsOf(g.graph));
  const ofType = ["lot", "recipient", "source", "batch", "day"].map((sort) => [
    `${sort}_nodes`,
    made.nodes.filter((n) => n.id.startsWith(sort)).map((n) => idIn(n.id)),
  ]);
  return g.show ? picked({ ...made, ...Object.fromEntries(ofType) }, g.show) : made;
}

function walkJson(g: Given) {
  const made = walkFrom(g.start, g.direction, sheetsOf(g.graph));
  return {
    reached: [...made.reached].sort(),
    edges: made.edges.length,
    missing: made.missing,
  };
}

function reconciliationJson(g: Given) {
  return spread.reconciliation({
    produced: parseDecimal(g.produced),
    inside: g.inside.map(parseDecimal),
    dispatched: parseDecimal(g.dispatched),
    recovered: parseDecimal(g.recovered),
    gone_for_good: parseDecimal(g.gone_for_good),
  });
}

const BODIES: Adapters[string] = {
  text_in: (g) => bodies.textIn(g.body, g.name),
  object_in: (g) => bodies.objectIn(g.body, g.name),
  items_in: (g) => bodies.itemsIn(g.body, g.name),
  texts_in: (g) => bodies.textsIn(g.body, g.name),
  decimal_in: (g) => w(bodies.decimalIn(g.body, g.name)),
  quantity_in: (g) => bodies.quantityIn(g.body, g.name),
  amount_in: (g) => amountJson(bodies.amountIn(g.body, g.name)),
  in_base_unit: (g) => amountJson(bodies.inBaseUnit(d(g.value), g.unit)),
  sum_of: (g) => amountJson(bodies.sumOf(g.amounts.map(amountFrom))),
};

const RECORD: Adapters[string] = {
  as_it_stands: asItStands,
  in_business_order: (g) => idsOf(record.inBusinessOrder(entriesOf(g))),
  in_log_order: (g) => idsOf(record.inLogOrder(entriesOf(g))),
  family_roots: (g) => Object.fromEntries(record.familyRoots(new Map(Object.entries(g.corrects)))),
  finding: ({ key, what, ...about }) => record.finding(key, what, about),
  settled: (g) => record.settled(g.keys.map(findingOf), entriesOf(g), g.subject),
  notes_about: (g) => record.notesAbout(entriesOf(g), g.subject),
};

const BATCH_OUTPUT: Adapters[string] = {
  packed_out: packedJson,
  lost_by_reason: (g) => texts(batchOutput.lostByReason(entriesOf(g), g.stage)),
  written_output: (g) => batchOutput.writtenOutput(standing(g.entry)),
  written_loss: (g) => batchOutput.writtenLoss(standing(g.entry)),
  lots_in: (g) => batchOutput.lotsIn(entriesOf(g)),
  lots_out: (g) => batchOutput.lotsOut(entriesOf(g)),
};

const SPREAD: Adapters[string] = {
  raw_lots: (g) => spread.rawLots(sheetsOf(g.graph)),
  finished_lots: (g) => spread.finishedLots(sheetsOf(g.graph)),
  dispersion: (g) => spread.dispersion(sheetsOf(g.graph)),
  recall: (g) => spread.recall(g.lot, sheetsOf(g.graph)),
  recall_size: (g) => spread.recallSize(sheetsOf(g.graph)),
  share_of: (g) => spread.shareOf(g.lot, g.within, sheetsOf(g.graph)),
  reconciliation: reconciliationJson,
};

export const FOLDS: Adapters = {
  bodies: BODIES,
  subjects: { type_in: (g) => typeIn(g.subject), id_in: (g) => idIn(g.subject) },
  record: RECORD,
  weighing: {
    weighing_of: (g) => weighingJson(weighing.weighingOf(g.body)),
    load_of: (g) => w(weighing.loadOf(g.reading)),
    weighed: (g) => amountJson(weighing.weighed(g.body)),
    in_unit: inUnit,
    scaled_doubt: (g) => doubtJson(weighing.scaledDoubt(doubtFrom(g.doubt), Number(g.factor))),
    sum_doubt: (g) => doubtJson(weighing.sumDoubt(g.doubts.map(doubtFrom))),
  },
  lot_prices: { price_state: fold(priceState) },
  // A lot or batch as the phone has it whole: with what it leans on and what is judged.
  stock: { lot_state: leaning(foldSubject) },
  stock_moves: {
    touches_lot: (g) => touchesLot(standing(g.entry), g.code),
    moved_amount: (g) => amountJson(movedAmount(standing(g.entry), g.code)),
    walked: walkedLedger,
  },
  batch_lines: {
    gathered_lines: (g) =>
      linesOf(g).map(({ line, unit, weigh_ins, laid_out, is_prepared }) => ({
        line,
        unit,
        weigh_ins: idsOf(weigh_ins),
        laid_out,
        is_prepared,
      })),
    line_sum: lineSumJson,
    written_line: (g) => withFindings(writtenLine(firstOf(linesOf(g)))),
    line_if_moved: (g) => lineIfMoved(firstOf(linesOf(g))),
  },
  batch_steps: {
    gathered_steps: (g) => stepsOf(g).map(({ step, done }) => ({ step, done: idsOf(done) })),
    measured_mass: massJson,
    written_step: (g) => withFindings(writtenStep(firstOf(stepsOf(g)))),
    step_if_moved: (g) => stepIfMoved(firstOf(stepsOf(g)), g.number),
  },
  batch_output: BATCH_OUTPUT,
  batch_balance: { batch_balance: balanceJson },
  heat_results: { judged_logs: judgedLogsJson, heat_results: heatResultsFor },
  batches: { batch_state: leaning(foldSubject) },
  market: { day_state: fold(dayState) },
  definitions: { definition_state: fold(definitionState), recipe_state: fold(recipeState) },
  trace: {
    trace: traceJson,
    walk_from: walkJson,
    edges_at: (g) => edgesAt(g.subject, g.state, g.direction),
  },
  spread: SPREAD,
  folds: {
    fold_subject: leaning(foldSubject),
    leaning_types: (g) => leaningTypes(g.subject, g.before, g.after),
    fold_number: (g) => foldNumber(g.subject),
    is_finished: (g) => isFinished(g.subject, g.state),
  },
};
