/** What leaned on an instrument that failed, from what this phone holds: works without signal. */
import type { BatchState } from "../../calc/batches.ts";
import type { InDoubt, InstrumentState } from "../../calc/instruments.ts";
import { parseDecimal, plain, total } from "../../calc/numbers.ts";
import type { Edge } from "../../calc/trace.ts";
import { trustedReading } from "../../calc/trusted.ts";
import { heldTrace } from "../../state/trace.ts";
import { lineName } from "../shared/batches.ts";
import { instrumentSheet, type UsedAt, usesOf } from "../shared/instruments.ts";

/** One reading: where it stands and how far it would move if the error that was found counted. */
export interface LeanedReading {
  entry: string;
  happened_at: string;
  /** The line's material or the step's words. */
  name: string;
  moves: string | null;
  unit: string | null;
}

/** A batch with its readings in question, the verdicts that would change, and where its lots went. */
export interface LeanedBatch {
  batch: BatchState;
  readings: LeanedReading[];
  changes: { name: string; was: string; now: string }[];
  lots: string[];
}

export interface Leaned {
  after: string | null;
  until: string | null;
  batches: LeanedBatch[];
  lots: string[];
  /** Recipients and stall days, with how much went to each. */
  ends: Edge[];
}

/** All of it; null where the check puts nothing in question. */
export function leanedOn(instrument: string, check: string): Leaned | null {
  const sheet = instrumentSheet(instrument);
  const doubt = sheet?.doubts?.find((each) => each.check === check);
  if (sheet === null || doubt === undefined) return null;
  const uses = usesOf(instrument).filter((each) => isInDoubt(each.happened_at, doubt));
  const batches = [...new Set(uses.map((each) => each.batch))].map((batch) =>
    leanedBatch(batch, uses, { instrument, doubt, sheet }),
  );
  const lots = [...new Set(batches.flatMap((each) => each.lots))];
  return { after: doubt.after, until: doubt.until, batches, lots, ends: endsOf(lots) };
}

function isInDoubt(at: string, { after, until }: InDoubt): boolean {
  return (after === null || after < at) && (until === null || at <= until);
}

interface Doubted {
  instrument: string;
  doubt: InDoubt;
  sheet: InstrumentState;
}

function leanedBatch(batch: BatchState, uses: readonly UsedAt[], about: Doubted): LeanedBatch {
  const own = uses.filter((each) => each.batch === batch);
  const found = batch.findings.find(
    (each) => each.key === `instrument_failed:${about.doubt.check}`,
  );
  return {
    batch,
    readings: own.map((each) => leanedReading(each, about)),
    changes: changesIn(batch, found?.detail?.would_change ?? ""),
    lots: batch.lots_out.map(({ lot }) => lot),
  };
}

/** `pectin:within:outside` of a finding, with the name of the line or step. */
export function changesIn(batch: BatchState, wouldChange: string): LeanedBatch["changes"] {
  return wouldChange
    .split(" ")
    .map((each) => each.split(":"))
    .flatMap(([at = "", was, now]) =>
      was === undefined || now === undefined ? [] : [{ name: nameAt(batch, at), was, now }],
    );
}

/** What a line or step is called. */
export function nameAt(batch: BatchState, at: string): string {
  const line = batch.lines.find((each) => each.line === at);
  return line === undefined
    ? (batch.steps.find((each) => each.step === at)?.says ?? at)
    : lineName(line);
}

function leanedReading(use: UsedAt, about: Doubted): LeanedReading {
  const { entry, happened_at, batch, at } = use;
  const { moves, unit } = use.is_step ? stepMoves(use) : weighInMoves(use, about);
  return { entry, happened_at, name: nameAt(batch, at), moves, unit };
}

interface Moves {
  moves: string | null;
  unit: string | null;
}

function stepMoves({ batch, at, entry }: UsedAt): Moves {
  const step = batch.steps.find((each) => each.step === at);
  const done = step?.done.find((each) => each.entry === entry);
  return { moves: done?.trust?.moves ?? null, unit: step?.unit ?? null };
}

/** A sheet that was sent by the server may not know of the check yet: its figures tell all the same. */
function weighInMoves({ batch, at, entry }: UsedAt, { instrument, sheet }: Doubted): Moves {
  const line = batch.lines.find((each) => each.line === at);
  const read = line?.weigh_ins.find((each) => each.entry === entry);
  if (read?.net == null || read.unit === null) return { moves: null, unit: null };
  const { unit, tare } = read;
  const shown = plain(total([parseDecimal(read.net), parseDecimal(tare ?? "0")]));
  const reading = { instrument, unit, shown, ...(tare === null ? {} : { tare }) };
  const trusted = trustedReading(
    { reading },
    {
      happened_at: read.happened_at,
      instruments: new Map([[`instrument:${instrument}`, sheet]]),
    },
  );
  return { moves: trusted?.moves == null ? null : plain(trusted.moves), unit };
}

/** Who got the lots, in whatever form: recipients and stall days at the ends of every way. */
function endsOf(lots: readonly string[]): Edge[] {
  const found = new Map<string, Edge>();
  for (const edge of lots.flatMap((lot) => heldTrace(lot, "forward").edges)) {
    if (edge.to.startsWith("recipient:") || edge.to.startsWith("day:")) {
      found.set(`${edge.from} ${edge.to}`, edge);
    }
  }
  return [...found.values()];
}
