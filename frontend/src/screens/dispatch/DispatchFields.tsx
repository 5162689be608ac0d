/** The fields of a dispatch: to whom, from where, which lot, how much, at which price. */
import type { Signal } from "@preact/signals";
import { Caution } from "../../parts/Caution.tsx";
import { NumberField, TextField } from "../../parts/Fields.tsx";
import { cooperative, places, recipients, stockAt } from "../../state/stock.ts";
import { DISPATCH } from "../../text/stall.ts";
import { freeFirst, lotSays } from "../common/against.ts";
import { askedPrice, packOf } from "../common/asked.ts";
import { choicesOf } from "../common/choices.ts";
import { DespiteField } from "../common/Despite.tsx";
import type { Drafted } from "../common/drafted.ts";
import { amountText, materialOf, textField } from "../common/lots.ts";
import { Picker } from "../common/Picker.tsx";
import { beside, type Hindrance } from "../common/sentences.ts";
import type { DispatchTyped } from "./typed.ts";

/** The number the keypad types into. */
export type DispatchOpen = "amount" | "price" | null;

interface DispatchFieldsProps {
  form: Drafted<DispatchTyped>;
  open: Signal<DispatchOpen>;
  found: Hindrance | null;
  recent: readonly string[];
}

const DOCUMENT_CHARS_MAX = 120;

export function DispatchFields(props: DispatchFieldsProps) {
  const { form, found, recent } = props;
  const typed = form.typed.value;
  return (
    <>
      <Picker
        field="recipient"
        label={DISPATCH.recipient}
        items={choicesOf(recipients.value)}
        chosen={typed.recipient}
        onChoose={(recipient) => form.type({ recipient: recipient ?? "" })}
        recent={recent}
        none={DISPATCH.recipient_none}
        write={DISPATCH.write}
        newName={typed.recipient_name}
        onName={(recipient_name) => form.type({ recipient_name })}
        refusal={beside(found, "recipient") ?? beside(found, "name")}
      />
      <Picker
        field="place"
        label={DISPATCH.place}
        items={choicesOf(places.value)}
        chosen={typed.place}
        onChoose={(place) => form.type({ place: place ?? "", lot: "" })}
        none={DISPATCH.place_none}
        refusal={beside(found, "place")}
      />
      {typed.place !== "" && <WhichLot form={form} found={found} />}
      {typed.lot !== "" && (
        <DespiteField
          lots={[typed.lot]}
          reason={typed.despite}
          onReason={(despite) => form.type({ despite })}
        />
      )}
      <Numbers {...props} />
      <TextField
        label={DISPATCH.document}
        value={typed.document}
        onValue={(document) => form.type({ document })}
        mostChars={DOCUMENT_CHARS_MAX}
        isCode
        refusal={beside(found, "document")}
      />
      {typed.place !== "" && <Caution about="shelf_life" />}
    </>
  );
}

/** First expired first; the usual price of the product is proposed with it. */
function WhichLot({ form, found }: { form: Drafted<DispatchTyped>; found: Hindrance | null }) {
  const typed = form.typed.value;
  const lots = freeFirst(stockAt(typed.place));
  function choose(code: string | null) {
    const lot = lots.find((each) => each.lot === code);
    const pack_net = packOf(code);
    const usual = askedPrice(lot?.material ?? null, { for_whom: "business", pack_net }) ?? "";
    form.type({ lot: code ?? "", despite: "", price: typed.price === "" ? usual : typed.price });
  }
  return (
    <Picker
      field="lot"
      label={DISPATCH.lot}
      items={lots.map((lot) => ({
        id: lot.lot,
        name: materialOf(lot.material)?.name ?? lot.lot,
        sub: lotSays(lot.lot),
        right: amountText(lot.amount, lot.unit, materialOf(lot.material)),
      }))}
      chosen={typed.lot}
      onChoose={choose}
      none={DISPATCH.lot_none}
      refusal={beside(found, "lot")}
    />
  );
}

function Numbers({ form, open, found }: DispatchFieldsProps) {
  const typed = form.typed.value;
  const currency = textField(cooperative.value, "currency");
  const unit = stockAt(typed.place).find((each) => each.lot === typed.lot)?.unit ?? null;
  const toggle = (field: "amount" | "price") => () => {
    open.value = open.value === field ? null : field;
  };
  return (
    <>
      <div id="field-amount">
        <NumberField
          label={DISPATCH.amount}
          typed={typed.amount}
          unit={unit}
          isOpen={open.value === "amount"}
          onOpen={toggle("amount")}
          refusal={beside(found, "amount")}
        />
      </div>
      <div id="field-price_each">
        <NumberField
          label={DISPATCH.price}
          typed={typed.price}
          unit={currency}
          isOpen={open.value === "price"}
          onOpen={toggle("price")}
          refusal={beside(found, "price_each")}
        />
      </div>
    </>
  );
}
