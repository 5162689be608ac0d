/** The entries themselves: own ones in full, those kept aside with their sentence, others as a count. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { quantityIn, textIn } from "../../calc/bodies.ts";
import { Entries, EntryRow } from "../../parts/EntryRow.tsx";
import { Facts, Part } from "../../parts/Plain.tsx";
import { attention, waiting } from "../../state/outbox.ts";
import { current, people } from "../../state/session.ts";
import { nameOf } from "../../state/stock.ts";
import type { AttentionRow, Entry } from "../../state/types.ts";
import { type WaitingEntry, waitingEntries } from "../../state/waiting.ts";
import { amountWords } from "../../text/numbers.ts";
import { ASIDE, ASIDE_OTHER, KINDS_SAID, OUTBOX } from "../../text/outbox.ts";
import { nowMs } from "../common/edge.ts";
import { momentOf } from "./moments.ts";

/** Read anew whenever the outbox changes. */
export function Kept() {
  const own = useSignal<WaitingEntry[]>([]);
  const slips = waiting.value;
  useEffect(() => {
    let isLeft = false;
    void waitingEntries().then((entries) => {
      if (!isLeft) own.value = entries;
    });
    return () => {
      isLeft = true;
    };
  }, [slips, own]);
  const plain = own.value.filter((each) => each.stuck === null);
  return (
    <>
      {attention.value.length > 0 && (
        <Part title={OUTBOX.aside}>
          <p class="second">{OUTBOX.aside_why}</p>
          <Entries name={OUTBOX.aside}>
            {attention.value.map((row) => (
              <Row key={row.id} entry={row.entry} atMs={row.at_ms} aside={row} />
            ))}
          </Entries>
        </Part>
      )}
      <Part title={OUTBOX.own}>
        {plain.length === 0 ? (
          <p class="nothing">{OUTBOX.own_none}</p>
        ) : (
          <Entries name={OUTBOX.own}>
            {plain.map(({ entry, saved_ms }) => (
              <Row key={entry.id} entry={entry} atMs={saved_ms} />
            ))}
          </Entries>
        )}
      </Part>
      <Others />
    </>
  );
}

function Row({ entry, atMs, aside }: { entry: Entry; atMs: number; aside?: AttentionRow }) {
  return (
    <EntryRow
      time={momentOf(atMs, nowMs())}
      state={
        aside === undefined
          ? { is: "here" }
          : { is: "aside", why: ASIDE[aside.code] ?? ASIDE[aside.status] ?? ASIDE_OTHER }
      }
    >
      {KINDS_SAID[entry.kind] ?? entry.kind} <span class="rec">{aboutOf(entry)}</span>
    </EntryRow>
  );
}

/** The lot, the name or the amount: enough to know it again. */
function aboutOf(entry: Entry): string {
  const { body } = entry;
  const name = textIn(body, "name");
  const named = name ?? textIn(body, "code") ?? textIn(body, "lot");
  const amount = quantityIn(body, "amount");
  const material = name === null ? nameOf("material", textIn(body, "material")) : null;
  return [amount === null ? null : amountWords(amount.amount, amount.unit), material, named]
    .filter(Boolean)
    .join(" ");
}

function Others() {
  const others = people.value.filter((each) => each.device !== current.value?.device);
  if (others.length === 0) return null;
  return (
    <Part title={OUTBOX.others}>
      <Facts
        rows={others.map(({ member, waiting: count }) => ({
          name: member.name,
          value: OUTBOX.waits(count),
        }))}
      />
    </Part>
  );
}
