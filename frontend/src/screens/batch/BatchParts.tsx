/** The records of a batch, row by row, each with a way to correct it. */
import type { BatchState } from "../../calc/batches.ts";
import { plain } from "../../calc/numbers.ts";
import { weighingOf } from "../../calc/weighing.ts";
import { Cup } from "../../parts/Cup.tsx";
import { CorrectionRow, Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { Caution, Part } from "../../parts/Plain.tsx";
import type { HeldEntry } from "../../state/record.ts";
import { nameOf } from "../../state/stock.ts";
import { BATCH, lossWord } from "../../text/finish.ts";
import { lifeSortWord } from "../../text/lots.ts";
import { amountWords, clockWords, dayWords, figure } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { STEP } from "../../text/step.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { type BatchLine, lineName } from "../shared/batches.ts";
import { zone } from "../shared/edge.ts";
import { useHeld } from "../shared/use_held.ts";
import { entryState } from "../weigh-in/LineEntries.tsx";

type WeighIn = BatchLine["weigh_ins"][number];
type Held = readonly HeldEntry[];

function CorrectCup({ batch, entry }: { batch: BatchState; entry: string }) {
  return (
    <Cup class="slim" href={`#/correct/${batch.batch}/${entry}`}>
      {PARTS.correct}
    </Cup>
  );
}

/** Every weigh-in, corrected ones with the old value struck. */
export function WeighIns({ batch }: { batch: BatchState }) {
  const held = useHeld(`batch:${batch.batch}`, batch);
  const lines = batch.lines.filter((line) => line.weigh_ins.length > 0);
  if (lines.length === 0) return null;
  return (
    <Part title={BATCH.lines}>
      <Entries name={BATCH.lines}>
        {lines.flatMap((line) =>
          line.weigh_ins.map((each) => (
            <WeighInRow
              key={each.entry}
              batch={batch}
              line={line}
              weighIn={each}
              held={held.value}
            />
          )),
        )}
      </Entries>
    </Part>
  );
}

/** What the entry said when it was made: struck where a correction stands. */
function oldNet(weighIn: WeighIn, held: Held): string | null {
  const original = held.find(({ entry }) => entry.id === weighIn.entry);
  const weighing = original === undefined ? null : weighingOf(original.entry.body);
  return weighing === null ? null : amountWords(plain(weighing.net), weighing.unit);
}

/** When a correction was made, on the clock. */
function whenMade(id: string, held: Held): string {
  const correction = held.find(({ entry }) => entry.id === id);
  return correction === undefined ? "" : clockWords(correction.entry.recorded_at, zone());
}

function WeighInRow(props: { batch: BatchState; line: BatchLine; weighIn: WeighIn; held: Held }) {
  const { batch, line, weighIn, held } = props;
  const time = clockWords(weighIn.happened_at, zone());
  const state = entryState(weighIn.entry);
  const act = <CorrectCup batch={batch} entry={weighIn.entry} />;
  const last = weighIn.was.at(-1);
  const net = amountWords(weighIn.net, weighIn.unit);
  const details = [
    weighIn.lot ?? "",
    weighIn.instrument === null ? "" : nameOf("instrument", weighIn.instrument),
    line.verdict === null ? "" : WEIGH_IN.verdict_word(line.verdict),
  ].filter(Boolean);
  if (last !== undefined) {
    return (
      <CorrectionRow
        time={time}
        thing={<span class="rec">{lineName(line)}</span>}
        was={oldNet(weighIn, held) ?? figure(null)}
        now={net}
        by={nameOf("member", last.author)}
        when={whenMade(last.entry, held)}
        reason={last.reason}
        state={state}
        act={act}
      />
    );
  }
  return (
    <EntryRow time={time} state={state} act={act} more={details.join(", ")}>
      <span class="rec">{lineName(line)}</span> {net}
    </EntryRow>
  );
}

/** Steps in their order: done with their readings, or not done. */
export function Steps({ batch }: { batch: BatchState }) {
  if (batch.steps.length === 0) return null;
  return (
    <Part title={BATCH.steps}>
      <ol class="batch-steps">
        {batch.steps.map((step) => (
          <li key={step.step}>
            <Cup class="line-row" href={`#/step/${batch.batch}/${step.step}`}>
              <span class="rec">{step.says}</span>
              <b class="line-amount">
                {step.done.length === 0
                  ? BATCH.not_done
                  : step.done
                      .map((each) =>
                        each.value === null ? STEP.within : amountWords(each.value, step.unit),
                      )
                      .join(", ")}
              </b>
            </Cup>
            {step.caution && <Caution>{step.caution}</Caution>}
            {step.done.map((each) => (
              <p key={each.entry} class="batch-step-done">
                <span class="second">
                  {clockWords(each.happened_at, zone())}{" "}
                  {each.verdict === null ? "" : WEIGH_IN.verdict_word(each.verdict)}{" "}
                  <span class="rec">{each.action}</span>
                </span>
                {each.value !== null && <CorrectCup batch={batch} entry={each.entry} />}
              </p>
            ))}
          </li>
        ))}
      </ol>
    </Part>
  );
}

/** What came out, lot by lot. */
export function Outputs({ batch }: { batch: BatchState }) {
  if (batch.outputs.length === 0) return null;
  return (
    <Part title={BATCH.out}>
      <Entries name={BATCH.out}>
        {batch.outputs.map((each) => (
          <EntryRow
            key={each.entry}
            time=""
            state={entryState(each.entry)}
            act={<CorrectCup batch={batch} entry={each.entry} />}
            more={each.life && `${lifeSortWord(each.life.sort)} ${dayWords(each.life.on, true)}`}
          >
            <b>{each.lot}</b> {amountWords(each.amount, each.unit)}
            {each.rejected !== null && `, ${BATCH.rejected(figure(each.rejected))}`}
          </EntryRow>
        ))}
      </Entries>
    </Part>
  );
}

/** What was lost, reason by reason. */
export function Losses({ batch }: { batch: BatchState }) {
  if (batch.losses.length === 0) return null;
  return (
    <Part title={BATCH.lost}>
      <Entries name={BATCH.lost}>
        {batch.losses.map((each) => (
          <EntryRow
            key={each.entry}
            time=""
            state={entryState(each.entry)}
            act={<CorrectCup batch={batch} entry={each.entry} />}
          >
            {lossWord(each.reason)} {amountWords(each.amount, each.unit)}
          </EntryRow>
        ))}
      </Entries>
    </Part>
  );
}
