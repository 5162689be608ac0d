/** A recipient: one step forward. */
import { recipients } from "../../state/stock.ts";
import { Partner } from "./Partner.tsx";

/** `#/set-up/recipients/:id`. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <Partner type="recipient" id={params.id ?? "new"} list={recipients.value} />;
}
