import { quantityIn } from "../../calc/bodies.ts";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { FieldGroup, NumberField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { correct, takeBack } from "../../state/record.ts";
import { goTo } from "../../state/route.ts";
import { sheet } from "../../state/sheets.ts";
import { APP_TEXT } from "../../text/app.ts";
import { CORRECT } from "../../text/correct.ts";
import { amountWords } from "../../text/numbers.ts";
import { type Drafted, useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { type HistoryRow, historyOf } from "../common/history.ts";
import { Instead } from "../common/Instead.tsx";
import { later } from "../common/later.tsx";
import { NumberKeys } from "../common/NumberKeys.tsx";
import { beside, besideNone, type Hindrance, hindrance } from "../common/sentences.ts";
import { inForce } from "../common/standing.ts";
import { useFound } from "../common/use_found.ts";
import { useHeld } from "../common/use_held.ts";
import { lotWords } from "./history.ts";

const CorrectFill = later(
  async () => (await import("./CorrectFill.tsx")).CorrectFill,
  APP_TEXT.part_missing,
);
const BLANK = { wrong: "amount", amount: "", unit: "", reason: "" };
const REASON_CHARS_MAX = 600;
const WRONGS = [
  { value: "amount", word: CORRECT.wrong_amount },
  { value: "never", word: CORRECT.never },
] as const;

/** `params.lot` and `params.entry`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const { lot = "", entry = "" } = params;
  const held = useHeld(`lot:${lot}`, sheet<unknown>(`lot:${lot}`).value);
  const row = historyOf(held.value, lotWords(lot, [])).find((each) => each.id === entry);
  const body = inForce(held.value, entry);
  if (row?.kind === "fill_checked" && body !== null) {
    return <CorrectFill lot={lot} entry={entry} />;
  }
  if (row === undefined || body === null) {
    return (
      <Instead
        where={CORRECT.where}
        title={lot}
        benchName={CORRECT.bench}
        back={`#/lot/${lot}`}
        says={CORRECT.not_held}
      />
    );
  }
  return <CorrectForm lot={lot} row={row} body={body} />;
}

function CorrectForm(props: { lot: string; row: HistoryRow; body: Record<string, unknown> }) {
  const { lot, row, body } = props;
  const amount = quantityIn(body, "amount");
  const form = useDrafted(`correct/${row.id}`, { ...BLANK, unit: amount?.unit ?? "" });
  const found = useFound(form.typed);
  const typed = form.typed.value;
  const isVoid = typed.wrong === "never" || amount === null;
  const should = typedNumber(typed.amount);
  const lacks =
    !isVoid && should === null ? "amount" : typed.reason.trim() === "" ? "reason" : null;

  async function save() {
    const reason = typed.reason.trim();
    const answer = isVoid
      ? await takeBack(row.id, reason)
      : await correct(row.id, { ...body, amount: { amount: should, unit: typed.unit } }, reason);
    found.value = hindrance(answer);
    if (!("saved" in answer)) return;
    form.clear();
    goTo(`/lot/${lot}`);
  }
  return (
    <Frame
      where={`${CORRECT.where}, ${lot}`}
      title={`${row.did} ${row.amount}`}
      gauge={<HeadGauge />}
      benchName={CORRECT.bench}
      hasKeypad
      bench={
        <>
          {!isVoid && (
            <NumberKeys
              typed={typed.amount}
              onTyped={(value) => form.type({ amount: value })}
              units={[typed.unit]}
              unit={typed.unit}
              onUnit={(unit) => form.type({ unit })}
            />
          )}
          <Foot>
            <BackKey href={`#/lot/${lot}`} />
            <MainKey
              words={
                isVoid ? CORRECT.save_void : CORRECT.save_amount(amountWords(should, typed.unit))
              }
              notReady={
                lacks === null
                  ? null
                  : lacks === "amount"
                    ? CORRECT.type_amount
                    : CORRECT.type_reason
              }
              onNotReady={() => focusFirst(lacks ?? undefined)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, ["body.amount", "reason"])} />
      <p class="second">{CORRECT.was(`${row.did} ${row.amount} ${row.says}`)}</p>
      <CorrectFields form={form} hasAmount={amount !== null} found={found.value} />
    </Frame>
  );
}

function CorrectFields(props: {
  form: Drafted<typeof BLANK>;
  hasAmount: boolean;
  found: Hindrance | null;
}) {
  const { form, hasAmount, found } = props;
  const typed = form.typed.value;
  const isVoid = typed.wrong === "never";
  return (
    <>
      {hasAmount && (
        <FieldGroup label={CORRECT.choose}>
          <CupChoice
            name={CORRECT.choose}
            options={WRONGS}
            chosen={isVoid ? "never" : "amount"}
            onChoose={(wrong) => form.type({ wrong })}
          />
        </FieldGroup>
      )}
      {hasAmount && !isVoid && (
        <div id="field-amount">
          <NumberField
            label={CORRECT.amount}
            typed={typed.amount}
            unit={typed.unit}
            isOpen
            onOpen={() => focusFirst("amount")}
            refusal={beside(found, "body.amount")}
          />
        </div>
      )}
      <div id="field-reason">
        <TextField
          label={CORRECT.reason}
          hint={CORRECT.reason_hint}
          value={typed.reason}
          onValue={(reason) => form.type({ reason })}
          mostChars={REASON_CHARS_MAX}
          refusal={beside(found, "reason")}
        />
      </div>
    </>
  );
}
