/** Stall: two taps a sale. No takings on the screen: buyers look on, and the evening count is blind. */
import "../common/rows.css";
import "./stall.css";
import { computed } from "@preact/signals";
import { useMemo } from "preact/hooks";
import { Choices } from "../../parts/Choices.tsx";
import { BackKey, Cup } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { current } from "../../state/session.ts";
import { light, remember, remembered, setLight } from "../../state/settings.ts";
import { nameOf, places } from "../../state/stock.ts";
import { figure } from "../../text/numbers.ts";
import { STALL } from "../../text/stall.ts";
import { choicesOf } from "../common/choices.ts";
import { today } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { placeSort } from "../common/lots.ts";
import { GoodsList } from "./GoodsList.tsx";
import { type Good, goodsAt, soldToday } from "./goods.ts";
import { LastDeed } from "./LastDeed.tsx";
import { StallBench } from "./StallBench.tsx";
import { useStall } from "./use_stall.ts";

const REMEMBERED = "stall.place";

/** The stall chosen last on this phone, else a question which one. */
export function Screen() {
  const kept = remembered(REMEMBERED);
  if (typeof kept !== "string" || placeSort(kept) === null) return <WhichStall />;
  return <Table key={kept} place={kept} />;
}

function WhichStall() {
  const stalls = places.value.filter((place) => place.fields.sort === "stall");
  return (
    <Frame
      where={STALL.where}
      title={STALL.choose_title}
      gauge={<HeadGauge />}
      isStall
      benchName={STALL.choose}
      bench={
        <Foot>
          <BackKey href="#/" />
          <span />
        </Foot>
      }
    >
      <Choices
        name={STALL.choose}
        items={choicesOf(stalls)}
        chosen={null}
        onChoose={(place) => remember(REMEMBERED, place)}
        none={STALL.no_stall}
      />
    </Frame>
  );
}

function Table({ place }: { place: string }) {
  const goods = useGoods(place);
  const stall = useStall(place, goods);
  return (
    <Frame
      where={
        <>
          {STALL.where}, <span class="rec">{current.value?.member.name}</span>
        </>
      }
      title={<Title place={place} sold={soldToday(goods)} />}
      gauge={<HeadGauge />}
      isStall
      benchName={STALL.bench}
      bench={
        <>
          <LastDeed last={stall.last} onTakeBack={stall.takeBackLast} />
          <StallBench stall={stall} />
        </>
      }
    >
      <Refusal sentence={stall.found.value?.sentence ?? null} />
      {goods.length === 0 ? (
        <Notice>{STALL.none}</Notice>
      ) : (
        <GoodsList
          goods={goods}
          chosen={stall.good?.key ?? null}
          prices={stall.prices.value}
          onChoose={stall.choose}
        />
      )}
      <Seldom />
    </Frame>
  );
}

/** Added up anew only when a sheet or the day has changed, not with each touch of a key. */
function useGoods(place: string): readonly Good[] {
  const on = today();
  return useMemo(() => computed(() => goodsAt(place, on)), [place, on]).value;
}

/** Sold, not taken: buyers look on. */
function Title({ place, sold }: { place: string; sold: string }) {
  return (
    <span class="stall-title">
      <span class="rec">{nameOf("place", place)}</span>
      <span class="stall-sold">
        <b>{figure(sold)}</b> {STALL.sold}
      </span>
    </span>
  );
}

/** Light for the open, and the way to another stall: seldom pressed, so they stand last. */
function Seldom() {
  const isSun = light.value === "sun";
  return (
    <div class="key-row">
      <Cup class="slim" onPress={() => setLight(isSun ? "phone" : "sun")}>
        {isSun ? STALL.sun_off : STALL.sun}
      </Cup>
      <Cup class="slim" onPress={() => remember(REMEMBERED, null)}>
        {STALL.another}
      </Cup>
    </div>
  );
}
