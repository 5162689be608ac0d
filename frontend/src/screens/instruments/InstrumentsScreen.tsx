/** Every instrument in use with its state: what to check first stands on top. */
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { FitMark } from "../../parts/FitMark.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice } from "../../parts/Plain.tsx";
import { nameOf } from "../../state/stock.ts";
import { FITNESS } from "../../text/fitness.ts";
import { INSTRUMENTS } from "../../text/instruments.ts";
import { amountWords } from "../../text/numbers.ts";
import { type InstrumentShown, instrumentsInUse } from "../common/batches.ts";
import type { Fitness } from "../common/fitness.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import { standingOf } from "../common/instruments.ts";
import "../common/rows.css";
import "./instruments.css";

const FIRST: readonly Fitness[] = ["failed", "due", "not_checked", "fit"];

/** `#/instruments`. */
export function Screen() {
  const all = instrumentsInUse(null)
    .map((each) => ({ each, standing: standingOf(each.id) }))
    .sort((a, b) => FIRST.indexOf(a.standing.is) - FIRST.indexOf(b.standing.is));
  const [first] = all;
  return (
    <Frame
      where={INSTRUMENTS.where}
      title={INSTRUMENTS.title}
      gauge={<HeadGauge />}
      benchName={INSTRUMENTS.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          {first === undefined ? (
            <MainKey words={INSTRUMENTS.all} href="#/set-up/instruments" />
          ) : (
            <MainKey
              words={`${INSTRUMENTS.check}: ${first.each.name}`}
              href={`#/instruments/${first.each.id}/check`}
            />
          )}
        </Foot>
      }
    >
      {all.length === 0 && <Notice>{INSTRUMENTS.none}</Notice>}
      <ul class="check-list">
        {all.map(({ each, standing }) => (
          <li key={each.id}>
            <Row each={each} is={standing.is} />
          </li>
        ))}
      </ul>
    </Frame>
  );
}

function Row({ each, is }: { each: InstrumentShown; is: Fitness }) {
  const where = each.place === null ? INSTRUMENTS.nowhere : nameOf("place", each.place);
  const step = each.division === null ? "" : `${amountWords(each.division, each.unit)}, `;
  return (
    <Cup class="choice" href={`#/instruments/${each.id}`}>
      <span class="choice-name">
        <span class="rec">{each.name}</span>
        <span class="second">
          {step}
          {where}
        </span>
      </span>
      <span class="choice-right fit-state">
        <FitMark is={is} /> {FITNESS[is]}
      </span>
    </Cup>
  );
}
