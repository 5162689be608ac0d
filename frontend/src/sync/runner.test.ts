import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { benchWorld, START_MS } from "../../simulation/bench.ts";
import type { ExchangeReport } from "./exchange.ts";
import { type Runner, startRunner } from "./runner.ts";

let attempts: { at_ms: number; withStuck: boolean; pullForAll: boolean }[];
let next: ExchangeReport | null;
let runner: Runner;

beforeEach(() => {
  vi.useFakeTimers({ now: START_MS });
  attempts = [];
  next = report();
  runner = start(0.5);
});
afterEach(async () => {
  await runner.stop();
  vi.useRealTimers();
});

function report(changed: Partial<ExchangeReport> = {}): ExchangeReport {
  return { trouble: null, waitingCount: 0, touched: new Map(), reset: [], ...changed };
}

function failing(code: string, retry_after_ms: number | null = null): ExchangeReport {
  return report({ trouble: { code, retry_after_ms }, waitingCount: 1 });
}

function start(chance: number): Runner {
  const world = {
    ...benchWorld(() => ({ status: 200, retry_after: null, text: "" })),
    nowMs: () => Date.now(),
    chance: () => chance,
    after(waitMs: number, callBack: () => void) {
      const timer = setTimeout(callBack, waitMs);
      return () => clearTimeout(timer);
    },
  };
  return startRunner({
    world,
    async exchange(ask) {
      attempts.push({ at_ms: Date.now() - START_MS, ...ask });
      return next;
    },
    onReport: () => undefined,
    onDefect: (defect) => {
      throw defect;
    },
  });
}

function times(): number[] {
  return attempts.map((attempt) => attempt.at_ms);
}

describe("when the phone exchanges", () => {
  test("is at start, and each half minute while the app is shown", async () => {
    runner.poke("start");

    await vi.advanceTimersByTimeAsync(61_000);

    expect(times()).toEqual([0, 30_000, 60_000]);
  });

  test("is two seconds after the last of several saves", async () => {
    for (const _ of [1, 2, 3]) {
      runner.poke("saved");
      await vi.advanceTimersByTimeAsync(500);
    }

    await vi.advanceTimersByTimeAsync(5_000);

    expect(times()).toEqual([3_000]);
  });

  test("is every ten seconds while saves never pause", async () => {
    for (let saved = 0; saved < 42; saved++) {
      runner.poke("saved");
      await vi.advanceTimersByTimeAsync(500);
    }

    expect(times()).toEqual([10_000, 20_000]);
  });

  test("is never by itself while nothing waits and nobody looks", async () => {
    runner.poke("hidden");
    runner.poke("start");

    await vi.advanceTimersByTimeAsync(600_000);

    expect(times()).toEqual([0]);
  });

  test("is again and again while something waits, ever more slowly", async () => {
    next = failing("no_signal");
    runner.poke("start");

    await vi.advanceTimersByTimeAsync(120_000);

    // Half of 2, 4, 8, 16, 32 and then of 60 seconds.
    expect(times()).toEqual([0, 1_000, 3_000, 7_000, 15_000, 31_000, 61_000, 91_000]);
  });

  test("is not before the server's Retry-After, even if a person taps", async () => {
    next = failing("server_error", 7_000);
    runner.poke("start");
    await vi.advanceTimersByTimeAsync(10);
    runner.poke("tapped");
    runner.poke("saved");

    await vi.advanceTimersByTimeAsync(6_900);
    expect(times()).toEqual([0]);
    await vi.advanceTimersByTimeAsync(200);

    expect(times()).toEqual([0, 7_000]);
  });

  test("is spread over fifteen seconds when the network comes back, at once for a tap", async () => {
    await runner.stop();
    runner = start(0.8);
    runner.poke("online");
    await vi.advanceTimersByTimeAsync(11_900);
    expect(times()).toEqual([]);

    runner.poke("tapped");
    await vi.advanceTimersByTimeAsync(1);

    expect(times()).toEqual([11_900]);
  });

  test("is within a minute after any fault has ended", async () => {
    next = failing("no_signal");
    await runner.stop();
    runner = start(0.999);
    runner.poke("start");
    await vi.advanceTimersByTimeAsync(3_600_000);
    const before = attempts.length;
    next = report();

    await vi.advanceTimersByTimeAsync(60_000);

    expect(attempts.length).toBeGreaterThan(before);
  });

  test("is also tried when another tab had its turn", async () => {
    next = null;
    runner.poke("start");

    await vi.advanceTimersByTimeAsync(1_000);

    expect(times()).toEqual([0, 1_000]);
  });
});

describe("entries refused alone", () => {
  test("are offered at start and then once a minute", async () => {
    next = report({ waitingCount: 1 });
    runner.poke("start");

    await vi.advanceTimersByTimeAsync(121_000);

    expect(attempts.filter((one) => one.withStuck).map((one) => one.at_ms)).toEqual([
      0, 60_000, 120_000,
    ]);
  });
});

test("everyone's read side is fetched at start, later only that of who looks", async () => {
  runner.poke("start");

  await vi.advanceTimersByTimeAsync(31_000);

  expect(attempts.map((one) => one.pullForAll)).toEqual([true, false]);
});
