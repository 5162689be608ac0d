/** What the day can wait a moment for: timers that run, and instruments that want a check. */
import { TimerLines } from "../common/TimerLines.tsx";
import { ToCheck } from "./ToCheck.tsx";

/** Each is nothing where there is none. */
export function TimersAndChecks() {
  return (
    <>
      <TimerLines />
      <ToCheck />
    </>
  );
}
