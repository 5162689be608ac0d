/** What each product of a batch costs, where there are several, and what by-products are worth. */
import type { CostAnswer, ProductCost } from "../../calc/batch_costs.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Facts, Part } from "../../parts/Plain.tsx";
import { packWord, SHARED } from "../../text/money.ts";
import { materialOf, textField } from "../common/lots.ts";
import { lotName, money } from "./costs.ts";

export function Products({ cost }: { cost: CostAnswer }) {
  const { products } = cost;
  if (products.length < 2) return null;
  const by = products.find((each) => each.by !== null)?.by ?? null;
  return (
    <Part title={SHARED.title}>
      <Facts rows={products.map((each) => ({ name: lotName(each.lot), value: words(each) }))} />
      {by !== null && <p class="second">{SHARED.ways[by]}</p>}
      <p class="key-row">
        <Cup href={`#/cost/${cost.batch}/products`}>{SHARED.where}</Cup>
      </p>
    </Part>
  );
}

function words({ sort, per, material, cost, each }: ProductCost): string {
  if (cost === null || each === null) return SHARED.unknown;
  const pack = packWord(per, textField(materialOf(material), "pack_word"));
  const said = sort === "main" ? SHARED.each : SHARED.worth;
  return `${money(cost)}, ${said(money(each), pack)}`;
}
