/** The world of a simulated phone: everything in it comes from a seed or from the test. */
import type { WireAnswer, WireRequest, World } from "../src/sync/world.ts";

export type Wire = (request: WireRequest) => Promise<WireAnswer | "off">;

export interface SimulatedWorld extends World {
  /** Resolves when the phone is switched off in the middle of something. */
  readonly switchedOff: Promise<"off">;
  switchOff(): void;
  drawCount(): number;
}

const DAY_START_MS = Date.UTC(2026, 10, 10, 8);
/** Each look at the clock is a little later, so that times differ and replay alike. */
const TICK_MS = 137;
let ticks = 0;

export function simulatedWorld(seed: number, wire: Wire, clockOffMs: () => number): SimulatedWorld {
  const chance = seededChance(seed);
  const busy = new Set<string>();
  let draws = 0;
  let turnOff: (value: "off") => void = () => undefined;
  const switchedOff = new Promise<"off">((resolve) => {
    turnOff = resolve;
  });
  const bytes = (count: number): Uint8Array =>
    Uint8Array.from({ length: count }, () => {
      draws += 1;
      return Math.floor(chance() * 256);
    });
  return {
    switchedOff,
    switchOff: () => turnOff("off"),
    drawCount: () => draws + 1,
    async wire(request) {
      const answer = await wire(request);
      if (answer !== "off") return answer;
      turnOff("off");
      // A phone without power takes no further step: this never resolves.
      return new Promise<WireAnswer>(() => undefined);
    },
    nowMs() {
      ticks += 1;
      return DAY_START_MS + ticks * TICK_MS + clockOffMs();
    },
    chance,
    bytes,
    newId: () => uuid4(bytes(16)),
    async alone(name, work) {
      if (busy.has(name)) return null;
      busy.add(name);
      try {
        return await work();
      } finally {
        busy.delete(name);
      }
    },
    after: () => () => undefined,
  };
}

/** The same clock for each seed that is replayed. */
export function startClock(): void {
  ticks = 0;
}

/** A small seeded generator (mulberry32): the same seed draws the same numbers. */
export function seededChance(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

function uuid4(bytes: Uint8Array): string {
  const marked = [...bytes];
  marked[6] = ((marked[6] ?? 0) & 0x0f) | 0x40;
  marked[8] = ((marked[8] ?? 0) & 0x3f) | 0x80;
  const digits = marked.map((byte) => byte.toString(16).padStart(2, "0")).join("");
  return [0, 8, 12, 16, 20]
    .map((start, part, starts) => digits.slice(start, starts[part + 1] ?? 32))
    .join("-");
}
