/** Keeping a receipt: the source if it is new, the receipt, and the price apart. */
import { lettersOf, lotCode, nextNumber } from "../../calc/codes.ts";
import { typedNumber } from "../../parts/typing.ts";
import { record } from "../../state/record.ts";
import { current } from "../../state/session.ts";
import { remember, remembered } from "../../state/settings.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { cooperative, type Defined } from "../../state/stock.ts";
import type { Saved } from "../../state/types.ts";
import { newId, today } from "../shared/edge.ts";
import { textField } from "../shared/lots.ts";
import { type ReceiveTyped, receiptOf } from "./typed.ts";

const RECENT_MAX = 3;

/** The code this phone gives next to a lot of this material; null while that is not known. */
export function nextCode(material: Defined | null): string | null {
  const mark = current.value?.mark;
  if (material === null || mark === undefined) return null;
  const letters = textField(material, "letters") ?? lettersOf(material.name);
  const stem = { on: today(), mark };
  const codes = sheetsOf<unknown>("lot").value.map(({ subject }) => subject.slice("lot:".length));
  return lotCode(letters, { ...stem, number: nextNumber(codes, letters, stem) });
}

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
