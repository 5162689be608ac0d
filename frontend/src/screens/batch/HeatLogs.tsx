/** The logs of time and temperature on the batch sheet: results, each with its caution. */
import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Entries } from "../../parts/EntryRow.tsx";
import { Part } from "../../parts/Plain.tsx";
import type { HeldEntry } from "../../state/record.ts";
import { cautionOf } from "../../text/heat_results.ts";
import { HEAT_LOGS } from "../../text/heat_rules.ts";
import { TimerLines } from "../common/TimerLines.tsx";
import { LogRow } from "../heat/LogRow.tsx";
import { Voided } from "./RecordRow.tsx";

/** Every log, and the way to the next one. A sheet of an earlier version knows none. */
export function HeatLogs({ batch, held }: { batch: BatchState; held: readonly HeldEntry[] }) {
  const logs = batch.heat ?? [];
  return (
    <Part title={HEAT_LOGS.part}>
      <Entries name={HEAT_LOGS.part}>
        {logs.map((each) => (
          <LogRow key={each.entry} batch={batch.batch} log={each}>
            <span class="rec">{each.action}</span>
          </LogRow>
        ))}
        <Voided held={held} kind="heat_log" />
      </Entries>
      <TimerLines batch={batch.batch} />
      <Caution about={[...new Set(logs.flatMap((each) => cautionOf(each.by)))]} />
      <p class="key-row">
        <Cup href={`#/heat/${batch.batch}`}>{HEAT_LOGS.add}</Cup>
      </p>
    </Part>
  );
}
