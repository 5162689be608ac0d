/** What is asked for a product today, and in which digits money is told. */
import { type AskedOf, type AskedState, askedOn } from "../../calc/asked_prices.ts";
import { type Quantity, textIn } from "../../calc/bodies.ts";
import { ONE, parseDecimal, rounded, written } from "../../calc/numbers.ts";
import type { LotState } from "../../calc/stock.ts";
import { typedNumber } from "../../parts/typing.ts";
import { sheet } from "../../state/sheets.ts";
import { cooperative } from "../../state/stock.ts";
import { figure } from "../../text/numbers.ts";
import { today } from "./edge.ts";
import { materialOf, textField } from "./lots.ts";

const COIN_PLACES = 2; // until the cooperative says otherwise

/** The price in force today; where none was set from a day on, the one of the product itself. */
export function askedPrice(material: string | null, of: AskedOf): string | null {
  if (material === null) return null;
  const state = sheet<AskedState>(`asked:${material}`).value?.state ?? {};
  const found = askedOn(state, today(), of);
  return found === null ? textField(materialOf(material), "price") : textIn(found, "price");
}

/** The size of pack of a lot; null for one that is not packed. */
export function packOf(lot: string | null): Quantity | null {
  return lot === null ? null : (sheet<LotState>(`lot:${lot}`).value?.state.pack_net ?? null);
}

/**
 * Money in coins; below one, with the digit after the coin where there is one, as in the cost of a
 * label. What is no number stays as it is.
 */
export function coinFigure(amount: string | null): string {
  return figure(inCoins(amount));
}

/** The same as a number, before it is set for reading. */
export function inCoins(amount: string | null): string | null {
  const number = amount === null ? null : typedNumber(amount);
  if (number === null) return amount;
  const value = parseDecimal(number);
  const places = coinPlaces();
  const finer = rounded(value, places + 1);
  const whole = rounded(value, places);
  const isFine = value.abs().compare(ONE) < 0 && finer.compare(whole) !== 0;
  return written(isFine ? finer : whole);
}

/** Digits after the point of the cooperative's coin. */
function coinPlaces(): number {
  const places = cooperative.value?.fields.currency_places;
  return typeof places === "number" ? places : COIN_PLACES;
}
