/** The logs that keep a batch back, as they stand now, and what is said about their rules. */
import type { BatchState } from "../../calc/batches.ts";
import type { Cause } from "../../calc/holds.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Entries } from "../../parts/EntryRow.tsx";
import { Part } from "../../parts/Plain.tsx";
import { cautionOf } from "../../text/heat_results.ts";
import { HOLD } from "../../text/holds.ts";
import { LogRow } from "../heat/LogRow.tsx";

/** What was done about one stands among the causes, where alone one stands that was taken back. */
export function HeldLogs({ batch, causes }: { batch: BatchState; causes: readonly Cause[] }) {
  const held = new Set(causes.map((each) => each.entry));
  const logs = (batch.heat ?? []).filter((each) => held.has(each.entry));
  const rules = [...causes.map((each) => each.judged_by), ...logs.map((each) => each.by)];
  return (
    <>
      {logs.length > 0 && (
        <Part title={HOLD.logged}>
          <Entries name={HOLD.logged}>
            {logs.map((each) => (
              <LogRow key={each.entry} batch={batch.batch} log={each} />
            ))}
          </Entries>
        </Part>
      )}
      <Caution about={[...new Set(rules.flatMap(cautionOf))]} />
    </>
  );
}
