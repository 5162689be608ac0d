import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { DEVICE } from "../../simulation/bench.ts";
import { testHouse, welcome } from "../../simulation/house.ts";
import { draft } from "./drafts.ts";
import { signIn } from "./session.ts";
import { reloadOnceForMissingPart, startUpdates, takeUpdate, updateIsReady } from "./update.ts";

const reload = vi.fn();
const told: unknown[] = [];
let isOnline: boolean;

/** A browser in which a new version waits behind the one that runs. */
function browser() {
  const kept = new Map<string, string>();
  const waiting = { postMessage: (message: unknown) => told.push(message) };
  const registration = { waiting, installing: null, addEventListener: vi.fn(), update: vi.fn() };
  const serviceWorker = {
    controller: {},
    register: vi.fn(async () => registration),
    addEventListener: vi.fn(),
  };
  vi.stubGlobal("navigator", {
    serviceWorker,
    get onLine() {
      return isOnline;
    },
  });
  vi.stubGlobal("location", { reload });
  vi.stubGlobal("sessionStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => kept.set(key, value),
  });
  vi.stubGlobal("setInterval", vi.fn());
  return serviceWorker;
}

beforeEach(async () => {
  vi.stubEnv("DEV", false);
  isOnline = true;
  told.length = 0;
  reload.mockClear();
  await testHouse(() => welcome(DEVICE));
  await signIn("ama@hill", "a spoon of thyme");
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
});

describe("a new version", () => {
  test("waits until the person agrees, and then comes in with one reload", async () => {
    const serviceWorker = browser();
    startUpdates();
    await vi.waitUntil(() => updateIsReady.value);
    expect(told).toEqual([]);

    expect(takeUpdate()).toBe(true);

    expect(told).toEqual([{ type: "TAKE_OVER" }]);
    expect(serviceWorker.addEventListener).toHaveBeenCalledWith(
      "controllerchange",
      expect.any(Function),
      { once: true },
    );
  });

  test("waits longer while a form is half filled", async () => {
    browser();
    startUpdates();
    await vi.waitUntil(() => updateIsReady.value);
    draft("receive").save({ amount: "4" });

    expect(takeUpdate()).toBe(false);

    expect(told).toEqual([]);
    await draft("receive").clear();
  });
});

describe("a part of the app that is missing", () => {
  test("is fetched by one reload, never by a second", async () => {
    browser();

    expect(await reloadOnceForMissingPart()).toBe(true);
    expect(await reloadOnceForMissingPart()).toBe(false);

    expect(reload).toHaveBeenCalledTimes(1);
  });

  test("is not fetched without signal", async () => {
    browser();
    isOnline = false;

    expect(await reloadOnceForMissingPart()).toBe(false);

    expect(reload).not.toHaveBeenCalled();
  });
});
