/** Every entry about a lot, in the order in which it happened; the old value is never lost. */
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
import { LOT, momentWords } from "../../text/lot.ts";
import { clockWords, dayWords } from "../../text/numbers.ts";
import { dayOf, zone } from "../shared/edge.ts";
import { BodyInQuestion } from "../shared/InQuestion.tsx";
import type { ByWhom } from "../shared/standing.ts";
import { useHeld } from "../shared/use_held.ts";
import { type HistoryRow, historyOf } from "./history.ts";

/** Kinds whose amount can be corrected here; what a batch weighed in is corrected there. */
const CORRECTED_HERE = ["receipt", "loss", "transfer", "dispatch", "sale", "return", "count"];

/** Read anew whenever the sheet changes: an entry was added, or came in from elsewhere. */
export function LotHistory({ code }: { code: string }) {
  const shown = sheet<unknown>(`lot:${code}`).value;
  const held = useHeld(`lot:${code}`, shown);
  const rows = historyOf(code, held.value);
  return (
    <Part title={LOT.history}>
      {shown !== null && shown.from !== "phone" && <Notice>{LOT.history_partial}</Notice>}
      <Entries name={LOT.history}>
        {rows.map((row) => (
          <Row key={row.id} code={code} row={row} />
        ))}
      </Entries>
    </Part>
  );
}

function Row({ code, row }: { code: string; row: HistoryRow }) {
  const { entry } = row.held;
  const time = dayWords(entry.local_date);
  const state = stateOf(row);
  const act = CORRECTED_HERE.includes(row.kind) && row.is !== "void" && (
    <Cup class="slim" href={`#/lot/${code}/correct/${row.id}`}>
      {LOT.correct}
    </Cup>
  );
  const thing = (
    <>
      {row.did} <span class="rec">{row.says}</span>
    </>
  );
  if (row.is === "contested") {
    return (
      <TwoCorrections
        time={time}
        thing={thing}
        counts={LOT.two_count(row.was)}
        both={row.rivals.map((each) => ({
          id: each.id,
          value: each.amount,
          by: each.by.author,
          when: whenOf(each.by),
        }))}
        onChoose={() => {
          location.hash = `/lot/${code}/correct/${row.id}`;
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
      />
    );
  }
  return (
    <EntryRow time={time} state={state} act={act} more={<ReadWith row={row} />}>
      {row.did} <b>{row.amount}</b> <span class="rec">{row.says}</span>
    </EntryRow>
  );
}

/** What was weighed in from this lot, or its packs, on an instrument that is in question. */
function ReadWith({ row }: { row: HistoryRow }) {
  const { happened_at } = row.held.entry;
  return row.body === null ? null : <BodyInQuestion body={row.body} happened_at={happened_at} />;
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
