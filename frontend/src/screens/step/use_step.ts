import type { BatchState } from "../../calc/batches.ts";
import { record } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { remember, remembered } from "../../state/settings.ts";
import { type BatchStep, instrumentsInUse, pathAfter } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { nowMs } from "../common/edge.ts";
import { hindrance } from "../common/sentences.ts";
import { tremble } from "../common/touch.ts";
import { trusted } from "../common/trust.ts";
import { useFound } from "../common/use_found.ts";
import { besideReading, isWorkedOut, stillAsked, strengthSoFar, titrationOf } from "./asked.ts";
import { checked, instrumentsForStep, type StepTyped, stepReading } from "./check.ts";

const BLANK: StepTyped = {
  shown: "",
  tare: "",
  instrument: "",
  action: "",
  into: "shown",
  celsius: "",
  scale: "",
  normality: "",
  sample: "",
  sample_unit: "mL",
  burette: "",
  blank: "",
};
const NONE = "none";

/** What was typed last on this phone. */
function lastText(name: string): string {
  const kept = remembered(name);
  return typeof kept === "string" ? kept : "";
}

/** One step; a reading outside or undecided asks for what was done before it is saved. */
export function useStep(state: BatchState, step: BatchStep) {
  const { batch, place } = state;
  const { typed, type, clear } = useDrafted<StepTyped>(`step:${batch}:${step.step}`, {
    ...BLANK,
    normality: lastText("normality"),
    burette: lastText("burette"),
    sample_unit: lastText("sample_unit"),
  });
  const found = useFound(typed);
  const instruments = instrumentsForStep(step, instrumentsInUse(place));
  const choice = typed.value.instrument || remembered(`instrument:${step.measures ?? ""}`);
  const chosen = instruments.find((each) => each.id === choice) ?? instruments[0] ?? null;
  const instrument = choice === NONE ? null : chosen;
  const titration = step.measures === "acidity" ? titrationOf(step, typed.value) : null;
  const isRead = step.measures !== "acidity" && !isWorkedOut(step);
  const reading = isRead ? stepReading(typed.value, step, instrument) : null;
  const body = {
    ...(reading === null ? {} : { reading, ...besideReading(step, typed.value) }),
    ...(titration === null ? {} : { titration }),
  };
  const stands = reading && trusted({ reading }, new Date(nowMs()).toISOString());
  const means = checked(step, body, stands, strengthSoFar(step, state));
  const isMeasured = step.measures !== null;
  const asksAction = means?.verdict === "outside" || means?.verdict === "cannot_tell";

  async function save() {
    const action = typed.value.action.trim();
    const answer = await record("step_done", {
      batch,
      step: step.step,
      ...body,
      ...(action === "" ? {} : { action }),
    });
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(means?.verdict === "outside" ? 2 : 1);
    if (instrument !== null) remember(`instrument:${step.measures ?? ""}`, instrument.id);
    if (titration !== null) {
      remember("normality", typed.value.normality);
      remember("burette", typed.value.burette);
      remember("sample_unit", typed.value.sample_unit);
    }
    clear();
    goTo(pathAfter(batch));
  }

  return {
    typed: typed.value,
    type,
    instruments,
    instrument,
    means,
    isMeasured,
    isRead,
    lacks: stillAsked(step, typed.value),
    isWeighed: instrument?.sort === "scale",
    asksAction,
    hindrance: found,
    save,
  };
}

/** One step's screen state. */
export type Stepping = ReturnType<typeof useStep>;
