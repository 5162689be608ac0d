/** One pack of a product: how much is in it, what it is called, what it costs. */
import { cooperative } from "../../state/stock.ts";
import { HINTS } from "../../text/set_up.ts";
import { textField } from "../common/lots.ts";
import { NumberOf, WordsOf } from "./FormFields.tsx";
import { type FormAtWork, textAt } from "./form.ts";

const WORD_CHARS_MAX = 20;

/** Without a currency there is nothing to write a price in. */
export function PackOf({ form }: { form: FormAtWork }) {
  const currency = textField(cooperative.value, "currency");
  return (
    <>
      <NumberOf form={form} name="pack_net" unit={textAt(form.typed, "pack_net_unit")} />
      <WordsOf form={form} name="pack_word" hint={HINTS.pack_word} mostChars={WORD_CHARS_MAX} />
      {currency !== null && <NumberOf form={form} name="price" unit={currency} />}
    </>
  );
}
