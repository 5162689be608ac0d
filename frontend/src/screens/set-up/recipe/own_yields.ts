/** What this kitchen's own preparations say of the yield of a line, and whether to offer it. */
import type { Body } from "../../../calc/bodies.ts";
import { type Decimal, parseDecimal, plain, rounded } from "../../../calc/numbers.ts";
import { preparationsOf } from "../../../calc/preparations.ts";
import { type OwnYield, ownYield, proposedYield } from "../../../calc/yields.ts";
import { typedNumber } from "../../../parts/typing.ts";
import type { LineTyped } from "./items.ts";

const PLACES = 1; // of percent: a kitchen's preparations scatter by whole percents

/** The own yield of a line that may take the place of the one in use. */
export interface Proposed {
  percent: string;
  lowest: string;
  highest: string;
  counted: number;
}

/** What a line takes over with an own yield; `source` says in words what it rests on. */
export function takenYield(proposed: Proposed, source: string): Partial<LineTyped> {
  return { yield_percent: proposed.percent, yield_by: "own", yield_source: source };
}

/** Null before five preparations, and while the yield in use says the same. */
export function proposedFor(
  line: LineTyped,
  given: { recipe: string; batches: readonly Body[] },
): Proposed | null {
  if (line.material === "" || line.state === "prepared") return null;
  const own = shown(
    ownYield(
      preparationsOf(given.batches, {
        material: line.material,
        recipe: given.recipe,
        prepared_as: line.prepared_as.trim() === "" ? null : line.prepared_as.trim(),
      }),
    ),
  );
  const percent = proposedYield(inUse(line), own);
  if (percent === null || own.lowest === null || own.highest === null) return null;
  return {
    percent: plain(percent),
    lowest: plain(own.lowest),
    highest: plain(own.highest),
    counted: own.counted,
  };
}

function inUse(line: LineTyped): Decimal | null {
  const typed = typedNumber(line.yield_percent);
  return typed === null ? null : parseDecimal(typed);
}

/** As it would be taken over, so that what is in use already is not offered again. */
function shown(own: OwnYield): OwnYield {
  const at = (percent: Decimal | null) => (percent === null ? null : rounded(percent, PLACES));
  return {
    ...own,
    percent: at(own.percent),
    lowest: at(own.lowest),
    highest: at(own.highest),
  };
}
