/** What a step came to, in words: read, corrected, or worked out from what was read. */
import type { BatchState } from "../../calc/batches.ts";
import { DONE } from "../../text/done.ts";
import { amountWords } from "../../text/numbers.ts";
import type { BatchStep } from "./batches.ts";
import { asGoodAsU, correctedOr } from "./trust.ts";

type Done = BatchState["steps"][number]["done"][number];

/** "62 Brix, 61.83 at 20 °C"; a dash where nothing was measured. */
export function doneWords(done: Done, step: BatchStep): string {
  const { computed } = done;
  const read = amountWords(correctedOr(done.value, done), done.unit ?? step.unit);
  if (!computed) return read;
  const words = DONE.how[computed.how] ?? "";
  if (computed.value === null) return `${read}, ${words}`;
  const value = amountWords(asGoodAsU(computed.value, computed.u), computed.unit);
  return done.value === null ? `${value} ${words}` : `${read}, ${value} ${words}`;
}
