/** The ruler: one to five and more, each with the sum to ask. Pressing it is the sale. */
import { Cup } from "../../parts/Cup.tsx";
import { figure } from "../../text/numbers.ts";
import { STALL } from "../../text/stall.ts";
import { sumOf } from "./goods.ts";
import type { Stall } from "./use_stall.ts";

const COUNTS = ["1", "2", "3", "4", "5"];

/** Before a product is chosen the ruler lies there without sums and asks for one. */
export function Ruler({ stall }: { stall: Stall }) {
  const { good, deed, asks } = stall;
  const price = deed.value === "sale" ? stall.price : null;
  return (
    <div class="ruler">
      {COUNTS.map((count) => {
        const sum = sumOf(price, count);
        return (
          <Cup
            key={count}
            class={good === null ? "mark-cup waits" : "mark-cup"}
            onPress={() => stall.keep(count)}
          >
            <Marks />
            <span class="unseen">{STALL.did[deed.value]}</span>
            <b>{count}</b>
            {sum !== null && <span class="unseen">{STALL.sold_for}</span>}
            {sum !== null && <span>{figure(sum)}</span>}
          </Cup>
        );
      })}
      <Cup
        class={good === null ? "mark-cup waits" : "mark-cup"}
        onPress={() => {
          if (good !== null) asks.value = "typed";
        }}
      >
        <Marks />
        <b aria-hidden="true">…</b>
        <span>{STALL.more}</span>
      </Cup>
    </div>
  );
}

function Marks() {
  return (
    <svg class="marks" viewBox="0 0 56 12" preserveAspectRatio="none" aria-hidden="true">
      <path class="tick" d="M7 0v6M14 0v6M21 0v6M28 0v10M35 0v6M42 0v6M49 0v6" />
    </svg>
  );
}
