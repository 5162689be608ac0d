/** What a log still lacks before it can be kept, one sentence at a time, and where. */
import type { HeatJudged } from "../../calc/heat_judged.ts";
import { typedNumber } from "../../parts/typing.ts";
import { HEAT, unreadShort } from "../../text/heat.ts";
import { asksAction, type HeatTyped, isRead, type Rows } from "./heat.ts";
import { secondsOf } from "./heat_times.ts";

/** What is missing, in a sentence, and the field it is missing in. */
export interface Lack {
  sentence: string;
  field: string;
}

/** What the log has come to so far. */
interface SoFar {
  rows: Rows;
  judged: HeatJudged | null;
  began_at: string | null;
  nowMs: number;
  isCorrection: boolean;
}

/** What is still missing before the whole log can be kept. */
export function lacksKept(typed: HeatTyped, soFar: SoFar): Lack | null {
  return (
    lacksAsked(typed) ??
    lacksRows(typed, soFar.rows, asksAction(soFar.judged)) ??
    lacksBegin(soFar.began_at, soFar.nowMs) ??
    (soFar.isCorrection ? lacksReason(typed) : null)
  );
}

/** What is still missing on the first page: the rule and how the readings come. */
export function lacksAsked(typed: HeatTyped): Lack | null {
  return lacksRule(typed) ?? lacksWay(typed);
}

function lacksRule({ by, set_by, reference, t_ref, z }: HeatTyped): Lack | null {
  if (by === "") return { sentence: HEAT.choose_rule, field: "by" };
  if (by === "none") return null;
  if (set_by.trim() === "") return { sentence: HEAT.say_set_by, field: "set_by" };
  if (by !== "lethality") return null;
  if (reference === "") return { sentence: HEAT.say_reference, field: "reference" };
  const isHalf = typedNumber(t_ref) === null || typedNumber(z) === null;
  return reference === "own" && isHalf ? { sentence: HEAT.say_reference, field: "t_ref" } : null;
}

function lacksWay({ how, unit, every_min }: HeatTyped): Lack | null {
  if (how === "") return { sentence: HEAT.say_how, field: "how" };
  if (!isRead(how) && unit === "") return { sentence: HEAT.say_unit, field: "unit" };
  const isAsking = (secondsOf(every_min) ?? 0) > 0;
  return how === "timer" && !isAsking ? { sentence: HEAT.say_every, field: "every_min" } : null;
}

function lacksRows(typed: HeatTyped, { unread, unit, at_s }: Rows, mustAct: boolean): Lack | null {
  // A row that cannot be read comes first: until it is mended nobody knows what else is missing.
  if (unread !== null) return { sentence: unreadShort(unread), field: "rows" };
  if (at_s.length === 0) return { sentence: HEAT.rows_first, field: "rows" };
  if (unit === null) return { sentence: HEAT.say_unit, field: "unit" };
  if (mustAct && typed.action.trim() === "") return { sentence: HEAT.say_action, field: "action" };
  return null;
}

/** What is yet to come was not read. */
function lacksBegin(began_at: string | null, nowMs: number): Lack | null {
  const isPast = began_at !== null && Date.parse(began_at) <= nowMs;
  return isPast ? null : { sentence: HEAT.begins_later, field: "began_at" };
}

function lacksReason({ reason }: HeatTyped): Lack | null {
  if (reason.trim() !== "") return null;
  return { sentence: HEAT.say_reason, field: "reason" };
}
