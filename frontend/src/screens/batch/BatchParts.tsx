/** The record of a batch: weigh-ins, steps, outputs and losses as rows that open. */

import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Entries } from "../../parts/EntryRow.tsx";
import { Part } from "../../parts/Plain.tsx";
import type { HeldEntry } from "../../state/record.ts";
import { nameOf } from "../../state/stock.ts";
import { cautionsOfStep } from "../../text/cautions.ts";
import { BATCH, lossWord } from "../../text/finish.ts";
import { lifeSortWord } from "../../text/lots.ts";
import { amountWords, clockWords, dayWords, figure } from "../../text/numbers.ts";
import { type BatchLine, type BatchStep, lineName } from "../common/batches.ts";
import { doneWords } from "../common/done.ts";
import { zone } from "../common/edge.ts";
import { InQuestion } from "../common/InQuestion.tsx";
import { quantityText } from "../common/lots.ts";
import { correctedOr } from "../common/trust.ts";
import { RecordRow, VerdictWord, Voided } from "./RecordRow.tsx";

/** What every part of the record needs; `held` is empty until the entries are read. */
export interface RecordProps {
  batch: BatchState;
  held: readonly HeldEntry[];
}

/** Every weigh-in, corrected ones with the old value struck. */
export function WeighIns({ batch, held }: RecordProps) {
  const lines = batch.lines.filter((line) => line.weigh_ins.length > 0);
  if (lines.length === 0) return null;
  return (
    <Part title={BATCH.lines}>
      <Entries name={BATCH.lines}>
        {lines.flatMap((line) => line.weigh_ins.map((each) => weighInRow(batch, held, line, each)))}
        <Voided held={held} kind="weigh_in" />
      </Entries>
    </Part>
  );
}

function weighInRow(
  batch: BatchState,
  held: RecordProps["held"],
  line: BatchLine,
  weighIn: BatchLine["weigh_ins"][number],
) {
  return (
    <RecordRow
      key={weighIn.entry}
      batch={batch.batch}
      entry={weighIn.entry}
      held={held}
      thing={<span class="rec">{lineName(line)}</span>}
      amount={amountWords(correctedOr(weighIn.net, weighIn), weighIn.unit)}
      time={clockWords(weighIn.happened_at, zone())}
      more={
        <>
          <VerdictWord verdict={line.verdict} /> <span class="code">{weighIn.lot}</span>
          {weighIn.trust?.found_by &&
            `, ${BATCH.corrected_from(amountWords(weighIn.net, weighIn.unit))}${weighIn.trust.is_extrapolated ? "." : ""}`}{" "}
          <InQuestion {...weighIn} trust={weighIn.trust} />
        </>
      }
      author={weighIn.author}
    />
  );
}

/** Steps in their order: done with their readings, or not done. */
export function Steps({ batch, held }: RecordProps) {
  if (batch.steps.length === 0) return null;
  return (
    <Part title={BATCH.steps}>
      <ol class="entries batch-steps">
        {batch.steps.map((step) => (
          <Step key={step.step} batch={batch} held={held} step={step} />
        ))}
      </ol>
    </Part>
  );
}

function Step({ batch, held, step }: RecordProps & { step: BatchStep }) {
  const href = `#/step/${batch.batch}/${step.step}`;
  return (
    <li>
      {step.done.length === 0 && (
        <Cup class="open-row" href={href}>
          <span class="rec">{step.says}</span>
          <span class="open-figure">{BATCH.not_done}</span>
        </Cup>
      )}
      <ul>
        {step.done.map((each) => (
          <RecordRow
            key={each.entry}
            batch={batch.batch}
            entry={each.entry}
            held={held}
            thing={<span class="rec">{step.says}</span>}
            amount={each.value === null && !each.computed ? BATCH.done : doneWords(each, step)}
            time={clockWords(each.happened_at, zone())}
            more={
              <>
                <VerdictWord verdict={each.verdict} /> <span class="rec">{each.action}</span>{" "}
                <InQuestion {...each} trust={each.trust} unit={step.unit} />
              </>
            }
            author={each.author}
            again={href}
          />
        ))}
      </ul>
      <Caution about={cautionsOfStep(step.measures)} own={step.caution} />
    </li>
  );
}

/** What came out, lot by lot. */
export function Outputs({ batch, held }: RecordProps) {
  if (batch.outputs.length === 0) return null;
  return (
    <Part title={BATCH.out}>
      <Entries name={BATCH.out}>
        {batch.outputs.map((each) => (
          <RecordRow
            key={each.entry}
            batch={batch.batch}
            entry={each.entry}
            held={held}
            thing={<b class="code">{each.lot}</b>}
            amount={amountWords(each.amount, each.unit)}
            more={[
              each.rejected === null ? "" : BATCH.rejected(figure(each.rejected)),
              each.life ? `${lifeSortWord(each.life.sort)} ${dayWords(each.life.on, true)}` : "",
            ]
              .filter(Boolean)
              .join(", ")}
          />
        ))}
        <Voided held={held} kind="output" />
      </Entries>
      {batch.outputs.some((each) => each.life !== null) && <Caution about="shelf_life" />}
    </Part>
  );
}

/** What was lost, reason by reason. */
export function Losses({ batch, held }: RecordProps) {
  if (batch.losses.length === 0) return null;
  return (
    <Part title={BATCH.lost}>
      <Entries name={BATCH.lost}>
        {batch.losses.map((each) => (
          <RecordRow
            key={each.entry}
            batch={batch.batch}
            entry={each.entry}
            held={held}
            thing={lossWord(each.reason)}
            amount={quantityText({ amount: each.amount ?? "", unit: each.unit ?? "" })}
            more=""
          />
        ))}
        <Voided held={held} kind="loss" />
      </Entries>
    </Part>
  );
}

/** What somebody wrote about it, sums at the bench among it. */
export function Notes({ batch }: { batch: BatchState }) {
  if (batch.notes.length === 0) return null;
  return (
    <Part title={BATCH.notes}>
      {batch.notes.map((note) => (
        <p key={note.entry}>
          <span class="rec">{note.says}</span>{" "}
          <span class="second">
            {nameOf("member", note.author)}, {dayWords(note.on)}
          </span>
        </p>
      ))}
    </Part>
  );
}
