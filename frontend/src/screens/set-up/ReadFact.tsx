/** A value to read where one may not write it; a dash where there is none. */
import { Facts } from "../../parts/Plain.tsx";
import { valueWords } from "./values.ts";

/** `field` says how the value is read: ids by name, codes by word. */
export function ReadFact(props: { label: string; field: string; value: unknown }) {
  const words = valueWords(props.field, props.value);
  return <Facts rows={[{ name: props.label, value: <span class="rec">{words}</span> }]} />;
}
