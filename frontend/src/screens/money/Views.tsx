/** The same materials by other rules of cost; a view, and said so. */
import type { BatchState } from "../../calc/batches.ts";
import { type ViewedCost, viewedCost } from "../../calc/cost_views.ts";
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
      <View name={PRICE.fifo} seen={seen("fifo")} />
      <View name={PRICE.moving_average} seen={seen("moving_average")} />
    </Part>
  );
}

/** One view, and where in it the money for these materials is: losses too. */
function View({ name, seen }: { name: string; seen: ViewedCost }) {
  const { parts } = seen;
  return (
    <>
      <Facts rows={[{ name, value: money(seen.total) }]} />
      {parts !== null && (
        <p class="second">
          {PRICE.view_parts({
            here: money(parts.here),
            elsewhere: money(parts.elsewhere),
            lost: money(parts.lost),
            left: money(parts.left),
          })}
        </p>
      )}
    </>
  );
}
