/** Handing over what waits (R1, R14, R21, R22). */
import { moment } from "../entries/moments.ts";
import type { DeviceDb } from "../store/device.ts";
import { metaOf, setMeta } from "../store/meta.ts";
import { resetReadSide } from "../store/prune.ts";
import { entryRows, slips } from "../store/reads.ts";
import type { EntryRow, Slip } from "../store/rows.ts";
import { markStuck, type Result, settle } from "../store/settle.ts";
import { ask, clockOffMs, type Fields, isFields, type Outcome, PROTOCOL } from "./answers.ts";
import { nextIds, PUSH_ENTRIES_MAX, portion } from "./portions.ts";
import type { World } from "./world.ts";

/** More than any outbox needs; a loop that waits for a server must end. */
const PUSHES_MAX = 2_000;

export interface PushTask {
  world: World;
  db: DeviceDb;
  /** The device whose cookie speaks: the outbox's own, or another of the same member (R64). */
  speaker: string;
  /** Offer entries again that were refused alone before (R22). */
  withStuck: boolean;
}

export interface RoundReport {
  /** Why it stopped, or null when all was said that could be. */
  trouble: { code: string; retry_after_ms: number | null } | null;
  touched: string[];
  /** Entries the server asked to bring again later. */
  heldBackCount: number;
  /** True when the server's answers belong to another epoch: all was thrown away but the outbox. */
  wasReset: boolean;
}

interface Round {
  heldBack: Set<string>;
  entriesMax: number;
  touched: Set<string>;
  wasReset: boolean;
}

/** Pushes portion after portion until nothing is left to say, or the world fails. */
export async function pushAll(task: PushTask): Promise<RoundReport> {
  const round: Round = {
    heldBack: new Set(),
    entriesMax: PUSH_ENTRIES_MAX,
    touched: new Set(),
    wasReset: false,
  };
  let trouble: RoundReport["trouble"] = null;
  for (let count = 0; count < PUSHES_MAX && trouble === null; count += 1) {
    const waiting = await slips(task.db);
    const rows = await nextRows(task, round, waiting);
    if (rows.length === 0) break;
    trouble = await pushOnce(task, round, rows);
  }
  if (trouble === null && task.withStuck) trouble = await offerStuckOnes(task, round);
  return {
    trouble,
    touched: [...round.touched],
    heldBackCount: round.heldBack.size,
    wasReset: round.wasReset,
  };
}

async function nextRows(
  task: PushTask,
  round: Round,
  waiting: readonly Slip[],
): Promise<EntryRow[]> {
  const choice = { slips: waiting, heldBack: round.heldBack, entriesMax: round.entriesMax };
  for (;;) {
    const ids = nextIds(choice);
    if (ids.length === 0) return [];
    const { rows, waitsWithAnother } = portion(await entryRows(task.db, ids), choice);
    for (const id of waitsWithAnother) round.heldBack.add(id);
    // Each turn either finds something to send or holds more back, so it ends.
    if (rows.length > 0 || waitsWithAnother.length === 0) return rows;
  }
}

/** Each refused entry once more, alone: a box on the way may have been wrong about it. */
async function offerStuckOnes(task: PushTask, round: Round): Promise<RoundReport["trouble"]> {
  const stuck = (await slips(task.db)).filter((slip) => slip.stuck !== null);
  for (const row of await entryRows(
    task.db,
    stuck.map((slip) => slip.id),
  )) {
    const trouble = await pushOnce(task, round, [row]);
    if (trouble !== null) return trouble;
  }
  return null;
}

