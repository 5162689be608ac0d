/** Handing over from the worker, when the browser wakes it without a page. */
import { TABLE_NUMBER } from "../entries/kinds.ts";
import { type DeviceDb, openDevice } from "../store/device.ts";
import { openPhone } from "../store/phone.ts";
import { exchangeAll } from "../sync/exchange.ts";
import { browserWorld } from "../sync/world.ts";

/** Empties every outbox of this phone once; a page that is at it already is left alone. */
export async function handOver(): Promise<void> {
  const phone = await openPhone();
  const open = new Map<string, DeviceDb>();
  try {
    const report = await exchangeAll({
      world: browserWorld(),
      phone,
      open: async (device) => {
        const db = open.get(device) ?? (await openDevice(device));
        open.set(device, db);
        return db;
      },
      kinds: TABLE_NUMBER,
      shown: null,
      pullForAll: false,
      withStuck: false,
    });
    // The browser tries again by itself when this fails.
    if (report?.trouble != null) throw new Error(report.trouble.code);
  } finally {
    for (const db of open.values()) db.close();
    phone.close();
  }
}
