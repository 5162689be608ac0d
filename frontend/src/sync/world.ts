/** What sync needs of the world; it comes in as an argument, so that a test can be the world. */

export interface WireRequest {
  method: "GET" | "POST" | "DELETE";
  path: string;
  /** The device whose cookie speaks; null only when signing in as a new one. */
  device: string | null;
  body: string | null;
}

export interface WireAnswer {
  status: number;
  retry_after: string | null;
  text: string;
}

export interface World {
  /** Sends one request; rejects when no whole answer came. */
  wire(request: WireRequest): Promise<WireAnswer>;
  /** This phone's clock. It may be wrong by years: nothing may depend on more than a difference. */
  nowMs(): number;
  /** A number from 0 up to, not including, 1. */
  chance(): number;
  bytes(count: number): Uint8Array;
  newId(): string;
  /** Runs `work` alone on this phone; answers null at once when another tab or the worker does. */
  alone<T>(name: string, work: () => Promise<T>): Promise<T | null>;
  /** Calls back once after a wait, unless the answered function is called before. */
  after(waitMs: number, callBack: () => void): () => void;
}

/** Every request ends by then: a hanging one must not keep the others from their turn (R17). */
export const REQUEST_MAX_MS = 30_000;

/** The world of a browser page or of its worker. */
export function browserWorld(): World {
  return {
    wire: fetchWire,
    nowMs: () => Date.now(),
    chance: () => (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) / 2 ** 32,
    bytes: (count) => crypto.getRandomValues(new Uint8Array(count)),
    newId: () => crypto.randomUUID(),
    alone: aloneByWebLock,
    after(waitMs, callBack) {
      const timer = setTimeout(callBack, waitMs);
      return () => clearTimeout(timer);
    },
  };
}

/** One request by `fetch`, cookies of this origin with it, no answer from any cache. */
export async function fetchWire(request: WireRequest): Promise<WireAnswer> {
  const answer = await fetch(request.path, {
    method: request.method,
    headers: {
      ...(request.device === null ? {} : { "Kitchenlog-Device": request.device }),
      ...(request.body === null ? {} : { "Content-Type": "application/json" }),
    },
    body: request.body,
    credentials: "same-origin",
    cache: "no-store",
    redirect: "error",
    signal: AbortSignal.timeout(REQUEST_MAX_MS),
  });
  return {
    status: answer.status,
    retry_after: answer.headers.get("Retry-After"),
    text: await answer.text(),
  };
}

async function aloneByWebLock<T>(name: string, work: () => Promise<T>): Promise<T | null> {
  return navigator.locks.request(name, { ifAvailable: true }, async (lock) =>
    lock === null ? null : work(),
  );
}
