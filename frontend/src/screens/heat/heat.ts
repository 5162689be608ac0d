/** A log under way: what was typed, the rows it means, and the body it becomes. */
import { type Body, objectIn, textIn } from "../../calc/bodies.ts";
import type { HeatJudged } from "../../calc/heat_judged.ts";
import { logIn } from "../../calc/heat_logs.ts";
import { type TrustedHeat, trustedLog } from "../../calc/heat_trust.ts";
import { type LoggerLog, loggerLog, type TimeUnit, type Unread } from "../../calc/logger_files.ts";
import { divided, parseDecimal, plain, product } from "../../calc/numbers.ts";
import { typedNumber } from "../../parts/typing.ts";
import type { Json } from "../../state/types.ts";
import { MOMENTS } from "../../text/heat.ts";
import { minutesText } from "../../text/heat_results.ts";
import type { InstrumentShown } from "../common/batches.ts";
import { instrumentSheet } from "../common/instruments.ts";
import { momentOnWall, secondsOf, wallOf } from "./heat_times.ts";
import { withColumns } from "./pasted.ts";

/** What a person has chosen and typed. Numbers as typed; rows of hand and timer as they were kept. */
export interface HeatTyped {
  [field: string]: Json;
  is_asked: boolean;
  by: string;
  set_by: string;
  reference: string;
  t_ref: string;
  z: string;
  reference_unit: string;
  wanted_min: string;
  from_min: string;
  to_min: string;
  how: string;
  unit: string;
  instrument: string;
  every_min: string;
  timer_began_ms: number;
  minutes: string;
  degrees: string;
  at_s: number[];
  temperatures: string[];
  text: string;
  time_column: string;
  temperature_column: string;
  time_unit: string;
  began_on: string;
  began_clock: string;
  action: string;
  /** The row that is typed anew; -1 while the next one is. */
  row: number;
  /** Of a log that is corrected: how its rows came, what was left out, when it began, and why. */
  came_by: string;
  left_out: number;
  began_at: string;
  reason: string;
}

export const BLANK: HeatTyped = {
  is_asked: false,
  by: "",
  set_by: "",
  reference: "",
  t_ref: "",
  z: "",
  reference_unit: "degC",
  wanted_min: "",
  from_min: "0",
  to_min: "",
  how: "",
  unit: "",
  instrument: "",
  every_min: "10",
  timer_began_ms: 0,
  minutes: "",
  degrees: "",
  at_s: [],
  temperatures: [],
  text: "",
  time_column: "",
  temperature_column: "",
  time_unit: "",
  began_on: "",
  began_clock: "",
  action: "",
  row: -1,
  came_by: "",
  left_out: 0,
  began_at: "",
  reason: "",
};

/** A log that was kept as a form, to be corrected; its rows are as if they had been typed. */
export function typedFrom(body: Body): HeatTyped {
  const asked = objectIn(body, "judged") ?? {};
  const said = (from: Body, name: string, other = "") => textIn(from, name) ?? other;
  const minutes = (name: string, other: string) =>
    typeof asked[name] === "number" ? minutesText(asked[name]) : other;
  const log = logIn(body) === null ? null : body;
  return {
    ...BLANK,
    is_asked: true,
    by: said(asked, "by", "none"),
    set_by: said(asked, "set_by"),
    reference: said(asked, "reference"),
    t_ref: said(asked, "t_ref"),
    z: said(asked, "z"),
    reference_unit: said(asked, "reference_unit", "degC"),
    wanted_min: said(asked, "wanted_min"),
    from_min: minutes("from_s", "0"),
    to_min: minutes("to_s", ""),
    how: "typed",
    unit: said(body, "unit"),
    instrument: said(body, "instrument"),
    // as: a log that can be read has whole seconds and texts
    at_s: log === null ? [] : [...(log.at_s as number[])],
    temperatures: log === null ? [] : [...(log.temperatures as string[])],
    action: said(body, "action"),
    came_by: said(body, "came_by", "typed"),
    left_out: typeof body.left_out === "number" ? body.left_out : 0,
    began_at: said(body, "began_at"),
  };
}

const DIVISION_PLACES = 6; // as many as an entry holds

/** Rows with all that is known of them; `unread` says why a text gave none. */
export interface Rows {
  at_s: readonly number[];
  temperatures: readonly string[];
  unit: string | null;
  left_out: number;
  read: LoggerLog | null;
  unread: Unread | null;
}

/** Whether rows come as a text that is read whole. */
export function isRead(how: string): boolean {
  return how === "pasted" || how === "file";
}

/** The rows typed, kept by the timer, or read from the text. */
export function rowsOf(typed: HeatTyped): Rows {
  const { at_s, temperatures } = typed;
  if (!isRead(typed.how)) {
    return {
      at_s,
      temperatures,
      unit: typed.unit || null,
      left_out: typed.left_out,
      read: null,
      unread: null,
    };
  }
  const none = { at_s: [], temperatures: [], unit: null, left_out: 0, read: null, unread: null };
  if (typed.text.trim() === "") return none;
  const found = loggerLog(typed.how === "pasted" ? withColumns(typed.text) : typed.text, {
    time_column: placeOf(typed.time_column),
    temperature_column: placeOf(typed.temperature_column),
    time_unit: timeUnitOf(typed.time_unit),
  });
  if ("key" in found) return { ...none, unread: found };
  return {
    at_s: found.at_s,
    temperatures: found.temperatures,
    unit: found.unit ?? (typed.unit || null),
    left_out: found.left_out.length,
    read: found,
    unread: null,
  };
}

