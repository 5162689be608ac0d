/** How each fold of calc is called with what a vector gives; see vectors_registry.ts. */

import type { Adapters } from "./vectors_registry.ts";

/**
 * File, function, adapter: takes `given`, returns the answer as JSON. A vector's `then` is
 * {function: answer}, or {"is_refused": true} where the function throws a RangeError.
 */
export const FOLDS: Adapters = {};

/**
 * Files that only hold parts of folds, between whose functions whole facts and maps pass. Their
 * vectors are those of the folds that use them.
 */
export const FOLD_PARTS: ReadonlySet<string> = new Set([
  "bodies",
  "stock_moves",
  "weighing",
  "batch_lines",
  "batch_balance",
]);
