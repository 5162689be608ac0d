/** Every entry about a subject, in the order in which it happened; the old value is never lost. */

import type { Standing } from "../../calc/record.ts";
import { Cup } from "../../parts/Cup.tsx";
import {
  CorrectionRow,
  Entries,
  EntryRow,
  type EntryState,
  TwoCorrections,
} from "../../parts/EntryRow.tsx";
import { Notice, Part } from "../../parts/Plain.tsx";
import { attention } from "../../state/outbox.ts";
import { sheet } from "../../state/sheets.ts";
import { HISTORY, momentWords } from "../../text/correct.ts";
import { clockWords, dayWords } from "../../text/numbers.ts";
import { ClockOff } from "./ClockOff.tsx";
import { dayOf, zone } from "./edge.ts";
import { type EntryWords, type HistoryRow, historyOf } from "./history.ts";
import { BodyInQuestion } from "./InQuestion.tsx";
import type { ByWhom } from "./standing.ts";
import { useHeld } from "./use_held.ts";

interface HistoryProps {
  subject: string;
  wordsOf: (entry: Standing) => EntryWords;
  /** Where an entry is corrected; null where it is not corrected here. */
  correctAt: (row: HistoryRow) => string | null;
  /** Kinds to show; all where nothing is said. */
  kinds?: readonly string[];
}

/** Read anew whenever the sheet changes: an entry was added, or came in from elsewhere. */
export function History({ subject, wordsOf, correctAt, kinds }: HistoryProps) {
  const shown = sheet<unknown>(subject).value;
  const held = useHeld(subject, shown);
  const rows = historyOf(held.value, wordsOf).filter(
    (row) => kinds === undefined || kinds.includes(row.held.entry.kind),
  );
  const isWhole = shown === null || shown.from === "phone";
  if (kinds !== undefined && rows.length === 0 && isWhole) return null;
  return (
    <Part title={HISTORY.title}>
      {!isWhole && <Notice>{HISTORY.partial}</Notice>}
      <Entries name={HISTORY.title}>
        {rows.map((row) => (
          <Row key={row.id} row={row} correct={correctAt(row)} />
        ))}
      </Entries>
    </Part>
  );
}

function Row({ row, correct }: { row: HistoryRow; correct: string | null }) {
  const { entry } = row.held;
  const time = dayWords(entry.local_date);
  const state = stateOf(row);
  const act = correct !== null && row.is !== "void" && (
    <Cup class="slim" href={correct}>
      {HISTORY.correct}
    </Cup>
  );
  const thing = (
    <>
      {row.did} <span class="rec">{row.says}</span>
      <ClockOff skew_ms={row.held.skew_ms} />
    </>
  );
  if (row.is === "contested") {
    return (
      <TwoCorrections
        time={time}
        thing={
          <>
            {thing} <InDoubt row={row} />
          </>
        }
        counts={HISTORY.two_count(row.was)}
        both={row.rivals.map((each) => ({
          id: each.id,
          value: each.amount,
          by: each.by.author,
          when: whenOf(each.by),
        }))}
        onChoose={() => {
          if (correct !== null) location.hash = correct;
        }}
      />
    );
  }
  if (row.is === "corrected" && row.by !== null) {
    return (
      <CorrectionRow
        time={time}
        thing={thing}
        was={row.was}
        now={row.amount}
        by={row.by.author}
        when={whenOf(row.by)}
        reason={row.by.reason}
        state={state}
        act={act}
        more={<InDoubt row={row} />}
      />
    );
  }
  return (
    <EntryRow time={time} state={state} act={act} more={<ReadWith row={row} />}>
      {row.did} <b>{row.amount}</b> <span class="rec">{row.says}</span>
    </EntryRow>
  );
}

/** A clock far off, and what was read on an instrument that is in question. */
function ReadWith({ row }: { row: HistoryRow }) {
  return (
    <>
      <ClockOff skew_ms={row.held.skew_ms} />
      <InDoubt row={row} />
    </>
  );
}

function InDoubt({ row: { body, held } }: { row: HistoryRow }) {
  if (body === null) return null;
  return <BodyInQuestion body={body} happened_at={held.entry.happened_at} />;
}

function whenOf(by: ByWhom): string {
  return momentWords(dayOf(by.at), clockWords(by.at, zone()));
}

function stateOf(row: HistoryRow): EntryState {
  if (row.is === "void" && row.by !== null) {
    return { is: "void", by: row.by.author, when: whenOf(row.by), reason: row.by.reason };
  }
  const aside = attention.value.find((each) => each.id === row.id);
  if (aside !== undefined) return { is: "aside", why: aside.detail };
  return row.held.seq === null ? { is: "here" } : { is: "log", number: row.held.seq };
}
