import fc from "fast-check";
import { expect, test } from "vitest";
import {
  answer,
  benchWorld,
  DEVICE,
  emptyProfile,
  note,
  openedDevice,
} from "../../simulation/bench.ts";
import { type SmallServer, smallServer } from "../../simulation/small_server.ts";
import type { DeviceDb } from "../store/device.ts";
import { attentionRows, slips } from "../store/reads.ts";
import type { Entry } from "../store/rows.ts";
import { saveEntry } from "../store/save.ts";
import { pushAll } from "./push.ts";
import type { WireAnswer, WireRequest } from "./world.ts";

const RUNS = 60;

/** What may happen to a push; each leaves some answer, or none. */
const FAULTS: Record<string, (server: SmallServer, request: WireRequest) => WireAnswer> = {
  nothing: (server, request) => server.wire(request),
  lost_request: () => {
    throw new TypeError("network");
  },
  lost_answer: (server, request) => {
    server.wire(request);
    throw new TypeError("network");
  },
  twice: (server, request) => {
    server.wire(request);
    return server.wire(request);
  },
  cut_off: (server, request) => {
    const whole = server.wire(request);
    return { ...whole, text: whole.text.slice(0, whole.text.length / 2) };
  },
  portal: () => ({ status: 200, retry_after: null, text: "<html>Welcome guest</html>" }),
  too_large: () => answer(413, { code: "too_large" }),
  over: () => answer(401, { code: "not_authenticated" }),
  broken: () => answer(500, { code: "server_error" }),
};

interface Kept {
  db: DeviceDb;
  server: SmallServer;
  saved: Entry[];
}

const step = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.record({
      does: fc.constant("save"),
      how: fc.constantFrom("plainly", "aside", "retry"),
    }),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      does: fc.constant("push"),
      how: fc.constantFrom(...Object.keys(FAULTS)),
    }),
  },
);

async function take(kept: Kept, { does, how }: { does: string; how: string }): Promise<void> {
  if (does === "save") {
    const { entry } = await saveEntry(kept.db, note(), 0);
    kept.saved.push(entry);
    if (how === "aside")
      kept.server.verdicts.set(entry.id, { status: "quarantined", code: "role" });
    if (how === "retry") kept.server.verdicts.set(entry.id, { status: "retry" });
    return;
  }
  const fault = FAULTS[how];
  const world = benchWorld((request) => fault?.(kept.server, request) ?? answer(500, {}));
  await pushAll({ world, db: kept.db, speaker: DEVICE, withStuck: true });
}

/** Every entry is in exactly one place, or on the server while its answer was lost. */
async function nothingIsLost({ db, server, saved }: Kept): Promise<void> {
  const waiting = new Set((await slips(db)).map((slip) => slip.id));
  const aside = new Set((await attentionRows(db)).map((row) => row.id));
  for (const { id } of saved) {
    expect(waiting.has(id) || aside.has(id) || server.entries.has(id)).toBe(true);
    expect(waiting.has(id) && aside.has(id)).toBe(false);
  }
  expect(saved.map((entry) => entry.device_seq)).toEqual(saved.map((_, index) => index + 1));
}

test("whatever happens on the way, each saved entry arrives once or is kept aside", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { maxLength: 25 }), async (steps) => {
      emptyProfile();
      const kept: Kept = { db: await openedDevice(), server: smallServer(), saved: [] };
      for (const one of steps) {
        await take(kept, one);
        await nothingIsLost(kept);
      }

      for (const [id, said] of kept.server.verdicts) {
        if (said.status === "retry") kept.server.verdicts.delete(id);
      }
      await take(kept, { does: "push", how: "nothing" });

      expect(await slips(kept.db)).toEqual([]);
      const aside = (await attentionRows(kept.db)).map((row) => row.id);
      const arrived = [...kept.server.entries.keys(), ...aside].sort();
      expect(arrived).toEqual(kept.saved.map((entry) => entry.id).sort());
      kept.db.close();
    }),
    { numRuns: RUNS, seed: 20261110 },
  );
});
