/** Parts of the app that the first screen can be painted without: loaded at once after it. */

/** Adding up: the folds, and what of them is shown. */
export const adding = () => import("./adding.ts");

/** Writing: the table of kinds, parsing, stamping. */
export const writing = () => import("./making.ts");

/** Fetches both, so that the first save waits for nothing. */
export async function fetchLater(): Promise<void> {
  await Promise.all([adding(), writing()]);
}
