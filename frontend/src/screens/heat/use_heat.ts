/** A log under way: kept as a draft that outlives a killed browser, saved as one entry. */

import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import type { Body } from "../../calc/bodies.ts";
import { typedNumber } from "../../parts/typing.ts";
import { correct, record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { HEAT } from "../../text/heat.ts";
import { minutesText } from "../../text/heat_results.ts";
import { instrumentsInUse } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { nowMs, zone } from "../common/edge.ts";
import { noteTimer } from "../common/running_timers.ts";
import { hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { useFound } from "../common/use_found.ts";
import { canRead } from "../weigh-in/which_instrument.ts";
import {
  asksAction,
  BLANK,
  beganAt,
  type HeatTyped,
  heatBody,
  judgedSoFar,
  rowsOf,
  typedFrom,
} from "./heat.ts";
import { secondsOf } from "./heat_times.ts";
import { lacksKept } from "./lacks.ts";
import { decoded } from "./pasted.ts";
import { plotOf } from "./plot.ts";

const FILE_BYTES_MAX = 8_000_000; // no logger writes ten thousand rows in more

/** The number the keypad types into. */
export type HeatOpen =
  | "minutes"
  | "degrees"
  | "t_ref"
  | "z"
  | "wanted_min"
  | "from_min"
  | "to_min"
  | "every_min";

/** What a log is of: a step where `step` is not blank; `corrects` is the one it stands for. */
export interface HeatAbout {
  batch: string;
  step: string;
  place: string | null;
  corrects: { entry: string; body: Body } | null;
}

/** One log of a batch. */
export function useHeat(about: HeatAbout) {
  const { batch, step, corrects } = about;
  const isCorrection = corrects !== null;
  const blank = useMemo(() => (corrects === null ? BLANK : typedFrom(corrects.body)), [corrects]);
  const form = useDrafted<HeatTyped>(heatKey(about), blank);
  const typed = form.typed.value;
  const open = useSignal<HeatOpen>("minutes");
  const isReading = useSignal(false);
  const fileTrouble = useSignal<string | null>(null);
  const found = useFound(form.typed);
  const rows = useMemo(() => rowsOf(typed), rowsDeps(typed));
  const now = { ms: nowMs(), zone: zone() };
  const began_at = beganAt(typed, rows, now);
  const instruments = instrumentsInUse(about.place).filter((each) => canRead(each, "degC"));
  const thermometer = instruments.find((each) => each.id === typed.instrument) ?? null;
  const body = useMemo(
    () => heatBody(typed, rows, { batch, step, thermometer }),
    [rows, ...askedDeps(typed)],
  );
  const judged = useMemo(() => judgedSoFar(body, began_at), [body]);
  const plot = useMemo(() => (body && judged ? plotOf(body, judged) : null), [body, judged]);

  const key = heatKey(about);
  useEffect(() => {
    // The blank form stands here until the draft is read.
    if (typed !== blank) noteTimer(key, typed);
  }, [typed.how, typed.timer_began_ms, typed.every_min, typed.at_s]);

  async function read(file: File) {
    fileTrouble.value = file.size > FILE_BYTES_MAX ? HEAT.too_large : null;
    if (fileTrouble.value !== null) return;
    isReading.value = true;
    const text = decoded(new Uint8Array(await file.arrayBuffer()));
    // The word that it is being read stands on the screen before the work begins.
    await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
    form.type({ text, time_column: "", temperature_column: "", time_unit: "" });
    isReading.value = false;
  }

  async function save() {
    if (body === null || began_at === null) return;
    const whole = { ...body, began_at, ...actionOf(typed) };
    const answer =
      corrects === null
        ? await record("heat_log", whole, { happened_at: began_at })
        : await correct(corrects.entry, whole, typed.reason.trim());
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(judged?.verdict === "fail" ? 2 : 1);
    form.clear();
    noteTimer(key, null);
    goTo(`/batch/${batch}`);
  }

  return {
    typed,
    type: form.type,
    now: () => form.typed.value,
    open,
    found,
    isReading: isReading.value,
    fileTrouble: fileTrouble.value,
    rows,
    body,
    judged,
    plot,
    began_at,
    asksAction: asksAction(judged),
    instruments,
    isCorrection,
    lacks: lacksKept(typed, { rows, judged, began_at, nowMs: now.ms, isCorrection }),
    read,
    save,
  };
}

/** One log's screen state. */
export type Heating = ReturnType<typeof useHeat>;

/** Where a half-filled form of a log is kept. */
function heatKey({ batch, step, corrects }: HeatAbout): string {
  return corrects === null ? `heat/${batch}/${step}` : `heat-correct/${corrects.entry}`;
}

/** Keeps what was typed as a row: by hand at its minutes, by the timer at this very second. */
export function keepRow({ now, type, open }: Heating): void {
  const typed = now();
  const degrees = typedNumber(typed.degrees);
  const at = rowSecond(typed);
  if (degrees === null || at === null) return;
  const row = typed.row < 0 ? typed.at_s.length : typed.row;
  type({
    at_s: [...typed.at_s.slice(0, row), at, ...typed.at_s.slice(row + 1)],
    temperatures: [
      ...typed.temperatures.slice(0, row),
      degrees,
      ...typed.temperatures.slice(row + 1),
    ],
    minutes: "",
    degrees: "",
    row: -1,
  });
  open.value = typed.how === "timer" ? "degrees" : "minutes";
}

/** Takes a row up to be typed anew; its time, where a timer kept it, stays. */
export function takeUpRow({ now, type, open }: Heating, row: number): void {
  const { at_s, temperatures } = now();
  type({ row, minutes: minutesText(at_s[row] ?? 0), degrees: temperatures[row] ?? "" });
  open.value = "degrees";
}

/** Takes a row out. */
export function takeOutRow({ now, type }: Heating, row: number): void {
  const { at_s, temperatures } = now();
  const others = <Each>(all: readonly Each[]) => all.filter((_, place) => place !== row);
  type({
    at_s: others(at_s),
    temperatures: others(temperatures),
    row: -1,
    minutes: "",
    degrees: "",
  });
}

/** The second of the row that is being typed; null while it is not known. */
export function rowSecond(typed: HeatTyped): number | null {
  const kept = typed.at_s[typed.row];
  if (typed.how === "timer" && kept !== undefined) return kept;
  if (typed.how !== "timer") return secondsOf(typed.minutes);
  return Math.max(0, Math.round((nowMs() - typed.timer_began_ms) / 1000));
}

function actionOf(typed: HeatTyped): { action?: string } {
  const action = typed.action.trim();
  return action === "" ? {} : { action };
}

function rowsDeps(typed: HeatTyped): readonly unknown[] {
  const { how, unit, text, at_s, temperatures, time_column, temperature_column } = typed;
  return [
    how,
    unit,
    text,
    at_s,
    temperatures,
    time_column,
    temperature_column,
    typed.time_unit,
    typed.left_out,
    typed.came_by,
  ];
}

function askedDeps(typed: HeatTyped): readonly unknown[] {
  const { by, set_by, reference, t_ref, z, reference_unit, wanted_min } = typed;
  const { from_min, to_min, instrument } = typed;
  return [
    by,
    set_by,
    reference,
    t_ref,
    z,
    reference_unit,
    wanted_min,
    from_min,
    to_min,
    instrument,
  ];
}
