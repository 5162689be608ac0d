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
import { checked, instrumentsForStep, type StepTyped, stepReading } from "./check.ts";

const BLANK: StepTyped = { shown: "", tare: "", instrument: "", action: "", into: "shown" };
const NONE = "none";

/** One step; a reading outside or undecided asks for what was done before it is saved. */
export function useStep({ batch, place }: BatchState, step: BatchStep) {
  const { typed, type, clear } = useDrafted<StepTyped>(`step:${batch}:${step.step}`, BLANK);
  const found = useFound(typed);
  const instruments = instrumentsForStep(step, instrumentsInUse(place));
  const choice = typed.value.instrument || remembered(`instrument:${step.measures ?? ""}`);
  const chosen = instruments.find((each) => each.id === choice) ?? instruments[0] ?? null;
  const instrument = choice === NONE ? null : chosen;
  const reading = stepReading(typed.value, step, instrument);
  const stands = reading && trusted({ reading }, new Date(nowMs()).toISOString());
  const means = checked(step, reading, stands);
  const isMeasured = step.measures !== null;
  const asksAction = means?.verdict === "outside" || means?.verdict === "cannot_tell";

  async function save() {
    const action = typed.value.action.trim();
    const answer = await record("step_done", {
      batch,
      step: step.step,
      ...(reading === null ? {} : { reading }),
      ...(action === "" ? {} : { action }),
    });
    found.value = hindrance(answer);
    if (found.value !== null) return;
    tremble(means?.verdict === "outside" ? 2 : 1);
    if (instrument !== null) remember(`instrument:${step.measures ?? ""}`, instrument.id);
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
    isWeighed: instrument?.sort === "scale",
    asksAction,
    hindrance: found,
    save,
  };
}

/** One step's screen state. */
export type Stepping = ReturnType<typeof useStep>;
