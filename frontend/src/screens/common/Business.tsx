/** A business that is to be called: how to reach it, and how much of which lot it got. */
import { recipients } from "../../state/stock.ts";
import { CALL } from "../../text/trace.ts";
import { textField } from "./lots.ts";
import "../trace/trace.css";

/** A business behind a lot, with how much of which lot it got. */
export interface ToCall {
  recipient: string;
  name: string;
  got: { lot: string; amount: string }[];
}

/** One on the list. */
export function Business({ business }: { business: ToCall }) {
  const defined = recipients.value.find((each) => each.id === business.recipient) ?? null;
  const contact = textField(defined, "contact");
  const address = textField(defined, "address");
  return (
    <section class="to-call">
      <h2 class="rec">{business.name}</h2>
      <p class={contact === null ? "second" : "rec"}>{contact ?? CALL.no_contact}</p>
      {address !== null && <p class="rec">{address}</p>}
      <ul>
        {business.got.map((each) => (
          <li key={each.lot}>
            <b>{CALL.amount_of(each.amount, each.lot)}</b>
          </li>
        ))}
      </ul>
    </section>
  );
}
