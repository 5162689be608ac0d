/** All that adds up entries, as one part of the app. */
export { inBusinessOrder } from "../calc/record.ts";
export { factOf, leanedOnBy, needsJudging } from "./folding.ts";
export { holdsAll, shouldAsk } from "./held.ts";
export { shownOf } from "./shown.ts";
