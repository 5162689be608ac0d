/** Salt or sugar in percent of what was weighed into a batch, for the steps that ask for it. */

import { type LineSum, type LineWork, linePutIn } from "./batch_lines.ts";
import type { StepWork } from "./batch_steps.ts";
import { decimalIn, itemsIn, textIn } from "./bodies.ts";
import { type Strength, type Weighed, weighedStrength } from "./brine.ts";
import { type Decimal, ZERO } from "./numbers.ts";
import { WEIGHED } from "./step_values.ts";

/**
 * Percent by mass of all lines by mass together; `counts` of the step says how much of a line is
 * salt or sugar, of the others nothing is. Null while a line is not weighed in, where one has no
 * known doubt, and for a step that asks for something else.
 */
export function stepStrength(step: StepWork, lines: readonly LineWork[]): Strength | null {
  if (!WEIGHED.includes(textIn(step.plan, "measures") ?? "")) return null;
  const counts = new Map(
    itemsIn(step.plan, "counts").map((each) => [
      textIn(each, "line"),
      decimalIn(each, "percent") ?? ZERO,
    ]),
  );
  const parts: Weighed[] = [];
  for (const line of lines) {
    if (line.unit !== "g") continue;
    const part = partOf(massOf(line), counts.get(line.line) ?? ZERO);
    if (part === null) return null;
    parts.push(part);
  }
  return weighedStrength(parts);
}

/** As it went into the kettle: prepared, where a step weighed that. */
function massOf(line: LineWork): LineSum {
  return line.prepared ?? linePutIn(line);
}

function partOf({ amount, doubt }: LineSum, percent: Decimal): Weighed | null {
  if (amount === null || doubt === null) return null;
  return { amount: amount.value, percent, u: doubt.u };
}
