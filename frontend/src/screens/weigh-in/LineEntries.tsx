/** What was weighed in: the last entry at hand, and all lines of the batch beside the work. */
import type { ComponentChildren } from "preact";
import type { BatchState } from "../../calc/batches.ts";
import { itemsIn, textIn } from "../../calc/bodies.ts";
import { Cup } from "../../parts/Cup.tsx";
import { Entries, EntryRow, type EntryState } from "../../parts/EntryRow.tsx";
import { Notice, Part } from "../../parts/Plain.tsx";
import { Vessel } from "../../parts/Tube.tsx";
import { waiting } from "../../state/outbox.ts";
import type { HeldEntry } from "../../state/record.ts";
import { FITNESS } from "../../text/fitness.ts";
import { amountWords, clockWords } from "../../text/numbers.ts";
import { PARTS } from "../../text/parts.ts";
import { WEIGH_IN } from "../../text/weigh_in.ts";
import { type BatchLine, lineName } from "../common/batches.ts";
import { zone } from "../common/edge.ts";
import { InQuestion } from "../common/InQuestion.tsx";
import { amountText, quantityText } from "../common/lots.ts";
import { useHeld } from "../common/use_held.ts";

type WeighIn = BatchLine["weigh_ins"][number];

/** On this phone while it waits; after that the log has it. */
export function entryState(entry: string): EntryState {
  const isHere = waiting.value.some((each) => each.id === entry);
  return isHere ? { is: "here" } : { is: "log", number: null };
}

function lastOf(batch: BatchState): { line: BatchLine; weighIn: WeighIn } | null {
  const all = batch.lines.flatMap((line) => line.weigh_ins.map((weighIn) => ({ line, weighIn })));
  const [first, ...rest] = all;
  if (first === undefined) return null;
  return rest.reduce(
    (last, each) => (each.weighIn.happened_at >= last.weighIn.happened_at ? each : last),
    first,
  );
}

/** The entry saved last, with Take back; what to do while there is none. */
export function LastEntry(props: {
  batch: BatchState;
  onTakeBack: (entry: string) => void;
  children: string;
}) {
  const last = lastOf(props.batch);
  if (last === null) return <Notice isLive>{props.children}</Notice>;
  const { line, weighIn } = last;
  return (
    <div class="last-entry" role="status">
      <p>
        <b>{clockWords(weighIn.happened_at, zone())}</b> <span class="rec">{lineName(line)}</span>{" "}
        {amountWords(weighIn.net, weighIn.unit)}
        <InQuestion {...weighIn} trust={weighIn.trust} />
        <span class="second">
          {entryState(weighIn.entry).is === "here" ? PARTS.kept_here : PARTS.in_the_log}
        </span>
      </p>
      <Cup onPress={() => props.onTakeBack(weighIn.entry)}>{PARTS.take_back}</Cup>
    </div>
  );
}

/** Entries of this line, then every line with what is in it. */
export function LineEntries(props: {
  batch: BatchState;
  here: string;
  onTakeBack: (entry: string) => void;
}) {
  const { batch, here } = props;
  const line = batch.lines.find((each) => each.line === here);
  const held = useHeld(`batch:${batch.batch}`, batch);
  const note = noteOf(held.value, here);
  return (
    <>
      <Part title={WEIGH_IN.on_this_line}>
        {note !== null && <p class="second">{note}</p>}
        {line === undefined || line.weigh_ins.length === 0 ? (
          <p class="second">{WEIGH_IN.nothing_yet}</p>
        ) : (
          <Entries name={WEIGH_IN.on_this_line}>
            {line.weigh_ins.map((each) => (
              <EntryRow
                key={each.entry}
                time={clockWords(each.happened_at, zone())}
                state={entryState(each.entry)}
                more={<InQuestion {...each} trust={each.trust} />}
                act={<Cup href={`#/correct/${batch.batch}/${each.entry}`}>{PARTS.correct}</Cup>}
              >
                <b class="code">{each.lot}</b> {amountWords(each.net, each.unit)}
              </EntryRow>
            ))}
          </Entries>
        )}
      </Part>
      <Part title={WEIGH_IN.all_lines}>
        <Lines batch={batch} here={here} />
      </Part>
    </>
  );
}

/** What the recipe notes on a line, such as the household measure it was written in. */
function noteOf(held: readonly HeldEntry[], line: string): string | null {
  const start = held.find(({ entry }) => entry.kind === "batch_started");
  const lines = start === undefined ? [] : itemsIn(start.entry.body, "lines");
  const own = lines.find((each) => textIn(each, "line") === line);
  return own === undefined ? null : textIn(own, "note");
}

/** Every line as a way to it. */
export function Lines({
  batch,
  here,
}: {
  batch: BatchState;
  here: string | null;
}): ComponentChildren {
  return (
    <ul class="lines">
      {batch.lines.map((line) => (
        <li key={line.line}>
          <Cup
            class="line-row"
            href={`#/weigh-in/${batch.batch}/${line.line}`}
            isChosen={line.line === here}
          >
            <Vessel isFull={line.in_base !== null} />
            <span class="rec">{lineName(line)}</span>
            <span class="line-amount">
              <b>
                {line.in_base === null || line.unit === null
                  ? quantityText(line.planned)
                  : amountText(line.in_base, line.unit)}
              </b>
              <span class="second">
                {line.in_base === null
                  ? WEIGH_IN.not_weighed
                  : WEIGH_IN.verdict_word(line.unit === "pc" ? "counted" : line.verdict)}
                {line.weigh_ins.some((each) => each.trust?.failed_by) && `, ${FITNESS.line}`}
              </span>
            </span>
          </Cup>
        </li>
      ))}
    </ul>
  );
}
