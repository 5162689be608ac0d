/** After saving: the new lot as its tag, its label, and the receipt that can be taken back. */
import { useSignal } from "@preact/signals";
import { Caution } from "../../parts/Caution.tsx";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { LotTag } from "../../parts/LotTag.tsx";
import { Refusal } from "../../parts/Plain.tsx";
import { typedNumber } from "../../parts/typing.ts";
import { takeBack } from "../../state/record.ts";
import { amountWords, clockWords } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { RECEIVE } from "../../text/receive.ts";
import { nowMs, today, zone } from "../common/edge.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { lifeShown, materialOf } from "../common/lots.ts";
import { hindrance } from "../common/sentences.ts";
import type { ReceiveTyped } from "./typed.ts";

/** A receipt as it was kept: its code, its entries, what was typed. */
export interface Kept {
  code: string;
  /** The receipt, and the price where one was typed. */
  entries: readonly string[];
  typed: ReceiveTyped;
}

/** Says "kept" only because the entry is on this phone for good. */
export function ReceivedView({ kept, onNext }: { kept: Kept; onNext: () => void }) {
  const trouble = useSignal<string | null>(null);
  const at = useSignal(new Date(nowMs()).toISOString());
  const { typed, code } = kept;
  const isRefused = typed.condition === "refused";
  const name = materialOf(typed.material)?.name ?? "";
  const life = lifeShown(
    typed.life_on === "" ? null : { sort: typed.life_sort, on: typed.life_on },
    today(),
    today(),
  );
  async function undo() {
    for (const entry of kept.entries) {
      const found = hindrance(await takeBack(entry));
      trouble.value = found?.sentence ?? null;
      if (found !== null) return;
    }
    onNext();
  }
  const amount = amountWords(typedNumber(typed.amount), typed.unit);
  return (
    <Frame
      where={RECEIVE.saved}
      title={RECEIVE.saved_title(code)}
      gauge={<HeadGauge />}
      calm={isRefused ? RECEIVE.saved_refused : RECEIVE.saved_calm}
      benchName={RECEIVE.bench}
      bench={
        <>
          {!isRefused && <Cup href={`#/label/${code}`}>{RECEIVE.label}</Cup>}
          <Foot>
            <BackKey href="#/" />
            <MainKey words={RECEIVE.next} onPress={onNext} />
          </Foot>
        </>
      }
    >
      <Refusal sentence={trouble.value} />
      <LotTag
        code={code}
        name={name}
        amount={amount}
        life={isRefused ? RECEIVE.refused : life.words}
        state={isRefused ? "held" : life.state}
        href={`#/lot/${code}`}
      />
      {!isRefused && life.words !== null && <Caution about="shelf_life" />}
      <Entries name={RECEIVE.received}>
        <EntryRow
          time={clockWords(at.value, zone())}
          state={{ is: "here" }}
          act={<Cup onPress={() => void undo()}>{PARTS.take_back}</Cup>}
        >
          <span class="rec">{name}</span> {amount} {isRefused ? RECEIVE.refused : RECEIVE.received}
        </EntryRow>
      </Entries>
    </Frame>
  );
}
