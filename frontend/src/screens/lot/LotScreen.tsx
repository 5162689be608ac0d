/** The lot sheet: what it is, where it stands, where it came from and went, what happened to it. */
import { useSignal } from "@preact/signals";
import type { LotState } from "../../calc/stock.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { LotTag } from "../../parts/LotTag.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { sheet } from "../../state/sheets.ts";
import { againstLot } from "../../state/stock.ts";
import type { Shown } from "../../state/types.ts";
import { APP_TEXT } from "../../text/app.ts";
import { againstWords, HOLD } from "../../text/holds.ts";
import { LOT } from "../../text/lot.ts";
import { today } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { LotHeld } from "../common/HeldPlate.tsx";
import { later } from "../common/later.tsx";
import { amountText, lifeShown, materialOf } from "../common/lots.ts";
import { LotFacts } from "./LotFacts.tsx";
import { LotHistory } from "./LotHistory.tsx";
import "../common/rows.css";

const LastFill = later(
  async () => (await import("./FillSays.tsx")).LastFill,
  APP_TEXT.part_missing,
);

/** `params.lot` is the code. */
export function Screen({ params }: { params: Record<string, string> }) {
  const code = params.lot ?? "";
  const shown = sheet<LotState>(`lot:${code}`).value;
  return (
    <Frame
      where={LOT.where}
      title={code}
      gauge={<HeadGauge />}
      calm={shown?.from === "server" ? LOT.from_server : undefined}
      benchName={LOT.bench}
      side={shown === null ? undefined : <LotHistory code={code} fills={shown.state.fills ?? []} />}
      bench={
        <LotBench
          code={code}
          isHeld={shown !== null}
          isPacked={shown?.state.unit === "pc"}
          isBought={shown?.state.made_by === "receipt"}
        />
      }
    >
      {shown === null ? <Notice>{LOT.not_held}</Notice> : <Sheet shown={shown} />}
    </Frame>
  );
}

function Sheet({ shown }: { shown: Shown<LotState> }) {
  const { state } = shown;
  const material = materialOf(state.material);
  const life = lifeShown(state.life, state.made_on, today());
  const fills = state.fills ?? []; // a sheet of an earlier version knows none
  const isRefused = state.condition === "refused";
  const [held] = againstLot(state, today()).filter((each) => each !== "expired");
  return (
    <>
      <LotTag
        code={state.lot}
        name={material?.name ?? ""}
        amount={amountText(state.on_hand, state.unit ?? "pc", material)}
        life={isRefused ? LOT.refused : held ? againstWords([held]) : life.words}
        state={isRefused || held ? "held" : life.state}
        lifeLeft={life.left}
      />
      {shown.is_newer && <Notice>{APP_TEXT.needs_newer}</Notice>}
      <LotHeld lot={state} />
      <LotFacts state={state} />
      {fills.length > 0 && <LastFill lot={state.lot} fills={fills} />}
    </>
  );
}

function LotBench(props: { code: string; isHeld: boolean; isPacked: boolean; isBought: boolean }) {
  const { code, isHeld, isPacked, isBought } = props;
  const isOpen = useSignal(false);
  if (!isHeld) {
    return (
      <Foot>
        <BackKey href="#/stock" />
        <MainKey words={LOT.trace} href={`#/trace/${code}`} />
      </Foot>
    );
  }
  return (
    <>
      {isOpen.value && (
        <div class="cup-choice">
          <Cup href={`#/lot/${code}/move`}>{LOT.move}</Cup>
          <Cup href={`#/lot/${code}/loss`}>{LOT.loss}</Cup>
          <Cup href={`#/lot/${code}/top-up`}>{LOT.top_up}</Cup>
          {isPacked && <Cup href={`#/lot/${code}/fill`}>{LOT.weigh_packs}</Cup>}
          <Cup href={`#/lot/${code}/hold`}>{HOLD.put}</Cup>
          <Cup href={`#/label/${code}`}>{LOT.label}</Cup>
          {isBought && <Cup href={`#/paid/${code}`}>{LOT.paid}</Cup>}
          <Cup href={`#/trace/${code}`}>{LOT.trace}</Cup>
        </div>
      )}
      <Foot>
        <BackKey href="#/stock" />
        <Cup
          class="second-key"
          isOpen={isOpen.value}
          onPress={() => {
            isOpen.value = !isOpen.value;
          }}
        >
          {isOpen.value ? LOT.close : LOT.more}
        </Cup>
        <MainKey words={LOT.count} href={`#/lot/${code}/count`} />
      </Foot>
    </>
  );
}
