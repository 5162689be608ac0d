/** What the day can wait a moment for: timers that run, and instruments that want a check. */
import { later } from "../common/later.tsx";
import { runningTimers } from "../common/running_timers.ts";
import { ToCheck } from "./ToCheck.tsx";

const TimerLines = later(async () => (await import("../common/TimerLines.tsx")).TimerLines);

/** Each is nothing where there is none. */
export function TimersAndChecks() {
  return (
    <>
      {runningTimers.value.length > 0 && <TimerLines />}
      <ToCheck />
    </>
  );
}
