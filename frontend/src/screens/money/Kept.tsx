/** After something was kept: what it was, a way to take it back, and where to go on. */
import { useSignal } from "@preact/signals";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Refusal } from "../../parts/Plain.tsx";
import { takeBack } from "../../state/record.ts";
import { MONEY } from "../../text/money.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { hindrance } from "../common/sentences.ts";
import "../common/rows.css";

interface KeptProps {
  where: string;
  title: string;
  words: string;
  entry: string;
  onMore: () => void;
  on: { words: string; href: string };
}

/** Taking back within the same screen is a slip, and needs no reason. */
export function Kept({ where, title, words, entry, onMore, on }: KeptProps) {
  const isBack = useSignal(false);
  const found = useSignal<string | null>(null);

  async function undo() {
    const answer = await takeBack(entry);
    found.value = hindrance(answer)?.sentence ?? null;
    isBack.value = "saved" in answer;
  }
  return (
    <Frame
      where={where}
      title={title}
      gauge={<HeadGauge />}
      benchName={MONEY.bench}
      bench={
        <Foot>
          <BackKey href={on.href} />
          <MainKey words={on.words} href={on.href} />
        </Foot>
      }
    >
      <Notice isLive>{isBack.value ? MONEY.taken_back : words}</Notice>
      <Refusal sentence={found.value} />
      <p class="key-row">
        {!isBack.value && <Cup onPress={() => void undo()}>{MONEY.take_back}</Cup>}
        <Cup onPress={onMore}>{MONEY.add_more}</Cup>
      </p>
    </Frame>
  );
}
