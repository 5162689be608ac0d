/** What logs of time and temperature are judged by, and the verdicts: in words. */

export const HEAT_LOGS = {
  part: "Time and temperature",
  add: "Log times and temperatures",
  see: "See the log",
  kept_as: "No limit was set. The log is kept as it is.",
};

/** What a log may be judged by. */
export const RULES = {
  lethality: "Lethality, a sum of heat",
  two_stage_cooling: "Cooling of cooked food, 57 to 21 to 5 \u00b0C",
  ambient_cooling: "Cooling of food made at room heat",
  received_cooling: "Cooling of food received warm",
  hot_hold: "Hot holding, 57 \u00b0C or more",
  cold_hold: "Cold holding, 5 \u00b0C or less",
  time_4_h: "Time as a control, 4 h",
  time_6_h: "Time as a control, 6 h",
} as const;

/** The name of a rule. */
export function ruleWord(by: string | null): string {
  return Object.entries(RULES).find(([rule]) => rule === by)?.[1] ?? HEAT_LOGS.part;
}

const VERDICTS: Readonly<Record<string, string>> = {
  pass: "Pass.",
  fail: "Fail.",
  not_proven: "Not proven.",
  unfinished: "Not finished.",
};

/** The verdict as a word. */
export function heatVerdictWord(verdict: string | null): string {
  return VERDICTS[verdict ?? ""] ?? HEAT_LOGS.kept_as;
}

/** The verdict in the middle of a sentence; null for what is no verdict of a log. */
export function heatVerdictInside(verdict: string): string | null {
  return VERDICTS[verdict]?.replace(/\.$/, "").toLowerCase() ?? null;
}
