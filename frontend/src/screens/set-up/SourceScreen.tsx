/** A source: one step back. */
import { sources } from "../../state/stock.ts";
import { Partner } from "./Partner.tsx";

/** `#/set-up/sources/:id`. */
export function Screen({ params }: { params: Record<string, string> }) {
  return <Partner type="source" id={params.id ?? "new"} list={sources.value} />;
}
