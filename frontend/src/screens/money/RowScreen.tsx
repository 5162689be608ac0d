/** A row of work or expense that was written wrong: corrected or void, with the reason. */
import type { CostState, Spent, Worked } from "../../calc/money.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { NumberField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Facts, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { correct, takeBack } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { sheet } from "../../state/sheets.ts";
import type { Saved } from "../../state/types.ts";
import { MONEY, PART_WORDS, ROW } from "../../text/money.ts";
import { amountWords } from "../../text/numbers.ts";
import { useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { Instead } from "../common/Instead.tsx";
import { beside, besideNone, type Hindrance, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { useHeld } from "../common/use_held.ts";
import { money, workerName } from "./costs.ts";
import { rowBody } from "./typed.ts";

type Row = Worked | Spent;

/** `#/cost/:batch/row/:entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const batch = params.batch ?? "";
  const state = sheet<CostState>(`cost:${batch}`).value?.state ?? null;
  useHeld(`cost:${batch}`, state); // a correction needs the entry itself
  const rows: Row[] = [...(state?.labour ?? []), ...(state?.expenses ?? [])];
  const row = rows.find((each) => each.entry === params.entry);
  if (row !== undefined) return <Form key={row.entry} batch={batch} row={row} />;
  return (
    <Instead
      where={ROW.where}
      title={ROW.title}
      benchName={ROW.bench}
      back={`#/cost/${batch}`}
      on={{ words: MONEY.see_cost, href: `#/cost/${batch}` }}
      says={ROW.gone}
    />
  );
}

function isWork(row: Row): row is Worked {
  return "minutes" in row;
}

/** What stands in the record, as people say it. */
function saysOf(row: Row): { name: string; value: string } {
  if (isWork(row)) {
    const name = workerName(row.member ?? row.name ?? "");
    return { name, value: amountWords(row.minutes, "min") };
  }
  const name = row.says ?? PART_WORDS[row.part ?? ""] ?? "";
  return { name, value: money(row.amount, row.currency) };
}

function Form({ batch, row }: { batch: string; row: Row }) {
  const form = useDrafted(`cost/row/${row.entry}`, { number: "", reason: "" });
  const found = useFound(form.typed);
  const { number, reason } = form.typed.value;
  const unit = isWork(row) ? "min" : row.currency;
  const lacks = missing(number, reason);

  async function keep(act: Promise<Saved>) {
    const answer = await act;
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    form.clear();
    goTo(`/cost/${batch}`);
  }
  function voided() {
    const why = reason.trim();
    if (why === "") return focusFirst("reason");
    void keep(takeBack(row.entry, why));
  }
  return (
    <Frame
      where={ROW.where}
      title={saysOf(row).name}
      isRecorded
      gauge={<HeadGauge />}
      benchName={ROW.bench}
      hasKeypad
      bench={
        <>
          <Keypad typed={number} onTyped={(typed) => form.type({ number: typed })} />
          <Foot>
            <BackKey href={`#/cost/${batch}`} />
            <MainKey
              words={ROW.save}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() =>
                void keep(correct(row.entry, rowBody(row, batch, number), reason.trim()))
              }
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, ["minutes", "amount", "reason"])} />
      <Facts rows={[{ name: ROW.so_far, value: saysOf(row).value }]} />
      <div id="field-number">
        <NumberField
          label={ROW.rather}
          typed={number}
          unit={unit}
          isOpen
          onOpen={() => undefined}
          refusal={beside(found.value, "minutes") ?? beside(found.value, "amount")}
        />
      </div>
      <div id="field-reason">
        <TextField
          label={ROW.reason}
          value={reason}
          onValue={(typed) => form.type({ reason: typed })}
          refusal={beside(found.value, "reason")}
        />
      </div>
      <p class="key-row">
        <Cup onPress={voided}>{ROW.void}</Cup>
      </p>
    </Frame>
  );
}

function missing(number: string, reason: string): Hindrance | null {
  if (typedNumber(number) === null) return { field: "number", sentence: ROW.choose_number };
  return reason.trim() === "" ? { field: "reason", sentence: ROW.choose_reason } : null;
}
