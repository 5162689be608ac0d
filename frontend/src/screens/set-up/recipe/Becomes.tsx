/** A household measure as it will be published: by weight, with the spread and source of the density. */
import { plain } from "../../../calc/numbers.ts";
import { NumberShown } from "../../../parts/NumberShown.tsx";
import { amountWords, figure } from "../../../text/numbers.ts";
import { LINE } from "../../../text/set_up_recipe.ts";
import type { DensityUsed } from "./amounts.ts";
import type { LineTyped } from "./items.ts";

/** `by` is the conversion the amount rests on. */
export function Becomes(props: { line: LineTyped; amount: string; by: DensityUsed }) {
  const { line, amount, by } = props;
  const { converted, found } = by;
  const { row } = found;
  const { low, high, unit } = converted;
  const spread =
    low === null || high === null
      ? LINE.one_figure
      : LINE.spread(figure(plain(low)), amountWords(plain(high), unit));
  return (
    <div class="becomes">
      <p>
        {amountWords(line.amount, line.amount_unit)} <span class="second">{LINE.becomes}</span>{" "}
        <NumberShown
          amount={amount}
          unit={unit}
          basis="booked"
          size="net"
          budget={{
            value: amountWords(amount, unit),
            inputs: [
              { name: row.portion, value: amountWords(row.mass_g, "g") },
              { name: found.key, value: amountWords(row.density_g_per_mL, "g/mL") },
            ],
            source: row.source,
          }}
        />{" "}
        <span class="second">{LINE.becomes}</span>
      </p>
      <p class="second">
        {spread}. {LINE.by(row.portion, amountWords(row.mass_g, "g"))}. {row.source}.
      </p>
      <p class="second">{LINE.weigh_instead}</p>
    </div>
  );
}
