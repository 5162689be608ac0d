/** Where the mass of a batch went: the picture, then the figures that can be worked out. */
import type { BatchState } from "../../calc/batches.ts";
import { parseDecimal, plain, rounded, total } from "../../calc/numbers.ts";
import { AsList } from "../../parts/AsList.tsx";
import { BalancePicture, type BalanceStream } from "../../parts/BalancePicture.tsx";
import { type BudgetLines, NumberShown } from "../../parts/NumberShown.tsx";
import { Facts, Notice } from "../../parts/Plain.tsx";
import { BALANCE } from "../../text/finish.ts";
import { amountWords, figure } from "../../text/numbers.ts";
import { type Balanced, kg, kgReach, streamsIn, streamsOut } from "./balance_streams.ts";

const PERCENT_PLACES = 1;

interface WorkedOut {
  name: string;
  amount: string | null;
  unit: string;
  budget: BudgetLines;
}

/** Every figure that is worked out, with what it is worked out from. */
function workedOut(balance: Balanced): WorkedOut[] {
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
    ...(balance.prepared_in === null ? [] : [preparationRest(balance)]),
    unaccountedFor(balance),
  ];
}

function preparationRest(balance: Balanced): WorkedOut {
  const rest = massOf(
    BALANCE.preparation_unaccounted,
    balance.preparation_unaccounted,
    BALANCE.preparation_by,
    [
      [BALANCE.as_bought, balance.prepared_in],
      [BALANCE.prepared, balance.prepared_out],
    ],
  );
  return withReach(rest, balance.preparation_unaccounted_u);
}

function withReach(rest: WorkedOut, u: string | null): WorkedOut {
  const reach = kgReach(u);
  const uncertainty = reach === null ? null : amountWords(reach, "kg");
  return { ...rest, budget: { ...rest.budget, uncertainty, coverage: BALANCE.one } };
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
function unaccountedFor(balance: Balanced): WorkedOut {
  const rest = massOf(BALANCE.unaccounted, balance.filling_unaccounted, BALANCE.rest_by, [
    [BALANCE.kettle_out, balance.kettle_out],
    [BALANCE.filled, balance.filled],
    [BALANCE.residue, balance.residue],
    [BALANCE.samples, balance.samples],
  ]);
  return withReach(rest, balance.unaccounted_u);
}

/** As many places as a kitchen can use; the sheet keeps all four. */
function percentShown(value: string | null): string | null {
  return value === null ? null : rounded(parseDecimal(value), PERCENT_PLACES).toString();
}

/** The balance of a batch as it stands, or as it would with what is typed. */
export function Balance({ batch }: { batch: BatchState }) {
  const { balance } = batch;
  const ins = streamsIn(batch);
  const outs = streamsOut(batch);
  return (
    <>
      <MoreOut balance={balance} />
      {balance.kettle_in === null && <Notice>{BALANCE.no_kettle}</Notice>}
      {ins.length > 0 && (
        <>
          <BalancePicture
            says={saysOf(batch)}
            unit="kg"
            ins={ins}
            outs={outs}
            moreOutWords={BALANCE.more_out}
          />
          <AsList rows={listed(ins, outs)} />
        </>
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

/** Below zero is shown as what it is, and says what to look at first. */
function MoreOut({ balance }: { balance: Balanced }) {
  const rests = [balance.preparation_unaccounted, balance.filling_unaccounted];
  return (
    <>
      {rests
        .filter((rest) => rest?.startsWith("-"))
        .map((rest) => (
          <Notice key={rest} isLive>
            {BALANCE.more_out_check(amountWords(kg(rest)?.replace("-", ""), "kg"))}
          </Notice>
        ))}
    </>
  );
}

/** The picture in one sentence: in, out, and the rest with its sign. */
function saysOf(batch: BatchState): string {
  const { balance } = batch;
  const amounts = batch.lines.flatMap((line) =>
    line.unit === "g" && line.in_base !== null ? [parseDecimal(line.in_base)] : [],
  );
  return BALANCE.says(
    amountWords(kg(plain(total(amounts))), "kg"),
    amountWords(kg(balance.good_out), "kg"),
    amountWords(kg(balance.filling_unaccounted), "kg"),
  );
}

/** Every stream as a row: in, then out. */
function listed(ins: readonly BalanceStream[], outs: readonly BalanceStream[]) {
  const row = (way: (name: string) => string) => (stream: BalanceStream) => {
    const reach = stream.uncertainty ? `, \u00b1 ${figure(stream.uncertainty)}` : "";
    return { name: way(stream.name), value: `${amountWords(stream.amount, "kg")}${reach}` };
  };
  return [...ins.map(row(BALANCE.in)), ...outs.map(row(BALANCE.out))];
}
