/** Asking for everything about one subject, where this phone holds only part of it. */
import type { DeviceDb } from "../store/device.ts";
import { type Pulled, takeIn } from "../store/take_in.ts";
import { ask } from "./answers.ts";
import { parsedChanges } from "./pull.ts";
import type { World } from "./world.ts";

export interface AboutTask {
  world: World;
  db: DeviceDb;
  device: string;
  subject: string;
}

/** Takes in all entries about a subject; the cursor does not move. False: no answer came. */
export async function takeInAbout(task: AboutTask): Promise<boolean> {
  const query = new URLSearchParams({ subject: task.subject });
  const outcome = await ask(task.world, {
    method: "GET",
    path: `/api/v1/entries?${query}`,
    device: task.device,
    body: null,
  });
  if (outcome.is !== "answered") return false;
  const pulled = parsedAnswer(outcome.payload.entries, outcome.payload.sheet, task.subject);
  if (pulled === null) return false;
  await takeIn(task.db, pulled, {}, task.world.nowMs());
  return true;
}

/** The answer in the form of a pull's changes; the sheet first, so that it does not drop them. */
function parsedAnswer(entries: unknown, sheet: unknown, subject: string): Pulled[] | null {
  if (!Array.isArray(entries)) return null;
  const changes = entries.map((one: unknown) => asChange("entry", null, one));
  const first = sheet === null || sheet === undefined ? [] : [asChange("sheet", subject, sheet)];
  return parsedChanges([...first, ...changes]);
}

function asChange(type: string, id: string | null, data: unknown): unknown {
  if (typeof data !== "object" || data === null) return null;
  const seq = "seq" in data ? data.seq : null;
  const entry = "entry" in data ? data.entry : null;
  const ownId = typeof entry === "object" && entry !== null && "id" in entry ? entry.id : null;
  return { type, id: id ?? ownId, seq, data };
}
