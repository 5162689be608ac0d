/** The bench of the stall: the ruler, and what else it may ask in its place. */
import { Caution } from "../../parts/Caution.tsx";
import { CupChoice } from "../../parts/Choices.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot } from "../../parts/Frame.tsx";
import { Keypad } from "../../parts/Keypad.tsx";
import { LotTag } from "../../parts/LotTag.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { againstWords, DESPITE } from "../../text/holds.ts";
import { figure } from "../../text/numbers.ts";
import { STALL } from "../../text/stall.ts";
import { lacksReason } from "../common/against.ts";
import { DespiteField } from "../common/Despite.tsx";
import { today } from "../common/edge.ts";
import { focusFirst } from "../common/focus.ts";
import { amountText, lifeShown } from "../common/lots.ts";
import { type Good, isSoldOut, lotsToSell } from "./goods.ts";
import { Ruler } from "./Ruler.tsx";
import type { Deed } from "./selling.ts";
import type { Stall } from "./use_stall.ts";

/** One question at a time, always with a way back to selling. */
export function StallBench({ stall }: { stall: Stall }) {
  const { asks, good } = stall;
  if (good !== null && (asks.value === "typed" || asks.value === "price")) {
    return <TypedNumber stall={stall} />;
  }
  if (good !== null && asks.value === "lot") return <WhichLot stall={stall} />;
  if (good !== null && asks.value === "despite") return <WhyAllTheSame stall={stall} />;
  if (asks.value === "deed" || asks.value === "return") return <WhatWasIt stall={stall} />;
  return (
    <>
      <Asking stall={stall} />
      <Ruler stall={stall} />
      {stall.deed.value === "sale" ? (
        <Foot>
          <BackKey href="#/" />
          <Cup
            class="foot-key"
            onPress={() => {
              asks.value = "deed";
            }}
          >
            {STALL.not_sale}
          </Cup>
          <Cup class="foot-key" href={`#/dispatch/${stall.place}`}>
            {STALL.business}
          </Cup>
        </Foot>
      ) : (
        <BackToSelling stall={stall} />
      )}
    </>
  );
}

const ASKED: Record<Deed, string> = {
  sale: STALL.how_many,
  sample: STALL.asks_sample,
  waste: STALL.asks_waste,
  return_fit: STALL.asks_back_fit,
  return_unfit: STALL.asks_back_unfit,
};

function Asking({ stall }: { stall: Stall }) {
  const { good, deed, lot, asks } = stall;
  if (good === null) return <p class="asks">{STALL.choose_product}</p>;
  const isOut = deed.value === "sale" && isSoldOut(good);
  const proposed = lotsToSell(good, null);
  const first = proposed.find((each) => !each.left.startsWith("-") && each.left !== "0");
  return (
    <>
      {isOut && <p class="second">{soldOutWords(good)}</p>}
      <div class="asking">
        <p>
          {ASKED[deed.value]} <b class="rec">{good.name}</b>?
        </p>
        <Cup
          class="lot-cup"
          onPress={() => {
            asks.value = "lot";
          }}
        >
          <span>{STALL.from_lot}</span>{" "}
          <b>{lot.value ?? first?.lot ?? proposed.at(-1)?.lot ?? ""}</b>
        </Cup>
      </div>
    </>
  );
}

function BackToSelling({ stall }: { stall: Stall }) {
  return (
    <Foot>
      <Cup
        class="foot-key"
        onPress={() => {
          stall.deed.value = "sale";
          stall.asks.value = "count";
          stall.typed.value = "";
        }}
      >
        {STALL.back}
      </Cup>
    </Foot>
  );
}

function WhichLot({ stall }: { stall: Stall }) {
  return (
    <>
      <p class="asks">{STALL.which_lot}</p>
      <div class="tags scrolls">
        {stall.good?.lots.map((each) => {
          const life = lifeShown(each.life, each.made_on, today());
          return (
            <LotTag
              key={each.lot}
              code={each.lot}
              name={stall.good?.name ?? ""}
              amount={amountText(each.left, each.unit)}
              life={each.against.length > 0 ? againstWords(each.against) : life.words}
              state={each.against.length > 0 ? "held" : life.state}
              isChosen={stall.lot.value === each.lot}
              onPress={() => {
                stall.lot.value = each.lot;
                stall.asks.value = "count";
              }}
            />
          );
        })}
        <Caution about="shelf_life" />
      </div>
      <BackToSelling stall={stall} />
    </>
  );
}

