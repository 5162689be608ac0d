/** What a batch cost beside its lots and its work: fuel, overhead, other. */
import { useSignal } from "@preact/signals";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { record } from "../../state/record.ts";
import { MONEY, PART_WORDS, SPENT } from "../../text/money.ts";
import { batchOf, recipeNameOf } from "../common/batches.ts";
import { useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { beside, besideNone, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { currency, typedMoney } from "./costs.ts";
import { Kept } from "./Kept.tsx";
import { expenseOf, type SpentTyped, spentMissing } from "./typed.ts";

const SAYS_CHARS_MAX = 120;

/** `#/cost/:batch/spent`. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <Form key={params.batch} batch={params.batch ?? ""} />;
}

function Form({ batch }: { batch: string }) {
  const form = useDrafted<SpentTyped>(`cost/${batch}/spent`, {
    part: "fuel",
    amount: "",
    says: "",
  });
  const found = useFound(form.typed);
  const kept = useSignal<{ entry: string; words: string } | null>(null);
  const typed = form.typed.value;
  const state = batchOf(batch)?.state ?? null;
  const lacks = spentMissing(typed, currency());
  const where = `${MONEY.spent}, ${state?.code ?? ""}`;

  async function save() {
    const words = SPENT.done(PART_WORDS[typed.part] ?? "", typedMoney(typed.amount));
    const answer = await record("expense", expenseOf(typed, batch, currency()));
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    form.clear();
    kept.value = { entry: answer.saved.id, words };
  }

  if (kept.value !== null) {
    return (
      <Kept
        where={where}
        title={SPENT.title}
        {...kept.value}
        on={{ words: MONEY.see_cost, href: `#/cost/${batch}` }}
        onMore={() => {
          kept.value = null;
        }}
      />
    );
  }
  return (
    <Frame
      where={where}
      title={state === null ? SPENT.title : recipeNameOf(state)}
      isRecorded={state !== null}
      gauge={<HeadGauge />}
      benchName={SPENT.bench}
      hasKeypad
      bench={
        <>
          <Keypad typed={typed.amount} onTyped={(amount) => form.type({ amount })} />
          <Foot>
            <BackKey href={`#/cost/${batch}`} />
            <MainKey
              words={SPENT.save(typedMoney(typed.amount))}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, ["amount", "says"])} />
      <FieldGroup label={SPENT.part}>
        <CupChoice
          name={SPENT.part}
          options={SPENT.parts}
          chosen={SPENT.parts.find((each) => each.value === typed.part)?.value ?? null}
          onChoose={(part) => form.type({ part })}
        />
      </FieldGroup>
      <div id="field-amount">
        <NumberField
          label={SPENT.amount}
          typed={typed.amount}
          unit={currency()}
          isOpen
          onOpen={() => undefined}
          refusal={beside(found.value, "amount")}
        />
      </div>
      <TextField
        label={SPENT.says}
        value={typed.says}
        onValue={(says) => form.type({ says })}
        mostChars={SAYS_CHARS_MAX}
        refusal={beside(found.value, "says")}
      />
    </Frame>
  );
}
