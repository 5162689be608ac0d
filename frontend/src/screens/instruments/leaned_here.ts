/** What leaned on an instrument that failed, from what this phone holds: works without signal. */
import type { BatchState } from "../../calc/batches.ts";
import type { InDoubt, InstrumentState } from "../../calc/instruments.ts";
import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import type { LotState } from "../../calc/stock.ts";
import { idIn, typeIn } from "../../calc/subjects.ts";
import type { Edge } from "../../calc/trace.ts";
import { trustedReading } from "../../calc/trusted.ts";
import type { Reached } from "../../state/impact.ts";
import { sheet as heldSheet } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { heldTrace } from "../../state/trace.ts";
import { LEANED } from "../../text/instruments.ts";
import { recipeNameOf } from "../common/batches.ts";
import {
  instrumentSheet,
  type UsedAt,
  type UsedElsewhere,
  usesElsewhere,
  usesOf,
} from "../common/instruments.ts";
import { correctedOr } from "../common/trust.ts";
import {
  calledFrom,
  changesIn,
  elsewhereName,
  inOrder,
  type Leaned,
  type LeanedReading,
  type LeanedSheet,
  placeName,
} from "./leaned.ts";

interface Doubted {
  instrument: string;
  doubt: InDoubt;
  sheet: InstrumentState;
}

/** All of it; null where the check puts nothing in question. */
export function leanedHere(instrument: string, check: string): Leaned | null {
  const sheet = instrumentSheet(instrument);
  const doubt = sheet?.doubts?.find((each) => each.check === check);
  if (sheet === null || doubt === undefined) return null;
  const about = { instrument, doubt, sheet };
  const uses = usesOf(instrument).filter((each) => isInDoubt(each, doubt));
  const others = usesElsewhere(instrument).filter((each) => isInDoubt(each, doubt));
  const batches = [...new Set(uses.map((each) => each.batch))];
  const fills = others.filter((each) => each.fill !== null);
  const filled = [...new Set(fills.map((each) => each.subject))];
  const made = batches.flatMap((batch) => batch.lots_out.map(({ lot }) => lot));
  const traces = [...new Set([...made, ...filled.map(idIn)])].map((lot) =>
    heldTrace(lot, "forward"),
  );
  return {
    after: doubt.after,
    until: doubt.until,
    sheets: inOrder([
      ...batches.map((batch) => ofBatch(batch, uses, about)),
      ...filled.map((subject) => ofLot(subject, fills, doubt)),
    ]),
    elsewhere: others.filter((each) => each.fill === null).map((each) => besides(each, about)),
    lots: lotsIn(traces.flatMap(({ nodes }) => nodes.map(({ id }) => id))),
    ...calledFrom(reachedBy(traces.flatMap(({ edges }) => edges))),
    isComplete: traces.every((each) => each.is_complete),
  };
}

/** Some of the time it was read in lies in the stretch that the check puts in question. */
function isInDoubt(
  read: { readonly happened_at: string; readonly until?: string },
  { after, until }: InDoubt,
): boolean {
  const last = read.until ?? read.happened_at;
  return (after === null || after < last) && (until === null || read.happened_at <= until);
}

function ofBatch(batch: BatchState, uses: readonly UsedAt[], about: Doubted): LeanedSheet {
  const own = uses.filter((each) => each.batch === batch);
  return {
    subject: `batch:${batch.batch}`,
    title: `${recipeNameOf(batch)}, ${batch.code ?? ""}`,
    count: own.length,
    changes: changesIn(wouldChange(batch.findings, about.doubt), (at) => placeName(batch, at)),
    readings: own.map((each) => readingIn(each, about)),
  };
}

function ofLot(subject: string, fills: readonly UsedElsewhere[], doubt: InDoubt): LeanedSheet {
  const lot = heldSheet<LotState>(subject).value?.state ?? null;
  const own = fills.filter((each) => each.subject === subject);
  const name = nameOf("material", lot?.material ?? null);
  return {
    subject,
    title: LEANED.fill_of([name, idIn(subject)].filter(Boolean).join(", ")),
    count: own.length,
    changes: changesIn(wouldChange(lot?.findings ?? [], doubt), null),
    readings: own.map(({ entry, kind, happened_at, fill }) => ({
      entry,
      kind,
      happened_at,
      name: LEANED.packs,
      read: fill?.mean_error ?? null,
      moves: fill?.trust?.moves ?? null,
      unit: fill?.unit ?? null,
    })),
  };
}

