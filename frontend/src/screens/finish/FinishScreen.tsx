/** Finish: what came out and where the rest went, with the balance filling in live. */

import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { DayField, NumberField, SelectField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Part, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { FINISH } from "../../text/finish.ts";
import { LIFE_SORTS, packWords } from "../../text/lots.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { Balance } from "../common/Balance.tsx";
import { BatchNamed } from "../common/BatchNamed.tsx";
import { batchOf } from "../common/batches.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { BatchInQuestion } from "../common/InQuestion.tsx";
import { Instead } from "../common/Instead.tsx";
import { type AmountField, fieldInto, LOSSES } from "./typed.ts";
import { type Finishing, useFinish } from "./use_finish.ts";

/** `#/finish/:batch`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = batchOf(params.batch ?? "")?.state ?? null;
  if (batch === null || batch.is_finished) {
    return (
      <Instead
        where={FINISH.title}
        title={FINISH.title}
        benchName={FINISH.bench}
        back="#/"
        on={{ words: FINISH.open_page, href: `#/batch/${params.batch ?? ""}` }}
        says={batch === null ? FINISH.not_here : FINISH.already}
      />
    );
  }
  return <Finish batch={batch} />;
}

function Finish({ batch }: { batch: BatchState }) {
  const finishing = useFinish(batch);
  const { typed, type, unit } = finishing;
  const into = fieldInto(typed);
  return (
    <Frame
      where={<BatchNamed batch={batch} />}
      title={FINISH.title}
      gauge={<HeadGauge />}
      hasKeypad
      benchName={FINISH.bench}
      bench={
        <>
          <Keypad
            typed={typed[into]}
            onTyped={(text) => type({ [into]: text })}
            isWhole={unit === "pc" && (into === "good" || into === "rejected")}
          />
          <Foot>
            <BackKey href={`#/batch/${batch.batch}`} />
            <FinishKey finishing={finishing} />
          </Foot>
        </>
      }
      side={
        <Part title={FINISH.balance}>
          <BatchInQuestion batch={batch.batch} />
          <Balance batch={finishing.preview} />
        </Part>
      }
    >
      <Refusal sentence={finishing.hindrance.value?.sentence ?? null} />
      <Out finishing={finishing} />
      <Part title={FINISH.losses}>
        <p class="second">{FINISH.blank_hint}</p>
        {LOSSES.map((reason) => (
          <Amount
            key={reason}
            finishing={finishing}
            field={reason}
            label={FINISH[reason]}
            unit="g"
          />
        ))}
      </Part>
    </Frame>
  );
}

function Amount(props: { finishing: Finishing; field: AmountField; label: string; unit: string }) {
  const { finishing, field } = props;
  return (
    <div id={`field-${field}`}>
      <NumberField
        label={props.label}
        typed={finishing.typed[field]}
        unit={props.unit}
        isOpen={fieldInto(finishing.typed) === field}
        onOpen={() => finishing.type({ into: field })}
      />
    </div>
  );
}

function Out({ finishing }: { finishing: Finishing }) {
  const { typed, type, unit, lot } = finishing;
  const good = unit === "pc" ? FINISH.good : FINISH.good_mass;
  return (
    <>
      <Amount finishing={finishing} field="good" label={good} unit={unit} />
      <Amount finishing={finishing} field="rejected" label={FINISH.rejected} unit={unit} />
      {typedNumber(typed.rejected) !== null && (
        <TextField
          label={FINISH.rejected_why}
          value={typed.rejected_why}
          onValue={(rejected_why) => type({ rejected_why })}
        />
      )}
      <SelectField
        label={FINISH.life_sort}
        value={typed.life_sort}
        onValue={(life_sort) => type({ life_sort })}
        options={[{ value: "", word: FINISH.no_life }, ...LIFE_SORTS]}
      />
      {typed.life_sort !== "" && (
        <>
          <DayField
            label={FINISH.on}
            value={typed.life_on}
            onValue={(life_on) => type({ life_on })}
          />
          <Caution about="shelf_life" />
        </>
      )}
      {lot !== null && <p class="second">{FINISH.lot_named(lot)}</p>}
    </>
  );
}

function FinishKey({ finishing }: { finishing: Finishing }) {
  const { typed, unit, packWord, type } = finishing;
  const good = typedNumber(typed.good);
  const words =
    unit === "pc"
      ? FINISH.packs(figure(good), packWords(good ?? "", packWord))
      : amountWords(good, unit);
  return (
    <MainKey
      words={FINISH.finish(words)}
      notReady={good === null ? FINISH.good_first : null}
      onNotReady={() => {
        type({ into: "good" });
        focusFirst("good");
      }}
      onPress={() => void finishing.finish()}
    />
  );
}
