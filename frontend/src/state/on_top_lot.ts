/** A lot of which the server knows more entries than this phone: own movements on its balances. */
import type { Beside } from "../calc/folds.ts";
import { type Decimal, parseDecimal, plain, ZERO } from "../calc/numbers.ts";
import type { Fact } from "../calc/record.ts";
import type { LostOn, LotState, WentTo } from "../calc/stock.ts";
import {
  type Beyond,
  fact,
  findingsUnder,
  foldedAs,
  mergedFindings,
  mergedHold,
  mergedNotes,
  shifted,
} from "./on_top_parts.ts";

const SUMS = ["made", "sold", "dispatched", "returned", "used", "lost", "found"] as const;

/**
 * The balances go in as counts before everything else, so that an own count of the same place
 * still sets its balance; sums move by the difference the extra entries make.
 */
export function lotOnTop(
  subject: string,
  state: LotState,
  beyond: Beyond,
  beside: Beside,
): LotState {
  const places = balancesBefore(subject, state, beyond.covered);
  const base = [...balances(state, places), ...beyond.covered];
  const before = foldedAs<LotState>(subject, base, beside);
  const after = foldedAs<LotState>(subject, [...base, ...beyond.extra], beside);
  const hold = mergedHold(state.hold, after.hold);
  const own = new Set(beyond.extra.map((each) => each.id));
  return {
    ...state,
    ...(state.maker === null && after.maker !== null ? identity(after) : {}),
    ...sums(state, before, after),
    unit: state.unit ?? after.unit,
    on_hand: after.on_hand,
    places: after.places,
    went_to: wentTo(state, before, after),
    lost_on: lostOn(state, before, after),
    counts: [...state.counts, ...after.counts.filter((count) => own.has(count.entry))],
    fills: [...state.fills, ...after.fills.filter((fill) => own.has(fill.entry))],
    hold: hold.causes.length + hold.decisions.length === 0 ? null : hold,
    last_on: later(state.last_on, after.last_on),
    findings: findingsUnder(
      hold,
      mergedFindings(
        state.findings.filter((each) => each.what !== "no_maker" || after.maker === null),
        after.findings.filter((each) => each.what !== "no_maker"),
        before.findings,
      ),
    ),
    notes: mergedNotes(state.notes, after.notes),
  };
}

/** What stood at each place before the covered entries, so that with them the server's is met. */
function balancesBefore(
  subject: string,
  state: LotState,
  covered: readonly Fact[],
): Record<string, string> {
  const with_covered = foldedAs<LotState>(subject, [...balances(state, state.places), ...covered]);
  const names = new Set([...Object.keys(state.places), ...Object.keys(with_covered.places)]);
  return Object.fromEntries(
    [...names].map((place) => {
      const server = state.places[place] ?? "0";
      return [place, shifted(server, with_covered.places[place] ?? "0", server) ?? server];
    }),
  );
}

function balances(state: LotState, places: Readonly<Record<string, string>>): Fact[] {
  const unit = state.unit ?? "g";
  return Object.entries(places).map(([place, amount], index) =>
    fact(`sheet:${place}`, "count", { lot: state.lot, place, amount: { amount, unit } }, index),
  );
}

function sums(state: LotState, before: LotState, after: LotState) {
  const moved = SUMS.map((name) => [name, shifted(state[name], before[name], after[name])]);
  return Object.fromEntries(moved) as Record<(typeof SUMS)[number], string>; // no sum of a lot is null
}

/** What the lot is, when its making is among the extra entries. */
function identity(after: LotState): Partial<LotState> {
  const { material, made_by, maker, author, condition, made_on, life } = after;
  const { source, their_lot, batch, pack_net, came_from, made_from } = after;
  return {
    material,
    made_by,
    maker,
    author,
    condition,
    made_on,
    life,
    source,
    their_lot,
    batch,
    pack_net,
    came_from,
    made_from,
  };
}

function wentTo(state: LotState, before: LotState, after: LotState): WentTo[] {
  const targets = new Map(state.went_to.map((way) => [way.to, way]));
  for (const way of after.went_to) {
    const known = targets.get(way.to);
    const was = before.went_to.find((one) => one.to === way.to)?.amount ?? "0";
    const amount = parseDecimal(known?.amount ?? "0").plus(parseDecimal(way.amount));
    targets.set(way.to, {
      to: way.to,
      amount: plain(amount.minus(parseDecimal(was))),
      on: later(known?.on ?? null, way.on) ?? way.on,
    });
  }
  return [...targets.values()].sort((a, b) => (a.to < b.to ? -1 : 1));
}

/** A sheet of an older fold does not say on which day what was lost. */
function lostOn(state: LotState, before: LotState, after: LotState): LostOn[] {
  const days = new Map((state.lost_on ?? []).map(({ on, amount }) => [on, parseDecimal(amount)]));
  const add = (on: string, amount: Decimal) => days.set(on, (days.get(on) ?? ZERO).plus(amount));
  for (const { on, amount } of after.lost_on) add(on, parseDecimal(amount));
  for (const { on, amount } of before.lost_on) add(on, parseDecimal(amount).negated());
  return [...days]
    .filter(([, amount]) => !amount.isZero())
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([on, amount]) => ({ on, amount: plain(amount) }));
}

function later(a: string | null, b: string | null): string | null {
  if (a === null || b === null) return a ?? b;
  return a > b ? a : b;
}
