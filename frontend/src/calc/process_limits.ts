/** Limits of a process that are one number, with who set them. */

import { PROCESS_LIMIT_ROWS, type ProcessLimitRow } from "./tables/heat.ts";

/**
 * The row of a limit: "acid_ph", "water_activity", "low_acid_f0" and so on; a row without a figure
 * only says something. Throws RangeError for another key.
 */
export function processLimit(key: string): ProcessLimitRow {
  const found = PROCESS_LIMIT_ROWS.find((row) => row.key === key);
  if (found === undefined) throw new RangeError(`no limit is called ${key}`);
  return found;
}
