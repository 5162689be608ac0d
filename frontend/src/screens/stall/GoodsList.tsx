/** The table: one row a product and size, with price, a tube of what is left, and the figure. */
import { Cup } from "../../parts/Cup.tsx";
import { drawn } from "../../parts/drawing.ts";
import { Tube } from "../../parts/Tube.tsx";
import { figure } from "../../text/numbers.ts";
import { STALL } from "../../text/stall.ts";
import { type Good, isSoldOut } from "./goods.ts";

/** `prices` are those asked today instead of the usual ones. Sold out stays pressable. */
export function GoodsList(props: {
  goods: readonly Good[];
  chosen: string | null;
  prices: Readonly<Record<string, string>>;
  onChoose: (key: string) => void;
}) {
  return (
    <div class="goods">
      {props.goods.map((good) => (
        <GoodRow
          key={good.key}
          good={good}
          price={props.prices[good.key] ?? good.price}
          isChosen={props.chosen === good.key}
          onPress={() => props.onChoose(good.key)}
        />
      ))}
    </div>
  );
}

function GoodRow(props: {
  good: Good;
  price: string | null;
  isChosen: boolean;
  onPress: () => void;
}) {
  const { good, price } = props;
  const isOut = isSoldOut(good);
  return (
    <Cup class={isOut ? "good out" : "good"} isChosen={props.isChosen} onPress={props.onPress}>
      <span class="rec">{good.name}</span>
      <b class="good-price">{price === null ? <small>{STALL.no_price}</small> : figure(price)}</b>
      <Tube full={drawn(good.left) ?? 0} whole={drawn(good.came) ?? 0} says={null} />
      <span class="good-left">
        {isOut ? (
          STALL.sold_out
        ) : (
          <>
            <b>{figure(good.left)}</b> {STALL.left}
            {good.kept_back !== "0" && (
              <b class="shout"> {STALL.kept_back(figure(good.kept_back))}</b>
            )}
          </>
        )}
      </span>
    </Cup>
  );
}
