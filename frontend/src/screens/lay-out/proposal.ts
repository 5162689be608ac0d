/** Which lots a line takes, first expired first, and what is missing. */
import type { Against } from "../../calc/against.ts";
import { decimalIn } from "../../calc/bodies.ts";
import { type Decimal, difference, parseDecimal, plain, ZERO } from "../../calc/numbers.ts";
import { asPurchased } from "../../calc/recipes.ts";
import { TEXT_ORDER } from "../../calc/record.ts";
import type { LotState } from "../../calc/stock.ts";
import { fromBase, inBase, isUnit } from "../../calc/units.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { againstUse, type LotInStock, lotsOf } from "../../state/stock.ts";
import type { BatchLine } from "../common/batches.ts";

const PLACES = 6;

/** A lot and how much of it the line takes; amounts in the lot's base unit. */
export interface TakenLot {
  lot: LotInStock;
  takes: string;
  is_emptied: boolean;
}

/** A lot that something speaks against. */
export interface LotAgainst {
  lot: LotInStock;
  reasons: readonly Against[];
}

/** The lots for a line; `missing` in the base unit, null when there is enough. */
export interface Proposal {
  taken: TakenLot[];
  /** Held, recalled, or past a use by or expires on date: named, never proposed. */
  against: LotAgainst[];
  missing: { amount: string; unit: string } | null;
}

/** Lots in order of use until the planned amount is met. */
export function proposalFor(line: BatchLine, on: string): Proposal {
  // Below zero at one place, a lot may still stand at another: the whole of it counts.
  const lots = lotsOf(line.material ?? "");
  const judged = lots.map((lot) => ({ lot, reasons: againstUse(lot.lot, on) }));
  const fit = judged.filter(({ reasons }) => reasons.length === 0).map(({ lot }) => lot);
  const against = judged.filter(({ reasons }) => reasons.length > 0);
  if (line.planned === null || !isUnit(line.planned.unit)) {
    return { taken: fit.slice(0, 1).map(whole), against, missing: null };
  }
  let left = neededAsBought(line, inBase(parseDecimal(line.planned.amount), line.planned.unit));
  const taken: TakenLot[] = [];
  for (const lot of fit) {
    if (left.compare(ZERO) <= 0) break;
    const stands = parseDecimal(lot.amount);
    const isEmptied = stands.compare(left) <= 0;
    const takes = isEmptied ? stands : left;
    taken.push({ lot, takes: plain(takes), is_emptied: isEmptied });
    left = difference(left, takes);
  }
  const isShort = left.compare(ZERO) > 0;
  return { taken, against, missing: isShort ? { amount: plain(left), unit: baseOf(line) } : null };
}

/** Lots stand as bought: of a line that is planned prepared its yield says how much that takes. */
function neededAsBought(line: BatchLine, planned: Decimal): Decimal {
  const percent = line.state === "prepared" ? decimalIn({ ...line.yields }, "percent") : null;
  if (percent === null || percent.isZero()) return planned;
  return asPurchased(planned, percent, PLACES);
}

const MOST_USED_UP = 2;

/** Lots of the line's material with nothing left by the record, the youngest first. */
export function usedUp(line: BatchLine): string[] {
  return sheetsOf<LotState>("lot")
    .value.map(({ state }) => state)
    .filter((lot) => lot.material === line.material && lot.condition !== "refused")
    .filter((lot) => parseDecimal(lot.on_hand).compare(ZERO) <= 0)
    .sort((a, b) => TEXT_ORDER(b.made_on ?? "", a.made_on ?? "") || TEXT_ORDER(b.lot, a.lot))
    .slice(0, MOST_USED_UP)
    .map((lot) => lot.lot);
}

function whole(lot: LotInStock): TakenLot {
  return { lot, takes: lot.amount, is_emptied: true };
}

function baseOf(line: BatchLine): string {
  return line.unit ?? "g";
}

/** The amount of a lot in the unit the line is written in. */
export function inLineUnit(taken: TakenLot, line: BatchLine): { amount: string; unit: string } {
  const unit = line.planned?.unit ?? taken.lot.unit;
  return { amount: plain(fromBase(parseDecimal(taken.takes), unit, PLACES)), unit };
}
