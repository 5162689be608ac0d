/** A lot sheet: how much was made, where it stands, where it came from and went. */

import {
  type Amount,
  amountIn,
  itemsIn,
  objectIn,
  type Quantity,
  quantityIn,
  textIn,
} from "./bodies.ts";
import type { FillCheck } from "./fill_trust.ts";
import { type Hold, heldFindings, holdState } from "./holds.ts";
import { type Decimal, plain, total, ZERO } from "./numbers.ts";
import {
  asItStands,
  type Fact,
  type Finding,
  finding,
  type Note,
  notesAbout,
  type Standing,
  settled,
  TEXT_ORDER,
} from "./record.ts";
import { type Count, type Ledger, MAKING, movedAmount, touchesLot, walked } from "./stock_moves.ts";
import { idIn } from "./subjects.ts";
import { NOTHING_BESIDE, type Sheets } from "./trusted.ts";

export const LOT_FOLD = 5; // 3 held nothing back, 4 knew no log as a cause and no day of a loss

/** A kind of date (use_by, best_before, expires_on) and the day; that day is still usable. */
export interface Life {
  readonly sort: string;
  readonly on: string;
}

/** A lot of which some was poured into this one. */
export interface CameFrom {
  readonly lot: string;
  readonly amount: string;
}

/** How much came from a source, a batch or a lot. */
export interface MadeFrom {
  readonly origin: string;
  readonly amount: string;
}

/** How much went to a batch, recipient, stall day or lot, returns taken off; the last day. */
export interface WentTo {
  readonly to: string;
  readonly amount: string;
  readonly on: string;
}

/** How much was lost or missed on a day, less what was found; below zero more was found. */
export interface LostOn {
  readonly on: string;
  readonly amount: string;
}

/**
 * All entries about one lot, added up; amounts in `unit`, which is g, mL or pc.
 * made + returned + found = sold + dispatched + used + lost + on_hand, always.
 */
export interface LotState {
  readonly lot: string;
  readonly material: string | null;
  readonly made_by: string | null;
  readonly maker: string | null;
  readonly author: string | null;
  readonly condition: string | null;
  readonly unit: string | null;
  readonly made: string;
  readonly on_hand: string;
  readonly places: Readonly<Record<string, string>>;
  readonly made_on: string | null;
  readonly life: Life | null;
  readonly source: string | null;
  readonly their_lot: string | null;
  readonly batch: string | null;
  readonly pack_net: Quantity | null;
  readonly came_from: readonly CameFrom[];
  readonly made_from: readonly MadeFrom[];
  readonly went_to: readonly WentTo[];
  readonly sold: string;
  readonly dispatched: string;
  readonly returned: string;
  readonly used: string;
  readonly lost: string;
  readonly found: string;
  readonly lost_on: readonly LostOn[];
  readonly counts: readonly Count[];
  readonly fills: readonly FillCheck[];
  /** Null where nothing was ever held or decided. */
  readonly hold: Hold | null;
  readonly last_on: string | null;
  readonly findings: readonly Finding[];
  readonly notes: readonly Note[];
}

/** What says the fill checks of a lot, and what failed scales mean for them. */
export type FillsOf = (
  standing: readonly Standing[],
  code: string,
  scales: Sheets,
) => [FillCheck[], Finding[]];
const NO_FILLS: FillsOf = () => [[], []];

/**
 * Fold all entries about `lot:<code>`; a balance is a fold, never a field.
 * `beside` holds the sheets of the scales its fill checks lean on, by subject. `fillsOf` judges
 * these; a phone fetches it for a lot that has some, and without it they are left out.
 */
export function lotState(
  subject: string,
  facts: Iterable<Fact>,
  beside: Sheets = NOTHING_BESIDE,
  fillsOf = NO_FILLS,
): LotState {
  const code = idIn(subject);
  const held = [...facts];
  const record = asItStands(held);
  const touching = record.standing.filter((entry) => touchesLot(entry, code));
  const makers = touching.filter((entry) => makes(entry, code));
  const ledger: Ledger = {
    code,
    unit: unitOf([...makers, ...touching], code),
    places: new Map(),
    sums: new Map(),
    ways: new Map(),
    lost_on: new Map(),
    counts: [],
    findings: [],
  };
  for (const entry of touching) walked(ledger, entry);
  const [fills, failedScales] = fillsOf(record.standing, code, beside);
  const hold = holdState(subject, held, record.standing);
  const findings = [
    ...record.findings,
    ...ledger.findings,
    ...makerFindings(makers, touching),
    ...failedScales,
    ...heldFindings(hold),
  ];
  return {
    ...fromMaker(code, makers),
    ...fromLedger(ledger),
    fills,
    hold: hold.causes.length + hold.decisions.length === 0 ? null : hold,
    last_on:
      touching
        .map((entry) => entry.local_date)
        .sort(TEXT_ORDER)
        .at(-1) ?? null,
    findings: settled(findings, record.standing, subject),
    notes: notesAbout(record.standing, subject),
  };
}

