/** Cautions, each in full where a number touches what is fit to eat; every one ends by deferring. */

/** How every caution ends. */
export const DEFERS =
  "Where this and your local code, the tested recipe or your process authority differ, follow them.";

export const CAUTIONS = {
  acidified: `Wait for equilibrium before measuring. pH 4.6 is the legal edge, not a target; have your process authority set a lower one. ${DEFERS}`,
  process_limit: `A limit and a reading at one point say nothing of the rest of the batch, and this record approves nothing. ${DEFERS}`,
  hold: `Releasing says that somebody answers for it; it does not make anything fit to eat. ${DEFERS}`,
  despite: `What is held, recalled or expired should stay where it is until somebody who may decide has decided. ${DEFERS}`,
};
