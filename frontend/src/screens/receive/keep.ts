/** Keeping a receipt: the source if it is new, the receipt, and the price apart; all or nothing. */
import { typedNumber } from "../../parts/typing.ts";
import { type Part, recordTogether } from "../../state/record.ts";
import { remember, remembered } from "../../state/settings.ts";
import { cooperative, sources } from "../../state/stock.ts";
import type { SavedTogether } from "../../state/types.ts";
import { newId } from "../common/edge.ts";
import { textField } from "../common/lots.ts";
import { sameNameSays } from "../common/namesakes.ts";
import { type ReceiveTyped, receiptOf } from "./typed.ts";

const RECENT_MAX = 3;

/** The last three sources as this person chose them. */
export function recentSources(): string[] {
  const kept = remembered("receive.sources");
  return Array.isArray(kept) ? kept.filter((each) => typeof each === "string") : [];
}

/** The key of the form's draft. */
export const FORM = "receive";

/**
 * Source if it is new, receipt under this code, and the price (an entry of its own, for not
 * everybody sees it), kept together with the end of the draft.
 */
export async function keepAll(
  typed: ReceiveTyped,
  code: string,
): Promise<SavedTogether | { taken: string }> {
  const isNew = typed.source === "";
  const source = isNew ? newId() : typed.source;
  const taken = isNew ? sourceTaken(typed.source_name) : null;
  if (taken !== null) return { taken };
  const answer = await recordTogether(
    [
      ...(isNew
        ? [{ kind: "source_defined", body: { source, name: typed.source_name } } as const]
        : []),
      { kind: "receipt", body: receiptOf({ ...typed, source }, code) },
      ...pricePaid(typed, code),
    ],
    FORM,
  );
  if ("saved" in answer) {
    const others = recentSources().filter((id) => id !== source);
    remember("receive.sources", [source, ...others].slice(0, RECENT_MAX));
    remember("receive.place", typed.place);
    remember(`receive.unit.${typed.material}`, typed.unit);
  }
  return answer;
}

function sourceTaken(name: string): string | null {
  return sameNameSays(sources.value, { id: "", name, before: null });
}

function pricePaid(typed: ReceiveTyped, lot: string): Part[] {
  const price = typedNumber(typed.price);
  const currency = textField(cooperative.value, "currency");
  if (price === null || currency === null) return [];
  return [{ kind: "price_paid", body: { lot, price, currency } }];
}
