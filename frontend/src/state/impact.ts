/** What leaned on an instrument that failed, as the server knows it: sums first, then readings. */
import { ask, type Fields, isFields } from "../sync/answers.ts";
import { current, house } from "./house.ts";

/** A reading in question: where it stands, what was read and how far it would move, in `unit`. */
export interface ImpactReading {
  entry: string;
  kind: string;
  subject: string;
  place: string | null;
  material: string | null;
  says: string | null;
  happened_at: string;
  author: string;
  read: string | null;
  corrected: string | null;
  /** Standard uncertainty of what is read or corrected. */
  u: string | null;
  unit: string | null;
  moves: string | null;
}

/** A batch or lot with readings in question; `would_change` as `place:was:would_be`. */
export interface Touched {
  subject: string;
  code: string | null;
  material: string | null;
  readings: number;
  would_change: string[];
}

/** A recipient or stall day, with how much of which lot. */
export interface Reached {
  id: string;
  label: string | null;
  unit: string | null;
  lots: { lot: string; amount: string }[];
}

/** Everything but the readings themselves; `is_adding_up` while the server's sheets are behind. */
export interface Impact {
  after: string | null;
  until: string | null;
  readings: number;
  touched: Touched[];
  elsewhere: ImpactReading[];
  lots: string[];
  reached: Reached[];
  is_complete: boolean;
  is_adding_up: boolean;
}

/** The sums; a code where the server did not answer, or refused. Needs signal. */
export async function askedImpact(
  instrument: string,
  check: string,
): Promise<{ impact: Impact } | { code: string }> {
  const answer = await asked(instrument, "impact", { check });
  if ("code" in answer) return answer;
  const impact = parsedImpact(answer.payload);
  return impact === null ? { code: "nonsense" } : { impact };
}

/** One page of readings, and after which subject the next one begins; null at the end. */
export async function askedReadings(
  instrument: string,
  check: string,
  after: string,
): Promise<{ readings: ImpactReading[]; more: string | null } | { code: string }> {
  const answer = await asked(instrument, "impact/readings", { check, after });
  if ("code" in answer) return answer;
  const readings = allOf(answer.payload.readings, parsedReading);
  return readings === null ? { code: "nonsense" } : { readings, more: textOf(answer.payload.more) };
}

async function asked(
  instrument: string,
  what: string,
  query: Record<string, string>,
): Promise<{ payload: Fields } | { code: string }> {
  const path = `/api/v1/instruments/${encodeURIComponent(instrument)}/${what}`;
  const outcome = await ask(house().world, {
    method: "GET",
    path: `${path}?${new URLSearchParams(query)}`,
    device: current.value?.device ?? null,
    body: null,
  });
  return outcome.is === "answered" ? { payload: outcome.payload } : { code: outcome.code };
}

/** The answer, if every part of it is one. */
export function parsedImpact(payload: Fields): Impact | null {
  const touched = allOf(payload.touched, parsedTouched);
  const elsewhere = allOf(payload.elsewhere, parsedReading);
  const lots = allOf(payload.lots, textOf);
  const reached = allOf(payload.reached, parsedReached);
  if (touched === null || elsewhere === null || lots === null || reached === null) return null;
  return {
    after: textOf(payload.after),
    until: textOf(payload.until),
    readings: typeof payload.readings === "number" ? payload.readings : 0,
    touched,
    elsewhere,
    lots,
    reached,
    is_complete: payload.is_complete === true,
    is_adding_up: payload.is_adding_up === true,
  };
}

function parsedTouched(given: unknown): Touched | null {
  if (!isFields(given)) return null;
  const { subject, readings } = given;
  const would_change = allOf(given.would_change, textOf);
  if (typeof subject !== "string" || typeof readings !== "number") return null;
  if (would_change === null) return null;
  const { code, material } = given;
  return { subject, code: textOf(code), material: textOf(material), readings, would_change };
}

export function parsedReading(given: unknown): ImpactReading | null {
  if (!isFields(given)) return null;
  const { entry, kind, subject, happened_at, author } = given;
  if (typeof entry !== "string" || typeof kind !== "string" || typeof subject !== "string") {
    return null;
  }
  if (typeof happened_at !== "string" || typeof author !== "string") return null;
  return {
    entry,
    kind,
    subject,
    place: textOf(given.place),
    material: textOf(given.material),
    says: textOf(given.says),
    happened_at,
    author,
    read: textOf(given.read),
    corrected: textOf(given.corrected),
    u: textOf(given.u),
    unit: textOf(given.unit),
    moves: textOf(given.moves),
  };
}

function parsedReached(given: unknown): Reached | null {
  if (!isFields(given)) return null;
  const { id, label, unit } = given;
  const lots = allOf(given.lots, parsedOfLot);
  if (typeof id !== "string" || lots === null) return null;
  return { id, label: textOf(label), unit: textOf(unit), lots };
}

function parsedOfLot(given: unknown): { lot: string; amount: string } | null {
  if (!isFields(given)) return null;
  const { lot, amount } = given;
  return typeof lot === "string" && typeof amount === "string" ? { lot, amount } : null;
}

/** Every one of a list, or null where there is no list or one of them is none. */
function allOf<T>(given: unknown, parsed: (each: unknown) => T | null): T[] | null {
  if (!Array.isArray(given)) return null;
  const read = given.map(parsed).filter((each) => each !== null);
  return read.length === given.length ? read : null;
}

function textOf(given: unknown): string | null {
  return typeof given === "string" ? given : null;
}
