/** A log under way: kept as a draft that outlives a killed browser, saved as one entry. */
import { useSignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { HEAT } from "../../text/heat.ts";
import { instrumentsInUse } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { nowMs, zone } from "../common/edge.ts";
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
  lacksAsked,
  rowsOf,
} from "./heat.ts";
import { secondsOf } from "./heat_times.ts";
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

/** One log of a batch, of one of its steps where `step` is not blank. */
export function useHeat(about: { batch: string; step: string; place: string | null }) {
  const { batch, step } = about;
  const form = useDrafted<HeatTyped>(`heat/${batch}/${step}`, BLANK);
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
    const answer = await record("heat_log", whole, { happened_at: began_at });
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(judged?.verdict === "fail" ? 2 : 1);
    form.clear();
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
    lacks: lacksAsked(typed) ?? lacksRows(typed, body === null, asksAction(judged)),
    read,
    save,
  };
}

/** One log's screen state. */
export type Heating = ReturnType<typeof useHeat>;

/** Keeps what was typed as a row: by hand at its minutes, by the timer at this very second. */
export function keepRow({ now, type, open }: Heating): void {
  const typed = now();
  const degrees = typedNumber(typed.degrees);
  const at = rowSecond(typed);
  if (degrees === null || at === null) return;
  type({
    at_s: [...typed.at_s, at],
    temperatures: [...typed.temperatures, degrees],
    minutes: "",
    degrees: "",
  });
  open.value = typed.how === "timer" ? "degrees" : "minutes";
}

/** The second of the row that is being typed; null while it is not known. */
export function rowSecond(typed: HeatTyped): number | null {
  if (typed.how !== "timer") return secondsOf(typed.minutes);
  return Math.max(0, Math.round((nowMs() - typed.timer_began_ms) / 1000));
}

/** When the timer asks next, in seconds since it began; at once for the first reading. */
export function nextDueS({ at_s, every_min }: HeatTyped): number {
  const every = Math.max(secondsOf(every_min) ?? 0, 1);
  const last = at_s.at(-1);
  return last === undefined ? 0 : (Math.floor(last / every) + 1) * every;
}

function lacksRows(typed: HeatTyped, hasNone: boolean, asks: boolean) {
  if (hasNone) {
    const isUnitMissing = typed.text !== "" && typed.unit === "";
    return isUnitMissing
      ? { sentence: HEAT.say_unit, field: "unit" }
      : { sentence: HEAT.rows_first, field: "rows" };
  }
  if (asks && typed.action.trim() === "") return { sentence: HEAT.say_action, field: "action" };
  return null;
}

function actionOf(typed: HeatTyped): { action?: string } {
  const action = typed.action.trim();
  return action === "" ? {} : { action };
}

function rowsDeps(typed: HeatTyped): readonly unknown[] {
  const { how, unit, text, at_s, temperatures, time_column, temperature_column } = typed;
  return [how, unit, text, at_s, temperatures, time_column, temperature_column, typed.time_unit];
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
