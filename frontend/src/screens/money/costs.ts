/** What a batch cost over the sheets this phone holds, and who may see it. Works without signal. */
import { type CostAnswer, costOfBatch } from "../../calc/batch_costs.ts";
import type { StatesBySubject } from "../../calc/lot_worth.ts";
import { type RatesState, ratesOn } from "../../calc/money.ts";
import { parseDecimal, rounded, written } from "../../calc/numbers.ts";
import { current } from "../../state/session.ts";
import { sheet } from "../../state/sheets.ts";
import { cooperative, nameOf } from "../../state/stock.ts";
import { moneyWords, OVERHEAD_WORDS } from "../../text/money.ts";
import { figure } from "../../text/numbers.ts";
import { coinFigure } from "../common/asked.ts";
import { textField } from "../common/lots.ts";
import { memberName } from "../common/people.ts";

const PERCENT_PLACES = 1;

/** The sheets of the person on the screen, as a walk reads them; reading them redraws a screen. */
export const heldStates: StatesBySubject = {
  get: (subject) => sheet<object>(subject).value?.state,
};

/** The actual cost of a batch, as far as this phone knows. */
export function costOf(batch: string): CostAnswer {
  return costOfBatch(batch, current.value?.cooperative.id ?? "", heldStates);
}

/** Coordinators, and every member where the cooperative shows prices. */
export function seesCosts(): boolean {
  return isCoordinator() || cooperative.value?.fields.prices_shown === true;
}

export function isCoordinator(): boolean {
  return current.value?.member.roles.includes("coordinator") ?? false;
}

/** The code of the cooperative's currency, null before it is set up. */
export function currency(): string | null {
  return textField(cooperative.value, "currency");
}

/** An amount in the cooperative's currency, or in the one it was paid in. */
export function money(amount: string | null, paidIn: string | null = currency()): string {
  return moneyWords(amount === null ? null : coinFigure(amount), paidIn);
}

/** An amount as it was typed: nothing of it is rounded away before it is kept. */
export function typedMoney(typed: string): string {
  return moneyWords(figure(typed), currency());
}

/** Percent to one digit. */
export function percentWords(percent: string | null): string {
  if (percent === null) return figure(null);
  return `${figure(written(rounded(parseDecimal(percent), PERCENT_PLACES)))}\u00a0%`;
}

/** The rates in force on a day, as written; empty before the first. */
export function ratesInForce(on: string) {
  const id = current.value?.cooperative.id ?? "";
  return ratesOn(sheet<RatesState>(`rates:${id}`).value?.state ?? {}, on);
}

/** Whoever worked, by name. */
export function workerName(of: string): string {
  return memberName(of) || of;
}

/** What is missing, as people call it. */
export function nameOfLacking(what: string, of: string): string {
  if (what === "rate") return workerName(of);
  const by = of.startsWith("overhead:") ? of.slice("overhead:".length) : null;
  if (by !== null) return OVERHEAD_WORDS[by] ?? by;
  return lotName(of);
}

/** A lot by its code and what it is of. */
export function lotName(code: string): string {
  const lot = sheet<{ material: string | null }>(`lot:${code}`).value?.state;
  const name = nameOf("material", lot?.material ?? null);
  return name === "" ? code : `${name} ${code}`;
}