async function pushOnce(
  task: PushTask,
  round: Round,
  rows: readonly EntryRow[],
): Promise<RoundReport["trouble"]> {
  const push = task.world.newId();
  const meta = await metaOf(task.db);
  const outcome = await ask(task.world, {
    method: "POST",
    path: "/api/v1/sync/push",
    device: task.speaker,
    body: JSON.stringify({
      protocol: PROTOCOL,
      device: task.speaker,
      device_time: moment(task.world.nowMs()),
      epoch: meta.epoch,
      push,
      entries: rows.map((row) => row.entry),
    }),
  });
  if (outcome.is === "answered") return takeAnswer(task, round, { rows, push, outcome });
  if (outcome.code === "too_large" || outcome.code === "unreadable") {
    await shrink(task, round, rows, outcome.code);
    return null;
  }
  return { code: outcome.code, retry_after_ms: outcome.retry_after_ms };
}

async function takeAnswer(
  task: PushTask,
  round: Round,
  said: { rows: readonly EntryRow[]; push: string; outcome: Outcome & { is: "answered" } },
): Promise<RoundReport["trouble"]> {
  const ids = new Set(said.rows.map((row) => row.id));
  const results = parsedResults(said.outcome.payload, said.push, ids);
  if (results === null) return { code: "nonsense", retry_after_ms: null };
  const settled = results.filter((result) => result.status !== "retry");
  const nowMs = task.world.nowMs();
  for (const subject of await settle(task.db, settled.map(asFinal), nowMs)) {
    round.touched.add(subject);
  }
  for (const result of results) {
    if (result.status === "retry") round.heldBack.add(result.id);
  }
  round.entriesMax = Math.min(PUSH_ENTRIES_MAX, round.entriesMax * 2);
  await setMeta(task.db, { last_exchange_ms: nowMs, clock_off_ms: clockOffMs(said.outcome) });
  await noticeEpoch(task, round, said.outcome.payload.epoch);
  return null;
}

/** A restored server begins a new epoch: the read side is pulled anew, the outbox stays (R43). */
async function noticeEpoch(task: PushTask, round: Round, epoch: unknown): Promise<void> {
  const meta = await metaOf(task.db);
  if (typeof epoch !== "string" || epoch === "" || epoch === meta.epoch) return;
  if (meta.epoch === "") return; // the first pull will say it
  await resetReadSide(task.db, epoch);
  round.wasReset = true;
}

/** Half as many next time; one alone that is still refused needs attention and stays (R22). */
async function shrink(
  task: PushTask,
  round: Round,
  rows: readonly EntryRow[],
  code: string,
): Promise<void> {
  const only = rows.length === 1 ? rows[0] : undefined;
  if (only === undefined) {
    round.entriesMax = Math.max(1, Math.floor(rows.length / 2));
    return;
  }
  await markStuck(task.db, only.id, code);
  round.heldBack.add(only.id);
  for (const subject of only.linked) round.touched.add(subject);
}

interface WireResult extends Omit<Result, "status"> {
  status: Result["status"] | "retry";
}
const STATUSES: readonly string[] = ["created", "exists", "mismatch", "quarantined", "retry"];

/** The results of R1, or null when the answer is not one: then nothing moves. */
function parsedResults(
  payload: Fields,
  push: string,
  ids: ReadonlySet<string>,
): WireResult[] | null {
  if (payload.push !== push || !Array.isArray(payload.results)) return null;
  const parsed: WireResult[] = [];
  for (const result of payload.results as unknown[]) {
    // Array.isArray answers any[]
    if (!isFields(result) || typeof result.id !== "string" || !ids.has(result.id)) return null;
    if (!isStatus(result.status)) return null;
    parsed.push({
      id: result.id,
      status: result.status,
      code: typeof result.code === "string" ? result.code : "",
      detail: typeof result.detail === "string" ? result.detail : "",
    });
  }
  return parsed.length === ids.size ? parsed : null;
}

function isStatus(value: unknown): value is WireResult["status"] {
  return typeof value === "string" && STATUSES.includes(value);
}

function asFinal(result: WireResult): Result {
  if (result.status === "retry") throw new Error("an entry to bring again is not settled");
  return { ...result, status: result.status };
}
