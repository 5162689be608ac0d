/** Fetching what is new: page by page, each with its cursor (R3, R39). */
import type { DeviceDb } from "../store/device.ts";
import { type DeviceMeta, metaOf, setMeta } from "../store/meta.ts";
import { resetReadSide } from "../store/prune.ts";
import type { Body, Entry } from "../store/rows.ts";
import { type Pulled, type PulledUses, takeIn } from "../store/take_in.ts";
import { ask, clockOffMs, type Fields, isFields, type Outcome } from "./answers.ts";
import type { RoundReport } from "./push.ts";
import type { World } from "./world.ts";

const PULL_ROWS_MAX = 500;
const PAGES_MAX = 10_000;
const RESETS_MAX = 2;

export interface PullTask {
  world: World;
  db: DeviceDb;
  device: string;
  /** The number of this phone's table of kinds (R91). */
  kinds: number;
}

interface Pulling {
  touched: Set<string>;
  resetCount: number;
}

type Trouble = RoundReport["trouble"];

/** Pulls until the server says there is no more, or the world fails. */
export async function pullAll(task: PullTask): Promise<RoundReport> {
  const pulling: Pulling = { touched: new Set(), resetCount: 0 };
  let step: "more" | "end" | NonNullable<Trouble> = "more";
  for (let page = 0; page < PAGES_MAX && step === "more"; page += 1) {
    step = await pullOnce(task, pulling);
  }
  return {
    trouble: typeof step === "string" ? null : step,
    touched: [...pulling.touched],
    heldBackCount: 0,
    wasReset: pulling.resetCount > 0,
  };
}

async function pullOnce(
  task: PullTask,
  pulling: Pulling,
): Promise<"more" | "end" | NonNullable<Trouble>> {
  const meta = await metaOf(task.db);
  const query = new URLSearchParams({
    cursor: meta.cursor,
    limit: String(PULL_ROWS_MAX),
    kinds: String(task.kinds),
  });
  const outcome = await ask(task.world, {
    method: "GET",
    path: `/api/v1/sync/pull?${query}`,
    device: task.device,
    body: null,
  });
  if (outcome.is !== "answered") {
    if (outcome.code === "upgrade_required") await setMeta(task.db, { must_upgrade: true });
    return { code: outcome.code, retry_after_ms: outcome.retry_after_ms };
  }
  const { payload } = outcome;
  const epoch = typeof payload.epoch === "string" ? payload.epoch : meta.epoch;
  if (payload.reset === true || (meta.epoch !== "" && epoch !== meta.epoch)) {
    return beginAnew(task, pulling, epoch);
  }
  return takePage(task, pulling, { meta, epoch, outcome });
}

/** `reset` and a new epoch rebuild the read side and never touch the outbox (R43, R44). */
async function beginAnew(
  task: PullTask,
  pulling: Pulling,
  epoch: string,
): Promise<"more" | NonNullable<Trouble>> {
  if (pulling.resetCount >= RESETS_MAX) return { code: "nonsense", retry_after_ms: null };
  pulling.resetCount += 1;
  await resetReadSide(task.db, epoch);
  return "more";
}

async function takePage(
  task: PullTask,
  pulling: Pulling,
  page: { meta: DeviceMeta; epoch: string; outcome: Outcome & { is: "answered" } },
): Promise<"more" | "end" | NonNullable<Trouble>> {
  const { payload } = page.outcome;
  const changes = parsedChanges(payload.changes);
  if (changes === null || typeof payload.next !== "string" || typeof payload.more !== "boolean") {
    return { code: "nonsense", retry_after_ms: null };
  }
  const nowMs = task.world.nowMs();
  const touched = await takeIn(
    task.db,
    changes,
    {
      cursor: payload.next,
      epoch: page.epoch,
      last_exchange_ms: nowMs,
      clock_off_ms: clockOffMs(page.outcome),
      must_upgrade: false,
      is_whole: page.meta.is_whole || !payload.more,
      ...(typeof payload.backed_up_through === "number"
        ? { backed_up_seq: payload.backed_up_through }
        : {}),
    },
    nowMs,
  );
  for (const subject of touched) pulling.touched.add(subject);
  return payload.more ? "more" : "end";
}

/** The changes of R3, or null when they are not that. Unknown types are left for a later app. */
export function parsedChanges(changes: unknown): Pulled[] | null {
  if (!Array.isArray(changes)) return null;
  const pulled: Pulled[] = [];
  for (const change of changes as unknown[]) {
    const one = parsedChange(change);
    if (one === null) return null;
    if (one !== "unknown_type") pulled.push(one);
  }
  return pulled;
}

function parsedChange(change: unknown): Pulled | "unknown_type" | null {
  if (!isFields(change) || !isFields(change.data)) return null;
  const { id, seq, data } = change;
  if (typeof id !== "string" || typeof seq !== "number") return null;
  if (change.type === "sheet") {
    const sheet = parsedSheet(data);
    return sheet === null ? null : { type: "sheet", id, seq, data: sheet };
  }
  if (change.type === "uses") {
    const uses = parsedUses(data);
    return uses === null ? null : { type: "uses", id, seq, data: uses };
  }
  if (change.type !== "entry") return "unknown_type";
  const entry = parsedEntry(data.entry);
  if (entry === null || typeof data.received_at !== "string") return null;
  const skew_ms = typeof data.skew_ms === "number" ? { skew_ms: data.skew_ms } : {};
  return { type: "entry", id, seq, data: { entry, received_at: data.received_at, ...skew_ms } };
}

/** An entry as the server tells it: the fields a fold and the store read must be what they say. */
function parsedEntry(value: unknown): Entry | null {
  if (!isFields(value) || !isFields(value.body) || !Array.isArray(value.subjects)) return null;
  const texts = [
    value.id,
    value.kind,
    value.cooperative,
    value.author,
    value.device,
    value.recorded_at,
    value.happened_at,
    value.local_date,
  ];
  if (!texts.every((text) => typeof text === "string")) return null;
  if (!value.subjects.every((subject) => typeof subject === "string")) return null;
  if (typeof value.device_seq !== "number" || typeof value.version !== "number") return null;
  return value as unknown as Entry; // every field that is read was looked at above
}

function parsedSheet(
  value: Fields,
): { state: Body; upto_seq: number; entry_count: number; fold: number; is_open: boolean } | null {
  const { state, upto_seq, entry_count, fold, is_open } = value;
  if (!isFields(state) || typeof is_open !== "boolean") return null;
  if (typeof upto_seq !== "number" || typeof entry_count !== "number") return null;
  if (typeof fold !== "number") return null;
  return { state: state as Body, upto_seq, entry_count, fold, is_open }; // it came out of JSON.parse
}

function parsedUses({ check, count, counted_at }: Fields): PulledUses["data"] | null {
  if (typeof check !== "string" || typeof counted_at !== "string") return null;
  return typeof count === "number" ? { check, count, counted_at } : null;
}
