/** The bench of a step: keypad, bowl where it is weighed, instrument, save. */
import { Choices } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { Keypad, type SideKey } from "../../parts/Keypad.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { STEP } from "../../text/step.ts";
import type { BatchStep } from "../shared/batches.ts";
import { focusFirst } from "../shared/focus.ts";
import type { Stepping } from "./use_step.ts";

interface BenchProps {
  step: BatchStep;
  stepping: Stepping;
  isChoosing: boolean;
  onChoosing: (isChoosing: boolean) => void;
  back: string;
}

/** Keys and save; or the choice of an instrument in their place. */
export function StepBench(props: BenchProps) {
  const { stepping, isChoosing, onChoosing, back } = props;
  if (isChoosing) return <InstrumentChoice {...props} />;
  const { typed, type, isMeasured } = stepping;
  const isTare = typed.into === "tare";
  return (
    <>
      {isMeasured && (
        <Keypad
          typed={isTare ? typed.tare : typed.shown}
          onTyped={(text) => type(isTare ? { tare: text } : { shown: text })}
          isSigned={props.step.measures === "temperature"}
          column={sideKeys(stepping, () => onChoosing(true))}
        />
      )}
      <Foot>
        <BackKey href={back} name={STEP.all_steps} />
        <SaveKey {...props} />
      </Foot>
    </>
  );
}

function sideKeys({ typed, type, isWeighed, instrument }: Stepping, choose: () => void): SideKey[] {
  const isTare = typed.into === "tare";
  const which = {
    word: instrument?.name ?? STEP.no_instrument,
    holds: <Icon name={isWeighed ? "pan" : "stem"} size={22} />,
    onPress: choose,
    name: STEP.choose_instrument,
  };
  const bowl = {
    word: STEP.bowl,
    holds: typed.tare === "" ? STEP.no_bowl : figure(typed.tare),
    isOn: isTare,
    onPress: () => type({ into: isTare ? "shown" : "tare" }),
  };
  return isWeighed ? [bowl, which] : [which];
}

function SaveKey({ step, stepping }: BenchProps) {
  const { typed, type, means, isMeasured, asksAction } = stepping;
  if (!isMeasured) return <MainKey words={STEP.done} onPress={() => void stepping.save()} />;
  if (typed.into === "tare") {
    const tare = typedNumber(typed.tare);
    const words = STEP.keep_bowl(amountWords(tare, stepping.instrument?.unit));
    return <MainKey words={words} onPress={() => type({ into: "shown" })} />;
  }
  const isActionMissing = asksAction && typed.action.trim() === "";
  return (
    <MainKey
      words={STEP.save(amountWords(means?.value, step.unit))}
      notReady={means === null ? STEP.type_first : isActionMissing ? STEP.action_first : null}
      onNotReady={() => focusFirst(isActionMissing ? "action" : undefined)}
      onPress={() => void stepping.save()}
    />
  );
}

function InstrumentChoice({ stepping, onChoosing }: BenchProps) {
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
            onChoosing(false);
          }}
          none={STEP.none}
        />
      </div>
      <Foot>
        <BackKey onPress={() => onChoosing(false)} />
      </Foot>
    </>
  );
}
