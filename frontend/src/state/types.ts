/** What screens are given and give back. */
import type { Refusal } from "../entries/refusals.ts";
import type { CooperativeOfPhone, Entry, MemberOfPhone } from "../store/rows.ts";

export type { Refusal } from "../entries/refusals.ts";
export type { AttentionRow, Body, Entry, Json } from "../store/rows.ts";

/** The world failed: the key of one sentence. What was typed stays typed. */
export type TroubleKey = "trouble.storage_full" | "trouble.storage" | "trouble.nobody";

export type Saved = { saved: Entry } | { refusal: Refusal } | { trouble: TroubleKey };

/** The same for the entries of one act: all of them or none. */
export type SavedTogether = { saved: Entry[] } | Exclude<Saved, { saved: Entry }>;

/** A sheet as a screen shows it. */
export interface Shown<T> {
  subject: string;
  state: T;
  is_open: boolean;
  /** Who added it up: this phone, the server, or the server with own unsent entries on top. */
  from: "phone" | "server" | "server_and_own";
  /** Own entries about it that are not handed over yet. */
  waiting: number;
  /** A newer app wrote something about it: kept here, and not added up. */
  is_newer: boolean;
}

export interface Current {
  device: string;
  mark: string;
  member: MemberOfPhone;
  cooperative: CooperativeOfPhone;
}

/** Somebody known on this phone; of another person one sees only how much waits (R60). */
export interface Person extends Current {
  waiting: number;
  must_sign_in: boolean;
}
