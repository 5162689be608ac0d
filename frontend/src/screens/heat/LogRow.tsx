/** A kept log in a list: what it was judged by, its verdict with figures, and the way to it. */
import type { ComponentChildren } from "preact";
import type { BatchState } from "../../calc/batches.ts";
import { Cup } from "../../parts/Cup.tsx";
import { heatSentence } from "../../text/heat_results.ts";
import { HEAT_LOGS, heatVerdictWord, ruleWord } from "../../text/heat_rules.ts";
import { clockWords } from "../../text/numbers.ts";
import { zone } from "../common/edge.ts";
import { InQuestion } from "../common/InQuestion.tsx";
import { beganOf } from "../common/instruments.ts";

const LOOKS: Readonly<Record<string, string>> = { fail: "shout", pass: "" };

/** `children` stand behind the figures. The list that holds it says the caution. */
export function LogRow(props: {
  batch: string;
  log: BatchState["heat"][number];
  children?: ComponentChildren;
}) {
  const { batch, log, children } = props;
  return (
    <li class="heat-row">
      <p>
        {clockWords(beganOf(log), zone())} <b>{ruleWord(log.by)}</b>
      </p>
      <p>
        <b class={LOOKS[log.verdict ?? "pass"] ?? "doubtful"}>{heatVerdictWord(log.verdict)}</b>{" "}
        {heatSentence(log, log.unit)} {children}
        <InQuestion {...log} trust={log.trust ?? undefined} happened_at={beganOf(log)} />
      </p>
      <p class="key-row">
        <Cup href={`#/heat-log/${batch}/${log.entry}`}>{HEAT_LOGS.see}</Cup>
      </p>
    </li>
  );
}
