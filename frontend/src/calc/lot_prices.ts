/** What a lot cost: kept on a sheet of its own, because not everybody sees it. */

import { textIn } from "./bodies.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  type Note,
  notesAbout,
  settled,
} from "./record.ts";
import { idIn } from "./subjects.ts";

export const PRICE_FOLD = 1;

/** What a received lot cost as a whole, as last recorded. */
export interface PriceState {
  readonly lot: string;
  readonly price: string | null;
  readonly currency: string | null;
  readonly entry: string | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/**
 * Fold all entries about `price:<lot code>`; of several prices the last stands, and the finding
 * `two_prices` names it.
 */
export function priceState(subject: string, facts: Iterable<Fact>): PriceState {
  const code = idIn(subject);
  const record = asItStands(facts);
  const paid = record.standing.filter(
    (entry) => entry.kind === "price_paid" && textIn(entry.body, "lot") === code,
  );
  const last = paid.at(-1);
  const findings = [...record.findings];
  if (last !== undefined && paid.length > 1) {
    findings.push(finding("two_prices", "two_prices", { entry: last.id }));
  }
  return {
    lot: code,
    price: textIn(last?.body ?? {}, "price"),
    currency: textIn(last?.body ?? {}, "currency"),
    entry: last?.id ?? null,
    findings: settled(findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}
