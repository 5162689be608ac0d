/** All sums, by the word of their path, in the order they are shown. */
import { ACID_HOLD_SUM } from "./acid_hold.ts";
import { ALTITUDE_SUM } from "./altitude.ts";
import { BRINE_SUM } from "./brine.ts";
import { CURING_SUM } from "./curing.ts";
import { DRYING_SUM } from "./drying.ts";
import { KETTLE_SUM } from "./kettle.ts";
import { MIXING_SUM } from "./mixing.ts";
import type { SumPlan } from "./plan.ts";

export const ALL_SUMS: Readonly<Record<string, SumPlan>> = {
  kettle: KETTLE_SUM,
  drying: DRYING_SUM,
  brine: BRINE_SUM,
  mixing: MIXING_SUM,
  curing: CURING_SUM,
  altitude: ALTITUDE_SUM,
  "acid-hold": ACID_HOLD_SUM,
};
