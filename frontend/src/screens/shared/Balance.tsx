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
import { NumberShown } from "../../parts/NumberShown.tsx";
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

/** As many places as a kitchen can use; the sheet keeps all four. */
function percentShown(value: string | null): string | null {
  return value === null ? null : rounded(parseDecimal(value), PERCENT_PLACES).toString();
}

/** The balance of a batch as it stands, or as it would with what is typed. */
export function Balance({ batch }: { batch: BatchState }) {
  const { balance } = batch;
  const percents: [string, string | null][] = [
    [BALANCE.yield, balance.recovery_percent],
    [BALANCE.of_theory, balance.of_theory_percent],
    [BALANCE.rejects, balance.rejects_percent],
    [BALANCE.edible, balance.edible_yield_percent],
  ];
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
        rows={percents.map(([name, value]) => ({
          name,
          value: (
            <NumberShown
              amount={percentShown(value)}
              unit={value === null ? null : "%"}
              basis="computed"
            />
          ),
        }))}
      />
    </>
  );
}
