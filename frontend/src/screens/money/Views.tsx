/** The same materials by other rules of cost; a view, and said so. */
import type { BatchState } from "../../calc/batches.ts";
import { viewedCost } from "../../calc/cost_views.ts";
import { Facts, Part } from "../../parts/Plain.tsx";
import { current } from "../../state/session.ts";
import { sheetsOf } from "../../state/sheets.ts";
import { PRICE } from "../../text/money.ts";
import { heldStates, money } from "./costs.ts";

/** What the lots in it would cost first in first out, and at the moving average. */
export function Views({ batch }: { batch: BatchState }) {
  const lots = sheetsOf<{ lot: string }>("lot").value.map(({ state }) => state.lot);
  const seen = (view: "fifo" | "moving_average") =>
    viewedCost(batch.batch, view, {
      cooperative: current.value?.cooperative.id ?? "",
      sheets: heldStates,
      lots,
    });
  return (
    <Part title={PRICE.views}>
      <p class="second">{PRICE.views_why}</p>
      <Facts
        rows={[
          { name: PRICE.fifo, value: money(seen("fifo").total) },
          { name: PRICE.moving_average, value: money(seen("moving_average").total) },
        ]}
      />
    </Part>
  );
}
