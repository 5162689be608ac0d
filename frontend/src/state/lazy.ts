/** Parts of the app that the first screen can be painted without: loaded at once after it. */

/** Adding up: the folds, and what of them is shown. */
export const adding = once(() => import("./adding.ts"));

/** Adding up what the road does without; loading it is enough. */
export const judging = once(() => import("./judging.ts"));

/** Writing: the table of kinds, parsing, stamping. */
export const writing = once(() => import("./making.ts"));

/** Fetches both, so that the first save waits for nothing. */
export async function fetchLater(): Promise<void> {
  await Promise.all([adding(), writing()]);
}

/** Asks the browser for a part once: each save would pay for asking again. */
function once<T>(load: () => Promise<T>): () => Promise<T> {
  let loading: Promise<T> | null = null;
  return () => {
    loading ??= load().catch((trouble: unknown) => {
      loading = null; // with signal the next one may succeed
      throw trouble;
    });
    return loading;
  };
}
