/** Keeping a receipt: the source if it is new, the receipt, and the price apart. */
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { remember, remembered } from "../../state/settings.ts";
import { cooperative } from "../../state/stock.ts";
import type { Saved } from "../../state/types.ts";
import { newId } from "../shared/edge.ts";
import { textField } from "../shared/lots.ts";
import { type ReceiveTyped, receiptOf } from "./typed.ts";

const RECENT_MAX = 3;

/** The last three sources as this person chose them. */
export function recentSources(): string[] {
  const kept = remembered("receive.sources");
  return Array.isArray(kept) ? kept.filter((each) => typeof each === "string") : [];
}

/** A new source is set up first; answers its id, or why not. */
export async function keptSource(typed: ReceiveTyped): Promise<{ id: string } | Saved> {
  if (typed.source !== "") return { id: typed.source };
  const id = newId();
  const answer = await record("source_defined", { source: id, name: typed.source_name });
  return "saved" in answer ? { id } : answer;
}

/** The receipt under this code; what was chosen is remembered for the next one. */
export async function keepReceipt(typed: ReceiveTyped, code: string): Promise<Saved> {
  const answer = await record("receipt", receiptOf(typed, code));
  if ("saved" in answer) {
    const others = recentSources().filter((id) => id !== typed.source);
    remember("receive.sources", [typed.source, ...others].slice(0, RECENT_MAX));
    remember("receive.place", typed.place);
    remember(`receive.unit.${typed.material}`, typed.unit);
  }
  return answer;
}

/** The price, an entry of its own (not everybody sees it); null where none was typed. */
export async function keepPrice(typed: ReceiveTyped, code: string): Promise<Saved | null> {
  const price = typedNumber(typed.price);
  const currency = textField(cooperative.value, "currency");
  if (price === null || currency === null) return null;
  return record("price_paid", { lot: code, price, currency });
}
