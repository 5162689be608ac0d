/** What logs of time and temperature came to: figures and reasons in sentences. */
import type { CautionAbout } from "./cautions.ts";
import { heatVerdictInside } from "./heat_rules.ts";
import { amountWords, countWords, figure } from "./numbers.ts";

/** A result as it is said; figures in texts, temperatures in the unit of the log. */
export interface HeatSaid {
  readonly by: string | null;
  readonly verdict: string | null;
  readonly reasons: readonly string[];
  readonly rows: {
    readonly row_count: number;
    readonly left_out_count: number;
    readonly repeated_count: number;
    readonly contradicted_count: number;
    readonly span_s: number;
    readonly longest_gap_s: number;
    readonly lowest: string;
    readonly highest: string;
  } | null;
  readonly sum: {
    readonly minutes: string;
    readonly bridged_min: string;
    readonly wanted_min: string | null;
    readonly t_ref: string;
    readonly z: string;
    readonly unit: string;
  } | null;
  readonly stages: readonly StageSaid[];
  readonly outside: { readonly worst: string; readonly minutes: string } | null;
  readonly gap_count: number;
  readonly discard_s: number | null;
}

interface StageSaid {
  readonly rule: string;
  readonly limit_min: string;
  readonly minutes: string | null;
  readonly at_least_min: string | null;
}

/** Lines of timers that run. */
export const TIMERS = {
  line: (rule: string, look: string) => `${rule}: ${look}`,
  next: (minutes: string) => `next look in ${minutes}`,
  now: "look now",
  overdue: (minutes: string) => `overdue by ${minutes}`,
};

/** What is known of a thermometer, its `reach` the guard band in the unit of the log. */
export interface ThermometerSaid {
  readonly lowest: string | null;
  readonly highest: string | null;
  readonly is_extrapolated: boolean;
  readonly failed_by: string | null;
  readonly moves: string | null;
  readonly would_be: string | null;
}

/** Corrected to what, how far a reading can be trusted, and whether a check failed. */
export function thermometerWords(
  trust: ThermometerSaid,
  { unit, reach }: { unit: string | null; reach: string | null },
): string {
  const said: string[] = [];
  if (trust.lowest !== null && trust.highest !== null) {
    const [low, high] = [trust.lowest, trust.highest].map((each) => amountWords(each, unit));
    said.push(`Corrected: ${low} to ${high}.`);
  }
  if (reach !== null) said.push(`Each reading is good to ${amountWords(reach, unit)} either way.`);
  if (trust.is_extrapolated) said.push("Some lie beyond what its check covered.");
  if (trust.failed_by !== null) {
    const by = trust.moves === null ? "" : ` It may be off by ${amountWords(trust.moves, unit)}.`;
    const now = trust.would_be === null ? null : heatVerdictInside(trust.would_be);
    said.push(
      `A check of this thermometer failed.${by}${now === null ? "" : ` With that: ${now}.`}`,
    );
  }
  return said.join(" ");
}

/** Which caution belongs to a judgement. */
export function cautionOf(by: string | null): CautionAbout[] {
  if (by === null) return [];
  if (by === "lethality") return ["lethality"];
  return by.endsWith("_cooling") ? ["cooling"] : ["holding"];
}

const REASONS: Readonly<Record<string, string>> = {
  gap: "There are gaps in which nobody knows what happened.",
  too_little: "That is less than wanted.",
  no_reference: "The reference is not said whole.",
  too_far: "Such heat is beyond this reference.",
  outside: "It was beyond the limit.",
  times_not_said: "From when the clock runs is not said.",
  times_turned: "It was used before it was taken out.",
  too_slow: "It took too long.",
  not_started: "It was not seen to pass 57 \u00b0C.",
  not_finished: "It is not cold yet.",
  start_not_seen: "Nobody read it when the clock started.",
  no_reading_near: "No reading is near the limit.",
  start_between_readings: "The clock may have started too early to tell.",
  warmed_again: "It became warm again.",
  not_ambient: "It was warmer than 21 \u00b0C when the clock started.",
  over_time: "The time was over.",
  not_held_before: "It was not held before it was taken out.",
  too_warm: "It was above 21 \u00b0C.",
  not_watched: "Readings are more than half an hour apart.",
  reheat_not_shown:
    "It was at 74 \u00b0C, but not shown to be for 15 s, within 2 h: the clock went on.",
  thermometer: "It is too near a limit for this thermometer to tell.",
  thermometer_unknown:
    "Nothing is proven without a thermometer whose smallest step is known. Choose it, or set it up.",
  unreadable: "These rows cannot be read.",
};

