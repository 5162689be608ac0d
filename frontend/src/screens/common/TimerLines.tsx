/** Running timers, each a way to its log: when it is to be looked at next, or how late that is. */
import { Cup } from "../../parts/Cup.tsx";
import { durationWords, TIMERS } from "../../text/heat_results.ts";
import { ruleWord } from "../../text/heat_rules.ts";
import { batchOf, recipeNameOf } from "./batches.ts";
import { dueMs, type RunningTimer, runningTimers, timersAt } from "./running_timers.ts";

const MINUTE_S = 60;

/** Those of one batch, or all; nothing where none runs. */
export function TimerLines({ batch }: { batch?: string }) {
  const timers = runningTimers.value.filter((each) => batch === undefined || each.batch === batch);
  return (
    <>
      {timers.map((timer) => (
        <p class="key-row" key={timer.key}>
          <Cup href={`#/heat/${timer.batch}${timer.step === "" ? "" : `/${timer.step}`}`}>
            {batch === undefined && <span class="rec">{nameOf(timer)}</span>}{" "}
            {TIMERS.line(ruleWord(timer.by || null), lookWords(timer))}
          </Cup>
        </p>
      ))}
    </>
  );
}

function nameOf({ batch }: RunningTimer): string {
  const state = batchOf(batch)?.state ?? null;
  return state === null ? "" : recipeNameOf(state);
}

/** To the minute begun: a line that changes every second is read by nobody. */
function lookWords(timer: RunningTimer): string {
  const leftS = Math.ceil((dueMs(timer) - timersAt.value) / 1000);
  if (leftS > 0) return TIMERS.next(durationWords(Math.ceil(leftS / MINUTE_S) * MINUTE_S));
  const lateS = -leftS - (-leftS % MINUTE_S);
  return lateS === 0 ? TIMERS.now : TIMERS.overdue(durationWords(lateS));
}
