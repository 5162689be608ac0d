/** When to exchange: triggers, waits, and one at a time (R18, R19, R20). */
import { ONLINE_SPREAD_MS, retryWaitMs } from "./backoff.ts";
import type { ExchangeReport } from "./exchange.ts";
import type { World } from "./world.ts";

export type Trigger = "start" | "saved" | "online" | "shown" | "hidden" | "tapped" | "message";

const SAVE_QUIET_MS = 2_000;
const SAVE_WAIT_MOST_MS = 10_000;
const PULL_EVERY_MS = 30_000;
const STUCK_EVERY_MS = 60_000;

export interface RunnerParts {
  world: World;
  exchange(ask: { pullForAll: boolean; withStuck: boolean }): Promise<ExchangeReport | null>;
  /** Told after each exchange; null when another tab or the worker was at it. */
  onReport(report: ExchangeReport | null): void;
  /** A defect inside an exchange: told, and tried again like any trouble. */
  onDefect(defect: unknown): void;
}

export interface Runner {
  poke(trigger: Trigger): void;
  /** Ends timers; an exchange under way finishes by itself. Resolves when it has. */
  stop(): Promise<void>;
}

export function startRunner(parts: RunnerParts): Runner {
  const { world } = parts;
  let isShown = true;
  let isStopped = false;
  let failureCount = 0;
  let notBeforeMs = Number.NEGATIVE_INFINITY;
  let dueMs: number | null = null;
  let cancel: () => void = () => undefined;
  let running: Promise<void> | null = null;
  let pullForAll = true;
  let stuckOfferedMs: number | null = null;
  /** Since when saves follow each other without an exchange; null when nothing waits for quiet. */
  let savingSinceMs: number | null = null;

  function askFor(waitMs: number): void {
    const wantedMs = Math.max(world.nowMs() + waitMs, notBeforeMs);
    if (dueMs !== null && dueMs <= wantedMs) return;
    dueMs = wantedMs;
    if (running === null) setTimer();
  }

  /** Two seconds after the last save, so that a quick hand is not disturbed; not for ever. */
  function askWhenQuiet(): void {
    if (savingSinceMs !== null) dueMs = null;
    savingSinceMs ??= world.nowMs();
    const most = savingSinceMs + SAVE_WAIT_MOST_MS - world.nowMs();
    askFor(Math.min(SAVE_QUIET_MS, Math.max(0, most)));
  }

  function setTimer(): void {
    cancel();
    if (dueMs === null || isStopped) return;
    cancel = world.after(Math.max(0, dueMs - world.nowMs()), () => {
      dueMs = null;
      savingSinceMs = null;
      running = run().finally(() => {
        running = null;
        setTimer();
      });
    });
  }

  async function run(): Promise<void> {
    let report: ExchangeReport | null = null;
    const withStuck = isStuckDue();
    try {
      report = await parts.exchange({ pullForAll, withStuck });
      if (report !== null) {
        pullForAll = false;
        if (withStuck) stuckOfferedMs = world.nowMs();
      }
    } catch (defect) {
      parts.onDefect(defect);
    }
    parts.onReport(report);
    planNext(report);
  }

  function planNext(report: ExchangeReport | null): void {
    if (report === null || report.trouble !== null) {
      planRetry(report?.trouble?.retry_after_ms ?? null);
      return;
    }
    failureCount = 0;
    if (isShown) askFor(PULL_EVERY_MS);
    // What is left after all went well are entries refused alone: their turn comes each minute.
    if (report.waitingCount > 0) askFor(STUCK_EVERY_MS);
  }

  function planRetry(retryAfterMs: number | null): void {
    if (retryAfterMs !== null) notBeforeMs = world.nowMs() + retryAfterMs;
    askFor(retryWaitMs(failureCount, world.chance, retryAfterMs));
    failureCount += 1;
  }

  function isStuckDue(): boolean {
    // A clock that was set back must not keep them from their turn.
    const sinceMs = stuckOfferedMs === null ? null : Math.abs(world.nowMs() - stuckOfferedMs);
    return sinceMs === null || sinceMs >= STUCK_EVERY_MS;
  }

  function poke(trigger: Trigger): void {
    if (trigger === "hidden") {
      isShown = false;
      return;
    }
    if (trigger === "shown") isShown = true;
    if (trigger === "online" || trigger === "start") pullForAll = true;
    if (trigger === "online") askFor(world.chance() * ONLINE_SPREAD_MS);
    else if (trigger === "saved") askWhenQuiet();
    else askFor(0);
  }

  return {
    poke,
    async stop() {
      isStopped = true;
      cancel();
      await running;
    },
  };
}
