/** The logs of time and temperature on the batch sheet: results, each with its caution. */
import type { BatchState } from "../../calc/batches.ts";
import { Caution } from "../../parts/Caution.tsx";
import { Cup } from "../../parts/Cup.tsx";
import { Entries } from "../../parts/EntryRow.tsx";
import { Part } from "../../parts/Plain.tsx";
import type { HeldEntry } from "../../state/record.ts";
import { cautionOf, heatSentence } from "../../text/heat_results.ts";
import { HEAT_LOGS, heatVerdictWord, ruleWord } from "../../text/heat_rules.ts";
import { clockWords } from "../../text/numbers.ts";
import { zone } from "../common/edge.ts";
import { InQuestion } from "../common/InQuestion.tsx";
import { beganOf } from "../common/instruments.ts";
import { TimerLines } from "../common/TimerLines.tsx";
import { Voided } from "./RecordRow.tsx";

const LOOKS: Readonly<Record<string, string>> = { fail: "shout", pass: "" };

/** Every log, and the way to the next one. A sheet of an earlier version knows none. */
export function HeatLogs({ batch, held }: { batch: BatchState; held: readonly HeldEntry[] }) {
  const logs = batch.heat ?? [];
  return (
    <Part title={HEAT_LOGS.part}>
      <Entries name={HEAT_LOGS.part}>
        {logs.map((each) => (
          <li key={each.entry} class="heat-row">
            <p>
              {clockWords(beganOf(each), zone())} <b>{ruleWord(each.by)}</b>
            </p>
            <p>
              <b class={LOOKS[each.verdict ?? "pass"] ?? "doubtful"}>
                {heatVerdictWord(each.verdict)}
              </b>{" "}
              {heatSentence(each, each.unit)} <span class="rec">{each.action}</span>
              <InQuestion {...each} trust={each.trust ?? undefined} happened_at={beganOf(each)} />
            </p>
            <p class="key-row">
              <Cup href={`#/heat-log/${batch.batch}/${each.entry}`}>{HEAT_LOGS.see}</Cup>
            </p>
          </li>
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