/** Each reason as its sentence. */
export function reasonWords(reasons: readonly string[]): string {
  return reasons.map((each) => REASONS[each] ?? each.replaceAll("_", " ")).join(" ");
}

/** The result in one sentence, without its verdict: figures first, then why. */
export function heatSentence(judged: HeatSaid, unit: string | null): string {
  return [figuresOf(judged, unit), reasonWords(judged.reasons)].filter(Boolean).join(" ");
}

function figuresOf(judged: HeatSaid, unit: string | null): string {
  const { sum, stages, outside, rows } = judged;
  if (sum !== null) {
    const at = `${amountWords(sum.t_ref, sum.unit)}, z ${amountWords(sum.z, sum.unit)}`;
    const wanted = sum.wanted_min === null ? "" : `; ${amountWords(sum.wanted_min, "min")} wanted`;
    const bridged =
      judged.gap_count === 0 ? "" : `, ${figure(shortMinutes(sum.bridged_min))} more across gaps`;
    return `${minutesWords(sum.minutes)} at ${at}${bridged}${wanted}.`;
  }
  if (stages.length > 0) return stages.map(stageWords).join(" ");
  if (outside !== null) {
    return `${minutesWords(outside.minutes)} beyond the limit, at worst ${amountWords(outside.worst, unit)}.`;
  }
  if (judged.discard_s !== null)
    return `Gone by minute ${figure(shortMinutes(minutesText(judged.discard_s)))}.`;
  if (rows === null) return "";
  return `${amountWords(rows.lowest, unit)} to ${amountWords(rows.highest, unit)} in ${durationWords(rows.span_s)}.`;
}

const STAGES: Readonly<Record<string, string>> = {
  stage_1: "57 to 21 \u00b0C",
  whole: "57 to 5 \u00b0C",
  ambient: "to 5 \u00b0C",
  received: "to 5 \u00b0C",
};

function stageWords(stage: StageSaid): string {
  const name = STAGES[stage.rule] ?? stage.rule;
  const took =
    stage.minutes !== null
      ? minutesWords(stage.minutes)
      : stage.at_least_min !== null
        ? `at least ${minutesWords(stage.at_least_min)}`
        : "not seen";
  return `${name}: ${took} of ${amountWords(stage.limit_min, "min")}.`;
}

/** How whole the log is, row by row left out or doubled, and its longest gap. */
export function wholeWords({ rows }: HeatSaid): string {
  if (rows === null) return "";
  const said = [
    countWords(rows.row_count, "row"),
    `${durationWords(rows.span_s)} in all`,
    `longest step ${durationWords(rows.longest_gap_s)}`,
  ];
  if (rows.left_out_count > 0) said.push(`${rows.left_out_count} left out, without a reading`);
  if (rows.repeated_count > 0) said.push(`${rows.repeated_count} of a second that was read before`);
  if (rows.contradicted_count > 0) {
    said.push(
      `${countWords(rows.contradicted_count, "second")} with two readings, the worse counts`,
    );
  }
  return `${said.join(", ")}.`;
}

/** Seconds as "1 h 05 min", "12 min", "40 s". */
export function durationWords(seconds: number): string {
  if (seconds < 60) return `${seconds}\u00a0s`;
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const rest = seconds % 60;
  if (hours === 0) return rest === 0 ? `${minutes}\u00a0min` : `${minutes}\u00a0min ${rest}\u00a0s`;
  return minutes === 0
    ? `${hours}\u00a0h`
    : `${hours}\u00a0h ${String(minutes).padStart(2, "0")}\u00a0min`;
}

/** Seconds as minutes with at most two places: 90 is "1.5". */
export function minutesText(seconds: number): string {
  return (seconds / 60).toFixed(2).replace(/\.?0+$/, "");
}

/** Minutes worked out, as they are said: at most one place; the sheet keeps them whole. */
export function shortMinutes(minutes: string): string {
  return Number(minutes).toFixed(1).replace(/\.0$/, "");
}

function minutesWords(minutes: string): string {
  return amountWords(shortMinutes(minutes), "min");
}
