/** Labour, expenses and rates of which the server knows more entries than this phone: own ones among them. */
import type { AskedState } from "../calc/asked_prices.ts";
import type { CostState, RatesState } from "../calc/money.ts";
import { TEXT_ORDER } from "../calc/record.ts";
import { type Beyond, foldedAs, mergedFindings, mergedNotes } from "./on_top_parts.ts";

/** Rows the server knows stay as they are, but for those an own entry corrects. */
export function costOnTop(subject: string, state: CostState, beyond: Beyond): CostState {
  const made = foldedAs<CostState>(subject, [...beyond.covered, ...beyond.extra]);
  return {
    ...state,
    labour: withOwn(state.labour, made.labour, beyond),
    expenses: withOwn(state.expenses, made.expenses, beyond),
    shared: made.shared ?? serversShared(state, beyond),
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

/** Own rates take their place by the day from which they count. */
export function ratesOnTop(subject: string, state: RatesState, beyond: Beyond): RatesState {
  const made = foldedAs<RatesState>(subject, [...beyond.covered, ...beyond.extra]);
  const rates = withOwn(state.rates, made.rates, beyond);
  return {
    ...state,
    rates: rates.sort((a, b) => TEXT_ORDER(a.since, b.since)),
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

/** What the server knows, unless an own entry takes that back; an older sheet has none. */
function serversShared(state: CostState, beyond: Beyond): CostState["shared"] {
  const shared = state.shared ?? null;
  return beyond.covered.some(({ id }) => id === shared?.entry) ? null : shared;
}

/** Own prices take their place by the day from which they count. */
export function askedOnTop(subject: string, state: AskedState, beyond: Beyond): AskedState {
  const made = foldedAs<AskedState>(subject, [...beyond.covered, ...beyond.extra]);
  const prices = withOwn(state.prices, made.prices, beyond);
  return {
    ...state,
    prices: prices.sort((a, b) => TEXT_ORDER(a.since, b.since)),
    findings: mergedFindings(state.findings, made.findings, []),
    notes: mergedNotes(state.notes, made.notes),
  };
}

function withOwn<T extends { readonly entry: string }>(
  server: readonly T[],
  made: readonly T[],
  beyond: Beyond,
): T[] {
  const again = new Set([...beyond.covered, ...made.map((each) => ({ id: each.entry }))].map(idOf));
  return [...server.filter((each) => !again.has(each.entry)), ...made];
}

function idOf({ id }: { readonly id: string }): string {
  return id;
}
