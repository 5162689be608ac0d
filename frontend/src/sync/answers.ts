/** Reading what came back: an answer counts only when it is what the contract says (R14). */
import type { WireAnswer, WireRequest, World } from "./world.ts";

export type Fields = { [key: string]: unknown };

export type Outcome =
  | { is: "answered"; payload: Fields; sent_ms: number; heard_ms: number }
  | {
      is: "refused";
      code: string;
      detail: string;
      field: string | null;
      retry_after_ms: number | null;
    }
  /** Nothing, half an answer, or words of somebody else on the way. */
  | { is: "unheard"; code: "no_signal" | "nonsense"; retry_after_ms: number | null };

export const PROTOCOL = 1;
const SECOND_MS = 1000;
const TOO_LARGE = 413;

/** Sends a request and says what became of it; never throws for what the network does. */
export async function ask(world: World, request: WireRequest): Promise<Outcome> {
  const sent_ms = world.nowMs();
  let answer: WireAnswer;
  try {
    answer = await world.wire(request);
  } catch {
    // Any way a network fails means the same here: unheard, nothing moves, try again.
    return { is: "unheard", code: "no_signal", retry_after_ms: null };
  }
  const retry_after_ms = retryAfterMs(answer.retry_after, world.nowMs());
  const payload = parsedFields(answer.text);
  if (payload !== null && payload.protocol === PROTOCOL) {
    if (answer.status >= 200 && answer.status < 300) {
      return { is: "answered", payload, sent_ms, heard_ms: world.nowMs() };
    }
    if (typeof payload.code === "string") {
      const detail = typeof payload.detail === "string" ? payload.detail : "";
      const field = typeof payload.field === "string" ? payload.field : null;
      return { is: "refused", code: payload.code, detail, field, retry_after_ms };
    }
  }
  // A box on the way may say 413 in its own words; smaller pushes may still pass it (R22).
  if (answer.status === TOO_LARGE) {
    return { is: "refused", code: "too_large", detail: "", field: null, retry_after_ms };
  }
  return { is: "unheard", code: "nonsense", retry_after_ms };
}

/** JSON text as an object, or null. */
function parsedFields(text: string): Fields | null {
  try {
    const parsed: unknown = JSON.parse(text);
    return isFields(parsed) ? parsed : null;
  } catch (trouble) {
    if (trouble instanceof SyntaxError) return null;
    throw trouble;
  }
}

export function isFields(value: unknown): value is Fields {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Server's clock minus this phone's, taken at the middle of the exchange (R55). */
export function clockOffMs(outcome: {
  payload: Fields;
  sent_ms: number;
  heard_ms: number;
}): number | null {
  const { server_time } = outcome.payload;
  const serverMs = typeof server_time === "string" ? Date.parse(server_time) : Number.NaN;
  if (Number.isNaN(serverMs)) return null;
  return Math.round(serverMs - (outcome.sent_ms + outcome.heard_ms) / 2);
}

/** `Retry-After` in seconds or as a date. */
function retryAfterMs(header: string | null, nowMs: number): number | null {
  if (header === null) return null;
  if (/^\d{1,6}$/.test(header)) return Number(header) * SECOND_MS;
  const atMs = Date.parse(header);
  return Number.isNaN(atMs) ? null : Math.max(0, atMs - nowMs);
}