/** What speaks against the lots, and the reason they are sold or tasted all the same. */
function WhyAllTheSame({ stall }: { stall: Stall }) {
  const { despite, deed, keep } = stall;
  const { count, lots, reason } = despite.value;
  const words = deed.value === "sale" ? STALL.sell : STALL.keep;
  return (
    <>
      <DespiteField
        lots={lots}
        reason={reason}
        onReason={(typed) => {
          despite.value = { ...despite.value, reason: typed };
        }}
      />
      <Foot>
        <BackKey
          onPress={() => {
            despite.value = { ...despite.value, reason: "" };
            stall.asks.value = "lot";
          }}
          name={DESPITE.another}
        />
        <MainKey
          words={DESPITE.do(words(figure(count)))}
          notReady={lacksReason(lots, reason) ? DESPITE.first : null}
          onNotReady={() => focusFirst("despite")}
          onPress={() => keep(count)}
        />
      </Foot>
    </>
  );
}

const DEEDS = [
  { value: "sample", word: STALL.sample },
  { value: "waste", word: STALL.waste },
  { value: "return", word: STALL.came_back },
  { value: "price", word: STALL.price },
] as const;
const RETURNS = [
  { value: "return_fit", word: STALL.unopened },
  { value: "return_unfit", word: STALL.damaged },
] as const;

function WhatWasIt({ stall }: { stall: Stall }) {
  const { asks, deed } = stall;
  function counts(chosen: Deed) {
    deed.value = chosen;
    asks.value = "count";
  }
  return (
    <>
      <p class="asks">{STALL.which}</p>
      {asks.value === "return" ? (
        <CupChoice name={STALL.came_back} options={RETURNS} chosen={null} onChoose={counts} />
      ) : (
        <CupChoice
          name={STALL.which}
          options={DEEDS}
          chosen={null}
          onChoose={(chosen) => {
            if (chosen === "return" || chosen === "price") asks.value = chosen;
            else counts(chosen);
          }}
        />
      )}
      <Cup href={`#/bring/${stall.place}`}>{STALL.bring}</Cup>
      <BackToSelling stall={stall} />
    </>
  );
}

/** More than five, or another price. */
function TypedNumber({ stall }: { stall: Stall }) {
  const { asks, typed, good, prices, deed } = stall;
  const isPrice = asks.value === "price";
  const number = typedNumber(typed.value);
  const isNone = number === null || /^[0.]+$/.test(number);
  function done() {
    if (number === null || good === null) return;
    if (!isPrice) return stall.keep(number);
    prices.value = { ...prices.value, [good.key]: number };
    typed.value = "";
    asks.value = "count";
  }
  const words = isPrice ? STALL.set_price : deed.value === "sale" ? STALL.sell : STALL.keep;
  return (
    <>
      <p class="asks">
        {isPrice ? STALL.price : ASKED[deed.value]} <span class="rec">{good?.name}</span>:{" "}
        <b>{figure(typed.value)}</b>
      </p>
      <Keypad
        typed={typed.value}
        onTyped={(text) => {
          typed.value = text;
        }}
        isWhole={!isPrice && good?.unit === "pc"}
        onEnter={done}
      />
      <Foot>
        <BackKey
          onPress={() => {
            typed.value = "";
            asks.value = "count";
          }}
        />
        <MainKey
          words={words(figure(number))}
          notReady={isNone ? (isPrice ? STALL.type_price : STALL.type_number) : null}
          onPress={done}
        />
      </Foot>
    </>
  );
}

/** What was brought and sold; below zero the figures would only puzzle. */
function soldOutWords({ came, sold }: Good): string {
  return came.startsWith("-") ? STALL.found_below : STALL.found_more(figure(came), figure(sold));
}
