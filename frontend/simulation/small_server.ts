/** A server small enough to be read: it keeps entries in memory and answers push, pull and have. */
import type { Entry } from "../src/store/rows.ts";
import type { WireAnswer, WireRequest } from "../src/sync/world.ts";
import { answer } from "./bench.ts";

export interface SmallServer {
  entries: Map<string, Entry>;
  /** Sheets to be told, with a number of their own. */
  sheets: { id: string; seq: number; data: object }[];
  epoch: string;
  pageRows: number;
  /** Says something else than `created` or `exists` about an entry. */
  verdicts: Map<string, { status: string; code?: string; detail?: string }>;
  wire(request: WireRequest): WireAnswer;
}

interface Push {
  push: string;
  entries: Entry[];
}

export function smallServer(): SmallServer {
  const server: SmallServer = {
    entries: new Map(),
    sheets: [],
    epoch: "first",
    pageRows: 100,
    verdicts: new Map(),
    wire(request) {
      const url = new URL(request.path, "http://localhost");
      if (url.pathname.endsWith("/push")) return pushed(server, JSON.parse(request.body ?? ""));
      if (url.pathname.endsWith("/have")) return missing(server, JSON.parse(request.body ?? ""));
      return pulled(server, url.searchParams.get("cursor") ?? "");
    },
  };
  return server;
}

function pushed(server: SmallServer, { push, entries }: Push): WireAnswer {
  const results = entries.map((entry) => {
    const said = server.verdicts.get(entry.id);
    if (said !== undefined) return { id: entry.id, ...said };
    const status = server.entries.has(entry.id) ? "exists" : "created";
    if (status === "created") server.entries.set(entry.id, entry);
    return { id: entry.id, status };
  });
  return answer(200, { push, epoch: server.epoch, through: "", results, ...now() });
}

function missing(server: SmallServer, { ids }: { ids: string[] }): WireAnswer {
  return answer(200, { missing: ids.filter((id) => !server.entries.has(id)) });
}

function pulled(server: SmallServer, cursor: string): WireAnswer {
  const [epoch, after] = cursor === "" ? [server.epoch, "0"] : cursor.split("/");
  if (epoch !== server.epoch) return answer(200, { reset: true, epoch: server.epoch, ...now() });
  const entries = [...server.entries.values()].map((entry, index) => ({
    type: "entry",
    id: entry.id,
    seq: index + 1,
    data: { entry, received_at: entry.recorded_at, skew_ms: 0 },
  }));
  const all = [...entries, ...server.sheets.map((sheet) => ({ type: "sheet", ...sheet }))]
    .filter((change) => change.seq > Number(after))
    .sort((a, b) => a.seq - b.seq);
  const changes = all.slice(0, server.pageRows);
  const next = `${server.epoch}/${changes.at(-1)?.seq ?? after}`;
  const more = all.length > changes.length;
  return answer(200, { epoch: server.epoch, changes, next, more, ...now() });
}

function now(): { server_time: string } {
  return { server_time: new Date(Date.UTC(2026, 10, 10, 8)).toISOString() };
}
