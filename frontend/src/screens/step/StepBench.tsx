/** The bench of a step: keypad, bowl where it is weighed, instrument, save. */
import { Choices, CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { TextField } from "../../parts/Fields.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad, type SideKey } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import type { BatchStep } from "../common/batches.ts";
import { type AskedNumber, alsoAsked, isWorkedOut } from "./asked.ts";
import type { StepTyped } from "./check.ts";
import type { Stepping } from "./use_step.ts";

/** What the bench asks now. */
export type StepAsking = "keys" | "instrument" | "action";

interface BenchProps {
  step: BatchStep;
  stepping: Stepping;
  asking: StepAsking;
  onAsk: (asking: StepAsking) => void;
  back: string;
}

/** Keys and save; or the choice of an instrument in their place. */
export function StepBench(props: BenchProps) {
  const { stepping, asking, back } = props;
  if (asking === "instrument") return <InstrumentChoice {...props} />;
  if (asking === "action") return <Action {...props} />;
  const { typed, type, isMeasured } = stepping;
  const into = intoOf(typed, props.step);
  return (
    <>
      {isMeasured && !isWorkedOut(props.step) && (
        <Keypad
          typed={typed[into]}
          onTyped={(text) => type({ [into]: text })}
          isSigned={props.step.measures === "temperature" || into === "celsius"}
          column={sideKeys(props.step, stepping)}
        />
      )}
      <Foot>
        <BackKey href={back} name={STEP.all_steps} />
        <SaveKey {...props} />
      </Foot>
    </>
  );
}

/** The number the keys type into now. */
export function intoOf(typed: StepTyped, step: BatchStep): AskedNumber["field"] {
  const other = alsoAsked(step, typed).find(({ field }) => field === typed.into)?.field;
  return other ?? (typed.into === "tare" ? "tare" : "shown");
}

function sideKeys(step: BatchStep, { typed, type, isWeighed }: Stepping): SideKey[] {
  const beside = alsoAsked(step, typed).filter(({ field }) => field !== "blank");
  const also = beside.map(({ field, word, unit }) => ({
    word,
    holds: typed[field] === "" ? STEP.not_typed : amountWords(typed[field], unit),
    isOn: typed.into === field,
    onPress: () => type({ into: typed.into === field ? "shown" : field }),
  }));
  if (also.length > 0) return also;
  const isTare = typed.into === "tare";
  const bowl = {
    word: STEP.bowl,
    holds: typed.tare === "" ? STEP.no_bowl : figure(typed.tare),
    isOn: isTare,
    onPress: () => type({ into: isTare ? "shown" : "tare" }),
  };
  return isWeighed ? [bowl] : [];
}

function SaveKey({ step, stepping, asking, onAsk }: BenchProps) {
  const { typed, type, means, isMeasured, asksAction } = stepping;
  if (!isMeasured) return <MainKey words={STEP.done} onPress={() => void stepping.save()} />;
  if (typed.into === "tare") {
    const tare = typedNumber(typed.tare);
    const words = STEP.keep_bowl(amountWords(tare, stepping.instrument?.unit));
    return <MainKey words={words} onPress={() => type({ into: "shown" })} />;
  }
  const also = alsoAsked(step, typed).find(({ field }) => field === typed.into);
  if (also !== undefined) {
    const words = STEP.keep_number(amountWords(typedNumber(typed[also.field]), also.unit));
    return <MainKey words={words} onPress={() => type({ into: "shown" })} />;
  }
  const isActionMissing = asksAction && typed.action.trim() === "";
  return (
    <MainKey
      words={
        isActionMissing
          ? STEP.save_without(amountWords(means?.value, means?.unit))
          : STEP.save(amountWords(means?.value, means?.unit))
      }
      notReady={
        means === null || stepping.lacks === STEP.scale_first
          ? (stepping.lacks ?? STEP.type_first)
          : isActionMissing && asking === "keys"
            ? STEP.action_first
            : null
      }
      onNotReady={() => {
        if (isActionMissing) onAsk("action");
      }}
      onPress={() => void stepping.save()}
    />
  );
}

function InstrumentChoice({ stepping, onAsk }: BenchProps) {
  return (
    <>
      <p class="asks">{STEP.choose_instrument}</p>
      <div class="bench-list">
        <Choices
          name={STEP.choose_instrument}
          items={[
            ...stepping.instruments.map((each) => ({
              id: each.id,
              name: each.name,
              isRecorded: false,
              right: each.division === null ? "" : amountWords(each.division, each.unit),
            })),
            { id: "none", name: STEP.without, isRecorded: false },
          ]}
          chosen={stepping.instrument?.id ?? "none"}
          onChoose={(instrument) => {
            stepping.type({ instrument });
            onAsk("keys");
          }}
          none={STEP.none}
        />
      </div>
      <Foot>
        <BackKey onPress={() => onAsk("keys")} />
      </Foot>
    </>
  );
}

/** What was done about a reading that is outside or undecided: in the place of the keys. */
function Action(props: BenchProps) {
  const { typed, type } = props.stepping;
  return (
    <>
      <p class="asks">{STEP.action}</p>
      <CupChoice
        name={STEP.action}
        options={STEP.actions.map((word) => ({ value: word, word }))}
        chosen={STEP.actions.find((word) => word === typed.action) ?? null}
        onChoose={(action) => type({ action })}
      />
      <TextField
        label={STEP.action_hint}
        value={typed.action}
        onValue={(action) => type({ action })}
        lines={2}
      />
      <Foot>
        <BackKey onPress={() => props.onAsk("keys")} />
        <SaveKey {...props} />
      </Foot>
    </>
  );
}
