/** What stands in this phone's databases, row by row. */

import type { Envelope } from "../entries/kinds.ts";

/** An entry as it was made (R8), of any kind: also of one that only a newer app knows. */
export interface Entry extends Envelope {
  readonly kind: string;
  readonly body: Body;
}

export type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
export type Body = Readonly<Record<string, unknown>>;

/** An entry this phone holds. `linked` is the union of the subjects of its family of corrections. */
export interface EntryRow {
  id: string;
  entry: Entry;
  /**
   * Its number in the log; null while the server has not said it, 0 when it had one in an earlier
   * life of the server's database.
   */
  seq: number | null;
  received_at: string | null;
  /** The server's clock less that of the phone that handed it over; left out where nobody said. */
  skew_ms?: number;
  linked: string[];
  /** The entry a correction or void names; left out for all others, so that the index is short. */
  corrects?: string;
  /** When the server said it has it, by this phone's clock; null while it waits or is another's. */
  handed_over_ms: number | null;
}

/** One line of the outbox. Only an answer that names its id removes it (R14). */
export interface Slip {
  id: string;
  kind: string;
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

/** How often an instrument was used since a check, as the server counted it over all phones. */
export interface UsesRow {
  instrument: string;
  seq: number;
  /** The check it counts from; from another one it says nothing. */
  check: string;
  count: number;
  counted_at: string;
}

/** An entry the server keeps aside: outside the record until somebody decides. */
export interface AttentionRow {
  id: string;
  status: "mismatch" | "quarantined" | "stuck"; // stuck: still in the outbox, see Slip
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
  /** `name@cooperative`; the passphrase is kept nowhere. */
  login: string;
  roles: string[];
}

export interface CooperativeOfPhone {
  id: string;
  handle: string;
  name: string;
  /** What its definition may begin with, until a coordinator has written one. */
  starts_with: Record<string, string>;
}

/** One device of this phone: this browser as used by one member. */
export interface DeviceRow {
  device: string;
  mark: string;
  member: MemberOfPhone;
  cooperative: CooperativeOfPhone;
  /** `over`: asks to sign in; `revoked`: may only hand over; `leaving`: cookie ends at next contact. */
  standing: "in" | "over" | "revoked" | "leaving";
}
