/**
 * Which readings of a batch's steps keep it back: those outside a limit of the process, and those
 * where the instrument could not tell.
 */

import { type StepWork, stepVerdict } from "./batch_steps.ts";
import { textIn } from "./bodies.ts";
import { type Cause, everWritten, type Written } from "./holds.ts";
import type { Fact } from "./record.ts";
import type { Sheets } from "./trusted.ts";

// A mass is cooked or filled on until it is right: it says what is yielded, not what is fit.
const MASSES = ["prepared_mass", "kettle_mass", "mass"];
const FAILED = ["outside", "cannot_tell"]; // the graver first

/**
 * One cause for each reading that failed its check, as it was first read or as it was corrected
 * to; where it failed in both ways the graver counts.
 */
export function failedChecks(
  steps: readonly StepWork[],
  facts: Iterable<Fact>,
  batch: string,
  instruments: Sheets,
): Cause[] {
  const works = new Map(steps.map((work) => [work.step, work]));
  const failed = new Map<string, Cause>();
  for (const written of everWritten(facts, "step_done")) {
    const work = works.get(textIn(written.body, "step") ?? "");
    if (work === undefined || textIn(written.body, "batch") !== batch) continue;
    if (MASSES.includes(textIn(work.plan, "measures") ?? "")) continue;
    const { happened_at } = written.fact;
    const says = stepVerdict(work, written.body, { happened_at, instruments });
    if (says === null || !FAILED.includes(says)) continue;
    const known = failed.get(written.root);
    if (known === undefined || FAILED.indexOf(says) < FAILED.indexOf(known.what)) {
      failed.set(written.root, causeOf(work, written, { says, instruments }));
    }
  }
  return [...failed.values()];
}

function causeOf(
  work: StepWork,
  { root, fact }: Written,
  { says, instruments }: { says: string; instruments: Sheets },
): Cause {
  const { happened_at } = fact;
  const now = work.done.find((entry) => entry.id === root);
  const verdictNow =
    now === undefined ? null : stepVerdict(work, now.body, { happened_at, instruments });
  return {
    entry: root,
    what: says,
    because: "check",
    step: work.step,
    judged_by: null,
    reason: now === undefined ? null : textIn(now.body, "action"),
    at: happened_at,
    author: fact.author,
    stands: verdictNow !== null && FAILED.includes(verdictNow),
    decided: null,
    decided_by: null,
  };
}
