/** What leaned on an instrument that failed: from what this phone holds, or as the server says. */
import type { BatchState } from "../../calc/batches.ts";
import { idIn, typeIn } from "../../calc/subjects.ts";
import type { Impact, ImpactReading, Reached, Touched } from "../../state/impact.ts";
import { nameOf } from "../../state/stock.ts";
import { ruleWord } from "../../text/heat_rules.ts";
import { LEANED } from "../../text/instruments.ts";
import { amountWords } from "../../text/numbers.ts";
import type { ToCall } from "../common/Business.tsx";
import { batchOf, lineName, recipeNameOf } from "../common/batches.ts";
import { endName } from "../common/ends.ts";
import { memberName } from "../common/people.ts";
import { asGoodAsU } from "../common/trust.ts";

/** One reading: where it stands and how far it would move if the error that was found counted. */
export interface LeanedReading {
  entry: string;
  kind: string;
  happened_at: string;
  /** The line's material, the step's words, or what else it was read for. */
  name: string;
  read: string | null;
  moves: string | null;
  unit: string | null;
}

/** A verdict that would become another. */
export interface Change {
  name: string;
  was: string;
  now: string;
}

/** A batch or lot with readings in question; `readings` may be fewer than `count` until they come. */
export interface LeanedSheet {
  subject: string;
  title: string;
  count: number;
  changes: Change[];
  readings: LeanedReading[];
}

export interface Leaned {
  after: string | null;
  until: string | null;
  sheets: LeanedSheet[];
  /** Read where no lot comes of it: a drill, the water in a vessel. */
  elsewhere: (LeanedReading & { subject: string })[];
  lots: string[];
  businesses: ToCall[];
  stalls: { name: string; amount: string }[];
  /** Every link is known from the readings to who has it. */
  isComplete: boolean;
}

/** The server's list, with those of its readings that have come. */
export function leanedFrom(impact: Impact, readings: readonly ImpactReading[]): Leaned {
  const bySubject = new Map<string, ImpactReading[]>();
  for (const each of readings) {
    const known = bySubject.get(each.subject);
    if (known === undefined) bySubject.set(each.subject, [each]);
    else known.push(each);
  }
  return {
    after: impact.after,
    until: impact.until,
    sheets: inOrder(
      impact.touched.map((each) => sheetFrom(each, bySubject.get(each.subject) ?? [])),
    ),
    elsewhere: impact.elsewhere.map((each) => ({ ...readingFrom(each), subject: each.subject })),
    lots: impact.lots,
    ...calledFrom(impact.reached),
    isComplete: impact.is_complete,
  };
}

/** Those whose verdicts would change first. */
export function inOrder(sheets: readonly LeanedSheet[]): LeanedSheet[] {
  const hasChange = (sheet: LeanedSheet) => (sheet.changes.length > 0 ? 0 : 1);
  return [...sheets].sort((a, b) => hasChange(a) - hasChange(b));
}

/** Businesses by name, and stall days, whose buyers nobody can call. */
export function calledFrom(reached: readonly Reached[]): Pick<Leaned, "businesses" | "stalls"> {
  const businesses = new Map<string, ToCall>();
  const stalls: Leaned["stalls"] = [];
  for (const { id, label, unit, lots } of reached) {
    const got = lots.map(({ lot, amount }) => ({ lot, amount: amountWords(amount, unit ?? "pc") }));
    if (typeIn(id) === "day") {
      stalls.push(...got.map(({ lot, amount }) => ({ name: `${endName(id)}, ${lot}`, amount })));
      continue;
    }
    const name = label ?? endName(id);
    const known = businesses.get(id) ?? { recipient: idIn(id), name, got: [] };
    businesses.set(id, { ...known, got: [...known.got, ...got] });
  }
  const byName = (a: ToCall, b: ToCall) => a.name.localeCompare(b.name, "en");
  return { businesses: [...businesses.values()].sort(byName), stalls };
}

function sheetFrom(touched: Touched, readings: readonly ImpactReading[]): LeanedSheet {
  const names = new Map(readings.map((each) => [each.place, nameFrom(each)]));
  const batch = batchOf(idIn(touched.subject))?.state ?? null;
  const nameAt = (at: string) => names.get(at) ?? (batch === null ? at : placeName(batch, at));
  return {
    subject: touched.subject,
    title: titleOf(touched, batch),
    count: touched.readings,
    changes: changesIn(touched.would_change, typeIn(touched.subject) === "lot" ? null : nameAt),
    readings: readings.map(readingFrom),
  };
}

function titleOf({ subject, code, material }: Touched, batch: BatchState | null): string {
  const name = batch === null ? nameOf("material", material) : recipeNameOf(batch);
  const named = [name, code ?? idIn(subject)].filter(Boolean).join(", ");
  return typeIn(subject) === "lot" ? LEANED.fill_of(named) : named;
}

/** `pectin:within:outside` as a finding has it; what is changed in a lot is its fill check. */
export function changesIn(
  wouldChange: readonly string[],
  nameAt: ((at: string) => string) | null,
): Change[] {
  return wouldChange
    .map((each) => each.split(":"))
    .flatMap(([at = "", was, now]) =>
      was === undefined || now === undefined
        ? []
        : [{ name: nameAt === null ? LEANED.packs : nameAt(at), was, now }],
    );
}

/** What a line, step or log of a batch is called. */
export function placeName(batch: BatchState, at: string): string {
  const line = batch.lines.find((each) => each.line === at);
  if (line !== undefined) return lineName(line);
  const log = batch.heat?.find((each) => each.entry === at);
  if (log !== undefined) return ruleWord(log.by);
  return batch.steps.find((each) => each.step === at)?.says ?? at;
}

function readingFrom(reading: ImpactReading): LeanedReading {
  const { entry, kind, happened_at, corrected, u, moves, unit } = reading;
  const read = corrected === null ? reading.read : asGoodAsU(corrected, u);
  return { entry, kind, happened_at, name: nameFrom(reading), read, moves, unit };
}

function nameFrom({ kind, subject, place, material, says }: ImpactReading): string {
  if (kind === "weigh_in") return nameOf("material", material) || (place ?? "");
  if (kind === "heat_log") return ruleWord(says);
  if (kind === "step_done") return says ?? place ?? "";
  return elsewhereName(kind, subject);
}

/** What was done with the instrument beside batches. */
export function elsewhereName(kind: string, subject: string): string {
  if (kind === "fill_checked") return LEANED.packs;
  return kind === "drill_done"
    ? LEANED.drill_of(memberName(idIn(subject)))
    : LEANED.check_of(nameOf("instrument", idIn(subject)));
}
