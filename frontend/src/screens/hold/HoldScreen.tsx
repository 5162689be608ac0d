/** The hold of a batch or lot: what keeps it back, who decided, and the form to do either. */
import { HOLD } from "../../text/holds.ts";
import { Instead } from "../common/Instead.tsx";
import { Held } from "./Held.tsx";
import { thingOf } from "./thing.ts";
import "../common/rows.css";

/** `#/batch/:batch/hold` and `#/lot/:lot/hold`. */
export function Screen({ params }: { params: Record<string, string> }) {
  const thing = thingOf(params);
  return thing === null ? <NotHere /> : <Held key={thing.subject} thing={thing} />;
}

function NotHere() {
  return (
    <Instead
      where={HOLD.where}
      title={HOLD.where}
      benchName={HOLD.bench}
      back="#/"
      on={{ words: HOLD.where, href: "#/stock" }}
      says={HOLD.not_here}
    />
  );
}
