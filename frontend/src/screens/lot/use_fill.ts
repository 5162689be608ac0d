/** A fill check under way: kept as a draft, saved as one entry. */
import { useSignal } from "@preact/signals";
import { quantityIn } from "../../calc/bodies.ts";
import type { LotState } from "../../calc/stock.ts";
import { isUnit } from "../../calc/units.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { remember, remembered } from "../../state/settings.ts";
import { cooperative } from "../../state/stock.ts";
import { instrumentsInUse } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { nowMs, today } from "../common/edge.ts";
import { instrumentSheet, standingOf } from "../common/instruments.ts";
import { materialOf, textField } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import {
  driesBy,
  type FillOpen,
  type FillTyped,
  fillBody,
  fillSoFar,
  missingOfFill,
} from "./fill.ts";

const MASS_UNITS = ["g", "kg", "oz", "lb", "mg"];

/** One check of a lot. */
export function useFill(state: LotState) {
  const form = useDrafted<FillTyped>(`lot/${state.lot}/fill`, proposed(state));
  const typed = form.typed.value;
  const open = useSignal<FillOpen>(typed.amount === "" ? "amount" : "empty");
  const found = useFound(form.typed);
  const scales = instrumentsInUse(null).filter(
    (each) => each.sort === "scale" && MASS_UNITS.includes(each.unit) && isUnit(each.unit),
  );
  const choice = typed.instrument || remembered("instrument:fill");
  const scale = choice === "none" ? null : (scales.find(({ id }) => id === choice) ?? scales[0]);
  const sheet = scale ? instrumentSheet(scale.id) : null;
  const about = {
    lot: state.lot,
    on: today(),
    scale: scale ?? null,
    happened_at: new Date(nowMs()).toISOString(),
    instruments: new Map(sheet === null ? [] : [[`instrument:${sheet.id}`, sheet]]),
  };
  const soFar = fillSoFar(typed, about);

  async function save() {
    const body = fillBody(typed, about);
    if (body === null) return;
    const answer = await record("fill_checked", body);
    found.value = hindrance(answer);
    if (found.value !== null) return;
    if (about.scale !== null) remember("instrument:fill", about.scale.id);
    remember("rules:fill", typed.rules);
    form.clear();
    goTo(`/lot/${state.lot}`);
  }

  return {
    typed,
    now: () => form.typed.value,
    type: form.type,
    open,
    found,
    scales,
    scale: about.scale,
    fill: soFar?.fill ?? null,
    trust: soFar?.trust,
    is: about.scale === null ? null : standingOf(about.scale.id).is,
    lacks: missingOfFill(typed),
    save,
  };
}

/** One check's screen state. */
export type Filling = ReturnType<typeof useFill>;

/** What the lot's packs say, the rules of the cooperative, and how many packs there are. */
function proposed(state: LotState): FillTyped {
  const fields = { ...(materialOf(state.material)?.fields ?? {}) };
  const net = state.pack_net ?? quantityIn(fields, "pack_net");
  const set = textField(cooperative.value, "rules");
  const last = remembered("rules:fill"); // where the cooperative labels by rules of its own
  const rules = set === "us" || set === "eu" ? set : typeof last === "string" ? last : "";
  return {
    amount: net?.amount ?? "",
    unit: net?.unit ?? "g",
    other: "",
    other_unit: net?.unit === "oz" ? "g" : "oz",
    rules,
    instrument: "",
    lot_size: state.unit === "pc" && /^[1-9]\d*$/.test(state.made) ? state.made : "",
    density: "",
    loses_moisture: driesBy(state.fills ?? [], fields),
    shown: "",
    tares: [],
    gross: [],
  };
}
