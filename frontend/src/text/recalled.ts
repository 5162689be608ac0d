/** Words for figures of published tables that are less than read. */

export const RECALLED = {
  recalled: "Recalled, not read:",
  disputed: "Disputed, decides nothing:",
};
