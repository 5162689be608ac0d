/** What a batch cost beside its lots and its work: fuel, overhead, other. */
import { CupChoice } from "../../parts/Choices.tsx";
import { FieldGroup, NumberField, TextField } from "../../parts/Fields.tsx";
import { MONEY, PART_WORDS, SPENT } from "../../text/money.ts";
import { useDrafted } from "../common/drafted.ts";
import { beside } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { AddForm } from "./AddForm.tsx";
import { currency, typedMoney } from "./costs.ts";
import { expenseOf, type SpentTyped, spentMissing } from "./typed.ts";

const SAYS_CHARS_MAX = 120;

/** `#/cost/:batch/spent`. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <Form key={params.batch} batch={params.batch ?? ""} />;
}

function Form({ batch }: { batch: string }) {
  const blank = { part: "fuel", amount: "", says: "" };
  const form = useDrafted<SpentTyped>(`cost/${batch}/spent`, blank);
  const found = useFound(form.typed);
  const typed = form.typed.value;
  return (
    <AddForm
      batch={batch}
      where={MONEY.spent}
      title={SPENT.title}
      benchName={SPENT.bench}
      on={{ words: MONEY.see_cost, href: `#/cost/${batch}` }}
      number={typed.amount}
      onNumber={(amount) => form.type({ amount })}
      save={SPENT.save(typedMoney(typed.amount))}
      lacks={spentMissing(typed, currency())}
      found={found}
      fields={["amount", "says"]}
      entry={() => ({
        kind: "expense",
        body: expenseOf(typed, batch, currency()),
        words: SPENT.done(PART_WORDS[typed.part] ?? "", typedMoney(typed.amount)),
      })}
      onKept={form.clear}
    >
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
    </AddForm>
  );
}
