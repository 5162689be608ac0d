/** All batches this phone knows: under way first, then the finished ones, the last first. */
import type { BatchState } from "../../calc/batches.ts";
import { BackKey, Cup, MainKey } from "../../parts/Cup.tsx";
import { Foot, Frame } from "../../parts/Frame.tsx";
import { Notice, Part } from "../../parts/Plain.tsx";
import { Tube } from "../../parts/Tube.tsx";
import { sheetsOf } from "../../state/sheets.ts";
import { BATCH } from "../../text/finish.ts";
import { recipeNameOf } from "../common/batches.ts";
import { HeadGauge } from "../common/HeadGauge.tsx";
import "./batch.css";

/** `#/batches`. */
export function Screen() {
  const all = sheetsOf<BatchState>("batch")
    .value.map(({ state }) => state)
    .sort((a, b) => ((a.started_at ?? "") < (b.started_at ?? "") ? 1 : -1));
  const open = all.filter((batch) => !batch.is_finished);
  const done = all.filter((batch) => batch.is_finished);
  return (
    <Frame
      where={BATCH.where}
      title={BATCH.batches}
      gauge={<HeadGauge />}
      benchName={BATCH.bench}
      bench={
        <Foot>
          <BackKey href="#/" />
          <MainKey words={BATCH.start} href="#/start" />
        </Foot>
      }
      side={
        done.length > 0 && (
          <Part title={BATCH.finished}>
            <List batches={done} />
          </Part>
        )
      }
    >
      {all.length === 0 && <Notice>{BATCH.none}</Notice>}
      {open.length > 0 && (
        <Part title={BATCH.under_way}>
          <List batches={open} />
        </Part>
      )}
    </Frame>
  );
}

function List({ batches }: { batches: readonly BatchState[] }) {
  return (
    <ul class="batch-list">
      {batches.map((batch) => (
        <li key={batch.batch}>
          <Cup class="batch-cup" href={`#/batch/${batch.batch}`}>
            <span class="rec">{recipeNameOf(batch)}</span>
            <b>{batch.code}</b>
            <Way state={batch} />
            {batch.findings.some((each) => !each.is_settled) && (
              <span class="to-look-at">{BATCH.findings}</span>
            )}
          </Cup>
        </li>
      ))}
    </ul>
  );
}

function Way({ state }: { state: BatchState }) {
  if (state.is_finished) {
    return <span class="second">{BATCH.finished_on(state.finished_at ?? "")}</span>;
  }
  const done = state.lines.filter((line) => line.in_base !== null).length;
  const words = BATCH.lines_done(String(done), String(state.lines.length));
  return (
    <span class="batch-way">
      <Tube full={done} whole={state.lines.length} says={null} isThin />
      <span class="second">{words}</span>
    </span>
  );
}