function wouldChange(findings: BatchState["findings"], { check }: InDoubt): string[] {
  const found = findings.find((each) => each.key === `instrument_failed:${check}`);
  return (found?.detail?.would_change ?? "").split(" ").filter(Boolean);
}

function readingIn(use: UsedAt, about: Doubted): LeanedReading {
  const { entry, kind, happened_at, batch, at } = use;
  return { entry, kind, happened_at, name: placeName(batch, at), ...readAt(use, about) };
}

function readAt(use: UsedAt, about: Doubted): Figures {
  if (use.kind === "heat_log") return logged(use);
  return use.kind === "step_done" ? stepRead(use) : weighed(use, about);
}

/** A log by its warmest reading. */
function logged({ batch, entry }: UsedAt): Figures {
  const log = batch.heat.find((each) => each.entry === entry);
  const read = log?.trust?.highest ?? log?.rows?.highest ?? null;
  return { read, moves: log?.trust?.moves ?? null, unit: log?.unit ?? null };
}

type Figures = Pick<LeanedReading, "read" | "moves" | "unit">;

function stepRead({ batch, at, entry }: UsedAt): Figures {
  const step = batch.steps.find((each) => each.step === at);
  const done = step?.done.find((each) => each.entry === entry);
  const read = done === undefined ? null : correctedOr(done.value, done);
  return { read, moves: done?.trust?.moves ?? null, unit: step?.unit ?? null };
}

/** A sheet that was sent by the server may not know of the check yet: its figures tell all the same. */
function weighed({ batch, at, entry }: UsedAt, about: Doubted): Figures {
  const line = batch.lines.find((each) => each.line === at);
  const read = line?.weigh_ins.find((each) => each.entry === entry);
  if (read?.net == null || read.unit === null) return { read: null, moves: null, unit: null };
  const { unit, tare } = read;
  const shown = plain(total([parseDecimal(read.net), parseDecimal(tare ?? "0")]));
  const moves = movesOf(shown, { unit, tare, happened_at: read.happened_at }, about);
  return { read: correctedOr(read.net, read), moves, unit };
}

function besides(use: UsedElsewhere, about: Doubted): Leaned["elsewhere"][number] {
  const { entry, kind, happened_at, subject, read } = use;
  const name = elsewhereName(kind, subject);
  const common = { entry, kind, happened_at, subject, name };
  if (read === null) return { ...common, read: null, moves: null, unit: null };
  const moves = movesOf(read.shown, { unit: read.unit, tare: null, happened_at }, about);
  return { ...common, read: read.shown, moves, unit: read.unit };
}

function movesOf(
  shown: string,
  read: { unit: string; tare: string | null; happened_at: string },
  { instrument, sheet }: Doubted,
): string | null {
  const { unit, tare, happened_at } = read;
  const reading = { instrument, unit, shown, ...(tare === null ? {} : { tare }) };
  const instruments = new Map([[`instrument:${instrument}`, sheet]]);
  const trusted = trustedReading({ reading }, { happened_at, instruments });
  return trusted?.moves == null ? null : plain(trusted.moves);
}

function lotsIn(subjects: readonly string[]): string[] {
  return [...new Set(subjects.filter((each) => typeIn(each) === "lot").map(idIn))].sort();
}

/** Who got the lots, in whatever form: recipients and stall days at the ends of every way. */
function reachedBy(edges: readonly Edge[]): Reached[] {
  const ends = new Map<string, Reached>();
  const once = new Map(edges.map((edge) => [`${edge.from} ${edge.to} ${edge.unit}`, edge]));
  for (const { from, to, amount, unit } of once.values()) {
    if (!["recipient", "day"].includes(typeIn(to))) continue;
    const known = ends.get(`${to} ${unit}`) ?? { id: to, label: null, unit, lots: [] };
    known.lots.push({ lot: idIn(from), amount });
    ends.set(`${to} ${unit}`, known);
  }
  return [...ends.values()];
}
