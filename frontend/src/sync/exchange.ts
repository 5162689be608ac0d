/** One exchange of the whole phone: every outbox under its author's cookie, then what is new (R60). */
import type { DeviceDb } from "../store/device.ts";
import { devicesOf, forgetDevice, type PhoneDb, setStanding } from "../store/phone.ts";
import { dropReadData } from "../store/prune.ts";
import { waitingCount } from "../store/reads.ts";
import type { DeviceRow } from "../store/rows.ts";
import { ask } from "./answers.ts";
import { reoffer } from "./have.ts";
import { pullAll } from "./pull.ts";
import { pushAll, type RoundReport } from "./push.ts";
import type { World } from "./world.ts";

const OUTBOX_LOCK = "outbox";

export interface Exchange {
  world: World;
  phone: PhoneDb;
  /** Opens a device's database, or answers the open one. */
  open(device: string): Promise<DeviceDb>;
  kinds: number;
  /** The device on the screen; null in the worker. */
  shown: string | null;
  /** Pull for everyone on this phone, not only for the person on the screen. */
  pullForAll: boolean;
  withStuck: boolean;
}

export interface ExchangeReport {
  /** The first trouble met, or null: everything could be said and heard. */
  trouble: { code: string; retry_after_ms: number | null } | null;
  /** Entries still waiting on this phone. */
  waitingCount: number;
  /** Subjects touched, for each device. */
  touched: Map<string, string[]>;
  /** Devices whose read side was thrown away. */
  reset: string[];
}

/** Runs one exchange, alone on this phone (R16). Null: another tab or the worker is at it. */
export function exchangeAll(exchange: Exchange): Promise<ExchangeReport | null> {
  return exchange.world.alone(OUTBOX_LOCK, async () => {
    const report: ExchangeReport = {
      trouble: null,
      waitingCount: 0,
      touched: new Map(),
      reset: [],
    };
    const rows = await devicesOf(exchange.phone);
    // The person on the screen first: it is their thumb that waits for "handed over".
    rows.sort((a, b) => Number(b.device === exchange.shown) - Number(a.device === exchange.shown));
    for (const row of rows) await exchangeOne(exchange, row, rows, report);
    return report;
  });
}

async function exchangeOne(
  exchange: Exchange,
  row: DeviceRow,
  rows: readonly DeviceRow[],
  report: ExchangeReport,
): Promise<void> {
  if (row.standing === "leaving") return endCookie(exchange, row, report);
  const { world } = exchange;
  const db = await exchange.open(row.device);
  const speaker = speakerFor(row, rows);
  if ((await waitingCount(db)) > 0 && speaker !== null) {
    const withStuck = exchange.withStuck;
    await note(exchange, row, report, await pushAll({ world, db, speaker, withStuck }));
  }
  const isAsked = row.device === exchange.shown || exchange.pullForAll;
  if (row.standing !== "revoked" && isAsked) {
    const task = { world, db, device: row.device, kinds: exchange.kinds };
    await note(exchange, row, report, await pullAll(task));
    const offered = await reoffer(world, db, row.device);
    if ("code" in offered) report.trouble ??= { code: offered.code, retry_after_ms: null };
  }
  report.waitingCount += await waitingCount(db);
}

/** A revoked device may not speak; another device of the same member hands over for it (R64). */
function speakerFor(row: DeviceRow, rows: readonly DeviceRow[]): string | null {
  if (row.standing !== "revoked") return row.device;
  const other = rows.find((one) => one.member.id === row.member.id && one.standing === "in");
  return other?.device ?? null;
}

async function note(
  exchange: Exchange,
  row: DeviceRow,
  report: ExchangeReport,
  round: RoundReport,
): Promise<void> {
  const before = report.touched.get(row.device) ?? [];
  report.touched.set(row.device, [...before, ...round.touched]);
  if (round.wasReset) report.reset.push(row.device);
  report.trouble ??= round.trouble;
  await noteStanding(exchange, row, round.trouble?.code ?? null);
  if (round.heldBackCount > 0) report.trouble ??= { code: "retry", retry_after_ms: null };
}

/** Session over: capture goes on (R58). Revoked: read data goes, what waits stays (R64). */
async function noteStanding(
  exchange: Exchange,
  row: DeviceRow,
  code: string | null,
): Promise<void> {
  if (row.standing === "revoked" || row.standing === "leaving") return;
  if (code === "device_revoked") {
    row.standing = "revoked";
    await setStanding(exchange.phone, row.device, "revoked");
    await dropReadData(await exchange.open(row.device));
  } else if (code === "not_authenticated" && row.standing === "in") {
    row.standing = "over";
    await setStanding(exchange.phone, row.device, "over");
  } else if (code === null && row.standing === "over") {
    row.standing = "in";
    await setStanding(exchange.phone, row.device, "in");
  }
}

/** The database of a signed-out device went at once; its cookie ends at next contact (R61). */
async function endCookie(
  exchange: Exchange,
  row: DeviceRow,
  report: ExchangeReport,
): Promise<void> {
  const outcome = await ask(exchange.world, {
    method: "DELETE",
    path: "/api/v1/session",
    device: row.device,
    body: null,
  });
  const hasEnded =
    outcome.is === "answered" ||
    outcome.code === "not_authenticated" ||
    outcome.code === "device_revoked";
  if (hasEnded) await forgetDevice(exchange.phone, row.device);
  else report.trouble ??= { code: outcome.code, retry_after_ms: null };
}
