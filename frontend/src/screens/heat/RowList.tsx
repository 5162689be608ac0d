/** The rows kept so far, the last first: each can be typed anew or taken out. */
import { Cup } from "../../parts/Cup.tsx";
import { Entries } from "../../parts/EntryRow.tsx";
import { HEAT } from "../../text/heat.ts";
import { minutesText, shortMinutes } from "../../text/heat_results.ts";
import { amountWords } from "../../text/numbers.ts";
import { type Heating, takeOutRow, takeUpRow } from "./use_heat.ts";

const ROWS_MOST = 60; // of thousands nobody looks for one in a list

/** Nothing where no row was kept. */
export function RowList({ heating }: { heating: Heating }) {
  const { at_s, temperatures, unit, row: open } = heating.typed;
  if (at_s.length === 0) return null;
  const rows = at_s.map((at, row) => ({ row, at, degrees: temperatures[row] ?? "" }));
  return (
    <Entries name={HEAT.kept_rows}>
      {rows
        .reverse()
        .slice(0, ROWS_MOST)
        .map(({ row, at, degrees }) => {
          const said = HEAT.list(
            amountWords(shortMinutes(minutesText(at)), "min"),
            amountWords(degrees, unit),
          );
          return (
            <li key={row} class="heat-row">
              <p>
                <b>{said}</b>
              </p>
              <p class="key-row">
                <Cup isChosen={row === open} onPress={() => takeUpRow(heating, row)}>
                  {HEAT.change_row} <span class="unseen">{said}</span>
                </Cup>
                <Cup onPress={() => takeOutRow(heating, row)}>
                  {HEAT.take_out_row} <span class="unseen">{said}</span>
                </Cup>
              </p>
            </li>
          );
        })}
    </Entries>
  );
}
