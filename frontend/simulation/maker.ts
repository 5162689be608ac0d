/** What is around a simulated thumb when it saves. */
import type { Maker } from "../src/state/making.ts";
import type { Current } from "../src/state/types.ts";
import type { DeviceDb } from "../src/store/device.ts";
import type { World } from "../src/sync/world.ts";

export function makeMaker(db: DeviceDb, who: Current, world: World): Maker {
  return {
    db,
    who,
    nowMs: world.nowMs(),
    bytes: world.bytes,
    zone: "Europe/Dublin",
    app_version: "simulated",
  };
}
