/** A source or a recipient: one step back, one step forward. Any member may write them. */
import type { Defined } from "../../state/stock.ts";
import { HINTS } from "../../text/set_up.ts";
import { WordsOf } from "./FormFields.tsx";
import { FormFrame } from "./FormFrame.tsx";
import { type FormPlan, textAt, useForm } from "./form.ts";
import { NotHere } from "./NotHere.tsx";
import { textsOf, withoutName, wordsField } from "./typed.ts";
import "./set_up.css";

const NAME_CHARS_MAX = 120;
const WORDS_CHARS_MAX = 600;
const NAMES = ["name", "contact", "address", "note"];

function planOf(type: "source" | "recipient"): FormPlan {
  return {
    type,
    back: `/set-up/${type}s`,
    blank: () => ({ name: "", contact: "", address: "", note: "" }),
    typedOf: (fields) => textsOf(fields, NAMES),
    bodyOf: (typed) => ({
      name: textAt(typed, "name").trim(),
      ...wordsField(typed, "contact"),
      ...wordsField(typed, "address"),
      ...wordsField(typed, "note"),
    }),
    missing: withoutName,
    numbers: {},
  };
}

const PLANS = { source: planOf("source"), recipient: planOf("recipient") };

/** One of either type by its id, `new` for one that is not set up yet. */
export function Partner(props: {
  type: "source" | "recipient";
  id: string;
  list: readonly Defined[];
}) {
  const { type, id } = props;
  const defined = props.list.find((each) => each.id === id) ?? null;
  if (id !== "new" && defined === null) return <NotHere area={`${type}s`} />;
  return <PartnerForm type={type} id={id} defined={defined} />;
}

function PartnerForm(props: { type: "source" | "recipient"; id: string; defined: Defined | null }) {
  const { type, id, defined } = props;
  const form = useForm(PLANS[type], { id, inForce: defined?.fields ?? null });
  return (
    <FormFrame
      form={form}
      area={`${type}s`}
      inForce={defined?.fields ?? null}
      findings={defined?.findings ?? []}
      shown={NAMES}
    >
      <WordsOf form={form} name="name" mostChars={NAME_CHARS_MAX} />
      <WordsOf form={form} name="contact" hint={HINTS.contact} mostChars={WORDS_CHARS_MAX} />
      <WordsOf form={form} name="address" mostChars={WORDS_CHARS_MAX} lines={2} />
      <WordsOf form={form} name="note" mostChars={WORDS_CHARS_MAX} lines={2} />
    </FormFrame>
  );
}
