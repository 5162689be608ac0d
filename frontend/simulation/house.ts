/** A house for tests of the app's state: real databases, a world at rest. */
import { setHouse } from "../src/state/house.ts";
import { openPhone } from "../src/store/phone.ts";
import type { WireAnswer, WireRequest } from "../src/sync/world.ts";
import { AUTHOR, answer, type BenchWorld, benchWorld, COOPERATIVE, emptyProfile } from "./bench.ts";

export interface TestHouse {
  world: BenchWorld;
  /** How often something was saved, and which subjects other tabs were told of. */
  savedCount: number;
  told: (readonly string[] | null)[];
}

/** An empty phone. Timers run only when a test lets them. */
export async function testHouse(
  wire: (request: WireRequest) => WireAnswer | Promise<WireAnswer>,
): Promise<TestHouse> {
  emptyProfile();
  const world = benchWorld(wire);
  const test: TestHouse = { world, savedCount: 0, told: [] };
  setHouse({
    world,
    phone: await openPhone(),
    zone: () => "Europe/Dublin",
    tell: (_, subjects) => test.told.push(subjects),
    onSaved: () => {
      test.savedCount += 1;
    },
    onGivenWay: () => undefined,
  });
  return test;
}

/** What a server says to somebody who signs in. */
export function welcome(device: string, login = "ama@hill", member = AUTHOR): WireAnswer {
  return answer(201, {
    device,
    mark: "K7",
    epoch: "first",
    server_time: "2026-11-10T08:00:00.000Z",
    member: { id: member, name: login, login, roles: ["processor"] },
    cooperative: { id: COOPERATIVE, handle: "hill", name: "Hill", starts_with: {} },
  });
}
