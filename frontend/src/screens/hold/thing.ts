/** What is held: a batch or a lot, with all that keeps it back. */
import type { BatchState } from "../../calc/batches.ts";
import type { Cause, Hold } from "../../calc/holds.ts";
import type { LotState } from "../../calc/stock.ts";
import { sheet } from "../../state/sheets.ts";
import { nameOf } from "../../state/stock.ts";
import { ruleWord } from "../../text/heat_rules.ts";
import { CAUSES } from "../../text/holds.ts";
import { batchOf, recipeNameOf } from "../common/batches.ts";
import { doneWords } from "../common/done.ts";

/** A batch or lot. `about` is the field of an entry that names it. */
export interface HeldThing {
  subject: string;
  about: { batch: string } | { lot: string };
  name: string;
  code: string;
  href: string;
  hold: Hold | null;
  batch: BatchState | null;
  /** The batch a lot came out of; null for a batch. */
  from: BatchState | null;
}

/** The thing of a path; null while this phone does not hold it. */
export function thingOf(params: Record<string, string>): HeldThing | null {
  return params.lot === undefined ? batchThing(params.batch ?? "") : lotThing(params.lot);
}

function batchThing(id: string): HeldThing | null {
  const batch = batchOf(id)?.state ?? null;
  if (batch === null) return null;
  return {
    subject: `batch:${id}`,
    about: { batch: id },
    name: recipeNameOf(batch),
    code: batch.code ?? "",
    href: `#/batch/${id}`,
    hold: batch.hold ?? null,
    batch,
    from: null,
  };
}

function lotThing(code: string): HeldThing | null {
  const lot = sheet<LotState>(`lot:${code}`).value?.state;
  if (lot === undefined) return null;
  return {
    subject: `lot:${code}`,
    about: { lot: code },
    name: nameOf("material", lot.material),
    code,
    href: `#/lot/${code}`,
    hold: lot.hold ?? null,
    batch: null,
    from: lot.batch === null ? null : (batchOf(lot.batch)?.state ?? null),
  };
}

/** Causes that no release has named. */
export function openCauses(hold: Hold | null): Cause[] {
  return (hold?.causes ?? []).filter((cause) => cause.decided !== "release");
}

/** Open causes that logs of time and temperature gave. */
export function openLogs(hold: Hold | null): Cause[] {
  return openCauses(hold).filter(isLog);
}

/** A sheet of an earlier version does not say by what something was judged. */
export function isLog({ judged_by = null }: Cause): boolean {
  return judged_by !== null;
}

/** What a cause is: the check with its reading, the log with its rule, or the member's words. */
export function causeWords(cause: Cause, batch: BatchState | null): string {
  const what = CAUSES[cause.what] ?? cause.what;
  if (isLog(cause)) return `${what}: ${ruleWord(cause.judged_by)}`;
  const because = cause.what === "hold" ? `: ${CAUSES[cause.because ?? ""] ?? ""}` : "";
  const step = batch?.steps.find((each) => each.step === cause.step);
  const done = step?.done.find((each) => each.entry === cause.entry);
  if (step === undefined) return `${what}${because}`;
  const read = done === undefined ? "" : doneWords(done, step);
  return `${what}: ${step.says ?? ""} ${read}`.trim();
}
