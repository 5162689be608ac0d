/** Whether a line's amount is as bought or prepared, and what is left of it, by whose figure. */
import { signal, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { parseDecimal, plain, rounded } from "../../../calc/numbers.ts";
import { asPurchased, ediblePortion } from "../../../calc/recipes.ts";
import type { YieldRow } from "../../../calc/tables/yields.ts";
import { publishedYield, yieldsNamed } from "../../../calc/yields.ts";
import { Choices } from "../../../parts/Choices.tsx";
import { Cup } from "../../../parts/Cup.tsx";
import { FieldGroup, TextField } from "../../../parts/Fields.tsx";
import { typedNumber } from "../../../parts/typing.ts";
import { nameOf } from "../../../state/stock.ts";
import { amountWords } from "../../../text/numbers.ts";
import { YIELD } from "../../../text/recipe_lines.ts";
import type { Typed } from "../../common/drafted.ts";
import { ChoiceOf, NumberOf, WordsOf } from "../FormFields.tsx";
import { type Bound, textAt } from "../form.ts";
import type { LineTyped } from "./items.ts";
import { isSome } from "./typed.ts";

const PLACES = 3;
const NAME_CHARS_MAX = 120;
const SEARCH_CHARS_MAX = 60;

/** The shipped table once it is read; it is a file of its own. */
const yieldTable = signal<readonly YieldRow[] | null>(null);

async function readYields(): Promise<void> {
  if (yieldTable.value !== null) return;
  const { YIELD_ROWS } = await import("../../../calc/tables/yields.ts");
  yieldTable.value = YIELD_ROWS;
}

interface YieldProps {
  form: Bound;
  line: LineTyped;
  /** What is weighed in, where it is known. */
  amount: { amount: string; unit: string } | null;
}

/** Without a state nothing is asked. */
export function YieldOf({ form, line, amount }: YieldProps) {
  const isTable = useSignal(false);
  return (
    <>
      <ChoiceOf
        form={form}
        name="state"
        label={YIELD.state}
        choices={["as_bought", "prepared"]}
        none={YIELD.none}
        words={(state) => (state === "prepared" ? YIELD.prepared : YIELD.as_bought)}
      />
      {line.state !== "" && (
        <>
          <NumberOf
            form={form}
            name="yield_percent"
            label={YIELD.percent}
            hint={YIELD.percent_hint}
            unit="%"
          />
          <Says line={line} amount={amount} />
          <p class="key-row">
            <Cup onPress={() => (isTable.value = !isTable.value)}>
              {isTable.value ? YIELD.close : YIELD.find}
            </Cup>
          </p>
          {isTable.value && (
            <Table form={form} line={line} onChosen={() => (isTable.value = false)} />
          )}
          <WordsOf
            form={form}
            name="prepared_as"
            label={YIELD.prepared_as}
            hint={YIELD.prepared_as_hint}
            mostChars={NAME_CHARS_MAX}
          />
        </>
      )}
    </>
  );
}

/** Whose figure it is, and what it means for this line. */
function Says({ line, amount }: Omit<YieldProps, "form">) {
  if (!isSome(line.yield_percent)) return null;
  const by = YIELD.by[line.yield_by] ?? YIELD.by.typed;
  return (
    <p class="second">
      {by?.(line.yield_source)}. {amount !== null && otherSide(line, amount)}
    </p>
  );
}

function otherSide(line: LineTyped, { amount, unit }: { amount: string; unit: string }): string {
  const percent = parseDecimal(typedNumber(line.yield_percent) ?? "100");
  const isBought = line.state === "as_bought";
  const other = (isBought ? ediblePortion : asPurchased)(parseDecimal(amount), percent, PLACES);
  return (isBought ? YIELD.left : YIELD.to_buy)(amountWords(plain(other), unit));
}

function Table(props: { form: Bound; line: LineTyped; onChosen: () => void }) {
  const { form, line } = props;
  const search = useSignal(nameOf("material", line.material));
  useEffect(() => void readYields(), []);
  const found = yieldsNamed(yieldTable.value ?? [], search.value);
  return (
    <FieldGroup label={YIELD.table} hint={YIELD.table_hint}>
      <TextField
        label={YIELD.find}
        value={search.value}
        onValue={(words) => (search.value = words)}
        mostChars={SEARCH_CHARS_MAX}
      />
      <Choices
        name={YIELD.table}
        items={found.map((row, at) => choiceOf(row, at))}
        chosen={null}
        searchFrom={Number.MAX_SAFE_INTEGER}
        onChoose={(id) => {
          const row = found[Number(id)];
          if (row !== undefined) form.type(takenRow(row, textAt(form.typed, "prepared_as")));
          props.onChosen();
        }}
        none={YIELD.no_row}
      />
    </FieldGroup>
  );
}

function choiceOf(row: YieldRow, at: number) {
  const says = publishedYield(row);
  const percent = amountWords(plain(rounded(says.percent, 1)), "%");
  return {
    id: String(at),
    name: row.item,
    isRecorded: false,
    sub: `${row.state_out}. ${row.source}`,
    right: percent,
  };
}

/** What was written already on what it is prepared as stays. */
function takenRow(row: YieldRow, preparedAs: string): Typed {
  const { percent, state_out } = publishedYield(row);
  return {
    yield_percent: plain(percent),
    yield_by: "table",
    yield_source: row.source,
    prepared_as: preparedAs === "" ? state_out.slice(0, NAME_CHARS_MAX) : preparedAs,
  };
}
