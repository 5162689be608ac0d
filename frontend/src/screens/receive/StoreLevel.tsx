/** The store before and after: what a receipt will add to all places. */
import { StoreGlass } from "../../parts/StoreGlass.tsx";
import { lotsOf } from "../../state/stock.ts";
import { RECEIVE } from "../../text/receive.ts";
import { amountText, materialOf } from "../common/lots.ts";
import { baseUnitFor } from "../common/units.ts";
import { type ReceiveTyped, storeLevels } from "./typed.ts";

/** Nothing before a material is chosen. */
export function StoreLevel({ typed }: { typed: ReceiveTyped }) {
  const material = materialOf(typed.material);
  if (material === null) return null;
  const unit = baseUnitFor(material);
  const held = lotsOf(material.id).map((lot) => lot.amount);
  const { before, after } = storeLevels(typed, held);
  const words = (amount: string) => amountText(amount, unit, material);
  return (
    <div class="store-level">
      <StoreGlass level={after} whole={after} before={before} says={null} />
      <p>
        <span class="second">{RECEIVE.store(material.name)}</span>
        <br />
        {typed.condition === "refused"
          ? RECEIVE.store_refused(words(before))
          : RECEIVE.store_level(words(before), words(after))}
      </p>
    </div>
  );
}