function placeOf(chosen: string): number | null {
  return chosen === "" ? null : Number(chosen);
}

function timeUnitOf(chosen: string): TimeUnit | null {
  return chosen === "s" || chosen === "min" || chosen === "h" ? chosen : null;
}

/** When the first row was read: as typed, as the file says, as the timer began, else just now. */
export function beganAt(
  typed: HeatTyped,
  rows: Rows,
  now: { readonly ms: number; readonly zone: string },
): string | null {
  const proposed = proposedBegin(typed, rows, now);
  const wall = wallOf(Date.parse(proposed), now.zone);
  if (typed.began_on === "" && typed.began_clock === "") return proposed;
  return momentOnWall(`${typed.began_on || wall.day}T${typed.began_clock || wall.clock}`, now.zone);
}

function proposedBegin(
  typed: HeatTyped,
  { at_s, read }: Rows,
  now: { readonly ms: number; readonly zone: string },
): string {
  if (typed.began_at !== "") return typed.began_at;
  if (typed.how === "timer") return new Date(typed.timer_began_ms).toISOString();
  const begins = read?.begins ?? null;
  if (begins !== null && read !== null) {
    const at = read.is_utc ? `${begins}.000Z` : momentOnWall(begins, now.zone);
    if (at !== null) return at;
  }
  const longest = at_s.reduce((most, each) => Math.max(most, each), 0);
  return new Date(now.ms - longest * 1000).toISOString();
}

/** The body but for its beginning and what was done; null while there is no row or no unit. */
export function heatBody(
  typed: HeatTyped,
  rows: Rows,
  about: { batch: string; step: string; thermometer: InstrumentShown | null },
): Body | null {
  if (rows.at_s.length === 0 || rows.unit === null) return null;
  return {
    batch: about.batch,
    ...(about.step === "" ? {} : { step: about.step }),
    ...thermometerIn(about.thermometer, rows.unit),
    came_by: typed.came_by || typed.how,
    unit: rows.unit,
    at_s: rows.at_s,
    temperatures: rows.temperatures,
    ...(rows.left_out === 0 ? {} : { left_out: rows.left_out }),
    ...judgedIn(typed),
  };
}

/** What is known of the thermometer, in the unit of the log. */
function thermometerIn(thermometer: InstrumentShown | null, unit: string): Body {
  if (thermometer === null) return {};
  const { id, division, repeatability } = thermometer;
  const inLog = (degrees: string | null) =>
    degrees === null ? null : degreesIn(degrees, { from: thermometer.unit, to: unit });
  const [step, spread] = [inLog(division), inLog(repeatability)];
  return {
    instrument: id,
    ...(step === null ? {} : { division: step }),
    ...(spread === null ? {} : { repeatability: spread }),
  };
}

/** A difference of degrees in the other unit: NIST SP 811 (2008) App. B.8, no 32 in it. */
function degreesIn(degrees: string, { from, to }: { from: string; to: string }): string {
  if (from === to) return degrees;
  const factor = parseDecimal("1.8");
  const exact = parseDecimal(degrees);
  return plain(to === "degF" ? product(exact, factor) : divided(exact, factor, DIVISION_PLACES));
}

function judgedIn(typed: HeatTyped): Body {
  const { by, reference } = typed;
  if (by === "none" || by === "") return {};
  const set_by = typed.set_by.trim();
  if (by === "lethality") {
    const [t_ref, z, wanted] = [typed.t_ref, typed.z, typed.wanted_min].map(typedNumber);
    const own = { t_ref, z, reference_unit: typed.reference_unit };
    return {
      judged: {
        by,
        set_by,
        reference,
        ...(reference === "own" ? own : {}),
        ...(wanted == null ? {} : { wanted_min: wanted }),
      },
    };
  }
  const moments = MOMENTS[by];
  if (moments === undefined) return { judged: { by, set_by } };
  const [from_s, to_s] = [secondsOf(typed.from_min), secondsOf(typed.to_min)];
  return {
    judged: {
      by,
      set_by,
      ...(from_s === null ? {} : { from_s }),
      ...(moments[1] === null || to_s === null ? {} : { to_s }),
    },
  };
}

/** What a body comes to with its thermometer as this phone knows it; null without one. */
export function judgedSoFar(body: Body | null, began_at: string | null): TrustedHeat | null {
  if (body === null) return null;
  const instrument = textIn(body, "instrument");
  const state = instrument === null ? null : instrumentSheet(instrument);
  const instruments = new Map(state === null ? [] : [[`instrument:${instrument}`, state]]);
  return trustedLog(body, { happened_at: began_at ?? "", instruments });
}

/** Whether what was done must be said: a log that is no pass is not passed over. */
export function asksAction(judged: HeatJudged | null): boolean {
  return judged !== null && judged.verdict !== null && judged.verdict !== "pass";
}
