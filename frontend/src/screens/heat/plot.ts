/** What is drawn of a log: its rows as far as pixels can show them, and what decides. */
import type { Body } from "../../calc/bodies.ts";
import { objectIn } from "../../calc/bodies.ts";
import { NEAR_S } from "../../calc/crossings.ts";
import type { HeatJudged } from "../../calc/heat_judged.ts";
import { GAP_S, type HeatLog, logIn, outline } from "../../calc/heat_logs.ts";
import { HOLD_GAP_S } from "../../calc/holding.ts";
import type { HeatEnd, HeatLine, HeatPoint } from "../../parts/HeatChart.tsx";
import { amountWords } from "../../text/numbers.ts";

const COLUMNS = 260; // of a drawing: as many as the narrowest phone has pixels for
const HOUR_S = 3600;
/** Limits in degC, as the rules of tables/cooling_rule.csv have them. */
const HOT = 57;
const MILD = 21;
const COLD = 5;

export interface Plot {
  points: HeatPoint[];
  unit: string;
  lines: HeatLine[];
  ends: HeatEnd[];
  band: { from: number | null; to: number | null } | null;
}

/** The plot of a body; null where its rows cannot be read. */
export function plotOf(body: Body, judged: HeatJudged): Plot | null {
  const log = logIn(body);
  if (log === null) return null;
  const by = judged.by ?? "";
  const asked = objectIn(body, "judged") ?? {};
  return {
    points: pointsOf(log, gapOf(by)),
    unit: log.unit,
    lines: linesOf(by, judged, log.unit),
    ends: endsOf(by, asked, log),
    band: bandOf(by, log.unit),
  };
}

/** From which step on nobody is thought to have looked, by what is judged. */
function gapOf(by: string): number {
  if (by.endsWith("_hold")) return HOLD_GAP_S;
  return by === "lethality" || by === "" ? GAP_S : NEAR_S;
}

/** A gap is one of the log, not of what is left of it for drawing. */
function pointsOf(log: HeatLog, gapS: number): HeatPoint[] {
  return outline(log, COLUMNS).map((row) => {
    const at_s = log.at_s[row] ?? 0;
    const before = log.at_s[row - 1] ?? at_s;
    const [low, high] = [(log.low[row] ?? 0) / 1000, (log.high[row] ?? 0) / 1000];
    return { at_s, low, high, isAfterGap: at_s - before > gapS };
  });
}

function shown(celsius: number, unit: string): number {
  return unit === "degF" ? celsius * 1.8 + 32 : celsius;
}

function lineAt(celsius: number, unit: string): HeatLine {
  const degrees = shown(celsius, unit);
  return { degrees, words: amountWords(String(Number(degrees.toFixed(2))), unit) };
}

function linesOf(by: string, { sum }: HeatJudged, unit: string): HeatLine[] {
  if (by === "lethality" && sum !== null) {
    const t = Number(sum.t_ref);
    const celsius = sum.unit === "degF" ? (t - 32) / 1.8 : t;
    return [{ ...lineAt(celsius, unit), words: `ref ${lineAt(celsius, unit).words}` }];
  }
  const limits: Readonly<Record<string, readonly number[]>> = {
    two_stage_cooling: [HOT, MILD, COLD],
    ambient_cooling: [MILD, COLD],
    received_cooling: [COLD],
    hot_hold: [HOT],
    cold_hold: [COLD],
    time_4_h: [HOT, COLD],
    time_6_h: [MILD, COLD],
  };
  return (limits[by] ?? []).map((celsius) => lineAt(celsius, unit));
}

function bandOf(by: string, unit: string): Plot["band"] {
  if (by === "hot_hold") return { from: shown(HOT, unit), to: null };
  return by === "cold_hold" ? { from: null, to: shown(COLD, unit) } : null;
}

function endsOf(by: string, asked: Body, log: HeatLog): HeatEnd[] {
  const hours: Readonly<Record<string, readonly number[]>> = {
    two_stage_cooling: [2, 6],
    ambient_cooling: [4],
    received_cooling: [4],
    time_4_h: [4],
    time_6_h: [6],
  };
  const begin = by === "two_stage_cooling" ? passedAt(log) : numberIn(asked, "from_s");
  if (begin === null) return [];
  return (hours[by] ?? []).map((each) => ({ at_s: begin + each * HOUR_S, words: `${each} h` }));
}

function numberIn(body: Body, name: string): number | null {
  const value = body[name];
  return typeof value === "number" ? value : null;
}

/** When 57 degC was passed, by the line between the two readings around it; for drawing only. */
function passedAt(log: HeatLog): number | null {
  const limit = shown(HOT, log.unit) * 1000;
  const row = log.low.findIndex((low) => low < limit);
  if (row < 1) return row === 0 ? (log.at_s[0] ?? null) : null;
  const [a, b] = [log.low[row - 1] ?? limit, log.low[row] ?? limit];
  const [from, to] = [log.at_s[row - 1] ?? 0, log.at_s[row] ?? 0];
  return from + ((a - limit) / (a - b || 1)) * (to - from);
}
