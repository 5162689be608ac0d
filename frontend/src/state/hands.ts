/** Whether hands are at work on the screen: what nobody waits for gives way to them. */

/** So long after the last touch or key the hands count as resting. */
const RESTING_AFTER_MS = 700;

let workedAt = Number.NEGATIVE_INFINITY;
let endRest: () => void = () => undefined;

/**
 * Watches touches and keys from the start of the app on. Whatever still moves on the screen is at
 * its end when a hand comes: the frames between would hold back the save that it begins.
 */
export function watchHands(): void {
  const note = () => {
    noteHands();
    for (const moving of document.getAnimations()) moving.finish();
  };
  addEventListener("pointerdown", note, { capture: true, passive: true });
  addEventListener("keydown", note, { capture: true, passive: true });
}

/** Hands are at work just now. */
export function noteHands(): void {
  workedAt = performance.now();
}

/**
 * Resolves when the hands rest, or as soon as somebody calls `noLongerWait`.
 *
 * A transaction that only reads still holds back one that saves: IndexedDB runs them in turn.
 */
export function handsResting(): Promise<void> {
  return new Promise((resolve) => {
    endRest = resolve;
    const look = () => {
      const stillMs = workedAt + RESTING_AFTER_MS - performance.now();
      if (stillMs > 0) setTimeout(look, stillMs);
      else resolve();
    };
    look();
  });
}

/** Somebody waits now: whoever waited for the hands goes on. */
export function noLongerWait(): void {
  endRest();
}
