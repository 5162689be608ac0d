/** The waiting gauge of every head: what is still on this phone, and the way to the outbox. */
import { WaitingGauge } from "../../parts/WaitingGauge.tsx";
import { oldestWaitingAt, waiting } from "../../state/outbox.ts";
import { nowMs } from "./edge.ts";

const DAY_MS = 86_400_000;

/** How long the oldest entry has waited: from 24 h on it is a matter, from 3 days on a loud one (R23). */
export function waitingStage(now: number): "none" | "usual" | "day" | "days" {
  if (waiting.value.length === 0) return "none";
  const age = now - (oldestWaitingAt.value ?? now);
  if (age >= 3 * DAY_MS) return "days";
  return age >= DAY_MS ? "day" : "usual";
}

/** Small, in the head. */
export function HeadGauge() {
  return (
    <WaitingGauge count={waiting.value.length} stage={waitingStage(nowMs())} href="#/outbox" />
  );
}
