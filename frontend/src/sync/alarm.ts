/** One timer for all who ask: the earliest moment counts, and what it rings for is done alone. */
import type { World } from "./world.ts";

/** Asked for again while what it rang for is under way, it rings once that has ended. */
export class Alarm {
  readonly #world: World;
  readonly #ring: () => Promise<void>;
  #dueMs: number | null = null;
  #notBeforeMs = Number.NEGATIVE_INFINITY;
  #cancel: () => void = () => undefined;
  #running: Promise<void> | null = null;
  #isStopped = false;

  constructor(world: World, ring: () => Promise<void>) {
    this.#world = world;
    this.#ring = ring;
  }

  /** Rings in so long, or sooner where somebody asked for that. */
  askFor(waitMs: number): void {
    const wantedMs = Math.max(this.#world.nowMs() + waitMs, this.#notBeforeMs);
    if (this.#dueMs !== null && this.#dueMs <= wantedMs) return;
    this.#dueMs = wantedMs;
    if (this.#running === null) this.#setTimer();
  }

  /** Forgets what was asked for: whoever puts it off asks anew at once. */
  forget(): void {
    this.#dueMs = null;
  }

  /** Whatever is asked for from now on waits at least so long. */
  restFor(waitMs: number): void {
    this.#notBeforeMs = this.#world.nowMs() + waitMs;
  }

  /** Never rings again; resolves when what is under way has ended. */
  async stop(): Promise<void> {
    this.#isStopped = true;
    this.#cancel();
    await this.#running;
  }

  #setTimer(): void {
    this.#cancel();
    if (this.#dueMs === null || this.#isStopped) return;
    this.#cancel = this.#world.after(Math.max(0, this.#dueMs - this.#world.nowMs()), () => {
      this.#dueMs = null;
      this.#running = this.#ring().finally(() => {
        this.#running = null;
        this.#setTimer();
      });
    });
  }
}
