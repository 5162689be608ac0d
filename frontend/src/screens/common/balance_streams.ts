/** Where the mass of a batch went, as the streams of its picture: in as it came, out to its ends. */
import type { BatchState } from "../../calc/batches.ts";
import {
  asDouble,
  type Decimal,
  difference,
  parseDecimal,
  plain,
  significant,
  total,
  ZERO,
} from "../../calc/numbers.ts";
import { fromBase } from "../../calc/units.ts";
import type { BalanceStream } from "../../parts/BalancePicture.tsx";
import { BALANCE, lossWord } from "../../text/finish.ts";
import { lineName } from "./batches.ts";

const PLACES = 3;
const U_DIGITS = 2;

/** Grams as kg, as many places as a kitchen scale shows. */
export function kg(grams: string | null): string | null {
  return grams === null ? null : plain(fromBase(parseDecimal(grams), "kg", PLACES));
}

/** A standard uncertainty in g as kg. */
export function kgReach(grams: string | null): string | null {
  if (grams === null) return null;
  return significant(asDouble(fromBase(parseDecimal(grams), "kg", PLACES + PLACES)), U_DIGITS);
}

export type Balanced = BatchState["balance"];

function recorded(id: string, name: string, grams: string | null): BalanceStream {
  return { id, name, amount: kg(grams), sort: "recorded" };
}

function unaccounted(
  id: string,
  name: string,
  { g, u }: { g: string | null; u: string | null },
): BalanceStream {
  return { id, name, amount: kg(g), sort: "unaccounted", uncertainty: kgReach(u) };
}

/** As it came: what preparation took from it goes out again. */
export function streamsIn(batch: BatchState): BalanceStream[] {
  return batch.lines
    .filter((line) => line.unit === "g" && line.in_base !== null)
    .map((line) => recorded(line.line, lineName(line), line.in_base));
}

/** Where it went, in the order of the work: preparation, kettle, packs. */
export function streamsOut({
  balance,
  losses,
}: Pick<BatchState, "balance" | "losses">): BalanceStream[] {
  return [
    ...preparationOut(balance),
    { id: "steam", name: BALANCE.steam, amount: kg(balance.evaporated), sort: "computed" },
    recorded("good", BALANCE.good, balance.good_out),
    recorded("rejected", BALANCE.rejected, rejectedOf(balance)),
    recorded("residue", BALANCE.residue, balance.residue),
    recorded("samples", BALANCE.samples, balance.samples),
    ...otherLosses(losses),
    unaccounted("unaccounted", BALANCE.unaccounted, {
      g: balance.filling_unaccounted,
      u: balance.unaccounted_u,
    }),
  ];
}

/** Nothing where no line is prepared. */
function preparationOut(balance: Balanced): BalanceStream[] {
  if (balance.prepared_in === null) return [];
  return [
    ...balance.preparation_losses.map(({ reason, amount }) =>
      recorded(`prepared-${reason}`, lossWord(reason), amount),
    ),
    unaccounted("preparation", BALANCE.preparation_unaccounted, {
      g: balance.preparation_unaccounted,
      u: balance.preparation_unaccounted_u,
    }),
  ];
}

const SHOWN_APART = ["residue", "sample"];

/** Spilled, broken and the like, reason by reason; a loss without a stage is one of the filling. */
function otherLosses(losses: BatchState["losses"]): BalanceStream[] {
  const sums = new Map<string, Decimal>();
  for (const { reason, stage, amount, unit } of losses) {
    const why = reason ?? "other";
    if (unit !== "g" || amount === null || SHOWN_APART.includes(why)) continue;
    if ((stage ?? "filling") !== "filling") continue;
    sums.set(why, total([sums.get(why) ?? ZERO, parseDecimal(amount)]));
  }
  return [...sums].map(([why, grams]) => recorded(`lost-${why}`, lossWord(why), plain(grams)));
}

function rejectedOf(balance: BatchState["balance"]): string | null {
  // Without a number of rejects the mass filled is that of the good packs: nothing, not nought.
  if (balance.rejects_percent === null) return null;
  if (balance.filled === null || balance.good_out === null) return null;
  return plain(difference(parseDecimal(balance.filled), parseDecimal(balance.good_out)));
}
