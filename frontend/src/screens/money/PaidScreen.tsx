/** What was paid for a received lot, also when it is written late or was wrong. */
import { useSignal } from "@preact/signals";
import type { PriceState } from "../../calc/lot_prices.ts";
import type { LotState } from "../../calc/stock.ts";
import { BackKey, MainKey } from "../../parts/Cup.tsx";
import { NumberField, TextField } from "../../parts/Fields.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { Facts, Notice, Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { correct, record } from "../../state/record.ts";
import { sheet } from "../../state/sheets.ts";
import { MONEY, PAID } from "../../text/money.ts";
import { useDrafted } from "../common/drafted.ts";
import { focusFirst } from "../common/focus.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { amountText, materialOf } from "../common/lots.ts";
import { beside, besideNone, hindrance } from "../common/sentences.ts";
import { useFound } from "../common/use_found.ts";
import { useHeld } from "../common/use_held.ts";
import { currency, money, typedMoney } from "./costs.ts";
import { type PaidTyped, paidMissing } from "./typed.ts";

/** `#/paid/:lot`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const code = params.lot ?? "";
  const lot = sheet<LotState>(`lot:${code}`).value?.state ?? null;
  if (lot === null || lot.made_by !== "receipt") {
    return <Said code={code} words={lot === null ? MONEY.not_here_lot : PAID.not_received} />;
  }
  return <Form key={code} lot={lot} />;
}

function Said({ code, words }: { code: string; words: string }) {
  return (
    <Frame
      where={PAID.title}
      title={code}
      gauge={<HeadGauge />}
      benchName={PAID.bench}
      bench={
        <Foot>
          <BackKey href={`#/lot/${code}`} />
          <span />
        </Foot>
      }
    >
      <Notice isLive>{words}</Notice>
    </Frame>
  );
}

function Form({ lot }: { lot: LotState }) {
  const code = lot.lot;
  const before = sheet<PriceState>(`price:${code}`).value?.state ?? null;
  useHeld(`price:${code}`, before); // a correction needs the entry itself
  const entry = before?.price == null ? null : before.entry;
  const form = useDrafted<PaidTyped>(`paid/${code}`, { price: "", reason: "" });
  const found = useFound(form.typed);
  const done = useSignal<string | null>(null);
  const typed = form.typed.value;
  const lacks = paidMissing(typed, { currency: currency(), isCorrected: entry !== null });

  async function save() {
    const price = typedNumber(typed.price) ?? "";
    const body = { lot: code, price, currency: currency() ?? "" };
    const answer = await (entry === null
      ? record("price_paid", body)
      : correct(entry, body, typed.reason.trim()));
    found.value = hindrance(answer);
    if (!("saved" in answer)) return focusFirst(found.value?.field);
    form.clear();
    done.value = PAID.done(typedMoney(price));
  }

  if (done.value !== null) return <Said code={code} words={done.value} />;
  return (
    <Frame
      where={`${PAID.title}, ${code}`}
      title={materialOf(lot.material)?.name ?? code}
      isRecorded
      gauge={<HeadGauge />}
      benchName={PAID.bench}
      hasKeypad
      bench={
        <>
          <Keypad typed={typed.price} onTyped={(price) => form.type({ price })} />
          <Foot>
            <BackKey href={`#/lot/${code}`} />
            <MainKey
              words={PAID.save(typedMoney(typed.price))}
              notReady={lacks?.sentence ?? null}
              onNotReady={() => focusFirst(lacks?.field)}
              onPress={() => void save()}
            />
          </Foot>
        </>
      }
    >
      <Refusal sentence={besideNone(found.value, ["price", "reason"])} />
      <Facts
        rows={[
          {
            name: PAID.came,
            value: amountText(lot.made, lot.unit ?? "pc", materialOf(lot.material)),
          },
          { name: PAID.now, value: money(before?.price ?? null, before?.currency ?? null) },
        ]}
      />
      <div id="field-price">
        <NumberField
          label={PAID.price}
          typed={typed.price}
          unit={currency()}
          isOpen
          onOpen={() => undefined}
          refusal={beside(found.value, "price")}
        />
      </div>
      {entry !== null && (
        <div id="field-reason">
          <TextField
            label={PAID.reason}
            value={typed.reason}
            onValue={(reason) => form.type({ reason })}
            refusal={beside(found.value, "reason")}
          />
        </div>
      )}
    </Frame>
  );
}
