/** What a check asks beside its reading, and what was worked out: raw, value, where from. */
import { CupChoice } from "../../parts/Choices.tsx";
import { NumberField } from "../../parts/Fields.tsx";
import { NumberShown } from "../../parts/NumberShown.tsx";
import { amountWords } from "../../text/numbers.ts";
import { CITED, STEP } from "../../text/step.ts";
import type { BatchStep } from "../common/batches.ts";
import { Recalled } from "../common/Recalled.tsx";
import { sampleUnit } from "./asked.ts";
import type { Checked } from "./check.ts";
import type { Stepping } from "./use_step.ts";

/** The value with its doubt; beside it what was read, where that is something else. */
export function Worked({ means }: { means: Checked }) {
  const cannot = means.how === "cannot_correct";
  return (
    <>
      {means.raw !== null && (
        <p class="less">
          <span>{STEP.raw}</span>
          <b>{amountWords(means.raw.value, means.raw.unit)}</b>
        </p>
      )}
      <p class="sum">
        <NumberShown
          amount={means.value || null}
          unit={means.unit}
          basis="measured"
          uncertainty={means.reach}
          size="net"
        />
      </p>
      {means.how !== "read" && (
        <p class={cannot ? "shout" : "second"}>
          {STEP.how[means.how]}
          {means.table !== null && `, ${STEP.table(means.table)}`}
        </p>
      )}
      {cannot && <p class="second">{STEP.cannot_correct_why}</p>}
      {means.cited.length > 0 && (
        <p class="second">
          {STEP.source}: {[...new Set(means.cited.map((each) => each.source))].join("; ")}
        </p>
      )}
      <Recalled cited={means.cited} names={CITED} />
    </>
  );
}

/** Two salometers look alike: which one it is decides the salt. */
export function WhichScale({ step, stepping }: { step: BatchStep; stepping: Stepping }) {
  if (step.measures !== "salometer") return null;
  return (
    <>
      <p class="asks">{STEP.scale}</p>
      <CupChoice
        name={STEP.scale}
        options={STEP.scales}
        chosen={STEP.scales.find(({ value }) => value === stepping.typed.scale)?.value ?? null}
        onChoose={(scale) => stepping.type({ scale })}
      />
    </>
  );
}

/** A titration by weight or by volume, and what the alkali does to no sample at all. */
export function SampleAndBlank({ step, stepping }: { step: BatchStep; stepping: Stepping }) {
  const { typed, type } = stepping;
  if (step.measures !== "acidity") return null;
  return (
    <>
      <p class="asks">{STEP.sample_in}</p>
      <CupChoice
        name={STEP.sample_in}
        options={STEP.sample_units}
        chosen={sampleUnit(typed)}
        onChoose={(sample_unit) => type({ sample_unit })}
      />
      <NumberField
        label={STEP.blank}
        typed={typed.blank}
        unit="mL"
        isOpen={typed.into === "blank"}
        onOpen={() => type({ into: typed.into === "blank" ? "shown" : "blank" })}
      />
    </>
  );
}
