/** Where the mass of a batch went: the picture, then the figures that can be worked out. */
import type { BatchState } from "../../calc/batches.ts";
import {
  asDouble,
  difference,
  parseDecimal,
  plain,
  rounded,
  significant,
} from "../../calc/numbers.ts";
import { fromBase } from "../../calc/units.ts";
import { BalancePicture, type BalanceStream } from "../../parts/BalancePicture.tsx";
import { type BudgetLines, NumberShown } from "../../parts/NumberShown.tsx";
import { Facts, Notice } from "../../parts/Plain.tsx";
import { BALANCE } from "../../text/finish.ts";
import { amountWords } from "../../text/numbers.ts";
import { lineName } from "./batches.ts";

const PLACES = 3;
const U_DIGITS = 2;
const PERCENT_PLACES = 1;

function kg(grams: string | null): string | null {
  return grams === null ? null : plain(fromBase(parseDecimal(grams), "kg", PLACES));
}

function kgReach(grams: string | null): string | null {
  if (grams === null) return null;
  return significant(asDouble(fromBase(parseDecimal(grams), "kg", PLACES + PLACES)), U_DIGITS);
}

function streamsIn(batch: BatchState): BalanceStream[] {
  return batch.lines
    .filter((line) => line.unit === "g" && line.in_base !== null)
    .map((line) => ({
      id: line.line,
      name: lineName(line),
      amount: kg(line.prepared ?? line.in_base),
      sort: "recorded",
    }));
}

function streamsOut({ balance }: BatchState): BalanceStream[] {
  const recorded: [string, string, string | null][] = [
    ["good", BALANCE.good, balance.good_out],
    ["rejected", BALANCE.rejected, rejectedOf(balance)],
    ["residue", BALANCE.residue, balance.residue],
    ["samples", BALANCE.samples, balance.samples],
  ];
  return [
    ...recorded.map(
      ([id, name, grams]): BalanceStream => ({ id, name, amount: kg(grams), sort: "recorded" }),
    ),
    { id: "steam", name: BALANCE.steam, amount: kg(balance.evaporated), sort: "computed" },
    {
      id: "unaccounted",
      name: BALANCE.unaccounted,
      amount: kg(balance.filling_unaccounted),
      sort: "unaccounted",
      uncertainty: kgReach(balance.unaccounted_u),
    },
  ];
}

function rejectedOf(balance: BatchState["balance"]): string | null {
  // Without a number of rejects the mass filled is that of the good packs: nothing, not nought.
  if (balance.rejects_percent === null) return null;
  if (balance.filled === null || balance.good_out === null) return null;
  return plain(difference(parseDecimal(balance.filled), parseDecimal(balance.good_out)));
}

interface WorkedOut {
  name: string;
  amount: string | null;
  unit: string;
  budget: BudgetLines;
}

/** Every figure that is worked out, with what it is worked out from. */
function workedOut(balance: BatchState["balance"]): WorkedOut[] {
  const { theoretical_out: theory, prepared_in, prepared_out } = balance;
  return [
    percentOf(BALANCE.yield, balance.recovery_percent, [
      [BALANCE.good_out, balance.good_out],
      [BALANCE.kettle_in, balance.kettle_in],
    ]),
    percentOf(BALANCE.of_theory, balance.of_theory_percent, [
      [BALANCE.good_out, balance.good_out],
      [BALANCE.theory, theory],
    ]),
    percentOf(BALANCE.edible, balance.edible_yield_percent, [
      [BALANCE.prepared, prepared_out],
      [BALANCE.as_bought, prepared_in],
    ]),
    percentOf(BALANCE.rejects, balance.rejects_percent, [], BALANCE.rejects_by),
    massOf(BALANCE.steam, balance.evaporated, BALANCE.steam_by, [
      [BALANCE.kettle_in, balance.kettle_in],
      [BALANCE.kettle_out, balance.kettle_out],
    ]),
    unaccountedFor(balance),
  ];
}

type Inputs = readonly [name: string, grams: string | null][];

function inputsShown(inputs: Inputs) {
  return inputs.map(([name, grams]) => ({ name, value: amountWords(kg(grams), "kg") }));
}

/** A share: the first input of the second. */
function percentOf(name: string, value: string | null, inputs: Inputs, by?: string): WorkedOut {
  const [part, whole] = inputs;
  return {
    name,
    amount: percentShown(value),
    unit: "%",
    budget: {
      value: BALANCE.percent(value),
      inputs: inputsShown(inputs),
      formula: by ?? BALANCE.share_of(part?.[0] ?? "", whole?.[0] ?? ""),
    },
  };
}

function massOf(name: string, grams: string | null, formula: string, inputs: Inputs): WorkedOut {
  const value = amountWords(kg(grams), "kg");
  return {
    name,
    amount: kg(grams),
    unit: "kg",
    budget: { value, formula, inputs: inputsShown(inputs) },
  };
}

/** What nothing explains, with how much of it the scales do. */
function unaccountedFor(balance: BatchState["balance"]): WorkedOut {
  const rest = massOf(BALANCE.unaccounted, balance.filling_unaccounted, BALANCE.rest_by, [
    [BALANCE.kettle_out, balance.kettle_out],
    [BALANCE.filled, balance.filled],
    [BALANCE.residue, balance.residue],
    [BALANCE.samples, balance.samples],
  ]);
  const reach = kgReach(balance.unaccounted_u);
  const uncertainty = reach === null ? null : amountWords(reach, "kg");
  return { ...rest, budget: { ...rest.budget, uncertainty, coverage: BALANCE.one } };
}

/** As many places as a kitchen can use; the sheet keeps all four. */
function percentShown(value: string | null): string | null {
  return value === null ? null : rounded(parseDecimal(value), PERCENT_PLACES).toString();
}

/** The balance of a batch as it stands, or as it would with what is typed. */
export function Balance({ batch }: { batch: BatchState }) {
  const { balance } = batch;
  const isBelow = balance.filling_unaccounted?.startsWith("-") ?? false;
  const beyond = amountWords(kg(balance.filling_unaccounted)?.replace("-", ""), "kg");
  return (
    <>
      {isBelow && <Notice isLive>{BALANCE.more_out_check(beyond)}</Notice>}
      {balance.kettle_in === null ? (
        <Notice>{BALANCE.no_kettle}</Notice>
      ) : (
        <BalancePicture
          says={BALANCE.says(
            amountWords(kg(balance.kettle_in), "kg"),
            amountWords(kg(balance.good_out), "kg"),
            amountWords(kg(balance.filling_unaccounted), "kg"),
          )}
          unit="kg"
          ins={streamsIn(batch)}
          outs={streamsOut(batch)}
          moreOutWords={BALANCE.more_out}
        />
      )}
      <Facts
        rows={workedOut(balance).map((each) => ({
          name: each.name,
          value: (
            <NumberShown
              amount={each.amount}
              unit={each.amount === null ? null : each.unit}
              basis="computed"
              budget={each.amount === null ? undefined : each.budget}
            />
          ),
        }))}
      />
    </>
  );
}
