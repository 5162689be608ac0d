/** After a restore the server may have lost what it once confirmed: offer it again (R36, R93). */
import type { DeviceDb } from "../store/device.ts";
import { metaOf, setMeta } from "../store/meta.ts";
import { handedOverIds } from "../store/reads.ts";
import { offerAgain } from "../store/settle.ts";
import { ask } from "./answers.ts";
import type { World } from "./world.ts";

const HAVE_IDS_MAX = 1_000;

/** Asks which of the held own entries are missing, and puts those back into the outbox. */
export async function reoffer(
  world: World,
  db: DeviceDb,
  device: string,
): Promise<{ offered: number } | { code: string }> {
  if (!(await metaOf(db)).must_reoffer) return { offered: 0 };
  const ids = await handedOverIds(db);
  let offered = 0;
  for (let from = 0; from < ids.length; from += HAVE_IDS_MAX) {
    const asked = ids.slice(from, from + HAVE_IDS_MAX);
    const outcome = await ask(world, {
      method: "POST",
      path: "/api/v1/sync/have",
      device,
      body: JSON.stringify({ ids: asked }),
    });
    if (outcome.is !== "answered") return { code: outcome.code };
    const { missing } = outcome.payload;
    if (!Array.isArray(missing)) return { code: "nonsense" };
    const lost = asked.filter((id) => missing.includes(id));
    await offerAgain(db, lost);
    offered += lost.length;
  }
  await setMeta(db, { must_reoffer: false });
  return { offered };
}