function makes(entry: Standing, code: string): boolean {
  return MAKING.includes(entry.kind) && textIn(entry.body, "lot") === code;
}

/** The base unit of the first amount known; the lot's maker is asked first. */
function unitOf(entries: readonly Standing[], code: string): string | null {
  for (const entry of entries) {
    const amount = movedAmount(entry, code);
    if (amount !== null) return amount.unit;
  }
  return null;
}

function makerFindings(makers: readonly Standing[], touching: readonly Standing[]): Finding[] {
  const [first] = touching;
  const [maker, second] = makers;
  if (first !== undefined && maker === undefined) {
    return [finding("no_maker", "no_maker", { entry: first.id })];
  }
  return second === undefined ? [] : [finding("two_makers", "two_makers", { entry: second.id })];
}

/** Every source, batch and lot the lot came from, also where two entries claim to make it. */
function madeFrom(makers: readonly Standing[]): MadeFrom[] {
  const amounts = new Map<string, Decimal>();
  const add = (origin: string, amount: Amount | null) => {
    amounts.set(origin, total([amounts.get(origin) ?? ZERO, amount?.value ?? ZERO]));
  };
  for (const { body } of makers) {
    for (const poured of itemsIn(body, "from")) {
      add(`lot:${textIn(poured, "lot") ?? ""}`, amountIn(poured, "amount"));
    }
    for (const name of ["source", "batch"]) {
      const origin = textIn(body, name);
      const isRefused = textIn(body, "condition") === "refused";
      if (origin !== null) add(`${name}:${origin}`, isRefused ? null : amountIn(body, "amount"));
    }
  }
  return [...amounts]
    .sort(([a], [b]) => TEXT_ORDER(a, b))
    .map(([origin, amount]) => ({ origin, amount: plain(amount) }));
}

function fromMaker(code: string, makers: readonly Standing[]) {
  const maker = makers[0];
  const body = maker?.body ?? {};
  const made_from = madeFrom(makers);
  return {
    lot: code,
    material: textIn(body, "material"),
    made_by: maker?.kind ?? null,
    maker: maker?.id ?? null,
    author: maker?.author ?? null,
    condition: conditionOf(maker),
    made_on: maker?.local_date ?? null,
    life: lifeOf(maker),
    source: textIn(body, "source"),
    their_lot: textIn(body, "their_lot"),
    batch: textIn(body, "batch"),
    pack_net: quantityIn(body, "pack_net"),
    came_from: made_from
      .filter((each) => each.origin.startsWith("lot:"))
      .map((each) => ({ lot: idIn(each.origin), amount: each.amount })),
    made_from,
  };
}

function fromLedger(ledger: Ledger) {
  const sum = (name: string) => plain(ledger.sums.get(name) ?? ZERO);
  return {
    unit: ledger.unit,
    made: sum("made"),
    on_hand: plain(total(ledger.places.values())),
    places: Object.fromEntries(
      [...ledger.places]
        .filter(([, value]) => !value.isZero())
        .sort(([a], [b]) => TEXT_ORDER(a, b))
        .map(([place, value]) => [place, plain(value)]),
    ),
    went_to: [...ledger.ways]
      .sort(([a], [b]) => TEXT_ORDER(a, b))
      .map(([to, way]) => ({ to, amount: plain(way.amount), on: way.on })),
    sold: sum("sold"),
    dispatched: sum("dispatched"),
    returned: sum("returned"),
    used: sum("used"),
    lost: sum("lost"),
    found: sum("found"),
    lost_on: [...ledger.lost_on]
      .filter(([, amount]) => !amount.isZero())
      .sort(([a], [b]) => TEXT_ORDER(a, b))
      .map(([on, amount]) => ({ on, amount: plain(amount) })),
    counts: ledger.counts,
  };
}

/** As recorded at receipt; what was packed as good output or poured together is fit. */
function conditionOf(maker: Standing | undefined): string | null {
  return maker === undefined ? null : (textIn(maker.body, "condition") ?? "fit");
}

function lifeOf(maker: Standing | undefined): Life | null {
  const life = maker === undefined ? null : objectIn(maker.body, "life");
  return life === null ? null : { sort: textIn(life, "sort") ?? "", on: textIn(life, "on") ?? "" };
}
