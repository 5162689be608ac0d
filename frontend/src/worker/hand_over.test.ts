import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import {
  COOPERATIVE,
  DEVICE,
  emptyProfile,
  openedDevice,
  savedNotes,
} from "../../simulation/bench.ts";
import { smallServer } from "../../simulation/small_server.ts";
import { openPhone, putDevice } from "../store/phone.ts";
import { waitingCount } from "../store/reads.ts";
import { handOver } from "./hand_over.ts";

const server = smallServer();
let answered: (path: string, body: string) => Response;

beforeEach(async () => {
  emptyProfile();
  vi.stubGlobal("navigator", {
    locks: { request: (_: string, __: object, work: CallableFunction) => work({}) },
  });
  vi.stubGlobal("fetch", async (path: string, asked: RequestInit) =>
    answered(path, String(asked.body)),
  );
  const phone = await openPhone();
  await putDevice(phone, {
    device: DEVICE,
    mark: "K7",
    member: { id: "m1", name: "Ama", login: "ama@hill", roles: ["processor"] },
    cooperative: { id: COOPERATIVE, handle: "hill", name: "Hill", starts_with: {} },
    standing: "in",
  });
  phone.close();
});
afterEach(() => vi.unstubAllGlobals());

describe("a worker woken without a page", () => {
  test("hands over what waits", async () => {
    const db = await openedDevice();
    await savedNotes(db, 3);
    answered = (path, body) => {
      const { status, text } = server.wire({ method: "POST", path, device: DEVICE, body });
      return new Response(text, { status });
    };

    await handOver();

    expect(await waitingCount(db)).toBe(0);
    expect(server.entries.size).toBe(3);
  });

  test("says that it failed, so that the browser tries again, and loses nothing", async () => {
    const db = await openedDevice();
    await savedNotes(db, 3);
    answered = () => new Response("<html>Welcome guest</html>", { status: 200 });

    await expect(handOver()).rejects.toThrow("nonsense");

    expect(await waitingCount(db)).toBe(3);
  });
});
