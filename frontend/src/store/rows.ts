/** What stands in this phone's databases, row by row. */

/** An entry as it was made; it never changes afterwards (R8). */
export interface Entry {
  id: string;
  kind: string;
  version: number;
  subjects: string[];
  cooperative: string;
  author: string;
  device: string;
  device_seq: number;
  recorded_at: string;
  tz: string;
  utc_offset_min: number;
  local_date: string;
  seen: string;
  happened_at: string;
  app_version: string;
  body: Body;
}

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
export type Body = { [key: string]: Json };

/** An entry this phone holds. `linked` is the union of the subjects of its family of corrections. */
export interface EntryRow {
  id: string;
  entry: Entry;
  /** Its number in the log; null while the server has not said it. */
  seq: number | null;
  received_at: string | null;
  linked: string[];
  /** The entry a correction or void names; "" for all others, so that the index finds it. */
  corrects: string;
  /** When the server said it has it, by this phone's clock; null while it waits or is another's. */
  handed_over_ms: number | null;
}

/** One line of the outbox. Only an answer that names its id removes it (R14). */
export interface Slip {
  id: string;
  device_seq: number;
  saved_ms: number;
  /** Set when the server refused a push of this entry alone (R22); it stays and is offered again. */
  stuck: string | null;
}

/** A sheet as the server folded it. */
export interface SheetRow {
  subject: string;
  type: string;
  seq: number;
  state: Body;
  upto_seq: number;
  entry_count: number;
  fold: number;
  is_open: boolean;
}

/** An entry the server keeps aside: outside the record until somebody decides. */
export interface AttentionRow {
  id: string;
  status: "mismatch" | "quarantined" | "stuck";
  code: string;
  detail: string;
  at_ms: number;
  entry: Entry;
}

/** A half-filled form, as typed. */
export interface DraftRow {
  key: string;
  typed: Json;
}

export interface MemberOfPhone {
  id: string;
  name: string;
  roles: string[];
}

/** One device of this phone: this browser as used by one member. */
export interface DeviceRow {
  device: string;
  mark: string;
  member: MemberOfPhone;
  cooperative: { id: string; handle: string; name: string };
  /** `over`: asks to sign in; `revoked`: may only hand over; `leaving`: cookie ends at next contact. */
  standing: "in" | "over" | "revoked" | "leaving";
}
