/** When to exchange: triggers, waits, and one at a time (R18, R19, R20). */
import { Alarm } from "./alarm.ts";
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

/** A runner that has not exchanged yet; the first trigger starts it. */
export function startRunner(parts: RunnerParts): Runner {
  return new ExchangeRunner(parts);
}

class ExchangeRunner implements Runner {
  readonly #parts: RunnerParts;
  readonly #alarm: Alarm;
  #isShown = true;
  #failureCount = 0;
  #pullForAll = true;
  #stuckOfferedMs: number | null = null;
  /** Since when saves follow each other without an exchange; null when nothing waits for quiet. */
  #savingSinceMs: number | null = null;

  constructor(parts: RunnerParts) {
    this.#parts = parts;
    this.#alarm = new Alarm(parts.world, () => this.#run());
  }

  poke(trigger: Trigger): void {
    if (trigger === "hidden") {
      this.#isShown = false;
      return;
    }
    if (trigger === "shown") this.#isShown = true;
    if (trigger === "online" || trigger === "start") this.#pullForAll = true;
    if (trigger === "online") this.#alarm.askFor(this.#parts.world.chance() * ONLINE_SPREAD_MS);
    else if (trigger === "saved") this.#askWhenQuiet();
    else this.#alarm.askFor(0);
  }

  stop(): Promise<void> {
    return this.#alarm.stop();
  }

  /** Two seconds after the last save, so that a quick hand is not disturbed; not for ever. */
  #askWhenQuiet(): void {
    const nowMs = this.#parts.world.nowMs();
    if (this.#savingSinceMs !== null) this.#alarm.forget();
    this.#savingSinceMs ??= nowMs;
    const mostMs = this.#savingSinceMs + SAVE_WAIT_MOST_MS - nowMs;
    this.#alarm.askFor(Math.min(SAVE_QUIET_MS, Math.max(0, mostMs)));
  }

  async #run(): Promise<void> {
    this.#savingSinceMs = null;
    let report: ExchangeReport | null = null;
    const withStuck = this.#isStuckDue();
    try {
      report = await this.#parts.exchange({ pullForAll: this.#pullForAll, withStuck });
      if (report !== null) {
        this.#pullForAll = false;
        if (withStuck) this.#stuckOfferedMs = this.#parts.world.nowMs();
      }
    } catch (defect) {
      this.#parts.onDefect(defect);
    }
    this.#parts.onReport(report);
    this.#planNext(report);
  }

  #planNext(report: ExchangeReport | null): void {
    if (report === null || report.trouble !== null) {
      this.#planRetry(report?.trouble?.retry_after_ms ?? null);
      return;
    }
    this.#failureCount = 0;
    if (this.#isShown) this.#alarm.askFor(PULL_EVERY_MS);
    // What is left after all went well are entries refused alone: their turn comes each minute.
    if (report.waitingCount > 0) this.#alarm.askFor(STUCK_EVERY_MS);
  }

  #planRetry(retryAfterMs: number | null): void {
    if (retryAfterMs !== null) this.#alarm.restFor(retryAfterMs);
    this.#alarm.askFor(retryWaitMs(this.#failureCount, this.#parts.world.chance, retryAfterMs));
    this.#failureCount += 1;
  }

  #isStuckDue(): boolean {
    if (this.#stuckOfferedMs === null) return true;
    // A clock that was set back must not keep them from their turn.
    return Math.abs(this.#parts.world.nowMs() - this.#stuckOfferedMs) >= STUCK_EVERY_MS;
  }
}
